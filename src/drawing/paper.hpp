// Sheet sizes, frame, title block, notes and the symbol of projection.
//
// Units: millimetres on paper. Frame: sheet. Range and errors: none; text too long for its cell is set
// smaller. Guarantee: every text lies inside its cell. Source: ISO 5457 (sizes, border 20 and 10 mm), ISO
// 7200 (fields), ISO 5456-2 (symbol); Letter and Tabloid after ASME Y14.1 sizes A and B.
#pragma once

#include "labels.hpp"

#include "purgewright/drawing/sheets.hpp"

#include <span>
#include <string>

namespace purgewright::drawing {

struct Paper {
  std::string name; // "A3"
  double width = 0.0, height = 0.0;
  Box frame;
};
Paper paper_of(job::Sheet);
// The same maker's next size, or itself.
job::Sheet larger(job::Sheet);

inline constexpr double frame_air = 2.0; // from the frame to whatever stands in it
inline constexpr double title_width = 180.0, title_height = 38.0;

// What the title block says; the rest comes from job and part.
struct TitleFields {
  const job::Job &job;
  const Paper &paper;
  const PartPlan &plan;
  const Issue &issue;
  std::string scale; // "2:1"
  int sheet = 1, sheets = 1;
};

// Height of the strip at the sheet's foot that title block and notes take.
double foot_height(const Paper &, const PartPlan &);

// How many lines of a parts list a sheet holds, its heading apart.
std::size_t list_rows(const Paper &);

// Frame, centring marks, title block, notes, and above the title block a parts list, read upwards.
void add_frame_and_title(const TitleFields &, std::span<const ListRow>, Sheet &);

} // namespace purgewright::drawing
