// Range checks of the gas library: one way to refuse an input, with the function's name and the value.
//
// Errors: std::domain_error, always; the text is "function: what, got value".
#pragma once

#include <array>
#include <charconv>
#include <stdexcept>
#include <string>
#include <string_view>

namespace purgewright::gas::detail {

[[noreturn]] inline void refuse(std::string_view function, std::string_view what, double value) {
  std::array<char, 32> digits{};
  const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value).ptr;
  throw std::domain_error(std::string(function) + ": " + std::string(what) + ", got " +
                          std::string(digits.data(), end));
}

// Conditions are written so that a NaN makes them false, hence refused.
inline void require(bool holds, std::string_view function, std::string_view what, double value) {
  if (!holds)
    refuse(function, what, value);
}

} // namespace purgewright::gas::detail
