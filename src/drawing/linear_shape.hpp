// A linear dimension at one of its possible places: extension lines, dimension line, arrows, text.
//
// Units: millimetres on paper. Frame: sheet. Range and errors: nothing when the text does not fit the middle.
// Guarantee: text above its line, read from below or from the right. Source: ISO 129-1.
#pragma once

#include "placement.hpp"

namespace purgewright::drawing {

enum class TextPlace { middle, after, before };
inline constexpr int linear_levels = 14;
// Room that so many dimension lines on one side take at most.
double room_of(std::size_t lines);

struct LinearShape {
  Dimension dimension;
  Segment line;
};
std::optional<LinearShape> linear_shape(const Linear &, const Stand &, int level, TextPlace);

} // namespace purgewright::drawing
