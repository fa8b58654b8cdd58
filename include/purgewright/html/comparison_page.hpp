// comparison.html: designs side by side as one page, offline: a table that sorts, any two of its columns
// against each other as a plot, the rules that some design does not pass as a grid.
//
// Units: the job's own as text; plots sort and place by SI. Frame, errors: none. Guarantee, source: as
// report_page.hpp.
#pragma once

#include "purgewright/report/compare.hpp"

#include <cstddef>
#include <string>
#include <string_view>

namespace purgewright::html {

inline constexpr std::size_t most_designs_shown =
    2000; // a page of more is slow to open; the CSV has them all

std::string comparison_page(const report::Comparison &, std::string_view version);

} // namespace purgewright::html
