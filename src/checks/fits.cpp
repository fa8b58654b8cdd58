// Running fits at the tube's extremes.
#include "topics.hpp"

#include <array>

namespace purgewright::checks {
namespace {

// Least running clearance: deviation f of ISO 286 for the largest tube.
Verdict tube_turns(const Design &d) {
  constexpr int any_grade = 7;
  const auto most = d.job.tube.outside_diameter_most();
  const auto fit = standards::shaft_deviation(most, 'f', any_grade);
  const double least = fit ? -fit->upper.value() : 0.05e-3;
  return at_least((2.0 * d.layout.body.tube_bore_radius - most).value(), least);
}

Verdict tube_gap(const Design &d) {
  constexpr double most = 0.6e-3; // m on the diameter: beyond it the tube's end wanders at the joint
  return at_most((2.0 * d.layout.body.tube_bore_radius - d.job.tube.outside_diameter_least()).value(), most,
                 Status::caution);
}

Verdict plug_enters(const Design &d) {
  const auto &plug = d.layout.plug;
  return plug.kind == fixture::PlugKind::cup
             ? at_least((2.0 * plug.cup_radius - d.job.tube.outside_diameter_most()).value(), 0.0)
             : at_least((d.job.tube.inside_diameter_least() - 2.0 * plug.spigot_radius).value(), 0.0);
}

constexpr std::array<Rule, 3> table{{
    {"fit.tube_turns", "Largest tube turns freely in the chamber", "ISO 286-1, deviation f",
     units::Dimension::length, tube_turns, "the tube bore follows tube.outside_diameter_tolerance: check it"},
    {"fit.tube_gap", "Smallest tube does not wander in the chamber", "common practice, no source",
     units::Dimension::length, tube_gap,
     "measure the tube and state a closer tube.outside_diameter_tolerance"},
    {"fit.plug_enters", "Plug goes into the smallest bore, or over the largest tube",
     "ISO 286-1, deviation f", units::Dimension::length, plug_enters, "state the tube's wall_tolerance"},
}};

} // namespace

std::span<const Rule> fit_rules() {
  return table;
}

} // namespace purgewright::checks
