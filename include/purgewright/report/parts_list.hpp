// parts-list.csv: fixture::parts_list with masses, what may be printed and which tubes a part serves.
//
// Units: sizes in the shop's units, masses in its own (kg or lb). Format: comma-separated, CRLF, RFC 4180.
// Guarantee: same design, same bytes.
#pragma once

#include "purgewright/checks/design.hpp"

#include "purgewright/fixture/parts_list.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace purgewright::report {

struct PartRow {
  fixture::Item item;
  std::string_view kind;                    // "made", "workpiece", "bought"
  std::string mass, may_be_printed, serves; // of a piece; empty but for made parts, serves apart
};
std::vector<PartRow> part_rows(const checks::Design &);

// What masses are given in.
struct MassUnit {
  std::string_view name;
  double kilograms = 1.0;
};
MassUnit mass_unit(const checks::Design &);

std::string parts_list_csv(const checks::Design &);

} // namespace purgewright::report
