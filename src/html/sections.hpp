// The page's sections as markup, top to bottom.
//
// Units: the job's own. Frame: places() in the joint's. Errors: the layout must be buildable. Guarantee: same
// findings, same markup, all of it safe. Source: the figures and rules of the findings. Private to html.
#pragma once

#include "purgewright/html/report_page.hpp"

#include <string>
#include <string_view>

namespace purgewright::html {

std::string answer(const report::Findings &);   // may I weld, and if not, why
std::string at_bench(const report::Findings &); // wait and flows, large
std::string settings(const report::Findings &); // what to set, in which order to weld, use, sizes
std::string plots(const report::Findings &, const Shown &);
std::string rules(const report::Findings &);
std::string sheets(const Shown &);
std::string parts_list(const report::Findings &);
std::string all_numbers(const report::Findings &);

// JSON of the parts shown: by the name they have in the assembly's file, what they are, where to they are
// taken apart, whether they turn with the tube; and the collar's angles of tacks and runs.
std::string viewer_data(const report::Findings &);

// A number with where it comes from behind it, by the id of its figure or rule.
std::string number(const report::Findings &, std::string_view text, std::string_view id);

} // namespace purgewright::html
