// What the forms of a comparison share. Private to report.
//
// Units: SI. Frame, errors: none. Guarantee: as compare.hpp. Source: none.
#pragma once

#include "purgewright/report/compare.hpp"

#include <string>

namespace purgewright::report::parts {

// Whether the count of failing rules is one of all rules.
bool counts_all(const Comparison &, const ComparedDesign &);

// "m", "EUR/m3": of a varied key.
std::string varied_unit(const Comparison &, std::size_t key);

} // namespace purgewright::report::parts
