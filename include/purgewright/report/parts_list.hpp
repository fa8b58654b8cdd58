// parts-list.csv: fixture::parts_list with masses, what may be printed and which tubes a part serves.
//
// Units: sizes in the shop's units, masses in kg. Format: comma-separated, CRLF, RFC 4180.
// Guarantee: same design, same bytes.
#pragma once

#include "purgewright/checks/design.hpp"

#include <string>

namespace purgewright::report {

std::string parts_list_csv(const checks::Design &);

} // namespace purgewright::report
