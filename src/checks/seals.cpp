// The plug's O-ring at the tube's extremes, and the face ring between chamber and end plate. The published
// squeeze limits are those of the gland table with the ring's own tolerance; a nominal ring within them
// passes at the tube's extremes, and with its tolerance stacked on top a small excess is a caution.
#include "topics.hpp"

#include <array>

namespace purgewright::checks {
namespace {

struct Limits {
  double least = 0.0, most = 0.0;
};

Limits squeeze_limits(const fixture::PlugSeal &seal) {
  const auto &ring = *seal.ring;
  return {1.0 - units::ratio(seal.gland->depth_max, ring.section - ring.section_tolerance),
          1.0 - units::ratio(seal.gland->depth_min, ring.section + ring.section_tolerance)};
}

Verdict squeeze_least(const Design &d) {
  const auto &seal = d.layout.plug.seal;
  const Limits limits = squeeze_limits(seal);
  Verdict verdict = at_least(seal.squeeze_least, limits.least);
  if (verdict.status == Status::pass && seal.squeeze_least_stack < limits.least) {
    verdict = {Status::caution, seal.squeeze_least_stack, limits.least, Bound::at_least};
  }
  return verdict;
}

Verdict squeeze_most(const Design &d) {
  const auto &seal = d.layout.plug.seal;
  const Limits limits = squeeze_limits(seal);
  Verdict verdict = at_most(seal.squeeze_most, limits.most);
  if (verdict.status == Status::pass && seal.squeeze_most_stack > limits.most) {
    verdict = {Status::caution, seal.squeeze_most_stack, limits.most};
  }
  return verdict;
}

Verdict stretch(const Design &d) {
  const double value = d.layout.plug.seal.stretch;
  if (value < 0.0) {
    return {Status::fail, value, 0.0, Bound::at_least};
  }
  return at_most(value, standards::seal_rules().stretch_max);
}

Verdict fill(const Design &d) {
  return at_most(d.layout.plug.seal.fill_most, standards::seal_rules().fill_max);
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
    "measure the tube and state closer tube.outside_diameter_tolerance and tube.wall_tolerance";
constexpr std::array<Rule, 6> table{{
    {"seal.plug_squeeze_least", "Plug O-ring keeps its squeeze in the widest bore", gland,
     units::Dimension::ratio, squeeze_least, tolerances},
    {"seal.plug_squeeze_most", "Plug O-ring is not crushed in the narrowest bore", gland,
     units::Dimension::ratio, squeeze_most, tolerances},
    {"seal.plug_stretch", "Plug O-ring's stretch on its groove", "O-ring handbooks: 0 to 5 %",
     units::Dimension::ratio, stretch, "no listed ring fits this bore: bush the tube or choose another tube"},
    {"seal.plug_fill", "Plug O-ring's share of its groove", "O-ring handbooks: 85 % at most",
     units::Dimension::ratio, fill, tolerances},
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
