#include "job/limits.hpp"

#include "purgewright/units/parse.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace purgewright::job {
namespace {

using units::Dimension;

// The unit most shops would write for a limit when the user has written none of that dimension.
std::string_view usual_unit(const FieldInfo &info) {
  switch (info.dimension) {
  case Dimension::length:
    return info.most >= 5.0 ? "m" : "mm";
  case Dimension::angle:
    return "deg";
  case Dimension::time:
    return "s";
  case Dimension::flow:
    return "L/min";
  case Dimension::pressure:
    return "bar";
  case Dimension::velocity:
    return info.most >= 1.0 ? "m/s" : "mm/s";
  case Dimension::volume:
    return info.most > 1.0 ? "m3" : "L";
  case Dimension::current:
    return "A";
  case Dimension::voltage:
    return "V";
  case Dimension::temperature:
    return "degC";
  case Dimension::ratio:
    return info.most <= 0.05 ? "ppm" : "";
  default:
    return "";
  }
}

// A unit in SI: value = zero + number x size. Only temperatures have a zero of their own.
struct UnitScale {
  double zero = 0.0, size = 0.0; // size 0: no unit of the dimension
};

UnitScale unit_scale(std::string_view unit, Dimension dimension) {
  if (unit.empty()) {
    return {0.0, dimension == Dimension::ratio ? 1.0 : 0.0};
  }
  const auto at = [&](int number) {
    return units::parse_quantity(fmt::format("{} {}", number, unit), dimension).si.value_or(0.0);
  };
  const double zero = dimension == Dimension::temperature ? at(0) : 0.0;
  return {zero, at(1) - zero};
}

enum class Rounding { up, down };

// At most four significant digits, rounded so that the printed limit itself is allowed.
std::string with_unit(double si, UnitScale scale, std::string_view unit, Rounding rounding) {
  const double value = (si - scale.zero) / scale.size;
  const double step = value == 0.0 ? 1.0 : std::pow(10.0, std::floor(std::log10(std::abs(value))) - 3.0);
  const double steps = value / step;
  const double whole = rounding == Rounding::up ? std::ceil(steps - 1e-6) : std::floor(steps + 1e-6);
  const auto number = plain_number(whole * step);
  return unit.empty() ? number : fmt::format("{} {}", number, unit);
}

std::string quantity_range(const FieldInfo &info, std::string_view unit) {
  UnitScale scale = unit_scale(unit, info.dimension);
  if (!(scale.size > 0.0) || unit.empty()) {
    unit = usual_unit(info);
    scale = unit_scale(unit, info.dimension);
  }
  std::string text{units::plain_name(info.dimension)};
  if (info.dimension == Dimension::price) {
    return text + " such as 12 EUR/m3";
  }
  text += fmt::format(" from {} to {}", with_unit(info.least, scale, unit, Rounding::up),
                      with_unit(info.most, scale, unit, Rounding::down));
  if (info.share_allowed) {
    text += ", or a share such as 10 %";
  }
  return text;
}

} // namespace

std::string_view unit_written(std::string_view quantity) {
  const auto last = quantity.find_first_not_of("+-0123456789./,eE \t");
  if (last == std::string_view::npos) {
    return {};
  }
  auto unit = quantity.substr(last);
  while (!unit.empty() && unit.back() == ' ') {
    unit.remove_suffix(1);
  }
  return unit;
}

std::string plain_number(double value) {
  if (value == 0.0 || !std::isfinite(value)) {
    return value == 0.0 ? "0" : fmt::format("{}", value);
  }
  const int exponent = static_cast<int>(std::floor(std::log10(std::abs(value))));
  const int decimals = std::max(0, 3 - exponent);
  std::string text = fmt::format("{:.{}f}", value, decimals);
  if (text.find('.') != std::string::npos) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') {
      text.pop_back();
    }
  }
  return text;
}

std::string allowed_values(const FieldInfo &info, std::string_view unit) {
  switch (info.kind) {
  case FieldKind::quantity:
    return quantity_range(info, unit);
  case FieldKind::count:
    return fmt::format("a whole number from {} to {}", plain_number(info.least), plain_number(info.most));
  case FieldKind::choice:
    return fmt::format("{}", fmt::join(info.choices, ", "));
  case FieldKind::text_list:
    return "a list of texts, each of at most 200 characters";
  case FieldKind::text:
    break;
  }
  if (info.key == Key::job_name) {
    return "1 to 64 letters, digits, - and _, not starting with -";
  }
  return fmt::format("a text of at most {} characters", plain_number(info.most));
}

} // namespace purgewright::job
