// What must get in and out of the chamber: cap, tweezers, torch, the eye's line.
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

// The ring that backs the cap stays well inside the weld: metal that touches the pin stays hot and may colour.
Verdict pin_away_from_weld(const Design &d) {
  constexpr double share = 0.3; // of the tube's outside radius, common practice
  const auto joint = 0.5 * d.job.tube.inside_diameter;
  return at_least((joint - d.layout.pin.contact_outer_radius).value(), share * joint.value());
}

Verdict swing_clear(const Design &d) {
  return at_most(d.layout.plug.shoulder_radius.value(), d.job.rotation.swing_radius.value(), Status::caution);
}

constexpr std::array<Rule, 5> table{{
    {"access.slot_width", "Slot is wide enough for the cap and the tilted torch", practice,
     units::Dimension::length, slot_width, "widen fixture.slot.width to the limit, or leave it out"},
    {"access.slot_behind", "Slot reaches far enough over the tube for torch, tweezers and the eye's line", practice,
     units::Dimension::length, slot_behind, "lengthen fixture.slot.length, or leave it out"},
    {"access.slot_ahead", "Slot reaches far enough beyond the joint for cap, tweezers and torch", practice,
     units::Dimension::length, slot_ahead, "lengthen fixture.slot.length, or leave it out"},
    {"access.pin_away_from_weld", "Backing pin touches the cap away from the weld", practice,
     units::Dimension::length, pin_away_from_weld, "larger tube bore; the pin's ring cannot be made smaller"},
    {"access.swing_clear", "Plug turns inside the swing radius", practice, units::Dimension::length, swing_clear,
     "raise rotation.swing_radius to the limit at least: the plug's shoulder turns with the tube"},
}};

} // namespace

std::span<const Rule> access_rules() { return table; }

} // namespace purgewright::checks
