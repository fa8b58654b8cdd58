#include "flows.hpp"

#include "torch.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::gas::plan {
namespace {

using units::VolumeFlow;

constexpr double floor_slack = 0.1; // of the way from best to limit, where the limit lies near the floor
constexpr double pool_per_wall =
    2.0; // liquid width of a joint welded through, over the wall: common practice

// Smallest flow in [low, high] at which floor(flow) <= wanted, the floor falling with flow; `high` when none.
template <class FloorOf>
VolumeFlow least_flow(VolumeFlow low, VolumeFlow high, double wanted, FloorOf floor_of) {
  constexpr int halvings = 10; // a thousandth of the span in log: finer than any flowmeter
  if (high <= low || floor_of(low) <= wanted) {
    return low;
  }
  double good = std::log(high.value());
  double bad = std::log(low.value());
  for (int i = 0; i < halvings; ++i) {
    const double middle = 0.5 * (good + bad);
    (floor_of(units::cubic_metres_per_second(std::exp(middle))) <= wanted ? good : bad) = middle;
  }
  return units::cubic_metres_per_second(std::exp(good));
}

struct Choice {
  VolumeFlow flow{};
  std::string_view reason;
  bool found = true;
};

// Holds half the limit if any flow does, else lies a tenth of the way from the best there is to the limit,
// else gives the highest flow and says so.
template <class FloorOf>
Choice choose(VolumeFlow high, double limit, std::string_view high_reason, FloorOf floor_of) {
  const double best = floor_of(high);
  if (best > limit) {
    return {high, high_reason, false};
  }
  if (high <= least_readable_flow) {
    return {high, high_reason, true};
  }
  const double wanted = std::max(floor_margin * limit, best + floor_slack * (limit - best));
  const VolumeFlow flow = least_flow(least_readable_flow, high, wanted, floor_of);
  return {flow,
          flow <= least_readable_flow ? "smallest flow a flowmeter shows; oxygen stays low enough"
                                      : "smallest flow that holds the oxygen low enough",
          true};
}

// Highest welding flows. What leaves by the slot stays slow beside the torch's gas; a vent in the chamber
// shares that room, half at most.
struct Ceilings {
  VolumeFlow bore{}, chamber{}, slot{}, line{};
  std::string_view bore_reason;
  bool shared = false;
};

Ceilings ceilings(const Subject &s, const Purge &purge) {
  const VolumeFlow slot = shield_ratio_most * torch_speed(s.job) * open_slot(s, true);
  // Under a thick wall the puddle's own weight takes all that its skin can hold: the bore is swept a little
  // even so, and the pressure's rule says that it must not be welded like that.
  constexpr double least_share = 0.01; // of the prepurge; common practice, no source
  // A wide open slot wants more gas than a small one: as much on each area of it, as far as half the supply's
  // pressure brings it. Common practice, no source.
  constexpr auto wide_slot_speed = units::metres_per_second(0.11);
  constexpr double line_share = 0.5;
  const VolumeFlow line =
      line_flow(chamber_line(s.job, s.layout), line_share * s.job.gas.supply_pressure, stream_of(s.job));
  const VolumeFlow wide = std::min(wide_slot_speed * s.areas.slot_welding, line);
  const VolumeFlow pressure =
      std::max(holes_flow(bore_outlet(s.job, s.layout), purge.pressure.limit, stream_of(s.job)),
               least_share * purge.bore.prepurge);
  Ceilings most{.bore = std::min(purge.bore.prepurge, pressure),
                .chamber = std::min(std::max(purge.chamber.prepurge, wide), slot),
                .slot = slot,
                .line = line,
                .bore_reason = pressure < purge.bore.prepurge
                                   ? "the most the molten joint's pressure limit allows"
                                   : "the prepurge flow",
                .shared = vent_in_cavity(s)};
  if (most.shared && 0.5 * slot < most.bore) {
    most.bore = 0.5 * slot;
    most.bore_reason = "the most that leaves the torch's gas undisturbed";
  }
  return most;
}

// A chamber of a litre or more that room air has come into wants more gas than its floor does, or the torch
// stands over the joint for a minute before every arc.
constexpr auto patient_preflow = units::seconds(20.0); // with the torch in hand: common practice, no source

VolumeFlow clearing_flow(const Subject &s, VolumeFlow high, const Purge &purge) {
  const auto preflow = [&](VolumeFlow flow) {
    Purge trial = purge;
    trial.chamber.welding = flow;
    plan_torch(s, trial);
    return trial.torch.preflow.value();
  };
  return least_flow(purge.chamber.welding, high, patient_preflow.value(), preflow);
}

// As a flowmeter's scale is read, tenths of a litre a minute: more where that is allowed, or less.
VolumeFlow on_scale(VolumeFlow flow, VolumeFlow most) {
  constexpr auto tenth = units::litres_per_minute(0.1);
  constexpr double noise = 1e-6;
  const VolumeFlow up = std::ceil(units::ratio(flow, tenth) - noise) * tenth;
  const VolumeFlow down = std::floor(units::ratio(flow, tenth) + noise) * tenth;
  return up <= (1.0 + noise) * most ? up : down > VolumeFlow{} ? down : flow;
}

} // namespace

units::Pressure bore_limit(const job::Job &job) {
  const auto &metal = *job.tube.material;
  const auto liquid =
      std::max(metal.melting_start, units::kelvins(1943.0)); // fit's reference, pure titanium melts there
  const double tension = metal.name == "titanium-6al-4v" ? titanium_alloy_surface_tension(liquid)
                                                         : titanium_surface_tension(liquid);
  const auto hold =
      bore_pressure_limit(tension, pool_per_wall * job.tube.wall, LiquidShape::long_gap, job.tube.wall);
  return std::min(hold, plain_bore_limit);
}

double heated_share(const job::Job &job, const fixture::Layout &layout) {
  const units::Length reach = 0.5 * job.torch.cup_bore + 0.5 * job.tube.inside_diameter;
  return std::min(1.0, units::ratio(reach, job.tube.length - layout.plug.spigot_length));
}

void choose_welding_flows(const Subject &s, Purge &purge) {
  const auto &job = s.job;
  const Ceilings most = ceilings(s, purge);
  // Before the next arc the joint is still as hot as a hold leaves it.
  const Drawn hot = drawn_in(s, job.weld.shielding_temperature, true);
  const auto floors = [&](VolumeFlow bore, VolumeFlow chamber) {
    Stage stage{
        .bore = bore, .chamber = chamber, .torch = least_torch_share * job.torch.gas_flow, .arc = true};
    stage.hot_exchange = against(hot, slot_outflow(s, stage)).high;
    return build_scene(s, stage);
  };
  VolumeFlow chamber = 0.5 * most.chamber;
  Choice bore_choice;
  Choice chamber_choice;
  constexpr int rounds = 2; // the circuits meet only in the supply hose and, weakly, at the vent
  for (int round = 0; round < rounds; ++round) {
    bore_choice = choose(most.bore, job.gas.oxygen_limit_bore, most.bore_reason, [&](VolumeFlow q) {
      const Scene scene = floors(q, chamber);
      return floor_at(scene, scene.bore_joint).oxygen;
    });
    const VolumeFlow chamber_high =
        std::min(most.chamber, most.slot - (most.shared ? bore_choice.flow : VolumeFlow{}));
    chamber_choice = choose(chamber_high, job.gas.oxygen_limit_chamber,
                            "the most that leaves the torch's gas undisturbed", [&](VolumeFlow q) {
                              const Scene scene = floors(bore_choice.flow, q);
                              return floor_at(scene, scene.chamber_joint).oxygen;
                            });
    bore_choice.flow = on_scale(bore_choice.flow, most.bore);
    chamber_choice.flow = on_scale(chamber_choice.flow, chamber_high);
    chamber = chamber_choice.flow;
  }
  purge.bore.welding = bore_choice.flow;
  purge.chamber.welding = chamber_choice.flow;
  const VolumeFlow room_left = most.slot - (most.shared ? bore_choice.flow : VolumeFlow{});
  const VolumeFlow clearing = clearing_flow(s, std::min(room_left, most.line), purge);
  if (clearing > chamber_choice.flow) {
    chamber_choice.flow = chamber = on_scale(clearing, std::min(room_left, most.line));
    chamber_choice.reason = "clears the chamber under the torch before an arc in good time";
  }
  const Scene scene = floors(bore_choice.flow, chamber);
  const auto settle = [&](CircuitPlan &plan, const Choice &choice, const Target &joint) {
    plan.welding = choice.flow;
    plan.welding_reason = choice.reason;
    plan.flow_found = choice.found;
    plan.welding_floor = floor_at(scene, joint);
  };
  settle(purge.bore, bore_choice, scene.bore_joint);
  settle(purge.chamber, chamber_choice, scene.chamber_joint);
}

} // namespace purgewright::gas::plan
