#include "job/fault.hpp"
#include "job/limits.hpp"
#include "job/resolving.hpp"

#include <fmt/format.h>

#include <cmath>

namespace purgewright::job {
namespace {

using units::Length;
using enum Key;

// Two sizes from different units of the same job are equal within this; 1 nm is far below any tolerance here.
constexpr Length same_size = units::metres(1e-9);

class Checker {
 public:
  Checker(const Draft &draft, const Job &job, KeySet faulty) : draft_(draft), job_(job), faulty_(faulty) {}

  Diagnostics check() {
    required();
    limits();
    wall();
    tolerances();
    vent();
    vent_spacing();
    cap_keys();
    cap_diameter_band();
    dome();
    spigot_fit();
    spigot_reach();
    torch();
    rotation();
    oxygen();
    return std::move(problems_);
  }

 private:
  bool stated(Key key) const { return draft_[key].stated; }
  template <class... Keys> bool sound(Keys... keys) const { return (!contains(faulty_, keys) && ...); }
  bool tube_is_sound() const { return sound(tube_outside_diameter, tube_wall, tube_inside_diameter); }
  std::string text(Length size) const {
    return units::shop_text(size.value(), units::Dimension::length, job_.shop.unit_system);
  }
  void report(Mark mark, Key key, std::string problem, std::string allowed) {
    problems_.push_back(fault(mark, std::string(field(key).path), std::move(problem), std::move(allowed)));
  }
  // The value's place, or that of the first value stated in its section.
  Mark mark_of(Key key) const;
  void spoil(Key key) { faulty_.set(static_cast<std::size_t>(key)); }

  void required();
  void limits();
  void wall();
  void tolerances();
  void vent();
  void vent_spacing();
  void cap_keys();
  void cap_diameter_band();
  void dome();
  void spigot_fit();
  void spigot_reach();
  void torch();
  void rotation();
  void oxygen();

  const Draft &draft_;
  const Job &job_;
  KeySet faulty_;
  Diagnostics problems_;
};

Mark Checker::mark_of(Key key) const {
  if (stated(key)) {
    return draft_[key].mark;
  }
  const auto path = field(key).path;
  const auto section = path.substr(0, path.find('.') + 1);
  Mark first{};
  for (const auto &info : fields()) {
    const Mark mark = draft_[info.key].mark;
    if (info.path.starts_with(section) && stated(info.key) && (first.line == 0 || mark.line < first.line)) {
      first = mark;
    }
  }
  return first;
}

void Checker::required() {
  for (const auto &info : fields()) {
    if (info.required && !stated(info.key) && sound(info.key)) {
      report(mark_of(info.key), info.key, "the key is missing", allowed_values(info));
      spoil(info.key);
    }
  }
}

// The reader has checked the file's own values; a sweep writes numbers of its own.
void Checker::limits() {
  for (const auto &info : fields()) {
    const Entry &entry = draft_[info.key];
    if (!entry.stated || entry.is_share ||
        (info.kind != FieldKind::quantity && info.kind != FieldKind::count)) {
      continue;
    }
    const bool inside = entry.number >= info.least && entry.number <= info.most;
    const bool whole = info.kind != FieldKind::count || entry.number == std::floor(entry.number);
    if ((inside && whole) || !sound(info.key)) {
      continue;
    }
    report(entry.mark, info.key,
           fmt::format("{} is {}",
                       info.kind == FieldKind::count
                           ? plain_number(entry.number)
                           : units::shop_text(entry.number, info.dimension, job_.shop.unit_system),
                       !whole                      ? "not a whole number"
                       : entry.number < info.least ? "too small"
                                                   : "too large"),
           allowed_values(info));
    spoil(info.key);
  }
}

void Checker::wall() {
  if (!tube_is_sound()) {
    return;
  }
  const Tube &t = job_.tube;
  const Mark wall = draft_[tube_wall].mark;
  const Mark inside = draft_[tube_inside_diameter].mark;
  if (stated(tube_wall) && stated(tube_inside_diameter)) {
    const bool wall_first = wall.line < inside.line;
    report(wall_first ? inside : wall, wall_first ? tube_inside_diameter : tube_wall,
           fmt::format(
               "tube.wall (line {}, column {}) and tube.inside_diameter (line {}, column {}) are both given",
               wall.line, wall.column, inside.line, inside.column),
           "one of the two; the other is computed");
  } else if (!stated(tube_wall) && !stated(tube_inside_diameter)) {
    report(mark_of(tube_wall), tube_wall, "neither tube.wall nor tube.inside_diameter is given",
           "one of the two; the other is computed");
  } else if (stated(tube_wall) && 2.0 * t.wall >= t.outside_diameter) {
    report(wall, tube_wall,
           fmt::format("a wall of {} leaves no bore in a tube of {}", text(t.wall), text(t.outside_diameter)),
           fmt::format("less than {}, the tube's radius", text(0.5 * t.outside_diameter)));
  } else if (stated(tube_wall) && t.inside_diameter.value() < field(tube_inside_diameter).least) {
    report(wall, tube_wall,
           fmt::format("a wall of {} leaves a bore of {}", text(t.wall), text(t.inside_diameter)),
           fmt::format("a bore of at least {}", text(units::metres(field(tube_inside_diameter).least))));
  } else if (stated(tube_inside_diameter) && t.inside_diameter >= t.outside_diameter) {
    report(inside, tube_inside_diameter,
           fmt::format("{} is not smaller than the outside diameter of {}", text(t.inside_diameter),
                       text(t.outside_diameter)),
           "an inside diameter smaller than the outside diameter");
  } else if (const auto &range = field(tube_wall); t.wall.value() < range.least - same_size.value() ||
                                                   t.wall.value() > range.most + same_size.value()) {
    report(inside, tube_inside_diameter,
           fmt::format("{} makes a wall of {}", text(t.inside_diameter), text(t.wall)),
           allowed_values(range));
  } else {
    return;
  }
  spoil(tube_wall);
  spoil(tube_inside_diameter);
}

void Checker::tolerances() {
  const Tube &t = job_.tube;
  if (!tube_is_sound()) {
    return;
  }
  if (sound(tube_wall_tolerance) && t.wall_tolerance > 0.5 * t.wall) {
    report(mark_of(tube_wall_tolerance), tube_wall_tolerance,
           fmt::format("{} is more than half of the wall of {}", text(t.wall_tolerance), text(t.wall)),
           fmt::format("at most {}", text(0.5 * t.wall)));
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
           fmt::format("between {} and {}", text(radius), text(t.length - radius)));
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
           fmt::format("at least {} apart, 1.5 vent diameters", text(1.5 * t.vent.diameter)));
  }
}

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
         fmt::format("{} to {}: from the middle of the wall to an overhang of one wall a side", text(least),
                     text(most)));
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
        fmt::format("at most {}, half of the cap's diameter", text(0.5 * c.diameter)));
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
           fmt::format("a clearance of at least {}", text(0.5 * (job_.tube.inside_diameter - smallest))));
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
           fmt::format("at most {}", text(0.5 * t.length)));
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

void Checker::torch() {
  const Torch &t = job_.torch;
  if (sound(torch_cup_bore, torch_cup_outside_diameter) && t.cup_outside_diameter <= t.cup_bore) {
    report(mark_of(torch_cup_outside_diameter), torch_cup_outside_diameter,
           fmt::format("{} is not larger than the cup's bore of {}", text(t.cup_outside_diameter),
                       text(t.cup_bore)),
           fmt::format("more than {}", text(t.cup_bore)));
  }
}

void Checker::rotation() {
  const Rotation &r = job_.rotation;
  const Length radius = 0.5 * job_.tube.outside_diameter;
  if (sound(rotation_swing_radius, tube_outside_diameter) && r.swing_radius < radius - same_size) {
    report(mark_of(rotation_swing_radius), rotation_swing_radius,
           fmt::format("{} is less than the tube's own radius", text(r.swing_radius)),
           fmt::format("at least {}", text(radius)));
  }
  const double run = 2.0 * units::pi / std::max(1, r.runs);
  if (sound(rotation_overlap, rotation_runs) && r.overlap.value() >= run) {
    report(mark_of(rotation_overlap), rotation_overlap,
           fmt::format("an overlap of {} deg is as long as each of the {} runs",
                       plain_number(units::to_degrees(r.overlap)), r.runs),
           fmt::format("less than {} deg", plain_number(units::to_degrees(units::radians(run)))));
  }
}

void Checker::oxygen() {
  const Gas &g = job_.gas;
  struct Limit {
    Key key;
    double limit;
  };
  for (const auto [key, limit] : {Limit{gas_oxygen_limit_bore, g.oxygen_limit_bore},
                                  Limit{gas_oxygen_limit_chamber, g.oxygen_limit_chamber}}) {
    if (!sound(key, gas_oxygen_in_supply) || limit > g.oxygen_in_supply) {
      continue;
    }
    const Key at_fault = stated(key) ? key : gas_oxygen_in_supply;
    report(mark_of(at_fault), key,
           fmt::format("a limit of {} ppm cannot be reached with gas that holds {} ppm of oxygen",
                       plain_number(limit * 1e6), plain_number(g.oxygen_in_supply * 1e6)),
           fmt::format("a limit above {} ppm, or purer gas", plain_number(g.oxygen_in_supply * 1e6)));
  }
}

} // namespace

Diagnostics conflicts(const Draft &draft, const Job &job, KeySet faulty) {
  return Checker(draft, job, faulty).check();
}

} // namespace purgewright::job
