// What goes in and out at the tube's extremes.
#include "topics.hpp"

#include <array>

namespace purgewright::checks {
namespace {

// Room round the tube in the chamber, so that the rollers alone locate it, and its warm growth has a place.
Verdict tube_turns(const Design &d) {
  constexpr double least = 1.0e-3; // m a side: growth, runout and sag of a tube are a fifth of it
  const auto turns = d.layout.spindle_in_chamber(d.job) ? d.layout.cradle.radius_most
                                                        : 0.5 * d.job.tube.outside_diameter_most();
  return at_least((d.layout.body.opening_radius - turns).value(), least);
}

// The wiper's hole at the smallest tube, pressed on by its own stretch.
Verdict wiper_presses(const Design &d) {
  constexpr double least = 0.2e-3; // m a side
  const auto &wiper = d.layout.wiper;
  const auto tube = 0.5 * d.job.tube.outside_diameter_least();
  const auto turns = d.layout.spindle_in_chamber(d.job) ? wiper.sealed_radius : tube;
  return at_least((turns - wiper.hole_radius).value(), least);
}

Verdict part_leaves(const Design &d) {
  constexpr double least = 1.0e-3; // m: what a hand draws out does not scratch
  return at_least(d.clearances.leaving.value(), least);
}

Verdict plug_enters(const Design &d) {
  const auto &plug = d.layout.plug;
  return plug.kind == fixture::PlugKind::cup
             ? at_least((2.0 * plug.cup_radius - d.job.tube.outside_diameter_most()).value(), 0.0)
             : at_least((d.job.tube.inside_diameter_least() - 2.0 * plug.spigot_radius).value(), 0.0);
}

constexpr std::array<Rule, 4> table{{
    {"fit.tube_turns", "Largest tube turns without touching the chamber: rollers alone locate it",
     "common practice, no source", units::Dimension::length, tube_turns,
     "the rear opening follows tube.outside_diameter_tolerance: check it"},
    {"fit.wiper_presses", "Wiper presses on the smallest tube", "common practice, no source",
     units::Dimension::length, wiper_presses,
     "the wiper's hole follows tube.outside_diameter_tolerance: check it"},
    {"exit.clearance",
     "Welded part with bead and cap leaves the chamber backwards, the wiper's plate loosened",
     "common practice, no source", units::Dimension::length, part_leaves,
     "smaller cap.diameter or weld.bead_height: the rear opening follows them"},
    {"fit.plug_enters", "Plug goes into the smallest bore, or over the largest tube",
     "ISO 286-1, deviation f", units::Dimension::length, plug_enters, "state the tube's wall_tolerance"},
}};

} // namespace

std::span<const Rule> fit_rules() {
  return table;
}

} // namespace purgewright::checks
