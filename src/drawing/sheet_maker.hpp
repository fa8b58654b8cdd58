// One sheet with everything on it: frame, title block, views, marks, captions, dimensions, parts list.
//
// Units: millimetres on paper. Frame: sheet. Range and errors: what finds no free place is counted in
// Sheet::clashes. Guarantee: same input, same sheet. Source: ISO 128-3 (marks of sections and details).
#pragma once

#include "paper.hpp"
#include "stands.hpp"

namespace purgewright::drawing {

struct Filling {
  std::vector<Row> rows;
  Box area; // for the views
  std::span<const ListRow> list;
  std::span<const Text> texts = {}; // of a sheet of words
};

// `scale` is what the title block states.
Sheet make_sheet(const TitleFields &, const Filling &, double scale);

} // namespace purgewright::drawing
