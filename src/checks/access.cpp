// What must get in and out of the chamber: cap, tweezers, torch, the eye's line; and hands and tools round
// the fixture.
#include "topics.hpp"

#include <array>

namespace purgewright::checks {
namespace {

constexpr std::string_view practice = "common practice, no source";

Verdict slot_width(const Design &d) {
  return at_least(d.layout.body.slot.width.value(), d.layout.body.slot_needs.width.value());
}

Verdict slot_behind(const Design &d) {
  return at_least(-d.layout.body.slot.x_min.value(), -d.layout.body.slot_needs.x_min.value());
}

Verdict slot_ahead(const Design &d) {
  return at_least(d.layout.body.slot.x_max.value(), d.layout.body.slot_needs.x_max.value());
}

// The ring that backs the cap stays well inside the weld: metal that touches the pin stays hot and may
// colour.
Verdict pin_away_from_weld(const Design &d) {
  constexpr double share = 0.3; // of the tube's outside radius, common practice
  const auto joint = 0.5 * d.job.tube.inside_diameter;
  return at_least((joint - d.layout.pin.contact_outer_radius).value(), share * joint.value());
}

Verdict swing_clear(const Design &d) {
  return at_most(d.layout.plug.shoulder_radius.value(), d.job.rotation.swing_radius.value(), Status::caution);
}

// ---- Room round hands and tools; sizes are common practice, no source
using units::millimetres;

using fixture::guided_room;
constexpr units::Length turning_room = millimetres(1.0); // for what turns or is pulled without being watched
constexpr units::Length finger_room = millimetres(12.0);
constexpr units::Angle sight_least = units::degrees(10.0); // a gap of 2 mm at the slot's edge

Verdict room(units::Length found, units::Length least) {
  return at_least(found.value(), least.value());
}

Verdict loading_path(const Design &d) {
  return room(d.clearances.loading, guided_room);
}
Verdict tube_slides_in(const Design &d) {
  return room(d.clearances.sliding, guided_room);
}
Verdict plug_comes_out(const Design &d) {
  return room(d.clearances.withdrawing, turning_room);
}
Verdict tube_turns_clear(const Design &d) {
  return room(d.clearances.turning, turning_room);
}
Verdict torch_clear(const Design &d) {
  return room(d.clearances.torch, guided_room);
}
Verdict line_of_sight(const Design &d) {
  return at_least(d.clearances.sight.value(), sight_least.value());
}
Verdict screws_reached(const Design &d) {
  return room(d.clearances.screws, {});
}
Verdict ports_reached(const Design &d) {
  return room(d.clearances.ports, {});
}
Verdict valves_reached(const Design &d) {
  return room(d.clearances.valves, finger_room);
}

// Nothing reaches the front pair once the chamber stands before them, so the order is theirs: axles first.
Verdict axle_screws(const Design &d) {
  return at_least(d.clearances.axles.value(), guided_room.value(), Status::caution);
}

constexpr std::array<Rule, 15> table{{
    {"access.slot_width", "Slot is wide enough for the cap and the tilted torch", practice,
     units::Dimension::length, slot_width, "widen fixture.slot.width to the limit, or leave it out"},
    {"access.slot_behind", "Slot reaches far enough over the tube for torch, tweezers and the eye's line",
     practice, units::Dimension::length, slot_behind, "lengthen fixture.slot.length, or leave it out"},
    {"access.slot_ahead", "Slot reaches far enough beyond the joint for cap, tweezers and torch", practice,
     units::Dimension::length, slot_ahead, "lengthen fixture.slot.length, or leave it out"},
    {"access.pin_away_from_weld", "Backing pin touches the cap away from the weld", practice,
     units::Dimension::length, pin_away_from_weld, "larger tube bore; the pin's ring cannot be made smaller"},
    {"access.swing_clear", "Plug turns inside the swing radius", practice, units::Dimension::length,
     swing_clear,
     "raise rotation.swing_radius to the limit at least: the plug's shoulder turns with the tube"},
    {"access.loading_path", "Cap in tweezers goes straight down to its seat without touching", practice,
     units::Dimension::length, loading_path,
     "widen fixture.slot.width or fixture.slot.length, or leave them out; a very small cap meets the backing "
     "pin"},
    {"access.tube_slides_in", "Tube slides in from behind, touching its bore and rollers alone", practice,
     units::Dimension::length, tube_slides_in,
     "the stands' notch follows tube.outside_diameter_tolerance: check it"},
    {"access.plug_comes_out", "Plug with its hose is pulled out of the tube without touching", practice,
     units::Dimension::length, plug_comes_out, "a smaller gas.port_thread makes the plug's shoulder smaller"},
    {"access.tube_turns_clear",
     "Plug and hose turn at the swing radius clear of stands, base and gas-port block", practice,
     units::Dimension::length, tube_turns_clear,
     "smaller rotation.swing_radius: lead the hose away along the axis"},
    {"access.torch_clear", "Torch reaches the joint at its tilt without touching", practice,
     units::Dimension::length, torch_clear,
     "smaller torch.tilt, longer torch.cup_length, or a wider or longer fixture.slot"},
    {"access.line_of_sight", "Eye sees the joint between the torch's cup and the slot's edge", practice,
     units::Dimension::angle, line_of_sight,
     "wider fixture.slot.width, larger torch.stickout, or a narrower torch.cup_outside_diameter"},
    {"access.screws_reached",
     "A key reaches every screw along its axis, those under the base with it turned over",
     "heads of ISO 4762, key of common practice", units::Dimension::length, screws_reached,
     "larger fixture.radial_clearance or a smaller gas.port_thread"},
    {"access.axle_screws",
     "A key's short arm reaches the rollers' axle screws: fit them before chamber, stop and tube",
     "short arms of JIS B 4648:2008, which follows ISO 2936", units::Dimension::length, axle_screws,
     "screw the axles in before the stands are bolted to the base; a longer tube.length sets the stands "
     "farther apart"},
    {"access.ports_reached", "A fitting with its hose reaches every port",
     "widths of fittings across corners", units::Dimension::length, ports_reached,
     "a smaller gas.port_thread"},
    {"access.valves_reached", "Fingers reach every valve of the gas-port block", practice,
     units::Dimension::length, valves_reached, "a smaller gas.port_thread or fewer fixture.circuits"},
}};

} // namespace

std::span<const Rule> access_rules() {
  return table;
}

} // namespace purgewright::checks
