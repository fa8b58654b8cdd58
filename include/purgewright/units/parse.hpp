// Text such as "1.25 in", "5/8 in", "12 ft3/h" or "800 degF" to a number in SI, by the udunits2 library and
// its unit database, with the trade's names mapped to it first (cfh, lpm, thou, ...).
//
// Units: result is in the coherent SI unit of the asked dimension.
// Numbers: 1.25, +1.25, 1e-3, 5/8, 1 1/4, 1-1/4; a decimal point, never a comma.
// Guarantee: results are rounded to 15 significant digits (angles excepted), so that one size written in
// millimetres and in inches is one number to the last bit.
// Errors: none thrown; a Parsed without value says what is wrong in one sentence.
// Thread use: safe. Everyday spellings are read from a table; the unit database is read once, at the first
// spelling outside that table, and calls to it are serialised by a lock.
// Source: UCAR udunits2 database (SI Brochure, NIST SP 811).
#pragma once

#include "purgewright/units/dimension.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace purgewright::units {

struct Parsed {
  std::optional<double> si; // value in SI; nullopt when the text is not such a quantity
  std::string problem;      // one sentence without final stop, empty when si is set
  std::string currency;     // ISO 4217 letters, only for Dimension::price and ::cost
};

// Reads number and unit. Counts and ratios may stand without a unit; every other bare number is refused.
// Refuses NaN and infinities, a wrong dimension (naming both), and an unknown unit.
Parsed parse_quantity(std::string_view text, Dimension wanted);

// The same for a difference of two such quantities: a temperature's zero does not count, so that 50 degC is
// 50 K and 90 degF is 50 K. For every other dimension the same as parse_quantity.
Parsed parse_difference(std::string_view text, Dimension wanted);

} // namespace purgewright::units
