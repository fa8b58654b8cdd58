#include "job/checker.hpp"

#include <fmt/format.h>

#include <tuple>

namespace purgewright::job {

using units::Length;
using enum Key;

void Checker::wall() {
  if (!sound(tube_wall, tube_inside_diameter)) {
    return;
  }
  const std::size_t before = problems_.size();
  const Mark wall = draft_[tube_wall].mark;
  const Mark inside = draft_[tube_inside_diameter].mark;
  if (stated(tube_wall) && stated(tube_inside_diameter)) {
    const bool wall_first = std::tie(wall.line, wall.column) < std::tie(inside.line, inside.column);
    report(wall_first ? inside : wall, wall_first ? tube_inside_diameter : tube_wall,
           fmt::format(
               "tube.wall (line {}, column {}) and tube.inside_diameter (line {}, column {}) are both given",
               wall.line, wall.column, inside.line, inside.column),
           "one of the two; the other is computed");
  } else if (!stated(tube_wall) && !stated(tube_inside_diameter)) {
    report(mark_of(tube_wall), tube_wall, "neither tube.wall nor tube.inside_diameter is given",
           "one of the two; the other is computed");
  } else if (!sound(tube_outside_diameter)) {
    return;
  } else if (stated(tube_wall)) {
    stated_wall();
  } else {
    stated_inside_diameter();
  }
  if (problems_.size() > before) {
    spoil(tube_wall);
    spoil(tube_inside_diameter);
  }
}

void Checker::stated_wall() {
  const Tube &t = job_.tube;
  const Length least_bore = units::metres(field(tube_inside_diameter).least);
  if (2.0 * t.wall >= t.outside_diameter) {
    report(draft_[tube_wall].mark, tube_wall,
           fmt::format("a wall of {} leaves no bore in a tube of {}", text(t.wall), text(t.outside_diameter)),
           fmt::format("less than {}, the tube's radius", text(0.5 * t.outside_diameter)));
  } else if (t.inside_diameter < least_bore - same_size) {
    report(draft_[tube_wall].mark, tube_wall,
           fmt::format("a wall of {} leaves a bore of {}", text(t.wall), text(t.inside_diameter)),
           fmt::format("a bore of at least {}", at_least(least_bore)));
  }
}

void Checker::stated_inside_diameter() {
  const Tube &t = job_.tube;
  const Mark mark = draft_[tube_inside_diameter].mark;
  const Length least = units::metres(field(tube_wall).least);
  const Length most = units::metres(field(tube_wall).most);
  if (t.inside_diameter >= t.outside_diameter) {
    report(mark, tube_inside_diameter,
           fmt::format("{} is not smaller than the outside diameter of {}", text(t.inside_diameter),
                       text(t.outside_diameter)),
           "an inside diameter smaller than the outside diameter");
  } else if (t.wall < least - same_size || t.wall > most + same_size) {
    report(mark, tube_inside_diameter,
           fmt::format("{} makes a wall of {}", text(t.inside_diameter), text(t.wall)),
           fmt::format("a wall from {} to {}", at_least(least), at_most(most)));
  }
}

void Checker::tolerances() {
  const Tube &t = job_.tube;
  if (!tube_is_sound()) {
    return;
  }
  if (sound(tube_wall_tolerance) && t.wall_tolerance > 0.5 * t.wall) {
    report(mark_of(tube_wall_tolerance), tube_wall_tolerance,
           fmt::format("{} is more than half of the wall of {}", text(t.wall_tolerance), text(t.wall)),
           fmt::format("at most {}", at_most(0.5 * t.wall)));
    spoil(tube_wall_tolerance);
  }
  if (sound(tube_outside_diameter_tolerance, tube_wall_tolerance) &&
      t.inside_diameter_least() <= 0.5 * t.inside_diameter) {
    report(mark_of(tube_outside_diameter_tolerance), tube_outside_diameter_tolerance,
           fmt::format("the tolerances let the bore of {} shrink to {}", text(t.inside_diameter),
                       text(t.inside_diameter_least())),
           "tolerances that leave at least half of the bore");
    spoil(tube_outside_diameter_tolerance);
  }
}

void Checker::vent() {
  const Tube &t = job_.tube;
  if (t.vent.count == 0) {
    return;
  }
  if (tube_is_sound() && sound(tube_vent_diameter) && t.vent.diameter >= 0.5 * t.inside_diameter) {
    report(mark_of(tube_vent_diameter), tube_vent_diameter,
           fmt::format("a vent of {} is too wide for a bore of {}", text(t.vent.diameter),
                       text(t.inside_diameter)),
           fmt::format("less than {}, half of the inside diameter", text(0.5 * t.inside_diameter)));
    spoil(tube_vent_diameter);
  }
  if (!sound(tube_vent_diameter, tube_vent_from_joint, tube_length)) {
    return;
  }
  const Length radius = 0.5 * t.vent.diameter;
  if (t.vent.from_joint + radius >= t.length || t.vent.from_joint <= radius) {
    report(mark_of(tube_vent_from_joint), tube_vent_from_joint,
           fmt::format("a vent of {} centred {} from the joint does not lie within the tube of {}",
                       text(t.vent.diameter), text(t.vent.from_joint), text(t.length)),
           fmt::format("between {} and {}", at_least(radius), at_most(t.length - radius)));
    spoil(tube_vent_from_joint);
  }
}

void Checker::vent_spacing() {
  const Tube &t = job_.tube;
  if (t.vent.count < 2 || !tube_is_sound() || !sound(tube_vent_count, tube_vent_diameter)) {
    return;
  }
  const Length pitch = (units::pi / t.vent.count) * t.outside_diameter;
  if (pitch < 1.5 * t.vent.diameter) {
    report(mark_of(tube_vent_count), tube_vent_count,
           fmt::format("{} vents of {} stand {} apart round the tube", t.vent.count, text(t.vent.diameter),
                       text(pitch)),
           fmt::format("at least {} apart, 1.5 vent diameters", at_least(1.5 * t.vent.diameter)));
  }
}

} // namespace purgewright::job
