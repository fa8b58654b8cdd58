#include "purgewright/units/parse.hpp"

#include "units/number_text.hpp"
#include "units/unit_database.hpp"
#include "units/unit_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>

namespace purgewright::units {

namespace {

constexpr std::size_t longest_text = 80;

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(' ');
  if (first == std::string_view::npos)
    return {};
  return text.substr(first, text.find_last_not_of(' ') - first + 1);
}

std::string wanted_text(Dimension wanted) {
  return fmt::format("{} is wanted, such as {}", plain_name(wanted), example_text(wanted));
}

Parsed refused(std::string problem) {
  return {std::nullopt, std::move(problem), {}};
}

// 15 digits are what a double always holds: rounding to them makes 31.75 mm and 1.25 in the same number.
double rounded(double value) {
  const std::string text = fmt::format("{:.15g}", value);
  double result = value;
  std::from_chars(text.data(), text.data() + text.size(), result);
  return result;
}

DatabaseReading read_unit(double value, const std::string &unit) {
  if (const EverydayUnit *row = everyday_unit(unit)) {
    const auto status = DatabaseReading::Status::read;
    return {status, row->dimension, {}, (value + row->zero) * row->scale};
  }
  return is_unit_text(unit) ? read_by_database(value, unit) : DatabaseReading{};
}

Parsed unknown_unit(std::string_view text, std::string_view unit, Dimension wanted) {
  if (unit.ends_with("psig") || unit.ends_with("psia") || unit.ends_with("barg") || unit.ends_with("bara"))
    return refused(fmt::format("\"{}\" marks its unit as gauge or absolute, which the key decides; write {}",
                               text, unit.substr(0, unit.size() - 1)));
  return refused(fmt::format("\"{}\" has the unknown unit \"{}\"; {}", text, unit, wanted_text(wanted)));
}

Parsed wrong_dimension(std::string_view text, const DatabaseReading &reading, Dimension wanted) {
  const std::string found = reading.dimension ? std::string(plain_name(*reading.dimension))
                                              : fmt::format("a quantity in {}", reading.base_units);
  return refused(fmt::format("\"{}\" is {}, {}", text, found, wanted_text(wanted)));
}

// C and F are the coulomb and the farad; a message about charge would puzzle a welder.
Parsed bare_degree(std::string_view text, std::string_view unit) {
  return refused(fmt::format("\"{}\" needs deg before {}: a temperature is wanted, such as {}", text, unit,
                             example_text(Dimension::temperature)));
}

enum class Kind { quantity, difference };

Parsed measure(std::string_view text, double value, const std::string &unit, Dimension wanted,
               Kind kind = Kind::quantity) {
  if (wanted == Dimension::temperature && (unit == "C" || unit == "F"))
    return bare_degree(text, unit);
  const DatabaseReading reading = read_unit(value, unit);
  if (reading.status == DatabaseReading::Status::no_database)
    return refused(
        fmt::format("\"{}\" has a unit outside the built-in ones, and the unit database cannot be read; "
                    "{}",
                    text, wanted_text(wanted)));
  if (reading.status == DatabaseReading::Status::unknown_unit)
    return unknown_unit(text, unit, wanted);
  if (reading.dimension != wanted)
    return wrong_dimension(text, reading, wanted);
  if (!std::isfinite(reading.si))
    return refused(fmt::format("\"{}\" is too large a number", text));
  if (wanted == Dimension::temperature && kind == Kind::difference)
    return {rounded(reading.si - read_unit(0.0, unit).si), {}, {}};
  if (wanted == Dimension::temperature && reading.si < 0.0)
    return refused(fmt::format("\"{}\" is below absolute zero", text));
  return {wanted == Dimension::angle ? reading.si : rounded(reading.si), {}, {}};
}

Parsed count(std::string_view text, double value, std::string_view unit) {
  if (!unit.empty() || value != std::floor(value) || std::abs(value) > 1e15)
    return refused(fmt::format("\"{}\" is not a whole number without unit, such as {}", text,
                               example_text(Dimension::count)));
  return {value, {}, {}};
}

bool is_currency(std::string_view text) {
  return text.size() == 3 &&
         std::all_of(text.begin(), text.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
}

Parsed money(std::string_view text, double value, std::string_view unit, Dimension wanted) {
  const auto slash = std::min(unit.find('/'), unit.size());
  const std::string_view currency = trimmed(unit.substr(0, slash));
  if (!is_currency(currency))
    return refused(fmt::format("\"{}\" has no currency of three capital letters (ISO 4217); {}", text,
                               wanted_text(wanted)));
  const bool per_volume = slash != unit.size();
  if (per_volume != (wanted == Dimension::price))
    return refused(fmt::format("\"{}\" is {}, {}", text, per_volume ? "money per quantity" : "a cost",
                               wanted_text(wanted)));
  if (!per_volume)
    return {value, {}, std::string(currency)};
  const std::string volume_unit = with_trade_names(trimmed(unit.substr(slash + 1)));
  const Parsed volume = measure(text, 1.0, volume_unit, Dimension::volume);
  if (!volume.si)
    return refused(fmt::format("\"{}\" is not money per volume; {}", text, wanted_text(wanted)));
  const double price = value / *volume.si;
  if (!std::isfinite(price))
    return refused(fmt::format("\"{}\" is too large a number", text));
  return {rounded(price), {}, std::string(currency)};
}

Parsed parse(std::string_view text, Dimension wanted, Kind kind) {
  if (text.size() > longest_text)
    return refused(fmt::format("the text is too long for a quantity; {}", wanted_text(wanted)));
  const std::string plain = plain_signs(text);
  const std::string_view body = trimmed(plain);
  if (body.empty())
    return refused(fmt::format("the value is empty; {}", wanted_text(wanted)));
  const NumberText number = read_number(body);
  if (!number.value)
    return refused(fmt::format("\"{}\" {}; {}", text, number.problem, wanted_text(wanted)));
  const std::string_view unit = trimmed(number.rest);
  if (wanted == Dimension::count)
    return count(text, *number.value, unit);
  if (wanted == Dimension::cost || wanted == Dimension::price)
    return money(text, *number.value, unit, wanted);
  if (!unit.empty())
    return measure(text, *number.value, with_trade_names(unit), wanted, kind);
  if (wanted == Dimension::ratio)
    return {*number.value, {}, {}};
  return refused(fmt::format("\"{}\" has no unit, {}", text, wanted_text(wanted)));
}

} // namespace

Parsed parse_quantity(std::string_view text, Dimension wanted) {
  return parse(text, wanted, Kind::quantity);
}

Parsed parse_difference(std::string_view text, Dimension wanted) {
  return parse(text, wanted, Kind::difference);
}

} // namespace purgewright::units
