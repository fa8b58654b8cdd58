#include "units/number_text.hpp"

#include <algorithm>
#include <charconv>
#include <cstddef>

namespace purgewright::units {

namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

std::size_t digit_count(std::string_view text) {
  return static_cast<std::size_t>(std::find_if_not(text.begin(), text.end(), is_digit) - text.begin());
}

NumberText failure(std::string_view problem) {
  return {std::nullopt, {}, std::string(problem)};
}

// Digits only, at most 15 of them, so that the double is exact.
std::optional<double> whole(std::string_view digits) {
  if (digits.empty() || digits.size() > 15)
    return std::nullopt;
  double value = 0.0;
  std::from_chars(digits.data(), digits.data() + digits.size(), value);
  return value;
}

struct Fraction {
  std::string_view numerator, denominator, rest;
};

// "5/8..." at the front of the text; "1/h" is a unit, not a fraction.
std::optional<Fraction> fraction_at(std::string_view text) {
  const std::size_t top = digit_count(text);
  if (top == 0 || top >= text.size() || text[top] != '/')
    return std::nullopt;
  const std::string_view after = text.substr(top + 1);
  const std::size_t bottom = digit_count(after);
  if (bottom == 0)
    return std::nullopt;
  return Fraction{text.substr(0, top), after.substr(0, bottom), after.substr(bottom)};
}

NumberText fraction_value(const Fraction &fraction, double whole_part, bool mixed) {
  const auto top = whole(fraction.numerator);
  const auto bottom = whole(fraction.denominator);
  if (!top || !bottom)
    return failure("has a fraction with too many digits");
  if (*bottom == 0.0)
    return failure("divides by zero");
  if (mixed && *top >= *bottom)
    return failure("has a mixed number whose fraction is not below one");
  return {whole_part + *top / *bottom, fraction.rest, {}};
}

// The part of "1 1/4" or "1-1/4" after the whole number.
std::optional<Fraction> mixed_tail(std::string_view text) {
  const std::size_t start = text.starts_with('-') ? 1 : text.find_first_not_of(' ');
  return start == 0 || start == std::string_view::npos ? std::nullopt : fraction_at(text.substr(start));
}

NumberText read_unsigned(std::string_view text) {
  const std::size_t point = text.starts_with('.') ? 1 : 0;
  if (point >= text.size() || !is_digit(text[point]))
    return failure("does not start with a number");
  if (const auto fraction = fraction_at(text))
    return fraction_value(*fraction, 0.0, false);
  double value = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{})
    return failure("has a number too large or too small to hold");
  const auto length = static_cast<std::size_t>(end - text.data());
  const std::string_view rest = text.substr(length);
  if (rest.starts_with(','))
    return failure("has a comma in its number; write a decimal point and no thousands separator");
  if (rest.starts_with('.'))
    return failure("has a second decimal point");
  if (digit_count(text) == length)
    if (const auto tail = mixed_tail(rest))
      return fraction_value(*tail, value, true);
  return {value, rest, {}};
}

} // namespace

NumberText read_number(std::string_view text) {
  const bool negative = text.starts_with('-');
  if (negative || text.starts_with('+'))
    text.remove_prefix(1);
  NumberText number = read_unsigned(text);
  if (negative && number.value)
    number.value = -*number.value;
  return number;
}

} // namespace purgewright::units
