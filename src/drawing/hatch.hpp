// Hatching of a region bounded by loops, by the even-odd rule.
//
// Units and frame: those of the loops. Range and errors: spacing > 0; loops may touch, not cross.
// Guarantee: lines at `angle`, `spacing` apart, none outside the region. Source: ISO 128-3 (45 degrees).
#pragma once

#include "purgewright/drawing/geometry.hpp"

namespace purgewright::drawing {

std::vector<Segment> hatch(const std::vector<Loop> &, double spacing, double angle);

// The part of a segment inside a circle, if any.
std::vector<Segment> clipped(const Segment &, const Arc &circle);

} // namespace purgewright::drawing
