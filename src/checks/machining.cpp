// Can it be machined: drill depths and reach, corner radii, groove widths, thread lengths, thinnest walls.
#include "topics.hpp"

#include "purgewright/fixture/cavity.hpp"
#include "purgewright/fixture/screw_joint.hpp"
#include "purgewright/fixture/setups.hpp"

#include <fmt/format.h>

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
  const Length depth = cavity_floor(body, y) - body.plenum.ceiling;
  return drill_depth(units::ratio(depth, 2.0 * holes.hole_radius));
}

// Pocket from below; a mill no thicker than its corners.
Verdict plenum_mill(const Design &d) {
  const auto &plenum = d.layout.body.plenum;
  return at_most(units::ratio(plenum.ceiling - d.layout.body.bottom, 2.0 * plenum.corner_radius),
                 standards::machining_rules().end_mill_stickout_per_diameter_max, Status::caution);
}

Verdict gallery_drill(const Design &d) {
  const auto &block = d.layout.block;
  const Length drilled = block.length - 2.0 * (block.port.depth + block.spot_depth);
  return drill_depth(units::ratio(drilled, 2.0 * block.gallery_radius));
}

// Gas ways of the plug, clamp hole of the end plate, outlets of the port block.
Verdict other_drills(const Design &d) {
  const auto &plug = d.layout.plug;
  const auto &plate = d.layout.end_plate;
  const auto &block = d.layout.block;
  const double passage = units::ratio(plug.inlet.end_x - plug.rear_x(), 2.0 * plug.inlet.radius);
  const double clamp = units::ratio(plate.z_max - plate.clamp_tap_top_z, 2.0 * plate.clamp_clearance_radius);
  const double outlet = units::ratio(block.height - block.gallery_z, 2.0 * block.passage_radius);
  const double mount = units::ratio(block.height - block.mount_counterbore_depth, 2.0 * block.mount_radius);
  return drill_depth(std::max({passage, clamp, outlet, mount}));
}

// Depth of a milled groove to its width, which no mill is wider than: grooves across the pin.
Verdict groove_mill(const Design &d) {
  const auto &pin = d.layout.pin;
  return at_most(units::ratio(pin.relief_depth, pin.groove_width),
                 standards::machining_rules().end_mill_stickout_per_diameter_max, Status::caution);
}

Length spare(const fixture::Drilling &hole, const standards::Screw &screw, const fixture::ScrewJoint &joint) {
  return hole.depth - fixture::tap_lead * screw.major - joint.engagement();
}

// Of the chamber's rear: the wiper's screws in a block's blind holes; of plates through the rear plate, short
// of its gasket, and the plates' own.
Length rear_spare(const Layout &l) {
  const auto &body = l.body;
  switch (body.kind) {
  case fixture::ChamberKind::block:
    return spare(body.end_tapping, *body.end_screw, fixture::wiper_joint(l));
  case fixture::ChamberKind::plates:
    break;
  }
  return std::min({body.plates.thickness - fixture::wiper_joint(l).engagement(),
                   spare(body.end_tapping, *body.end_screw, fixture::plate_joint(body)),
                   spare(body.plates.side_tapping, *body.end_screw, fixture::plate_joint(body))});
}

// What listed screws leave of their blind holes' thread: none may bottom, and the end plug's set screw stays
// out of its gas way.
Verdict screw_bottoms(const Design &d) {
  const auto &b = d.layout.body;
  const auto &plug = d.layout.plug;
  const Length cross = plug.cross_screw != nullptr ? fixture::cross_screw_clear(plug) : fixture::screw_spare;
  const Length least =
      std::min({cross, spare(b.end_tapping, *b.end_screw, fixture::end_plate_joint(d.layout)),
                rear_spare(d.layout), spare(b.base_tapping, *b.base_screw, fixture::base_joint(d.layout))});
  return at_least(least.value(), 0.5 * fixture::screw_spare.value());
}

// Least thread that a screw finds, in its diameters.
Verdict thread_engagement(const Design &d) {
  const auto &l = d.layout;
  const auto &plate = l.end_plate;
  const bool plates = l.body.kind == fixture::ChamberKind::plates;
  const auto &rear = plates ? fixture::plate_joint(l.body) : fixture::wiper_joint(l);
  const double least = std::min(
      {units::ratio(fixture::end_plate_joint(l).engagement(), l.body.end_screw->major),
       units::ratio(rear.engagement(), l.body.end_screw->major),
       units::ratio(fixture::wiper_joint(l).engagement(), l.body.end_screw->major),
       units::ratio(fixture::base_joint(l).engagement(), l.body.base_screw->major),
       units::ratio(std::min(fixture::foot_joint(l).engagement(), l.base.thickness),
                    l.stand.foot.screw->major),
       units::ratio(std::min(fixture::clamp_joint(l).engagement(), l.clamp_bar.thickness),
                    l.stand.foot.screw->major),
       units::ratio(plate.clamp_tap_top_z - plate.pin_bore_radius, plate.clamp_screw->major),
       units::ratio(l.base.thickness, l.block.mount_screw->major),
       units::ratio(l.base.thickness, l.base.foot_screw->major),
       units::ratio(std::min(l.stand.thickness, l.stand.axle->thread_length), l.stand.axle->thread)});
  return at_least(least, standards::machining_rules().thread_engagement_per_diameter, Status::caution);
}

Verdict slot_corner(const Design &d) {
  const auto &body = d.layout.body;
  return at_most(units::ratio(slot_wall(body), body.slot.corner_radius),
                 standards::machining_rules().pocket_depth_per_corner_radius_max, Status::caution);
}

// Metal between an end screw's tapped hole and the cavity.
Length screw_from_cavity(const fixture::ChamberBody &body) {
  return beside_cavity(body, body.end_screws[1]) - body.end_tapping.radius;
}

// Of plates: beside the screws in the middle of a side's edge.
Length beside_side_screws(const fixture::ChamberBody &body) {
  return body.kind == fixture::ChamberKind::block
             ? screw_from_cavity(body)
             : 0.5 * body.plates.thickness - 0.5 * body.end_screw->counterbore_diameter;
}

Verdict thinnest_wall(const Design &d) {
  const auto &l = d.layout;
  const auto &body = l.body;
  const Length slot_side = 0.5 * (body.width - body.slot.width) - body.slot.edge_break;
  const Length base_screw = body.base_screws[1].y - body.base_tapping.radius - 0.5 * body.plenum.width;
  const Length web = body.diffuser.x_pitch - 2.0 * body.diffuser.hole_radius;
  const Length gallery = l.block.mounts[0].y - l.block.mount_radius - l.block.gallery_radius;
  const Length thinnest = std::min({screw_from_cavity(body), beside_side_screws(body), slot_side, base_screw,
                                    fixture::thinnest_wall(l.plug), web, gallery});
  const Length preferred = standards::machining_rules().wall_min;
  return thinnest >= wall_absolute_least ? at_least(thinnest.value(), preferred.value(), Status::caution)
                                         : at_least(thinnest.value(), wall_absolute_least.value());
}

// The part that is clamped most often.
fixture::PartSetups most_setups(const Layout &layout) {
  const auto all = fixture::count_setups(layout);
  return *std::ranges::max_element(all, {}, &fixture::PartSetups::count);
}

Verdict setups(const Design &d) {
  constexpr int most = 4; // each further clamping costs accuracy as well as time
  return at_most(most_setups(d.layout).count(), most, Status::caution);
}

std::string most_clamped(const Design &d) {
  return fmt::format(": {}", most_setups(d.layout).name);
}

constexpr std::string_view drills = "shop practice: drill depth at most 10 diameters";
constexpr std::array<Rule, 10> table{{
    {"machining.diffuser_drill", "Diffuser holes are within a drill's reach", drills, units::Dimension::ratio,
     diffuser_drill, "larger fixture.diffuser_hole or smaller fixture.wall"},
    {"machining.plenum_mill", "Plenum is within an end mill's reach",
     "shop practice: depth at most 5 diameters", units::Dimension::ratio, plenum_mill,
     "a smaller gas.port_thread, or fixture.family of tubes of nearer diameters"},
    {"machining.gallery_drill", "Gallery of the port block is within a drill's reach", drills,
     units::Dimension::ratio, gallery_drill, "fewer fixture.circuits"},
    {"machining.drill_depth", "Gas ways, clamp hole and mounting holes are within a drill's reach", drills,
     units::Dimension::ratio, other_drills,
     "peck-drill it with a long drill; a larger gas.port_thread widens gas ways"},
    {"machining.groove_mill", "Milled grooves are within an end mill's reach",
     "shop practice: depth at most 5 diameters", units::Dimension::ratio, groove_mill,
     "a flatter cap.dome_height or a larger tube: the pin's grooves follow them"},
    {"machining.thread_engagement", "Every screw finds enough thread",
     "shop practice: 1.5 diameters in aluminium", units::Dimension::ratio, thread_engagement,
     "thicker plates are the layout's own: report the job"},
    {"machining.screw_bottoms", "No listed screw meets the end of its thread or stands in a gas way",
     "shop practice: 1 mm of thread to spare", units::Dimension::length, screw_bottoms,
     "holes follow the listed screws: a fault of this program, report the job"},
    {"machining.slot_corner", "Slot's corners are within an end mill's reach",
     "shop practice: depth at most 4 corner radii", units::Dimension::ratio, slot_corner,
     "smaller fixture.radial_clearance, or a longer slot"},
    {"machining.thinnest_wall", "Thinnest metal between holes, grooves and bores",
     "common practice, no source", units::Dimension::length, thinnest_wall,
     "larger fixture.radial_clearance or a smaller gas.port_thread"},
    {"machining.setups", "No part is clamped more often than four times", "common practice, no source",
     units::Dimension::count, setups, "give this part a fixture of its own, or a machine with more axes",
     Needs::nothing, most_clamped},
}};

} // namespace

std::span<const Rule> machining_rules() {
  return table;
}

} // namespace purgewright::checks
