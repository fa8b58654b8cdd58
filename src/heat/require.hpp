// Range checks of the heat library: one way to refuse an input, with the function's name and the value.
//
// Errors: std::domain_error, always; the text is "function: what, got value".
#pragma once

#include <fmt/format.h>

#include <stdexcept>
#include <string_view>

namespace purgewright::heat::detail {

// Conditions are written so that a NaN makes them false, hence refused.
inline void require(bool holds, std::string_view function, std::string_view what, double value) {
  if (!holds) {
    throw std::domain_error(fmt::format("{}: {}, got {}", function, what, value));
  }
}

} // namespace purgewright::heat::detail
