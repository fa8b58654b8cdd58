// What the forms of a comparison share. Private to report.
//
// Units: SI. Frame, errors: none. Guarantee: as compare.hpp. Source: none.
#pragma once

#include "purgewright/report/compare.hpp"

#include <set>
#include <string>

namespace purgewright::report::parts {

// Whether the count of failing rules is one of all rules.
bool counts_all(const Comparison &, const ComparedDesign &);

// "m", "EUR/m3": of a varied key.
std::string varied_unit(const Comparison &, std::size_t key);

// The front's rows; none where nothing is ranked.
std::set<std::size_t> front_set(const Comparison &);

} // namespace purgewright::report::parts
