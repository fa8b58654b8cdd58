// Spellings of units: typographic signs to plain letters, trade names to units the database knows, and a
// table of everyday units that spares most jobs the reading of the database.
//
// Thread use: pure.
// Source: SI Brochure, 9th edition; inch 25.4 mm and pound 0.45359237 kg, 1959 international yard and pound;
// trade names as commonly written.
#pragma once

#include "purgewright/units/dimension.hpp"

#include <span>
#include <string>
#include <string_view>

namespace purgewright::units {

// si = (value + zero) * scale
struct EverydayUnit {
  std::string_view name;
  Dimension dimension;
  double scale;
  double zero{};
};

std::span<const EverydayUnit> everyday_units();
const EverydayUnit *everyday_unit(std::string_view name); // nullptr when not in the table

// Typographic signs (non-breaking space, micro, degree, prime, superscripts, minus) as plain ASCII. Bytes
// without a plain counterpart stay, and are refused by is_unit_text or as no number.
std::string plain_signs(std::string_view text);

// Trade names replaced: "cfh" by "ft3/h", "thou" by "mil", "deg" by "degree" ...
std::string with_trade_names(std::string_view unit);

// Whether the text has the form of a unit: letters, signs and exponents, no stray number. The database's own
// syntax also knows scaled and shifted units ("10 mm", "s since ...") and levels ("lg(re mW)"), which have no
// place in a job.
bool is_unit_text(std::string_view unit);

} // namespace purgewright::units
