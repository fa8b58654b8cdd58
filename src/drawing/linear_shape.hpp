// A linear dimension at one of its possible places: extension lines, dimension line, arrows, text.
//
// Units: millimetres on paper. Frame: sheet. Range and errors: nothing when the text does not fit the middle.
// Guarantee: text above its line, read from below or from the right. Source: ISO 129-1.
#pragma once

#include "placement.hpp"

namespace purgewright::drawing {

// Over the dimension line's middle, or `away` beyond one of its ends, over its extension.
enum class TextSide { middle, after, before };
struct TextPlace {
  TextSide side = TextSide::middle;
  double away = 0.0;
};
inline constexpr TextPlace text_places[] = {{},
                                            {TextSide::after},
                                            {TextSide::before},
                                            {TextSide::after, 7.0},
                                            {TextSide::before, 7.0},
                                            {TextSide::after, 14.0},
                                            {TextSide::before, 14.0}};
inline constexpr int linear_levels = 14;
// Room that so many dimension lines on one side take at most.
double room_of(std::size_t lines);

struct LinearShape {
  Dimension dimension;
  Segment line;
};
// Where the extension lines of a dimension run that stands on this level.
std::array<Segment, 2> extension_lines(const Linear &, const Stand &, int level);
std::optional<LinearShape> linear_shape(const Linear &, const Stand &, int level, TextPlace);

} // namespace purgewright::drawing
