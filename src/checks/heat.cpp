// Heat: does everything near the joint stay as cold as it must, and is the arc one that this wall bears.
// Limits that no standard gives are those of practice and make a caution, not a failure.
#include "topics.hpp"

#include "purgewright/standards/welding.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace purgewright::checks {
namespace {

using units::Dimension;
using units::Temperature;

// Beyond this a pool on thin wall sags: common practice, no source. The coarse plan's cells are nearly as
// wide as the pool, which comes out a third of a wall wider or narrower there.
constexpr double pool_walls_most = 5.0, coarse_allowance = 0.3;
// A pool this wide falls through, whatever the hand does: common practice, no source.
constexpr double pool_walls_hole = 10.0;
// Grease and seals of common ball bearings: common practice, no source.
constexpr Temperature roller_limit = units::celsius(110.0);

// Silicone sheet of gaskets in dry gas, continuous: seal makers' temperature guides, -60 to 200 degC.
constexpr Temperature gasket_limit = units::celsius(200.0);

// Silicone rubber for the minutes of a part, again and again replaced: seal makers' guides, 200 to 230 degC
// continuous, 300 degC for short; from memory.
constexpr Temperature rubber_for_minutes = units::celsius(300.0);

double endless_holds(const heat::HeatPlan &plan) {
  const auto endless = [](const heat::Weld &weld) { return !weld.reached; };
  return static_cast<double>(std::ranges::count_if(plan.tacks, endless) +
                             std::ranges::count_if(plan.runs, endless));
}

Verdict holds_reached(const Design &d) {
  return at_most(endless_holds(d.heat), 0.0);
}

// On the settled fixture; on one that is too warm for such a plan none ends.
Verdict warm_holds_reached(const Design &d) {
  const auto all = static_cast<double>(d.heat.tacks.size() + d.heat.runs.size());
  return at_most(d.series.warm ? endless_holds(*d.series.warm) : all, 0.0);
}

Verdict hot_zone(const Design &d) {
  return at_most(d.heat.hot_zone.value(), d.heat.covered.value());
}

// A first part that bakes it fails; what only the settled fixture does, a pause between parts cures, and the
// pace told keeps to it.
Verdict o_ring(const Design &d) {
  const Temperature first = d.heat.o_ring_peak, peak = hottest(d, &heat::HeatPlan::o_ring_peak);
  return first > rubber_for_minutes ? at_most(first.value(), rubber_for_minutes.value())
                                    : at_most(peak.value(), d.heat.o_ring_limit.value(), Status::caution);
}

Verdict wiper(const Design &d) {
  const Temperature first = d.heat.wiper_peak, peak = hottest(d, &heat::HeatPlan::wiper_peak);
  return first > rubber_for_minutes ? at_most(first.value(), rubber_for_minutes.value())
                                    : at_most(peak.value(), rubber_for_minutes.value(), Status::caution);
}

// What the joint must be at when a run starts.
Temperature start_limit(const Design &d) {
  return std::min(d.heat.shielding_temperature,
                  d.heat.interpass_temperature.value_or(d.heat.shielding_temperature));
}

// What lets holds and waits end, and what the gaskets stand.
Temperature hold_limit(const Design &d) {
  return start_limit(d) - heat::least_cooling;
}

} // namespace

Temperature series_limit(const Design &d) {
  return std::min(gasket_limit, hold_limit(d));
}

Temperature rubber_limit(const Design &d) {
  Temperature most = d.series.settled;
  for (const Peak peak : {&heat::HeatPlan::o_ring_peak, &heat::HeatPlan::wiper_peak}) {
    const Temperature first = d.heat.*peak, settled = hottest(d, peak);
    if (first < rubber_for_minutes && settled > rubber_for_minutes) {
      const double share = (rubber_for_minutes - first) / (settled - first);
      most = std::min(most, d.heat.ambient + share * (d.series.settled - d.heat.ambient));
    }
  }
  return most;
}

namespace {

Verdict interpass(const Design &d) {
  Temperature hottest = d.heat.ambient;
  for (const auto &run : d.heat.runs) {
    hottest = std::max(hottest, run.joint_before);
  }
  return at_most(hottest.value(), start_limit(d).value());
}

Verdict series(const Design &d) {
  const Temperature settled = d.series.settled, endless = hold_limit(d);
  return settled > endless ? at_most(settled.value(), endless.value())
                           : at_most(settled.value(), series_limit(d).value(), Status::caution);
}

Verdict rollers(const Design &d) {
  return at_most(hottest(d, &heat::HeatPlan::roller_peak).value(), roller_limit.value(), Status::caution);
}

// Above the beta transus the cap is soft and its grain grows: a caution. It fails where it begins to melt,
// not before: metal beside every weld goes through all of that range in seconds, and on the cap of a 1/4 in
// tube this heat-affected zone reaches the centre, 1200 degC and more. Cold again it has the coarse grain of
// the weld beside it, which it need not outdo; nothing in it melts below its melting_start; and what presses
// on it meanwhile are some newtons of a sprung stop. Where grain counts, the procedure's test piece shows it.
Verdict cap_centre(const Design &d) {
  const Temperature peak = hottest(d, &heat::HeatPlan::cap_centre_peak),
                    melts = d.job.cap.material->melting_start;
  return peak > melts ? at_most(peak.value(), melts.value())
                      : at_most(peak.value(), d.heat.cap_centre_limit.value(), Status::caution);
}

// Cap and pin melt into each other at their lowest melting mixture.
Verdict pin_contact(const Design &d) {
  return at_most(hottest(d, &heat::HeatPlan::pin_contact_peak).value(), d.heat.pin_contact_limit.value());
}

std::optional<Temperature> bonds_from(const Design &d) {
  return standards::contact_bonds(*d.job.cap.material, *d.job.fixture.pin_material);
}

bool pin_may_bond(const Design &d) {
  return bonds_from(d).has_value();
}

// A bond is prevented by stop-off, so a caution.
Verdict pin_bonds(const Design &d) {
  return at_most(hottest(d, &heat::HeatPlan::pin_contact_peak).value(), bonds_from(d)->value(),
                 Status::caution);
}

Verdict pool_width(const Design &d) {
  const double walls = pool_walls_most + (d.heat.detail == heat::Detail::coarse ? coarse_allowance : 0.0);
  const units::Length width = d.heat.pool_width, wall = d.job.tube.wall;
  return width > pool_walls_hole * wall ? at_most(width.value(), (pool_walls_hole * wall).value())
                                        : at_most(width.value(), (walls * wall).value(), Status::caution);
}

} // namespace

// Cells of the coarse plan are as wide as a pool that a rim narrows: there what the pedal keeps stands for
// it.
units::Length judged_pool(const heat::HeatPlan &plan) {
  return plan.detail == heat::Detail::coarse ? std::min(plan.pool_width, plan.pool_target) : plan.pool_width;
}

namespace {

// Half of the pool lies on the cap. Where it takes the free rim whole the corner rounds off; by half a rim
// more it sags: common practice, no source. A dome has no free rim.
constexpr double rims_most = 1.5;
bool has_rim(const Design &d) {
  return d.job.cap.rim().has_value();
}

Verdict cap_rim(const Design &d) {
  return at_most((0.5 * judged_pool(d.heat)).value(), (rims_most * *d.job.cap.rim()).value(),
                 Status::caution);
}

// A tube that a hand rolls under the arc; a spot stands still.
bool by_runs(const Design &d) {
  return d.job.rotation.seam == job::Seam::runs;
}

Verdict hand_turns(const Design &d) {
  return at_most(d.job.weld.travel_speed.value(), standards::hand_speed(d.job.tube.outside_diameter).value());
}

bool by_spots(const Design &d) {
  return d.job.rotation.seam == job::Seam::spots;
}

// From spot to spot, against half of the shortest at the wall's bottom; a hair longer than the arc stood for.
Verdict spots_overlap(const Design &d) {
  constexpr double noise = 1e-6; // of a length that a search for a moment ended at
  const auto shortest = std::ranges::min(d.heat.runs, {}, &heat::Weld::bottom_length).bottom_length;
  return at_most((1.0 - noise) * d.heat.spot_pitch.value(), standards::spot_pitch_most * shortest.value());
}

// Pull on the cap's rim against the gap that is bridged; tacks hold against it, so that it comes out too
// large.
Verdict run_order(const Design &d) {
  const auto shrinkage = standards::transverse_shrinkage(judged_pool(d.heat));
  return at_most(heat::rim_shift(fixture::run_order(d.job), shrinkage).value(),
                 standards::fit_up(d.job.tube.wall, d.job.weld.with_wire()).gap.value(), Status::caution);
}

// Bottom of the coldest run, once its pool travels.
Verdict joint_melts(const Design &d) {
  Temperature least = d.heat.joint_peak;
  for (const auto &run : d.heat.runs) {
    least = std::min(least, d.heat.pool_bottom(run));
  }
  return at_least(least.value(), d.job.tube.material->melting->liquidus.value());
}

// Colder edge of the coldest tack; a cap of another metal counts by how far it is from its own liquidus.
Verdict tacks_melt(const Design &d) {
  const Temperature tube = d.job.tube.material->melting->liquidus,
                    cap = d.job.cap.material->melting->liquidus;
  Temperature least = d.heat.joint_peak;
  for (const auto &tack : d.heat.tacks) {
    least = std::min({least, tack.tube_edge_peak, tube + (tack.cap_edge_peak - cap)});
  }
  return at_least(least.value(), tube.value());
}

Verdict joint_boils(const Design &d) {
  return at_most(d.heat.joint_peak.value(), d.job.tube.material->melting->boiling.value());
}

std::string run_advice(const Design &d) {
  const auto &advice = d.run_advice;
  if (advice.fewest == 0 || d.job.rotation.runs >= advice.fewest) {
    return {};
  }
  return fmt::format("; rotation.runs: {} keeps within the limits", advice.fewest);
}

// Another order, or the fewest runs whose pull the gap bears.
std::string order_advice(const Design &d) {
  const auto limit = standards::fit_up(d.job.tube.wall, d.job.weld.with_wire()).gap;
  const auto shrinkage = standards::transverse_shrinkage(judged_pool(d.heat));
  const auto pull = [&](int runs) {
    return heat::rim_shift(fixture::run_order(runs, job::RunOrder::alternating), shrinkage);
  };
  const int now = d.job.rotation.runs;
  if (d.job.rotation.order == job::RunOrder::consecutive && pull(now) <= limit) {
    return "; rotation.order: alternating keeps to it";
  }
  for (int runs = now + 1; runs <= fixture::most_passes; ++runs) {
    if (pull(runs) <= limit) {
      return fmt::format("; rotation.runs: {} with rotation.order: alternating keep to it", runs);
    }
  }
  return {};
}

std::string pause_advice(const Design &d) {
  const auto period = pace(d);
  return period ? fmt::format("; one part every {:.0f} min keeps to it", std::ceil(period->value() / 60.0))
                : std::string();
}

// Where the settled fixture alone is what bakes rubber.
std::string rubber_advice(const Design &d) {
  return rubber_limit(d) < d.series.settled ? pause_advice(d) : run_advice(d);
}

constexpr std::string_view practice = "common practice, no source";
constexpr std::array<Rule, 19> table{{
    {"heat.holds_reached", "Every hold ends below the shielding temperature: holds that do not", practice,
     Dimension::count, holds_reached,
     "the metal does not get below weld.shielding_temperature: shorter runs, less weld.current, or a higher "
     "shielding temperature if your procedure allows it",
     Needs::heat, run_advice},
    {"heat.interpass", "Joint is cold enough when a run starts",
     "weld.interpass_temperature, weld.shielding_temperature", Dimension::temperature, interpass,
     "the joint does not cool that far within the longest wait: a higher weld.interpass_temperature if your "
     "procedure allows it, shorter runs, or a pause between parts",
     Needs::heat, run_advice},
    {"heat.hot_zone", "Tube above the shielding temperature lies in the chamber's argon",
     "layout of the fixture", Dimension::length, hot_zone,
     "the tube outside the chamber oxidises: shorter runs, faster weld.travel_speed, or a longer "
     "fixture.slot.length",
     Needs::heat, run_advice},
    {"heat.o_ring",
     "Plug's rubber, first part and settled fixture, stays within what it stands: always, or for minutes",
     "silicone in dry gas, seal makers' temperature guides, from memory", Dimension::temperature, o_ring,
     "renew the rubber when it has hardened; longer tube.length, so that the plug lies farther from the "
     "joint, "
     "or shorter runs",
     Needs::heat, rubber_advice},
    {"heat.wiper", "Chamber's wiper, first part and settled fixture, stays within what its silicone stands",
     "heat-resistant silicone for minutes, seal makers' temperature guides, from memory",
     Dimension::temperature, wiper,
     "shorter runs or faster weld.travel_speed; a longer fixture.slot.length "
     "sets the wiper farther from the joint",
     Needs::heat, rubber_advice},
    {"heat.series",
     "Fixture, parts one after another, stays cool enough for its gaskets and for holds to end",
     "silicone sheet in dry gas, seal makers' temperature guides; 5 K under the shielding temperature: "
     "common practice",
     Dimension::temperature, series, "a pause between parts, or less weld.current", Needs::heat,
     pause_advice},
    {"heat.warm_holds_reached", "So it does on the fixture as warm as many parts leave it: holds that do not",
     practice, Dimension::count, warm_holds_reached, "a pause between parts, or less weld.current",
     Needs::warm_heat, pause_advice},
    {"heat.rollers",
     "Tube on the front rollers, first part and settled fixture, stays within what bearings stand", practice,
     Dimension::temperature, rollers, "longer tube.length or shorter runs", Needs::heat, run_advice},
    {"heat.cap_centre",
     "Cap's centre, first part and settled fixture, stays under the beta transus, and never melts",
     "metal data (heat/metal.hpp); beta transus as a limit: common practice, no source",
     Dimension::temperature, cap_centre,
     "shorter runs, a thicker cap.thickness, or fixture.pin_material: copper-c110", Needs::heat, run_advice},
    {"heat.pin_contact",
     "Cap under the pin, first part and settled fixture, stays below what melts the two into each other",
     "binary phase diagrams and metal data, from memory (standards/welding.hpp)", Dimension::temperature,
     pin_contact, "shorter runs, less weld.current, or a thicker cap.thickness", Needs::heat, run_advice},
    {"heat.pin_bonds",
     "Cap under the pin, first part and settled fixture, stays below what bonds the two without melting",
     "diffusion bonding of titanium, Lee, Yoon and Yi, Thermochimica Acta 455 (2007) 105; as a limit for "
     "seconds: common practice, no source",
     Dimension::temperature, pin_bonds,
     "boron nitride or yttria stop-off, dried, on the pin's face before each part, or shorter runs, less "
     "weld.current, a thicker cap.thickness",
     Needs::heat, nullptr, pin_may_bond},
    {"heat.pool_width", "Pool stays within five walls of width: a wider one sags", practice,
     Dimension::length, pool_width,
     "less weld.current: it is the pedal's end, and the foot follows a pool that runs away too late",
     Needs::heat},
    {"heat.cap_rim",
     "Half of the pool takes one and a half rims of the cap at most: beyond it the corner sags", practice,
     Dimension::length, cap_rim, "a thicker cap.thickness, or less weld.current", Needs::heat, nullptr,
     has_rim},
    {"heat.hand_turns", "A hand turns the tube as quickly as the arc travels", practice, Dimension::velocity,
     hand_turns, "slower weld.travel_speed with less weld.current, or rotation.seam: spots", Needs::nothing,
     nullptr, by_runs},
    {"heat.spots_overlap", "Spots overlap by half, down to the wall's bottom", practice, Dimension::length,
     spots_overlap, "more rotation.runs, or more weld.current", Needs::heat, nullptr, by_spots},
    {"heat.run_order", "Shrinking runs pull the cap's rim by less than the gap that the weld bridges",
     "Blodgett, Design of Welded Structures, 7.7; AWS Welding Handbook, fit-up of thin sheet; from memory",
     Dimension::length, run_order, "look at the gap before each run and tack again where it opens",
     Needs::heat, order_advice},
    {"heat.tacks_melt", "Every tack melts both edges", "conduction on wall and cap (heat/model.hpp)",
     Dimension::temperature, tacks_melt, "more weld.current", Needs::heat},
    {"heat.joint_melts", "Every run melts the wall to its bottom",
     "conduction on wall and cap (heat/model.hpp)", Dimension::temperature, joint_melts,
     "more weld.current or slower weld.travel_speed", Needs::heat},
    {"heat.joint_boils", "Pool stays under titanium's boiling point: beyond it the arc cuts the wall",
     "CRC Handbook, section 4: 3560 K; evaporation is not in the model", Dimension::temperature, joint_boils,
     "less weld.current or faster weld.travel_speed", Needs::heat},
}};

} // namespace

std::span<const Rule> heat_rules() {
  return table;
}

} // namespace purgewright::checks
