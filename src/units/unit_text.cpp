#include "units/unit_text.hpp"

#include "purgewright/units/quantity.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <iterator>
#include <utility>

namespace purgewright::units {

namespace {

using enum Dimension;

constexpr double inch = 0.0254;
constexpr double cubic_inch = inch * inch * inch;
constexpr double cubic_foot = cubic_inch * 1728.0;
constexpr double pound = 0.45359237;
constexpr double psi = pound * 9.80665 / (inch * inch);

constexpr auto everyday_table = std::to_array<EverydayUnit>({
    {"%", ratio, 1e-2},
    {"ppm", ratio, 1e-6},
    {"mm", length, 1e-3},
    {"um", length, 1e-6},
    {"cm", length, 1e-2},
    {"m", length, 1.0},
    {"in", length, inch},
    {"inch", length, inch},
    {"ft", length, 12.0 * inch},
    {"mil", length, inch * 1e-3},
    {"mm2", area, 1e-6},
    {"in2", area, inch *inch},
    {"L", volume, 1e-3},
    {"l", volume, 1e-3},
    {"mL", volume, 1e-6},
    {"m3", volume, 1.0},
    {"in3", volume, cubic_inch},
    {"ft3", volume, cubic_foot},
    {"g", mass, 1e-3},
    {"kg", mass, 1.0},
    {"lb", mass, pound},
    {"s", time, 1.0},
    {"min", time, 60.0},
    {"h", time, 3600.0},
    {"m/s", velocity, 1.0},
    {"mm/s", velocity, 1e-3},
    {"mm/min", velocity, 1e-3 / 60.0},
    {"in/min", velocity, inch / 60.0},
    {"ft/min", velocity, 12.0 * inch / 60.0},
    {"L/min", flow, 1e-3 / 60.0},
    {"l/min", flow, 1e-3 / 60.0},
    {"m3/h", flow, 1.0 / 3600.0},
    {"ft3/h", flow, cubic_foot / 3600.0},
    {"Pa", pressure, 1.0},
    {"kPa", pressure, 1e3},
    {"MPa", pressure, 1e6},
    {"mbar", pressure, 1e2},
    {"bar", pressure, 1e5},
    {"psi", pressure, psi},
    {"kg/m3", density, 1.0},
    {"g/cm3", density, 1e3},
    {"lb/in3", density, pound / cubic_inch},
    {"K", temperature, 1.0},
    {"degC", temperature, 1.0, 273.15},
    {"degF", temperature, 5.0 / 9.0, 459.67},
    {"rad", angle, 1.0},
    {"degree", angle, pi / 180.0},
    {"A", current, 1.0},
    {"V", voltage, 1.0},
    {"W", power, 1.0},
    {"kW", power, 1e3},
    {"1/s", frequency, 1.0},
    {"1/min", frequency, 1.0 / 60.0},
    {"1/h", frequency, 1.0 / 3600.0},
});

struct TradeName {
  std::string_view name; // lower case
  std::string_view unit;
};

// Standard flows (slpm, scfh) are read as flows: the reference conditions belong to the gas model, not to a
// unit. "deg" alone is unknown to the database, and its '"' is the second of arc.
constexpr std::array<TradeName, 20> trade_names{{
    {"cfh", "ft3/h"},  {"scfh", "ft3/h"},  {"cfm", "ft3/min"}, {"scfm", "ft3/min"}, {"lpm", "L/min"},
    {"slpm", "L/min"}, {"ccm", "mL/min"},  {"sccm", "mL/min"}, {"ipm", "in/min"},   {"thou", "mil"},
    {"mils", "mil"},   {"thous", "mil"},   {"\"", "in"},       {"deg", "degree"},   {"degrees", "degree"},
    {"psi", "psi"},    {"inches", "inch"}, {"degc", "degC"},   {"degf", "degF"},    {"ppmv", "ppm"},
}};

struct Sign {
  std::string_view typographic, plain;
};

// Longer sequences first where one begins another.
constexpr std::array<Sign, 19> signs{{
    {"\u00b0C", "degC"}, {"\u00b0F", "degF"}, {"\u00b0", "deg"}, {"\u00b5", "u"}, {"\u03bc", "u"},
    {"\u2033", "\""},    {"\u201d", "\""},    {"\u00b2", "2"},   {"\u00b3", "3"}, {"\u00b7", "."},
    {"\u22c5", "."},     {"\u2212", "-"},     {"\u00a0", " "},   {"\u2009", " "}, {"\u202f", " "},
    {"deg C", "degC"},   {"deg F", "degF"},   {"''", "\""},      {"\t", " "},
}};

constexpr bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
constexpr bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

std::string lower(std::string_view text) {
  std::string result(text);
  for (char &c : result)
    if (c >= 'A' && c <= 'Z')
      c = static_cast<char>(c - 'A' + 'a');
  return result;
}

std::string_view trade_unit(std::string_view name) {
  const std::string key = lower(name);
  const auto *row =
      std::find_if(trade_names.begin(), trade_names.end(), [&](const TradeName &t) { return t.name == key; });
  return row == trade_names.end() ? std::string_view{} : row->unit;
}

// Length of the word at the front of the text: a run of letters, or one other character.
std::size_t word_length(std::string_view text) {
  const auto run = std::find_if_not(text.begin(), text.end(), is_letter) - text.begin();
  return std::max<std::size_t>(1, static_cast<std::size_t>(run));
}

bool may_stand(std::string_view unit, std::size_t i) {
  const char c = unit[i];
  const char before = i == 0 ? ' ' : unit[i - 1];
  if (is_letter(c))
    return true;
  if (is_digit(c)) // an exponent, or the one of "1/h"
    return is_letter(before) || is_digit(before) || before == '^' || before == '-' || before == ')' ||
           (i == 0 && unit.starts_with("1/"));
  if (c == '-') // of an exponent; elsewhere the database would take it for a factor of minus one
    return (is_letter(before) || before == '^') && i + 1 < unit.size() && is_digit(unit[i + 1]);
  return std::string_view("/*^.() ").find(c) != std::string_view::npos;
}

// "lg(re mW)": the database knows levels above a reference; no quantity of a job is one, and its reader of
// them leaks.
bool names_a_reference(std::string_view unit) {
  for (auto at = unit.find('('); at != std::string_view::npos; at = unit.find('(', at + 1)) {
    const auto inside = unit.substr(std::min(unit.find_first_not_of(' ', at + 1), unit.size()));
    if (inside.size() >= 2 && (inside[0] == 'r' || inside[0] == 'R') &&
        (inside[1] == 'e' || inside[1] == 'E'))
      return true;
  }
  return false;
}

} // namespace

std::span<const EverydayUnit> everyday_units() {
  return everyday_table;
}

const EverydayUnit *everyday_unit(std::string_view name) {
  const auto row = std::ranges::find(everyday_table, name, &EverydayUnit::name);
  return row == everyday_table.end() ? nullptr : &*row;
}

std::string plain_signs(std::string_view text) {
  std::string result(text);
  for (const Sign &sign : signs)
    for (auto at = result.find(sign.typographic); at != std::string::npos;
         at = result.find(sign.typographic, at))
      result.replace(at, sign.typographic.size(), sign.plain);
  // "ft^3/h" and "ft3/h" are one spelling to the table of everyday units.
  for (auto at = result.find('^'); at != std::string::npos; at = result.find('^', at + 1))
    if (at + 1 < result.size() && is_digit(result[at + 1]))
      result.erase(at, 1);
  return result;
}

std::string with_trade_names(std::string_view unit) {
  std::string result;
  for (std::string_view left = unit; !left.empty();) {
    const std::string_view word = left.substr(0, word_length(left));
    const std::string_view meaning = trade_unit(word);
    if (meaning.empty())
      result += word;
    else if (word.size() == unit.size() || std::all_of(meaning.begin(), meaning.end(), is_letter))
      result += meaning;
    else
      (result += '(').append(meaning) += ')'; // "cfh/..." divides the whole flow
    left.remove_prefix(word.size());
  }
  return result.starts_with('/') ? "1" + result : result;
}

bool is_unit_text(std::string_view unit) {
  if (unit.empty() || unit.size() > 40 || names_a_reference(unit))
    return false;
  for (std::size_t i = 0; i < unit.size(); ++i)
    if (!may_stand(unit, i))
      return false;
  return true;
}

} // namespace purgewright::units
