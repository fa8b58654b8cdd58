// Small pictures of designs side by side, all to one scale, with a bar that says it.
//
// Units: millimetres on paper and on a page shown at full size; words in the comparison's unit. Frame: as
// fixture/outline.hpp. Errors: none. Guarantee: one scale for all of them; each shape says which part it is
// (data-part). Source: ISO 5455 (scales); Scalable Vector Graphics 2. Private to html.
#pragma once

#include "purgewright/report/compare.hpp"

#include <string>

namespace purgewright::html {

// Nothing where no design can be drawn.
std::string outline_section(const report::Comparison &);

} // namespace purgewright::html
