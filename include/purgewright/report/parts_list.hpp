// parts-list.csv: what to make and what to buy for one fixture. Bought parts are described by standard and
// size, never by maker.
//
// Units: sizes in the shop's units, masses in kg. Format: comma-separated, CRLF, RFC 4180.
// Guarantee: same design, same bytes.
#pragma once

#include "purgewright/checks/design.hpp"

#include <string>
#include <vector>

namespace purgewright::report {

struct ListedPart {
  std::string name, kind; // kind: "made" or "bought"
  int quantity = 1;
  std::string material, size; // stock for made parts, standard and size for bought ones
  double mass = 0.0;          // kg a piece; 0 for bought parts
  std::string printed;        // plastic a made part may be printed from, or "no"; empty for bought ones
  std::string serves;         // what it does, or which tubes it fits
};

std::vector<ListedPart> list_parts(const checks::Design &);
std::string parts_list_csv(const checks::Design &);

} // namespace purgewright::report
