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

// Cells to either side of an angle: the lower one, the upper one, and how far it lies from the lower's middle
// to the upper's.
struct Between {
  std::size_t low, high;
  double share;
};

Between between_cells(int cells, units::Angle angle) {
  const double place = angle.value() / (2.0 * units::pi) * cells - 0.5; // 0: middle of the first
  const double low = std::floor(place);
  const auto wrapped = [cells](double cell) { return std::size_t(cell - std::floor(cell / cells) * cells); };
  return {wrapped(low), wrapped(low + 1.0), place - low};
}

// Middle over mean, within half a cell to either side, of a thin plate under a Gaussian arc that has stood
// still: each moment's heat is a Gaussian that has widened ever since, from the arc's variance to that and
// `spread`. Summed in even steps of the variance's logarithm.
double over_mean(double along, double across, double deviation, double spread) {
  constexpr int parts = 8;
  const double arc = deviation * deviation, grown = std::log1p(spread / arc);
  double mean = 0.0;
  for (int i = 0; i < parts; ++i) {
    const double variance = arc * std::exp(grown * (i + 0.5) / parts), root = std::sqrt(8.0 * variance);
    mean += variance * std::erf(along / root) * std::erf(across / root) / parts;
  }
  return along * across / (2.0 * units::pi * mean);
}

} // namespace

Pool pool_of(const Model &model, double joint_radius) {
  const Chain &chain = model.chain();
  Pool pool;
  double most = 0.0;
  std::size_t ring = 0, angle = 0; // of the hottest cell beside the joint
  for (std::size_t i = 0; i < std::size_t(chain.angles); ++i) {
    std::size_t hottest = chain.joint - 1;
    for (std::size_t j = chain.joint; j <= std::min(chain.joint + 1, chain.rings.size() - 1); ++j) {
      hottest = over_liquidus(model, j, i) > over_liquidus(model, hottest, i) ? j : hottest;
    }
    const double over = over_liquidus(model, hottest, i);
    if (over > 0.0) {
      pool.width = std::max(pool.width, reach(model, hottest, i, -1) + reach(model, hottest, i, 1));
    }
    if (over > most) {
      most = over;
      ring = hottest;
      angle = i;
    }
  }
  if (most > 0.0) {
    const double cell = 2.0 * units::pi * joint_radius / double(chain.angles);
    pool.length = cell * (reach_along(model, ring, angle, -1) + reach_along(model, ring, angle, 1));
  }
  return pool;
}

units::Temperature at_angle(const Model &model, std::size_t ring, units::Angle angle) {
  const Between cells = between_cells(model.chain().angles, angle);
  return units::kelvins((1.0 - cells.share) * model.at(ring, cells.low).value() +
                        cells.share * model.at(ring, cells.high).value());
}

namespace {

constexpr auto by_the_arc = units::celsius(1400.0); // as the metal is there before it melts

double diffusivity_by_the_arc(const Metal &metal) {
  return metal.conductivity_at(by_the_arc) / (metal.density.value() * metal.specific_heat_at(by_the_arc));
}

// Square of the standard deviation of a standing arc's heat once it has burnt so long, m2.
double spread(const Metal &metal, const Arc &arc, units::Time burning) {
  return arc.radius.value() * arc.radius.value() + 2.0 * diffusivity_by_the_arc(metal) * burning.value();
}

} // namespace

double melted_half(const Metal &metal, double over, const Arc &arc, units::Temperature before,
                   units::Time burning) {
  const double start = metal.enthalpy_at(std::min(before, hottest));
  const auto peak = std::clamp(units::kelvins(metal.liquidus.value() + over), coldest, hottest);
  const double middle = metal.enthalpy_at(peak) - start;
  const double edge = metal.enthalpy_at(metal.liquidus) - start;
  return middle > edge && edge > 0.0 ? std::sqrt(2.0 * spread(metal, arc, burning) * std::log(middle / edge))
                                     : 0.0;
}

double over_for(const Metal &metal, double half, const Arc &arc, units::Temperature before,
                units::Time burning) {
  const double edge = metal.enthalpy_at(metal.liquidus) - metal.enthalpy_at(std::min(before, hottest));
  const double more = std::max(edge, 0.0) * std::expm1(0.5 * half * half / spread(metal, arc, burning));
  return more / metal.specific_heat_at(metal.liquidus);
}

units::Temperature under_standing_arc(const Model &model, std::size_t ring, const Arc &arc,
                                      units::Temperature before, units::Time burning) {
  const Chain &chain = model.chain();
  const Metal &metal = chain.metals[chain.rings[ring].metal];
  const double diffusivity = diffusivity_by_the_arc(metal); // m2/s
  const double cell = 2.0 * units::pi * arc.joint_radius.value() / chain.angles;
  const double off = between_cells(chain.angles, arc.start).share;
  const double along = cell * (1.0 + 2.0 * std::min(off, 1.0 - off)); // of what at_angle takes the mean
  const double over = over_mean(along, 2.0 * chain.rings[ring].length, arc.radius.value(),
                                2.0 * diffusivity * burning.value());
  return units::kelvins(before.value() + over * (at_angle(model, ring, arc.start).value() - before.value()));
}

double pedal_after(double share, double width, double wanted, units::Time lasted) {
  constexpr double answer = 0.5, least = 0.3; // s of a foot; share: common practice, no source
  const double off = std::clamp(1.0 - width / wanted, -1.0, 0.5);
  return std::clamp(share * (1.0 - off * std::expm1(-lasted.value() / answer)), least, 1.0);
}

} // namespace purgewright::heat::detail
