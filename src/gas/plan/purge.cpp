#include "purgewright/gas/purge.hpp"

#include "flows.hpp"
#include "scene.hpp"
#include "use.hpp"

#include "purgewright/gas/mixing.hpp"
#include "purgewright/gas/openings.hpp"
#include "purgewright/gas/trapped.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::gas {
namespace {

using plan::Scene;
using plan::Stage;
using plan::Subject;
using units::Time;

constexpr double near_floor = 1.1;   // "reached" when the limit lies under the floor: within a tenth of it
constexpr double heated_share = 0.2; // of the bore's gas, by the last run: common practice
constexpr units::Temperature heated_gas = units::celsius(400.0);

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
  constexpr int intervals = 60;
  Time duration = 2.0 * guess;
  constexpr int attempts = 6; // up to eight thousand mixed times
  for (int i = 0; i < attempts; ++i) {
    const std::array<Target, 2> targets{bore, chamber};
    const auto course = solve(scene.network, plan::between_parts(scene), duration, intervals, targets);
    if (course.reached[0] && course.reached[1]) {
      times.bore = *course.reached[0];
      times.chamber = *course.reached[1];
      return times;
    }
    duration = 4.0 * duration;
  }
  times.bore = times.chamber = duration;
  times.bore_reached = times.chamber_reached = false;
  return times;
}

// The same with both spaces stirred throughout, and with both displaced as well as gas can.
void bracket_times(const Subject &subject, Stage stage, Time guess, Purge &purge) {
  for (const double tanks : {plan::stirred_tanks, plan::displaced_tanks}) {
    stage.bore_tanks = stage.chamber_tanks = tanks;
    const Times times = find_times(plan::build_scene(subject, stage), guess);
    // The wait is the bracket's upper end: where that end never gets under the limit, no wait does.
    const auto widen = [](CircuitPlan &plan, Time time, bool reached) {
      plan.low = std::min(plan.low, time);
      plan.high = std::max(plan.high, time);
      plan.reached = plan.reached && reached;
    };
    widen(purge.bore, times.bore, times.bore_reached);
    widen(purge.chamber, times.chamber, times.chamber_reached);
  }
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
  constexpr std::size_t bore_lines = 1, chamber_lines = 2; // places in line_zones
  const std::array<Target, 2> ends{Target{scene.line_zones[bore_lines], 1.0, limit},
                                   Target{scene.line_zones[chamber_lines], 1.0, limit}};
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
}

} // namespace

units::Time Purge::wait() const {
  return std::max({bore.high, chamber.high, least_wait});
}

Purge plan_purge(const job::Job &job, const fixture::Layout &layout, const fixture::Volumes &volumes,
                 const fixture::Areas &areas, const Bounds &bounds, Time under_gas,
                 const MeasuredMixing &measured) {
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
  purge.bore.high = std::max(purge.bore.high, measured.bore_wait);
  purge.chamber.high = std::max(purge.chamber.high, measured.chamber_wait);
  describe(subject, stage, prepurge, bounds, purge);

  const Holes outlet = bore_outlet(job, layout);
  purge.pressure.limit = plan::bore_limit(job);
  purge.pressure.prepurge = holes_drop(outlet, bounds.bore.flow, stream_of(job));
  purge.pressure.trapped = trapped_rise(heated_share, shop_temperature, heated_gas);
  plan::choose_welding_flows(subject, purge);
  purge.pressure.welding = holes_drop(outlet, purge.bore.welding, stream_of(job));
  describe_bench(subject, prepurge, guess, purge);
  purge.use = plan::gas_use(subject, purge, under_gas);
  return purge;
}

} // namespace purgewright::gas
