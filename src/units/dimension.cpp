#include "purgewright/units/dimension.hpp"

#include "purgewright/units/quantity.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstddef>

namespace purgewright::units {

namespace {

struct DimensionText {
  std::string_view si_unit, plain_name, example_units, example_text;
};

// In the order of the enumeration.
constexpr std::array<DimensionText, 19> dimension_texts{{
    {"1", "a whole number", "no unit", "1 or 3"},
    {"1", "a ratio", "% or ppm", "0.5, 10 % or 50 ppm"},
    {"m", "a length", "mm or in", "5 mm or 0.2 in"},
    {"m2", "an area", "mm2 or in2", "20 mm2 or 0.03 in2"},
    {"m3", "a volume", "L or in3", "10 L or 600 in3"},
    {"kg", "a mass", "kg or lb", "0.5 kg or 1 lb"},
    {"s", "a time", "s or min", "90 s or 2 min"},
    {"m/s", "a velocity", "mm/s or in/min", "2 mm/s or 5 in/min"},
    {"m3/s", "a flow", "L/min or ft3/h", "6 L/min or 12 ft3/h"},
    {"Pa", "a pressure", "bar or psi", "2 bar or 30 psi"},
    {"kg/m3", "a density", "kg/m3 or g/cm3", "4510 kg/m3 or 4.51 g/cm3"},
    {"K", "a temperature", "degC or degF", "427 degC or 800 degF"},
    {"rad", "an angle", "deg or rad", "15 deg or 0.26 rad"},
    {"A", "a current", "A or mA", "40 A"},
    {"V", "a voltage", "V or mV", "10 V"},
    {"W", "a power", "W or kW", "300 W"},
    {"1/s", "a frequency", "1/h or 1/min", "6 1/h or 0.1 1/min"},
    {"1", "a cost", "EUR or USD", "9 EUR or 10 USD"},
    {"1/m3", "a price", "EUR/m3 or USD/ft3", "9 EUR/m3 or 0.25 USD/ft3"},
}};

const DimensionText &text_of(Dimension dimension) {
  return dimension_texts.at(static_cast<std::size_t>(dimension));
}

constexpr double cubic_foot = 0.3048 * 0.3048 * 0.3048;
constexpr double cubic_inch = 0.0254 * 0.0254 * 0.0254;
constexpr double pound = 0.45359237;
constexpr double psi = pound * 9.80665 / (0.0254 * 0.0254);

// `size` is that of the number whose unit is wanted: the value itself, or one it stands beside.
ShopValue metric_value(double si, double size, Dimension dimension) {
  switch (dimension) {
  case Dimension::length:
    return {si * 1e3, "mm"};
  case Dimension::area:
    return {si * 1e6, "mm2"};
  case Dimension::volume:
    return size < 1e-3 ? ShopValue{si * 1e6, "mL"} : ShopValue{si * 1e3, "L"};
  case Dimension::mass:
    return size < 1.0 ? ShopValue{si * 1e3, "g"} : ShopValue{si, "kg"};
  case Dimension::velocity:
    return {si * 1e3, "mm/s"};
  case Dimension::flow:
    return {si * 60e3, "L/min"};
  case Dimension::pressure:
    return size < 1e3 ? ShopValue{si, "Pa"} : ShopValue{si * 1e-3, "kPa"};
  case Dimension::temperature:
    return {si - 273.15, "degC"};
  default:
    return {si, text_of(dimension).si_unit};
  }
}

constexpr double foot = 0.3048;
// From these on a shop speaks of feet: rooms, bottles and gas used; air and gas speeds, but not torch travel.
constexpr double volume_in_feet = 0.1 * cubic_foot, velocity_in_feet = 10.0 * foot / 60.0;

ShopValue inch_value(double si, double size, Dimension dimension) {
  switch (dimension) {
  case Dimension::length:
    return {si / 0.0254, "in"};
  case Dimension::area:
    return {si / (0.0254 * 0.0254), "in2"};
  case Dimension::volume:
    return size < volume_in_feet ? ShopValue{si / cubic_inch, "in3"} : ShopValue{si / cubic_foot, "ft3"};
  case Dimension::mass:
    return {si / pound, "lb"};
  case Dimension::velocity:
    return size < velocity_in_feet ? ShopValue{si * 60.0 / 0.0254, "in/min"}
                                   : ShopValue{si * 60.0 / foot, "ft/min"};
  case Dimension::flow:
    return {si * 3600.0 / cubic_foot, "ft3/h"};
  case Dimension::pressure:
    return {si / psi, "psi"};
  case Dimension::density:
    return {si * cubic_inch / pound, "lb/in3"};
  case Dimension::temperature:
    return {si * 1.8 - 459.67, "degF"};
  case Dimension::price:
    return {si * cubic_foot, "1/ft3"};
  default:
    return {si, text_of(dimension).si_unit};
  }
}

// Purges last seconds to minutes and a hold may last longer: the unit that keeps the number short.
ShopValue time_value(double si, double size) {
  if (size < 300.0)
    return {si, "s"};
  return size < 5.0 * 3600.0 ? ShopValue{si / 60.0, "min"} : ShopValue{si / 3600.0, "h"};
}

ShopValue ratio_value(double si, double size) {
  return size != 0.0 && size < 1e-3 ? ShopValue{si * 1e6, "ppm"} : ShopValue{si, ""};
}

std::string without_trailing_zeros(std::string text) {
  if (text.find('.') == std::string::npos)
    return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.')
    text.pop_back();
  return text;
}

// The digits that do not lead past the value.
std::string directed_text(double value, int digits, Rounding rounding) {
  constexpr double noise = 1e-9; // relative: what conversions leave on a round number
  const int decimals = digits - 1 - static_cast<int>(std::floor(std::log10(std::abs(value))));
  const double places = std::pow(10.0, decimals), steps = value * places, slack = noise * std::abs(steps);
  const double whole = rounding == Rounding::down ? std::floor(steps + slack) : std::ceil(steps - slack);
  return without_trailing_zeros(fmt::format("{:.{}f}", whole / places, std::max(0, decimals)));
}

// At most `digits` significant digits, plain notation for ordinary sizes.
std::string number_text(double value, int digits, Rounding rounding) {
  if (value == 0.0)
    return "0";
  const double size = std::abs(value);
  if (!std::isfinite(value) || size < 1e-6 || size >= 1e9)
    return fmt::format("{:.{}g}", value, digits);
  if (rounding != Rounding::nearest)
    return directed_text(value, digits, rounding);
  // The exponent is read from the rounded text, because rounding may carry into a new digit.
  const std::string rounded = fmt::format("{:.{}e}", value, digits - 1);
  double shown = 0.0;
  std::from_chars(rounded.data(), rounded.data() + rounded.size(), shown);
  const std::size_t mark = rounded.find('e') + 1;
  const std::size_t start = rounded[mark] == '+' ? mark + 1 : mark;
  int exponent = 0;
  std::from_chars(rounded.data() + start, rounded.data() + rounded.size(), exponent);
  const int decimals = std::max(0, digits - 1 - exponent);
  return without_trailing_zeros(fmt::format("{:.{}f}", shown, decimals));
}

ShopValue value_in_unit_of(double si, double beside, Dimension dimension, UnitSystem system) {
  const double size = std::abs(beside);
  switch (dimension) {
  case Dimension::count:
  case Dimension::cost:
    return {si, ""};
  case Dimension::ratio:
    return ratio_value(si, size);
  case Dimension::time:
    return time_value(si, size);
  case Dimension::angle:
    return {si * 180.0 / pi, "deg"};
  case Dimension::frequency:
    return {si * 3600.0, "1/h"};
  default:
    return system == UnitSystem::metric ? metric_value(si, size, dimension) : inch_value(si, size, dimension);
  }
}

} // namespace

std::string_view si_unit(Dimension dimension) {
  return text_of(dimension).si_unit;
}

std::string_view plain_name(Dimension dimension) {
  return text_of(dimension).plain_name;
}

std::string_view example_units(Dimension dimension) {
  return text_of(dimension).example_units;
}

std::string_view example_text(Dimension dimension) {
  return text_of(dimension).example_text;
}

ShopValue shop_value(double si_value, Dimension dimension, UnitSystem system) {
  return value_in_unit_of(si_value, si_value, dimension, system);
}

std::string shop_text(double si_value, Dimension dimension, UnitSystem system, int digits) {
  return shop_text_beside(si_value, si_value, dimension, system, digits);
}

std::string shop_text_beside(double si_value, double beside, Dimension dimension, UnitSystem system,
                             int digits, Rounding rounding) {
  const ShopValue shop = value_in_unit_of(si_value, beside, dimension, system);
  const std::string number = number_text(shop.value, std::max(1, digits), rounding);
  return shop.unit.empty() ? number : fmt::format("{} {}", number, shop.unit);
}

} // namespace purgewright::units
