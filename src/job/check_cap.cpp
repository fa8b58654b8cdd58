#include "job/checker.hpp"

#include <fmt/format.h>

namespace purgewright::job {

using units::Length;
using enum Key;

void Checker::cap_keys() {
  struct Owner {
    Key key;
    CapShape shape;
  };
  for (const auto [key, shape] :
       {Owner{cap_dome_height, CapShape::domed}, Owner{cap_spigot_length, CapShape::spigot},
        Owner{cap_spigot_clearance, CapShape::spigot}}) {
    if (!stated(key) || !sound(key, cap_shape) || job_.cap.shape == shape) {
      continue;
    }
    const auto names = field(cap_shape).choices;
    report(draft_[key].mark, key,
           fmt::format("the key belongs to a {} cap, this cap is {}", names[static_cast<std::size_t>(shape)],
                       names[static_cast<std::size_t>(job_.cap.shape)]),
           fmt::format("leave the key out, or shape: {}", names[static_cast<std::size_t>(shape)]));
    spoil(key);
  }
}

void Checker::cap_diameter_band() {
  if (!tube_is_sound() || !sound(cap_diameter)) {
    return;
  }
  const Tube &t = job_.tube;
  const Length least = t.outside_diameter - t.wall;
  const Length most = t.outside_diameter + 2.0 * t.wall;
  const Length d = job_.cap.diameter;
  if (d >= least - same_size && d <= most + same_size) {
    return;
  }
  report(mark_of(cap_diameter), cap_diameter,
         d < least ? fmt::format("a cap of {} does not cover the wall of a tube of {} x {}", text(d),
                                 text(t.outside_diameter), text(t.wall))
                   : fmt::format("a cap of {} overhangs the tube of {} by {} a side", text(d),
                                 text(t.outside_diameter), text(0.5 * (d - t.outside_diameter))),
         fmt::format("{} to {}: from the middle of the wall to an overhang of one wall a side",
                     at_least(least), at_most(most)));
  spoil(cap_diameter);
}

// Outer and inner sphere of a dome share their centre, so the metal is `thickness` everywhere: the outer one
// has radius rho = (a^2 + h^2) / (2 h) over a rim of radius a, the inner one rho - thickness. It still
// reaches the rim plane while thickness < h.
void Checker::dome() {
  const Cap &c = job_.cap;
  if (c.shape != CapShape::domed || !sound(cap_shape, cap_diameter, cap_thickness, cap_dome_height)) {
    return;
  }
  const Key key = stated(cap_dome_height) ? cap_dome_height : cap_thickness;
  if (c.dome_height > 0.5 * c.diameter + same_size) {
    report(
        mark_of(key), key,
        fmt::format("a dome of {} is higher than half a sphere of {}", text(c.dome_height), text(c.diameter)),
        fmt::format("at most {}, half of the cap's diameter", at_most(0.5 * c.diameter)));
    return;
  }
  const double a = 0.5 * c.diameter.value();
  const double h = c.dome_height.value();
  const double rho = (a * a + h * h) / (2.0 * h);
  const double inner = rho - c.thickness.value();
  const double rim_squared = inner * inner - (rho - h) * (rho - h);
  if (!(inner > 0.0) || c.thickness >= c.dome_height || !(rim_squared > 0.0)) {
    report(mark_of(key), key,
           fmt::format("a dome of {} with metal of {} has no hollow", text(c.dome_height), text(c.thickness)),
           fmt::format("a dome higher than its thickness, or metal thinner than {}", text(c.dome_height)));
  }
}

void Checker::spigot_fit() {
  const Cap &c = job_.cap;
  if (c.shape != CapShape::spigot || !tube_is_sound() ||
      !sound(cap_shape, cap_spigot_clearance, tube_outside_diameter_tolerance, tube_wall_tolerance)) {
    return;
  }
  const Length smallest = job_.tube.inside_diameter_least();
  if (c.spigot_diameter <= Length{}) {
    report(mark_of(cap_spigot_clearance), cap_spigot_clearance,
           fmt::format("a clearance of {} leaves nothing of the spigot in a bore of {}",
                       text(c.spigot_clearance), text(job_.tube.inside_diameter)),
           fmt::format("less than {}, half of the bore", text(0.5 * job_.tube.inside_diameter)));
  } else if (c.spigot_diameter > smallest + same_size) {
    report(mark_of(cap_spigot_clearance), cap_spigot_clearance,
           fmt::format(
               "the spigot of {} is {} larger than the smallest bore of {} that the tube's tolerances allow",
               text(c.spigot_diameter), text(c.spigot_diameter - smallest), text(smallest)),
           fmt::format("a clearance of at least {}", at_least(0.5 * (job_.tube.inside_diameter - smallest))));
  }
}

void Checker::spigot_reach() {
  const Cap &c = job_.cap;
  const Tube &t = job_.tube;
  if (c.shape != CapShape::spigot || !sound(cap_shape, cap_spigot_length)) {
    return;
  }
  if (sound(tube_length) && c.spigot_length > 0.5 * t.length) {
    report(mark_of(cap_spigot_length), cap_spigot_length,
           fmt::format("a spigot of {} fills more than half of the tube of {}", text(c.spigot_length),
                       text(t.length)),
           fmt::format("at most {}", at_most(0.5 * t.length)));
    return;
  }
  if (t.vent.count == 0 || !sound(tube_vent_diameter, tube_vent_from_joint)) {
    return;
  }
  const Length free = t.vent.from_joint - 0.5 * t.vent.diameter;
  if (c.spigot_length >= free) {
    report(mark_of(cap_spigot_length), cap_spigot_length,
           fmt::format("a spigot of {} covers the vent, whose edge lies {} from the joint",
                       text(c.spigot_length), text(free)),
           fmt::format("less than {}, or a vent further from the joint", text(free)));
  }
}

} // namespace purgewright::job
