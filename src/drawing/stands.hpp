// Where the views of a sheet stand.
//
// Units: millimetres on paper. Frame: sheet. Range and errors: rows that fit the area. Guarantee: rows from
// top to bottom, views of a row on a common horizontal, floating ones half way up. Source: common practice,
// no source.
#pragma once

#include "placement.hpp"
#include "rows.hpp"

namespace purgewright::drawing {

// What room is left goes round the views, close together in the middle, or between them too, where texts find
// places.
enum class Spread { close, wide };

std::vector<Stand> stand_up(const std::vector<Row> &, const Box &area, Spread);

} // namespace purgewright::drawing
