// The gas: does it suit the chamber, does the oxygen get low enough and stay there, does nothing press on the
// puddle.
#include "topics.hpp"

#include "purgewright/gas/hose.hpp"
#include "purgewright/gas/room.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace purgewright::checks {
namespace {

using units::Dimension;

// Molar mass to that of air. The chamber is fed from below and open on top: a gas lighter than air rises out
// of it at once.
double weight_to_air(const Design &d) {
  return gas::molar_mass(gas::species_of(d.job)) / gas::molar_mass(gas::Species::air);
}

Verdict gas_stays_in_chamber(const Design &d) {
  return above(weight_to_air(d), 1.0);
}

bool heavier_than_air(const Design &d) {
  return weight_to_air(d) > 1.0;
}

// A floor under the limit is not enough where the gas may mix so that no time leads there.
Verdict reached(const gas::CircuitPlan &plan, double limit) {
  const double floor = plan.prepurge_floor.oxygen;
  return floor > limit ? at_most(floor, limit) : at_most(plan.highest_floor, limit, Status::caution);
}

Verdict bore_reached(const Design &d) {
  return reached(d.purge.bore, d.job.gas.oxygen_limit_bore);
}

Verdict chamber_reached(const Design &d) {
  return reached(d.purge.chamber, d.job.gas.oxygen_limit_chamber);
}

Verdict bore_welding_floor(const Design &d) {
  return at_most(d.purge.bore.welding_floor.oxygen, d.job.gas.oxygen_limit_bore);
}

Verdict chamber_welding_floor(const Design &d) {
  return at_most(d.purge.chamber.welding_floor.oxygen, d.job.gas.oxygen_limit_chamber);
}

Verdict bore_pressure(const Design &d) {
  return at_most(d.purge.pressure.welding.value(), d.purge.pressure.limit.value());
}

// Trapped gas lifts the puddle out: some outlet must stand open through the last run.
Verdict bore_stays_open(const Design &d) {
  const double vent = d.areas.vent.value();
  return above(vent, 0.0);
}

Verdict torch_undisturbed(const Design &d) {
  return at_most(d.purge.bench.shield_ratio, gas::shield_ratio_most);
}

Verdict torch_laminar(const Design &d) {
  const double re = d.purge.bench.torch_reynolds;
  return re > gas::turbulent_tube_reynolds ? at_most(re, gas::turbulent_tube_reynolds)
                                           : at_most(re, gas::laminar_tube_reynolds, Status::caution);
}

// Half of the widest pool; beyond it the chamber's gas alone covers what is liquid. A pool wider than the cup
// wants another cup.
Verdict torch_core(const Design &d) {
  const units::Length half = 0.5 * d.heat.pool_width, cup = 0.5 * d.job.torch.cup_bore;
  return half > cup ? at_least(cup.value(), half.value())
                    : at_least(d.purge.bench.torch_core.value(), half.value(), Status::caution);
}

Verdict draught(const Design &d) {
  const double room = d.job.shop.draught.value();
  const auto &bench = d.purge.bench;
  if (room > bench.draught_flushed.value()) {
    return {Status::fail, room, bench.draught_flushed.value()};
  }
  return at_most(room, bench.draught_warm.value(), Status::caution);
}

Verdict supply_pressure(const Design &d) {
  const auto most = std::max(d.purge.bore.line_drop, d.purge.chamber.line_drop);
  return at_most(most.value(), d.job.gas.supply_pressure.value());
}

// A wait that a person still waits out; what no model holds decides beyond it. One that holds only while the
// outlet stands uppermost is for a person to weigh.
Verdict prepurge_time(const Design &d) {
  const double most = gas::longest_wait.value();
  const Verdict told = at_most(d.purge.wait().value(), most);
  return told.status == Status::pass && d.purge.needs_outlet_above()
             ? at_most(d.purge.bore.high.value(), most, Status::caution)
             : told;
}

// The zone and the circuit that make it long, and what shortens it.
std::string prepurge_advice(const Design &d) {
  const auto &bore = d.purge.bore;
  if (bore.high < d.purge.chamber.high) {
    return ": the chamber takes longest; a larger gas.hose.inside_diameter or gas.supply_pressure gives it "
           "more flow";
  }
  if (d.job.tube.vent.count == 0) {
    return ": the bore takes longest; a larger gas.hose.inside_diameter or gas.supply_pressure gives it more "
           "flow";
  }
  if (d.purge.needs_outlet_above()) {
    return fmt::format("; with the vent uppermost {:.0f} s do, anywhere else air lies over the argon in the "
                       "bore: look where it stands before the gas is on",
                       d.purge.wait().value());
  }
  return bore.high > bore.high_vent_above ? ": air lies over the argon in the bore; a vent uppermost lets it "
                                            "out, more flow carries it along"
                                          : ": gas stands between vent and cap; move tube.vent.from_joint "
                                            "nearer the joint, or leave the vent out: "
                                            "the plug's lance then feeds the cap";
}

// What the metal stands at the moment the torch leaves it: room air below the shielding temperature, to which
// the hold lasts; where a hold does not end there, no more than welding does.
Verdict torch_away(const Design &d) {
  const auto reached = [](const heat::Weld &weld) { return weld.reached; };
  const bool cold = std::ranges::all_of(d.heat.tacks, reached) && std::ranges::all_of(d.heat.runs, reached);
  return at_most(d.purge.torch.away.high, cold ? gas::air_oxygen : d.job.gas.oxygen_limit_chamber);
}

Verdict torch_back(const Design &d) {
  return at_most(d.purge.torch.back_floor, d.job.gas.oxygen_limit_chamber);
}

Verdict torch_preflow(const Design &d) {
  return at_most(d.purge.torch.preflow.value(), gas::longest_preflow.value());
}

Verdict warm_chamber(const Design &d) {
  return at_most(d.series.settled.value(), gas::neutral_temperature(gas::species_of(d.job)).value(),
                 Status::caution);
}

Verdict room(const Design &d) {
  return at_least(d.purge.use.room_oxygen, gas::deficient_oxygen);
}

// Another material helps where this one lets through more than nylon, the tightest that bends.
std::string_view hose_cure(const Design &d) {
  const bool tight =
      gas::hose_material(d.job.gas.hose.material)->permeability <= gas::hose_material("nylon")->permeability;
  return tight ? "shorter hoses" : "nylon, copper or stainless hose, or shorter hoses";
}

// What to change about the part that keeps most oxygen in.
std::string_view cure(gas::Cause dominant, const Design &d) {
  using enum gas::Cause;
  switch (dominant) {
  case hose_walls:
    return hose_cure(d);
  case supply:
  case torch_gas:
    return "buy a purer gas";
  case slot:
    return "cover the slot for the prepurge, shorten fixture.slot.length, or keep the draught off";
  case wiper:
    return "put in a new wiper: cut clean, its hole smaller than the tube";
  case vent:
    return "smaller tube.vent.diameter, so that its outflow is faster";
  case plug_rubber:
  case plug_seal:
    return "state closer tolerances of the tube's bore, so that the plug's seal is squeezed";
  case pocket:
    return "move tube.vent.from_joint nearer the joint";
  }
  return {};
}

std::string floor_advice(const Design &d, const gas::Floor &floor) {
  return fmt::format(": {} brings {:.0f} % of the oxygen that stays; {}", gas::to_text(floor.dominant),
                     100.0 * floor.dominant_share, cure(floor.dominant, d));
}

std::string bore_advice(const Design &d) {
  return floor_advice(d, d.purge.bore.prepurge_floor);
}
std::string chamber_advice(const Design &d) {
  return floor_advice(d, d.purge.chamber.prepurge_floor);
}
std::string bore_welding_advice(const Design &d) {
  return floor_advice(d, d.purge.bore.welding_floor);
}
std::string chamber_welding_advice(const Design &d) {
  return floor_advice(d, d.purge.chamber.welding_floor);
}
std::string draught_advice(const Design &d) {
  const double still = d.purge.bench.draught_warm.value();
  if (still <= 0.0) {
    return {}; // a gas that does not lie in the slot at all
  }
  return fmt::format(": close doors and fans until the air over the bench moves slower than {:.2f} m/s",
                     std::floor(100.0 * still) / 100.0); // never above what holds
}

constexpr std::string_view practice = "common practice, no source";
constexpr std::string_view limit_source = "gas.oxygen_limit of the job";
constexpr std::array<Rule, 18> table{{
    {"gas.stays_in_chamber", "Purge gas is heavier than air, as a chamber open on top needs", practice,
     Dimension::ratio, gas_stays_in_chamber,
     "use argon: helium fed from below leaves through the open slot before it has covered the joint"},
    {"gas.bore_limit", "Oxygen limit inside the joint is within reach before welding", limit_source,
     Dimension::ratio, bore_reached, "the floor lies above the limit", Needs::purge, bore_advice},
    {"gas.chamber_limit", "Oxygen limit outside the joint is within reach before welding", limit_source,
     Dimension::ratio, chamber_reached, "the floor lies above the limit", Needs::purge, chamber_advice},
    {"gas.bore_welding_floor", "Oxygen inside the joint stays low enough while welding", limit_source,
     Dimension::ratio, bore_welding_floor,
     "the flow that would do it presses too hard on the puddle (purge.bore.pressure_limit): give the bore a "
     "larger or "
     "second vent",
     Needs::purge, bore_welding_advice},
    {"gas.chamber_welding_floor", "Oxygen outside the joint stays low enough while welding", limit_source,
     Dimension::ratio, chamber_welding_floor,
     "the flow that would do it disturbs the torch's own gas (purge.shield_ratio)", Needs::purge,
     chamber_welding_advice},
    {"gas.bore_pressure", "Bore gas does not press on the puddle",
     "Young-Laplace with liquid titanium's surface tension, factor 4; 50 Pa common practice",
     Dimension::pressure, bore_pressure, "larger tube.vent.diameter or tube.vent.count", Needs::purge},
    {"gas.bore_stays_open", "Bore keeps an outlet through the last run", practice, Dimension::area,
     bore_stays_open,
     "give the tube a vent, or the plug a second gas way: trapped gas heats and blows the puddle out"},
    {"gas.torch_undisturbed", "Gas leaving the slot does not disturb the torch's own", practice,
     Dimension::ratio, torch_undisturbed, "longer or wider slot, or a higher torch.gas_flow", Needs::purge},
    {"gas.torch_laminar", "Torch's gas leaves its cup laminar: turbulent it draws in air",
     "Reynolds number of pipe flow, 2000 and 4000, textbooks of fluid mechanics, from memory",
     Dimension::ratio, torch_laminar,
     "a wider torch.cup_bore or less torch.gas_flow; shop charts give 2 to 3 ft3/h for each cup number",
     Needs::purge},
    {"gas.torch_core", "Torch's gas reaches the whole pool before air has mixed into it",
     "Crank, The Mathematics of Diffusion, 2nd ed. (1975), eq. 2.14: half-spaces side by side",
     Dimension::length, torch_core, "more torch.gas_flow, a shorter torch.stickout or a wider torch.cup_bore",
     Needs::heat},
    {"gas.prepurge_time", "Prepurge is one that can be waited out", practice, Dimension::time, prepurge_time,
     "the prepurge takes too long", Needs::purge, prepurge_advice},
    {"gas.torch_away", "Metal stands the air that comes in when the torch leaves it at a hold's end",
     "weld.shielding_temperature; flow drawn in by hot metal: gas/purge.hpp", Dimension::ratio, torch_away,
     "a hold does not get below the shielding temperature: keep the torch over the joint, and make runs "
     "shorter",
     Needs::heat},
    {"gas.torch_back", "Torch back over the hot joint clears the chamber at all", limit_source,
     Dimension::ratio, torch_back, "more torch.gas_flow or a smaller fixture.radial_clearance", Needs::purge},
    {"gas.torch_preflow", "Torch over the joint clears the chamber before the arc", practice, Dimension::time,
     torch_preflow, "more torch.gas_flow or a smaller fixture.radial_clearance", Needs::purge},
    {"gas.warm_chamber", "Argon in the chamber, parts one after another, stays heavier than room air",
     "ideal gas law", Dimension::temperature, warm_chamber,
     "warmer argon rises out of the open slot: a pause between parts, or less weld.current", Needs::heat,
     nullptr, heavier_than_air},
    {"gas.draught", "The room's draught leaves the chamber's gas lying",
     "bulk Richardson number 0.4 to 0.8, Uehara et al. 2000", Dimension::velocity, draught,
     "the draught reaches into the slot", Needs::purge, draught_advice},
    {"gas.supply_pressure", "Supply pressure drives the prepurge flows through the lines",
     "pressure drops of the lines", Dimension::pressure, supply_pressure,
     "raise gas.supply_pressure or gas.hose.inside_diameter", Needs::purge},
    {"gas.room_oxygen", "Oxygen in the room over a working day (a calculation is not a monitor)",
     "OSHA 29 CFR 1910.146: below 19.5 % is oxygen-deficient", Dimension::ratio, room,
     "ventilate more: raise shop.room.air_changes_per_hour, and wear a monitor", Needs::purge},
}};

} // namespace

std::span<const Rule> gas_rules() {
  return table;
}

} // namespace purgewright::checks
