// Can it be machined: drill depths, corner radii, thinnest walls.
#include "topics.hpp"

#include <algorithm>
#include <array>

namespace purgewright::checks {
namespace {

using fixture::Layout;
using units::Length;

// Thinner metal tears out or chatters: shop practice for aluminium.
constexpr Length wall_absolute_least = units::millimetres(0.8);

Verdict drill_depth(double ratio) {
  const auto &rules = standards::machining_rules();
  return at_most(ratio, rules.drill_depth_per_diameter_max, Status::caution);
}

Verdict diffuser_drill(const Design &d) {
  const auto &body = d.layout.body;
  const auto &holes = body.diffuser;
  const Length y = holes.y_of(0); // the outermost row goes deepest
  const auto chord = [&](Length radius) { return units::sqrt(units::square(radius) - units::square(y)); };
  const Length depth = -body.plenum.axis_z - chord(body.cavity_radius) - chord(body.plenum.radius);
  return drill_depth(units::ratio(depth, 2.0 * holes.hole_radius));
}

Verdict plenum_drill(const Design &d) {
  const auto &body = d.layout.body;
  return drill_depth(units::ratio(body.x_max - body.plenum.x_end, 2.0 * body.plenum.radius));
}

Verdict gallery_drill(const Design &d) {
  const auto &block = d.layout.block;
  const Length drilled = block.length - 2.0 * (block.port.depth + block.spot_depth);
  return drill_depth(units::ratio(drilled, 2.0 * block.gallery_radius));
}

Verdict slot_corner(const Design &d) {
  const auto &body = d.layout.body;
  const Length half = 0.5 * body.slot.width;
  const Length height = body.z_max - units::sqrt(units::square(body.cavity_radius) - units::square(half));
  return at_most(units::ratio(height, body.slot.corner_radius),
                 standards::machining_rules().pocket_depth_per_corner_radius_max, Status::caution);
}

// Radial distance of an end screw's axis from the nearest half ring's centre of the face groove.
Length screw_from_groove(const Layout &l) {
  const auto &screw = l.end_plate.screws[1];
  return units::sqrt(units::square(screw.y) + units::square(screw.z)) - l.end_plate.groove.outer_radius() -
         l.end_plate.screw_clearance_radius;
}

Verdict thinnest_wall(const Design &d) {
  const auto &l = d.layout;
  const auto &body = l.body;
  const auto &plug = l.plug;
  const Length slot_side = 0.5 * (body.width - body.slot.width) - body.slot.edge_break;
  const Length base_screw = body.base_screws[1].y - body.base_tapping.radius - body.plenum.radius;
  const Length under_groove = plug.seal.groove_radius - plug.inlet.z - plug.inlet.port_radius;
  const Length web = body.diffuser.x_pitch - 2.0 * body.diffuser.hole_radius;
  const Length thinnest = std::min({screw_from_groove(l), slot_side, base_screw, under_groove, web});
  const Length preferred = standards::machining_rules().wall_min;
  return thinnest >= wall_absolute_least ? at_least(thinnest.value(), preferred.value(), Status::caution)
                                         : at_least(thinnest.value(), wall_absolute_least.value());
}

constexpr std::string_view drills = "shop practice: drill depth at most 10 diameters";
constexpr std::array<Rule, 5> table{{
    {"machining.diffuser_drill", "Diffuser holes are within a drill's reach", drills, units::Dimension::ratio,
     diffuser_drill, "larger fixture.diffuser_hole or smaller fixture.wall"},
    {"machining.plenum_drill", "Plenum is within a drill's reach", drills, units::Dimension::ratio, plenum_drill,
     "smaller fixture.end_clearance or fixture.slot.length"},
    {"machining.gallery_drill", "Gallery of the port block is within a drill's reach", drills,
     units::Dimension::ratio, gallery_drill, "fewer fixture.circuits"},
    {"machining.slot_corner", "Slot's corners are within an end mill's reach",
     "shop practice: depth at most 4 corner radii", units::Dimension::ratio, slot_corner,
     "smaller fixture.radial_clearance, or a longer slot"},
    {"machining.thinnest_wall", "Thinnest metal between holes, grooves and bores", "common practice, no source",
     units::Dimension::length, thinnest_wall, "larger fixture.radial_clearance or a smaller gas.port_thread"},
}};

} // namespace

std::span<const Rule> machining_rules() { return table; }

} // namespace purgewright::checks
