// One or more sheets for every made part of a design, then those of the assembly.
//
// Units: quantity types in; sheets as sheet.hpp. Frame: views from the parts' own frames.
// Range and errors: a buildable layout and its solids; SolidError when a projection fails. The date is
// printed as given, empty prints none. Guarantee: same input, same sheets; no file, no clock. One kernel
// thread. Source: ISO 128, 129-1, 5455, 5457, 7200; sheet sizes of ASME Y14.1 for Letter and Tabloid.
#pragma once

#include "purgewright/drawing/sheet.hpp"
#include "purgewright/fixture/volumes.hpp"
#include "purgewright/job/job.hpp"
#include "purgewright/solids/parts.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace purgewright::drawing {

struct Issue {
  std::string date;                 // "2026-11-25"
  std::string program;              // "purgewright 0.1.0"
  std::vector<std::string> failing; // rules that fail, in words: stamped on every sheet, which is not for use
};

// "2026-11-25" of a SOURCE_DATE_EPOCH text; empty when there is none or it is no number.
std::string date_of_epoch(const char *seconds);

// Sheet::part of the assembly's own sheets.
inline constexpr std::string_view assembly_sheet = "assembly";

std::vector<Sheet> make_sheets(const job::Job &, const fixture::Layout &, const fixture::Volumes &,
                               const solids::Assembly &, const Issue &);

} // namespace purgewright::drawing
