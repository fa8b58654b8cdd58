#include "purgewright/gas/purge.hpp"

#include "flows.hpp"
#include "scene.hpp"
#include "torch.hpp"

#include "purgewright/gas/jets.hpp"
#include "purgewright/gas/mixing.hpp"
#include "purgewright/gas/openings.hpp"
#include "purgewright/gas/trapped.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace purgewright::gas {
namespace {

using plan::Scene;
using plan::Stage;
using plan::Subject;
using units::Time;

constexpr double near_floor = 1.1; // "reached" when the limit lies under the floor: within a tenth of it

// Oxygen at a target after `changes` volume changes of its circuit.
double after_changes(const Scene &scene, const Target &target, Time duration) {
  constexpr int intervals = 1;
  const auto course = solve(scene.network, plan::between_parts(scene), duration, intervals);
  return course.state(intervals)[tank_at(course.map, target.zone, target.position)];
}

struct Times {
  Floor bore_floor, chamber_floor;
  bool bore_reached = false, chamber_reached = false;
  Time bore{}, chamber{};
};

// First times both sides of the joint are under their limits (or near their floors).
Times find_times(const Scene &scene, Time guess) {
  Target bore = scene.bore_joint;
  Target chamber = scene.chamber_joint;
  Times times{.bore_floor = plan::floor_at(scene, bore), .chamber_floor = plan::floor_at(scene, chamber)};
  times.bore_reached = times.bore_floor.oxygen < bore.limit;
  times.chamber_reached = times.chamber_floor.oxygen < chamber.limit;
  if (!times.bore_reached) {
    bore.limit = near_floor * times.bore_floor.oxygen;
  }
  if (!times.chamber_reached) {
    chamber.limit = near_floor * times.chamber_floor.oxygen;
  }
  const std::array<Target, 2> targets{bore, chamber};
  std::array<std::optional<Time>, 2> reached;
  constexpr int intervals = 60;
  Time duration = 2.0 * guess;
  constexpr int attempts = 6; // up to eight thousand mixed times
  for (int i = 0; i < attempts && !(reached[0] && reached[1]); ++i) {
    const auto course = solve(scene.network, plan::between_parts(scene), duration, intervals, targets);
    for (std::size_t t = 0; t < targets.size(); ++t) {
      if (!reached[t]) { // by the course that looks closest, whatever the other space takes
        reached[t] = course.reached[t];
      }
    }
    duration = 4.0 * duration;
  }
  times.bore = reached[0].value_or(duration);
  times.chamber = reached[1].value_or(duration);
  times.bore_reached = times.bore_reached && reached[0].has_value();
  times.chamber_reached = times.chamber_reached && reached[1].has_value();
  return times;
}

// What a pocket of which nothing is swept takes on top of a stirred bore. Argon runs under its air and turns
// it over until little is left, then diffusion alone works. Convection between end walls of a shallow space
// carries 1 + (Ra H/L)^2 / 362880 times what diffusion does, Ra = g' H^3 / (nu D); from where it no longer
// doubles it, the slowest term of diffusion from a slab with one closed face. Sources: Cormack, Leal &
// Imberger, J. Fluid Mech. 65, 209 (1974), from memory; Crank, The Mathematics of Diffusion, 2nd ed. (1975),
// eq. 4.18.
Time pocket_time(const Subject &s, double limit) {
  const units::Length length = plan::pocket_length(s.job, plan::least_swept_pocket);
  if (!(length > units::Length{})) {
    return {};
  }
  const double height = s.job.tube.inside_diameter.value();
  const auto mixing = plan::diffusion(s.job);
  const double in_air = std::abs(plan::gas_gravity(s.job)) * height * height * height /
                        (kinematic_viscosity(species_of(s.job), shop_temperature).value() * mixing.value());
  const double doubles =
      std::sqrt(362880.0) * length.value() / height; // Ra at which convection equals diffusion
  const double still = air_oxygen * std::min(1.0, doubles / in_air);
  return still > limit
             ? (4.0 / (units::pi * units::pi)) * units::square(length) / mixing * std::log(still / limit)
             : Time{};
}

// How long the outlet's layer of air stays on top when the outlet does not stand uppermost. Argon runs along
// the bottom and out; the air above it goes by diffusion alone, across half a bore at most, until so little
// is left that the stream is faster than its weight: then the bore mixes. Closed form: slowest term of
// diffusion from a slab with one closed face, Crank, The Mathematics of Diffusion, 2nd ed. (1975), eq. 4.18,
// and a stirred space after it. 0 where no layer forms.
Time layered_time(const Subject &s, const Purge &purge, double limit) {
  const double froude = plan::layer_froude(s.job, purge.bore.prepurge);
  const bool above = s.layout.plug.has_exhaust; // the plug's return leaves above
  if (froude >= 1.0 || above) {
    return {};
  }
  const double mixes = std::max(froude * froude * air_oxygen, limit);
  const units::Length half = 0.5 * s.job.tube.inside_diameter;
  const Time layer = (4.0 / (units::pi * units::pi)) * units::square(half) / plan::diffusion(s.job) *
                     std::log(air_oxygen / mixes);
  return layer +
         mixed_time(s.volumes.bore_gas, purge.bore.prepurge, mixes, limit, purge.bore.prepurge_floor.oxygen);
}

// Corners of a chamber lag behind what is stirred: by no more than this in the flow solutions of
// tests/reference/gas/flow_solutions.yaml, with something to spare. No other source.
constexpr double corners_lag = 1.1;

// The same with both spaces stirred throughout, and with both displaced as well as gas can; of the pocket
// beyond the vent nothing swept, and as much as may be.
void bracket_times(const Subject &subject, Stage stage, Time guess, Purge &purge) {
  struct End {
    double bore, chamber, swept, lag;
    bool least_stirred;
  };
  constexpr std::array<End, 2> ends{
      {{plan::stirred_tanks, plan::stirred_tanks, plan::whole_pocket, corners_lag, false},
       {plan::displaced_tanks, plan::displaced_chamber_tanks, plan::most_swept_pocket, 1.0, true}}};
  for (const End &end : ends) {
    stage.bore_tanks = end.bore;
    stage.chamber_tanks = end.chamber;
    stage.swept_pocket = end.swept;
    stage.least_stirred = end.least_stirred;
    const Times times = find_times(plan::build_scene(subject, stage), guess);
    // The wait is the bracket's upper end: where that end never gets under the limit, no wait does.
    const auto widen = [](CircuitPlan &plan, Time time, bool reached, double floor) {
      plan.low = std::min(plan.low, time);
      plan.high = std::max(plan.high, time);
      plan.reached = plan.reached && reached;
      plan.highest_floor = std::max({plan.highest_floor, plan.prepurge_floor.oxygen, floor});
    };
    widen(purge.bore, times.bore, times.bore_reached, times.bore_floor.oxygen);
    widen(purge.chamber, end.lag * times.chamber, times.chamber_reached, times.chamber_floor.oxygen);
  }
  purge.bore.layer_froude = plan::layer_froude(subject.job, stage.bore);
  const double wanted = subject.job.gas.oxygen_limit_bore, floor = purge.bore.prepurge_floor.oxygen;
  const double limit = floor < wanted ? wanted : near_floor * floor;
  purge.bore.high = purge.bore.high + pocket_time(subject, limit);
  purge.bore.high_vent_above = purge.bore.high;
  purge.chamber.high_vent_above = purge.chamber.high;
  purge.bore.high = std::max(purge.bore.high, layered_time(subject, purge, limit));
}

void settle_times(const Subject &subject, const Stage &stage, const Scene &scene, Time guess, Purge &purge) {
  const Times times = find_times(scene, guess);
  const auto settle = [](CircuitPlan &plan, const Floor &floor, bool reached, Time time) {
    plan.prepurge_floor = floor;
    plan.reached = reached;
    plan.time = plan.low = plan.high = time;
  };
  settle(purge.bore, times.bore_floor, times.bore_reached, times.bore);
  settle(purge.chamber, times.chamber_floor, times.chamber_reached, times.chamber);
  bracket_times(subject, stage, guess, purge);
}

void describe(const Subject &s, const Stage &stage, const Scene &scene, const Bounds &bounds, Purge &purge) {
  const auto circuit = [&](CircuitPlan &plan, const CircuitBounds &bound, units::Volume space,
                           units::Volume lines, const Target &joint, double tanks, std::string_view regime) {
    plan.volume_changes = (bound.flow * plan.time / space).value();
    plan.after_thumb_rule = after_changes(scene, joint, thumb_rule_changes * space / bound.flow);
    plan.after_thumb_rule_mixed = air_oxygen * std::exp(-thumb_rule_changes);
    plan.tanks = tanks;
    plan.regime = regime;
    plan.dead_volume_share = units::ratio(lines, space);
  };
  circuit(purge.bore, bounds.bore, s.volumes.bore_gas, s.volumes.lines_bore, scene.bore_joint,
          scene.bore_tanks, scene.bore_regime);
  circuit(purge.chamber, bounds.chamber, s.volumes.chamber_gas, s.volumes.lines_chamber, scene.chamber_joint,
          scene.chamber_tanks, scene.chamber_regime);
  purge.bore.tanks_measured = stage.bore_tanks > 0.0;
  purge.chamber.tanks_measured = stage.chamber_tanks > 0.0;
  purge.bore.line_drop = line_drop(bore_line(s.job, s.layout), bounds.bore.flow, stream_of(s.job));
  purge.chamber.line_drop = line_drop(chamber_line(s.job, s.layout), bounds.chamber.flow, stream_of(s.job));
}

// Time until what the idle lines hold has been flushed out: block and hoses full of air, watched at their
// ends.
Time start_of_day(const Scene &scene, Time guess, double limit) {
  const std::array<Target, 2> ends{Target{plan::zone::bore_line, 1.0, limit},
                                   Target{plan::zone::chamber_line, 1.0, limit}};
  const auto rest = steady_state(scene.network);
  const TankMap map = tank_map(scene.network);
  std::array<Target, 2> reachable = ends;
  for (Target &end : reachable) {
    end.limit = std::max(end.limit, near_floor * rest[tank_at(map, end.zone, end.position)]);
  }
  constexpr int intervals = 60;
  Time duration = 4.0 * guess;
  constexpr int doublings = 8;
  for (int i = 0; i < doublings; ++i) {
    const auto course =
        solve(scene.network, uniform_state(scene.network, air_oxygen), duration, intervals, reachable);
    if (course.reached[0] && course.reached[1]) {
      return std::max(*course.reached[0], *course.reached[1]);
    }
    duration = 2.0 * duration;
  }
  return duration;
}

// Air mixes into the rim of the torch's gas on its way from the cup to the joint, as though nothing but room
// air stood round it; the rim moves at half of the jet's speed, as a layer between a stream and gas at rest
// does about. Laminar; common practice.
units::Length torch_core(const job::Job &job) {
  const Time on_the_way = job.torch.stickout / (0.5 * plan::torch_speed(job));
  const units::Length mixed =
      spread_depth(plan::diffusion(job), on_the_way, job.gas.oxygen_limit_chamber / air_oxygen);
  return std::max(0.5 * job.torch.cup_bore - mixed, units::Length{});
}

void describe_bench(const Subject &s, const Scene &scene, Time guess, Purge &purge) {
  const double gravity = plan::gas_gravity(s.job);
  if (gravity > 0.0) {
    const DraughtBand band = critical_draught(gravity, plan::space_height(s.layout.body));
    purge.bench.draught_lying = band.lying;
    purge.bench.draught_flushed = band.flushed;
  }
  purge.bench.start_of_day =
      start_of_day(scene, guess, std::min(s.job.gas.oxygen_limit_bore, s.job.gas.oxygen_limit_chamber));
  const units::VolumeFlow out =
      purge.chamber.welding + (plan::vent_in_cavity(s) ? purge.bore.welding : units::VolumeFlow{});
  purge.bench.shield_ratio = units::ratio(out / plan::open_slot(s, true), plan::torch_speed(s.job));
  purge.bench.torch_reynolds = reynolds(plan::torch_speed(s.job), s.job.torch.cup_bore,
                                        kinematic_viscosity(species_of(s.job), shop_temperature));
  purge.bench.torch_core = torch_core(s.job);
}

} // namespace

bool Purge::needs_outlet_above() const {
  return bore.high > longest_wait && bore.high_vent_above <= longest_wait;
}

units::Time Purge::wait() const {
  return std::max({needs_outlet_above() ? bore.high_vent_above : bore.high, chamber.high, least_wait});
}

Purge plan_purge(const job::Job &job, const fixture::Layout &layout, const fixture::Volumes &volumes,
                 const fixture::Areas &areas, const Bounds &bounds, const MeasuredMixing &measured) {
  const Subject subject{job, layout, volumes, areas};
  Purge purge;
  const auto start = [](CircuitPlan &plan, const CircuitBounds &bound) {
    plan.prepurge = bound.flow;
    plan.prepurge_reason = bound.reason;
  };
  start(purge.bore, bounds.bore);
  start(purge.chamber, bounds.chamber);
  const Stage stage = plan::prepurge_stage(bounds, measured);
  const Time guess = std::max(bounds.bore.mixed, bounds.chamber.mixed);
  const Scene prepurge = plan::build_scene(subject, stage);
  settle_times(subject, stage, prepurge, guess, purge);
  const auto at_least = [](CircuitPlan &plan, Time wait) {
    plan.high = std::max(plan.high, wait);
    plan.high_vent_above = std::max(plan.high_vent_above, wait);
  };
  at_least(purge.bore, measured.bore_wait);
  at_least(purge.chamber, measured.chamber_wait);
  describe(subject, stage, prepurge, bounds, purge);

  const Holes outlet = bore_outlet(job, layout);
  purge.pressure.limit = plan::bore_limit(job);
  purge.pressure.prepurge = holes_drop(outlet, bounds.bore.flow, stream_of(job));
  purge.pressure.trapped =
      trapped_rise(plan::heated_share(job, layout), shop_temperature, job.weld.shielding_temperature);
  plan::choose_welding_flows(subject, purge);
  purge.pressure.welding = holes_drop(outlet, purge.bore.welding, stream_of(job));
  describe_bench(subject, prepurge, guess, purge);
  plan::plan_torch(subject, purge);
  return purge;
}

void add_warm_draught(const job::Job &job, const fixture::Layout &layout, units::Temperature fixture,
                      Purge &purge) {
  const auto air = density(Species::air, shop_temperature);
  const double gravity = reduced_gravity(density(species_of(job), std::min(fixture, units::kelvins(1000.0))),
                                         air, air); // end of the table
  purge.bench.draught_warm = gravity > 0.0
                                 ? std::min(purge.bench.draught_lying,
                                            critical_draught(gravity, plan::space_height(layout.body)).lying)
                                 : units::Velocity{};
}

units::Temperature neutral_temperature(Species species) {
  return units::kelvins(shop_temperature.value() * molar_mass(species) / molar_mass(Species::air));
}

} // namespace purgewright::gas
