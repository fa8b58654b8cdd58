// Reads the number at the front of a quantity: decimal, fraction or mixed number.
//
// Errors: none thrown; a result without value says what is wrong.
// Thread use: pure; the decimal point is a point in every locale.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace purgewright::units {

struct NumberText {
  std::optional<double> value;
  std::string_view rest; // what follows the number
  std::string problem;   // ends a sentence that starts with the quoted text; empty when value is set
};

// "1.25", "+1.25", "-3", "1e-3", "5/8", "1 1/4", "1-1/4", each followed by anything.
NumberText read_number(std::string_view text);

} // namespace purgewright::units
