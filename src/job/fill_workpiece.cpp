// Tube, vent and cap.
#include "job/filler.hpp"

namespace purgewright::job {

using enum Key;

void Filler::tube() {
  Tube &t = job_.tube;
  t.material = standards::metal(name_of(tube_material, number(tube_material, 0, Basis::given, "required")));
  const double outside = number(tube_outside_diameter, 0, Basis::given, "required");
  t.outside_diameter = units::metres(outside);
  t.length = units::metres(number(tube_length, 0, Basis::given, "required"));
  const double wall = number(tube_wall, 0.5 * (outside - value(tube_inside_diameter)), Basis::computed,
                             "half of outside less inside diameter");
  const double inside = number(tube_inside_diameter, outside - 2.0 * value(tube_wall), Basis::computed,
                               "outside diameter less twice the wall");
  t.wall = units::metres(wall);
  t.inside_diameter = units::metres(inside);
  tube_tolerances();
}

void Filler::tube_tolerances() {
  Tube &t = job_.tube;
  const auto listed = standards::tube_outside_tolerance(t.outside_diameter);
  // Beyond the table's end: 0.3 % of the diameter, the slope of its last row.
  const double beyond = 0.003 * t.outside_diameter.value();
  t.outside_diameter_tolerance = units::metres(
      listed ? number(tube_outside_diameter_tolerance, listed->value(), Basis::standard,
                      "ASTM B338, permissible variation in outside diameter for this diameter, from "
                      "memory")
             : number(tube_outside_diameter_tolerance, beyond, Basis::common_practice,
                      "0.3 % of the diameter, beyond the table of ASTM B338; common practice"));
  const Entry &entry = draft_[tube_wall_tolerance];
  const double given = number(tube_wall_tolerance, standards::tube_wall_tolerance() * t.wall.value(),
                              Basis::standard, "ASTM B338: 10 % of the wall, from memory");
  t.wall_tolerance = units::metres(entry.is_share ? given * t.wall.value() : given);
}

void Filler::vent() {
  constexpr std::string_view absent = "no vent is stated: the bore breathes through the end plug";
  Vent &v = job_.tube.vent;
  if (!stated(tube_vent_diameter) && !stated(tube_vent_from_joint) && !stated(tube_vent_count)) {
    for (const Key key : {tube_vent_diameter, tube_vent_from_joint, tube_vent_count}) {
      set_origin(key, Basis::fallback, absent);
    }
    v = {};
    return;
  }
  const Tube &t = job_.tube;
  v.count = count(tube_vent_count);
  v.diameter = units::metres(number(tube_vent_diameter, std::min(3.0 * mm, 0.25 * t.inside_diameter.value()),
                                    Basis::common_practice,
                                    "3 mm, at most a quarter of the inside diameter; common practice"));
  // Near the joint the bore's gas sweeps all the way to the cap and leaves into the chamber's argon; far from
  // it the gas beyond the vent would stand still.
  constexpr double near_joint = 10.0 * mm;
  const double from_joint = std::max(near_joint, 2.0 * v.diameter.value());
  v.from_joint = units::metres(
      number(tube_vent_from_joint, std::min(from_joint, 0.5 * t.length.value()), Basis::common_practice,
             "10 mm, two vent diameters at least: the gas sweeps up to the cap; common practice"));
}

void Filler::cap() {
  Cap &c = job_.cap;
  c.shape = static_cast<CapShape>(std::lround(number(cap_shape, 0, Basis::given, "required")));
  c.diameter = units::metres(number(cap_diameter, 0, Basis::given, "required"));
  c.thickness = units::metres(number(cap_thickness, 0, Basis::given, "required"));
  const double material = number(cap_material, value(tube_material), Basis::fallback, "the tube's metal");
  c.material = standards::metal(name_of(cap_material, material));
  const bool domed = c.shape == CapShape::domed;
  const double dome = domed ? 0.25 * c.diameter.value() : 0.0;
  c.dome_height =
      units::metres(number(cap_dome_height, dome, domed ? Basis::common_practice : Basis::fallback,
                           domed ? "a quarter of the diameter; common practice" : "the cap is not domed"));
  spigot();
}

void Filler::spigot() {
  constexpr std::string_view none = "the cap has no spigot";
  Cap &c = job_.cap;
  const Tube &t = job_.tube;
  if (c.shape != CapShape::spigot) {
    c.spigot_length = units::metres(number(cap_spigot_length, 0, Basis::fallback, none));
    c.spigot_clearance = units::metres(number(cap_spigot_clearance, 0, Basis::fallback, none));
    c.spigot_diameter = {};
    return;
  }
  c.spigot_length = length(cap_spigot_length);
  const double smallest_bore = 0.5 * (t.inside_diameter - t.inside_diameter_least()).value() + 0.05 * mm;
  const bool usual = smallest_bore <= 0.10 * mm;
  c.spigot_clearance = units::metres(
      number(cap_spigot_clearance, usual ? 0.10 * mm : smallest_bore, Basis::common_practice,
             usual ? "0.10 mm all round; common practice"
                   : "0.05 mm all round in the smallest bore the tube's tolerances allow; common practice"));
  c.spigot_diameter = t.inside_diameter - 2.0 * c.spigot_clearance;
}

} // namespace purgewright::job
