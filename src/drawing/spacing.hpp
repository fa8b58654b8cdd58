// Space between lines that run beside each other.
//
// Units: millimetres on paper. Frame: sheet. Range and errors: none. Guarantee: same strokes, same answer.
// Source: ISO 128-2, 0.7 mm between parallel lines, from memory; small forms left out of a view that a note
// or a detail explains: ISO 128-3, from memory.
#pragma once

#include "purgewright/drawing/sheet.hpp"

#include <vector>

namespace purgewright::drawing {

inline constexpr double least_line_distance = 0.7;

// What runs beside a visible line for a good part of its own length, nearer than printed lines can be told
// apart and no farther than `small`: an edge break's other edge, a thin wall's other side. The shorter of two
// goes; of two as long, the later. Of two long ones that run so for a stretch alone, the shorter is cut back.
void leave_out_close_lines(std::vector<Stroke> &strokes, double small);

} // namespace purgewright::drawing
