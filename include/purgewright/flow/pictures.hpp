// A solved case to look at: oxygen in the plane of symmetry at the last time written, and at the joint over
// time beside the network's bracket.
//
// Units: quantity types; oxygen is a volume fraction, its colour goes by its logarithm, 1 ppm to air.
// Frame: pictures look along +Y, +X to the right and Z up, as sections on the drawings do.
// Range and errors: BadRecord for a text that is no scalar field of the case's cells.
// Guarantee: SVG of its own, no reference to anything outside; same input, same bytes.
// Source: OpenFOAM user guide, field files.
#pragma once

#include "purgewright/flow/reading.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace purgewright::flow {

// Oxygen of each cell out of the field of air that the stage's solver wrote (field_name).
std::string_view field_name(Stage);
std::vector<double> read_field(std::string_view text, const job::Job &, const Case &);

std::string slice_svg(const job::Job &, const Case &, const std::vector<double> &oxygen, units::Time at);
std::string curve_svg(const job::Job &, const gas::Purge &, const Case &, const Record &);

} // namespace purgewright::flow
