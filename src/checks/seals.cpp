// The plug's rubber at the worst of tube, groove and ring, and the face ring between chamber and end plate.
// Purge gas stands a few hundred pascals above the room: what counts is that some squeeze is left, that the
// rubber is not crushed, and that a hand can set the plug.
#include "topics.hpp"

#include <array>

namespace purgewright::checks {
namespace {

Verdict squeeze_least(const Design &d) {
  return at_least(d.layout.plug.seal.squeeze_least, 0.0);
}

Verdict squeeze_most(const Design &d) {
  const auto &seal = d.layout.plug.seal;
  return at_most(seal.squeeze_most, seal.squeeze_limit);
}

Verdict stretch(const Design &d) {
  const auto &seal = d.layout.plug.seal;
  return seal.stretch < 0.0 ? Verdict{Status::fail, seal.stretch, 0.0, Bound::at_least}
                            : at_most(seal.stretch, seal.stretch_limit);
}

Verdict fill(const Design &d) {
  return at_most(d.layout.plug.seal.fill_most, standards::seal_rules().fill_max);
}

// Push or torque as a share of what a hand does.
Verdict by_hand(const Design &d) {
  const auto &seal = d.layout.plug.seal;
  return at_most(seal.hand / seal.hand_limit, 1.0);
}

// ---- The ring in the end plate's face

// The groove is milled to the middle of the gland's depth; the table's limits leave it half their difference.
Verdict face_squeeze(const Design &d) {
  const auto &groove = d.layout.end_plate.groove;
  const auto &row = *standards::static_radial_gland(groove.ring->section);
  const auto depth_tolerance = 0.5 * (row.depth_max - row.depth_min);
  const auto thinnest = groove.ring->section - groove.ring->section_tolerance;
  const double least = 1.0 - units::ratio(row.depth_max, thinnest);
  return at_least(1.0 - units::ratio(groove.depth + depth_tolerance, thinnest), least);
}

Verdict face_stretch(const Design &d) {
  const auto &groove = d.layout.end_plate.groove;
  const auto inside = 2.0 * units::pi * groove.inner_radius + 2.0 * groove.straight();
  const double value = units::ratio(inside, units::pi * groove.ring->inside_diameter) - 1.0;
  return value < 0.0 ? Verdict{Status::fail, value, 0.0, Bound::at_least}
                     : at_most(value, standards::seal_rules().stretch_max);
}

constexpr std::string_view gland = "AS568 section with the static radial gland table";
constexpr std::string_view tolerances =
    "measure the tube and state closer tube.outside_diameter_tolerance and tube.wall_tolerance, or "
    "fixture.plug: auto";
constexpr std::array<Rule, 7> table{{
    {"seal.plug_squeeze_least", "Plug's rubber keeps some squeeze at the worst of tube, groove and ring",
     "MIL-G-5514: a positive interference", units::Dimension::ratio, squeeze_least, tolerances},
    {"seal.plug_squeeze_most", "Plug's rubber is not crushed at the tightest of tube, groove and ring",
     "Mechanical Engineers' Handbook vol. 3: 30 % at most for a ring at rest; a sleeve 25 %, from memory",
     units::Dimension::ratio, squeeze_most, tolerances},
    {"seal.plug_stretch", "Plug O-ring's stretch",
     "O-ring handbooks: 0 to 5 % on a groove; 20 % for minutes on a tube, from memory",
     units::Dimension::ratio, stretch, "fixture.plug: auto takes a kind that serves this tube",
     Needs::plug_ring},
    {"seal.plug_fill", "Plug O-ring's share of its groove", "O-ring handbooks: 85 % at most",
     units::Dimension::ratio, fill, tolerances, Needs::plug_ring},
    {"seal.plug_hand", "Push on the plug, or torque at its knob, as a share of what a hand does",
     "150 N one arm, 100 N each of two hands at the knob's rim; from memory of ergonomic tables",
     units::Dimension::ratio, by_hand, "fixture.plug: expanding, or closer tube tolerances"},
    {"seal.face_squeeze", "Face O-ring keeps its squeeze at its thinnest in the deepest groove", gland,
     units::Dimension::ratio, face_squeeze,
     "the groove follows the gland's table: a fault of this program, report the job"},
    {"seal.face_stretch", "Face O-ring's stretch round cavity and plenum", "O-ring handbooks: 0 to 5 %",
     units::Dimension::ratio, face_stretch, "no listed ring fits: smaller fixture.radial_clearance"},
}};

} // namespace

std::span<const Rule> seal_rules() {
  return table;
}

} // namespace purgewright::checks
