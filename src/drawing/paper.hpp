// Sheet sizes, frame, title block, notes and the symbol of projection.
//
// Units: millimetres on paper. Frame: sheet. Range and errors: none; text too long for its cell breaks into
// lines and the cell grows. Guarantee: every text lies inside its cell. Source: ISO 5457 (sizes, border 20
// and 10 mm), ISO 7200 (fields), ISO 5456-2 (symbol); Letter and Tabloid after ASME Y14.1 sizes A and B.
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

inline Unit unit_of(const job::Job &job) {
  return job.shop.unit_system == units::UnitSystem::inch ? Unit::inch : Unit::millimetre;
}

inline constexpr double frame_air = 2.0; // from the frame to whatever stands in it
inline constexpr double title_width = 180.0;

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
double foot_height(const TitleFields &);

// Height of the strip at the sheet's top that says which rules fail; 0 where none does.
double stamp_height(const Paper &, const Issue &);

// The parts list as its sheets hold it.
std::vector<std::span<const ListRow>> list_pages(const TitleFields &);

// Frame, centring marks, title block, notes, the stamp of a design that is not for use, and above the title
// block a parts list, read upwards.
void add_frame_and_title(const TitleFields &, std::span<const ListRow>, Sheet &);

} // namespace purgewright::drawing
