#include "heat/pool.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::heat::detail {

namespace {

double over_liquidus(const Model &model, std::size_t ring, std::size_t angle) {
  const Chain &chain = model.chain();
  return model.at(ring, angle).value() - chain.metals[chain.rings[ring].metal].liquidus.value();
}

// How far the pool reaches from the middle of a ring at the joint towards one side of the chain.
double reach(const Model &model, std::size_t ring, std::size_t angle, int step) {
  const auto &rings = model.chain().rings;
  double here = over_liquidus(model, ring, angle);
  const double from = rings[ring].position;
  while (true) {
    const std::size_t next = ring + std::size_t(step);
    if (next >= rings.size()) { // either end: below 0 wraps
      return std::abs(rings[ring].position - from);
    }
    const double there = over_liquidus(model, next, angle);
    if (there <= 0.0) {
      const double share = here / (here - there);
      return std::abs(rings[ring].position + share * (rings[next].position - rings[ring].position) - from);
    }
    ring = next;
    here = there;
  }
}

// Cells in a row along the joint, from the arc's cell to one side, in cells.
double reach_along(const Model &model, std::size_t ring, std::size_t angle, int step) {
  const auto n = std::size_t(model.chain().angles);
  double here = over_liquidus(model, ring, angle);
  for (std::size_t i = 1; i <= n / 2; ++i) {
    const std::size_t next = (angle + (step > 0 ? i : n - i)) % n;
    const double there = over_liquidus(model, ring, next);
    if (there <= 0.0) {
      return double(i - 1) + here / (here - there);
    }
    here = there;
  }
  return 0.5 * double(n);
}

} // namespace

Pool pool_at(const Model &model, std::size_t angle, double joint_radius) {
  const Chain &chain = model.chain();
  std::size_t hottest = chain.joint;
  for (const std::size_t ring : {chain.joint - 1, std::min(chain.joint + 1, chain.rings.size() - 1)}) {
    hottest = over_liquidus(model, ring, angle) > over_liquidus(model, hottest, angle) ? ring : hottest;
  }
  if (over_liquidus(model, hottest, angle) <= 0.0) {
    return {};
  }
  const double cell = 2.0 * units::pi * joint_radius / double(chain.angles);
  return {.width = reach(model, hottest, angle, -1) + reach(model, hottest, angle, 1),
          .length = cell * (reach_along(model, hottest, angle, -1) + reach_along(model, hottest, angle, 1))};
}

units::Temperature under_standing_arc(const Model &model, std::size_t ring, const Arc &arc,
                                      units::Temperature before, units::Time burning) {
  const Chain &chain = model.chain();
  const Metal &metal = chain.metals[chain.rings[ring].metal];
  constexpr auto hot = units::celsius(1000.0); // between the metal's start and its melting
  const double spread =
      metal.conductivity_at(hot) / (metal.density.value() * metal.specific_heat_at(hot)) * burning.value();
  const double deviation = std::sqrt(arc.radius.value() * arc.radius.value() + spread);
  const double cells = arc.start.value() / (2.0 * units::pi) * chain.angles;
  const double cell = 2.0 * units::pi * arc.joint_radius.value() / chain.angles;
  const double place =
      cells - std::floor(cells / chain.angles) * chain.angles - 0.5; // 0: middle of the first
  const double low = std::floor(place), off = place - low;
  const auto n = std::size_t(chain.angles);
  const std::size_t left = (std::size_t(low + double(n))) % n;
  const double mean =
      (1.0 - off) * model.at(ring, left).value() + off * model.at(ring, (left + 1) % n).value();
  const double wide = cell * (1.0 + 2.0 * std::min(off, 1.0 - off));
  const double over =
      wide / (deviation * std::sqrt(2.0 * units::pi)) / std::erf(wide / (deviation * std::sqrt(8.0)));
  return units::kelvins(before.value() + over * (mean - before.value()));
}

double pedal_after(double share, double width, double wanted) {
  constexpr double gain = 0.5, least = 0.3; // common practice, no source: a foot is neither quick nor exact
  const double off = std::clamp(1.0 - width / wanted, -1.0, 0.5);
  return std::clamp(share * (1.0 + gain * off), least, 1.0);
}

} // namespace purgewright::heat::detail
