// What the heat model is told of a job: its surroundings, and the rings that the plan watches.
#include "heat/scene.hpp"
#include "heat_jobs.hpp"

#include "purgewright/heat/gas_film.hpp"

#include <algorithm>
#include <cmath>

using namespace purgewright;
using namespace purgewright::heat;
using heat::detail::scene_of;
using heat::test::example;
using heat::test::Subject;

namespace {

constexpr auto shielding = units::celsius(427.0);

detail::Scene scene(const Subject &subject, const Options &options = {}) {
  return scene_of(subject.job, subject.layout, options, shielding);
}

// Whether the ring's middle lies within its own length of a place along the chain, m.
bool is_at(const Ring &ring, double place) {
  return std::abs(ring.position - place) <= ring.length;
}

} // namespace

TEST_CASE("gas films: the outside's between metal and chamber, the bore's at their mean", "[unit][heat]") {
  const auto subject = example("logger-25");
  Options options;
  options.fixture = units::celsius(67.0); // after many parts
  const auto s = scene(subject, options).surroundings;
  CHECK(s.ambient == units::celsius(67.0));
  REQUIRE(s.start);
  CHECK(*s.start == options.ambient);
  // (427 + 67) / 2 = 247 degC in the bore of 23.6 mm; 25.4 mm outside.
  CHECK(s.inside_coefficient ==
        Approx(bore_coefficient(job::GasSpecies::argon, units::millimetres(23.6), units::celsius(247.0))));
  CHECK(s.outside_coefficient == Approx(natural_coefficient(job::GasSpecies::argon, units::millimetres(25.4),
                                                            shielding, units::celsius(67.0))));
}

TEST_CASE("the watched rings stand where the layout puts what they stand for", "[unit][heat]") {
  for (const auto *name : {"logger-25", "logger-38", "logger-51"}) {
    INFO(name);
    const auto subject = example(name);
    const auto s = scene(subject);
    const auto &rings = s.chain.rings;
    const auto &plug = subject.layout.plug;
    const auto seal = plug.placement.x + plug.seal.groove_start + 0.5 * plug.seal.groove_width;
    const auto position = [&](const detail::Place &place) {
      return (1.0 - place.share) * rings[place.ring].position + place.share * rings[place.ring + 1].position;
    };
    CHECK(position(s.o_ring) == Approx(std::max(seal.value(), rings.front().position)));
    const auto &wiper = subject.layout.wiper;
    CHECK(position(s.wiper) == Approx((wiper.placement.x + 0.5 * wiper.thickness).value()));
    CHECK(s.cap_centre == rings.size() - 1);
    // The bearing of the stand that is nearest to the joint; the joint is x = 0 and the tube lies at x < 0.
    REQUIRE(s.roller);
    const auto &stand = subject.layout.stand;
    const auto nearest = std::max(stand.placements[0].x, stand.placements[1].x);
    CHECK(position(*s.roller) == Approx((nearest + stand.washer + 0.5 * stand.bearing->width).value()));
    // The molten zone: half a cup to either side of the joint, its edges within a ring.
    const double half_cup = 0.5 * subject.job.torch.cup_bore.value();
    CHECK(is_at(rings[s.joint_zone.first], -half_cup));
    CHECK(is_at(rings[s.joint_zone.last - 1], std::min(half_cup, rings.back().position)));
    // What the chamber leaves bare: from the plug's end up to the chamber's face.
    CHECK(s.uncovered.first == 0);
    REQUIRE(s.uncovered.last > 0);
    CHECK(is_at(rings[s.uncovered.last], subject.layout.body.x_min.value()));
  }
}
