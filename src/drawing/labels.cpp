#include "labels.hpp"

#include <fmt/format.h>

#include <utility>

namespace purgewright::drawing {

using fixture::Length;

double Labels::in_unit(Length v) const {
  return unit_ == Unit::inch ? units::to_inches(v) : units::to_millimetres(v);
}

std::string Labels::number(Length v, int places) const {
  std::string text = fmt::format("{:.{}f}", in_unit(v), places);
  if (unit_ == Unit::inch) { // ASME Y14.5: no zero before the point, trailing zeros stay
    if (text.starts_with("0.")) {
      text.erase(0, 1);
    } else if (text.starts_with("-0.")) {
      text.erase(1, 1);
    }
    return text;
  }
  while (text.find('.') != std::string::npos && (text.back() == '0' || text.back() == '.')) {
    const bool point = text.back() == '.';
    text.pop_back();
    if (point) {
      break;
    }
  }
  return text == "-0" ? "0" : text;
}

std::string Labels::number(Length v) const {
  return number(v, decimals());
}

Label Labels::size(Length v, std::string before, std::string after) const {
  const std::string text = number(v);
  return {{before + text + after}, v, in_unit(v), std::pow(10.0, -decimals()), before.size(), text.size()};
}

Label Labels::diameter(Length radius, std::string before, std::string after) const {
  return size(2.0 * radius, before + "⌀", std::move(after));
}

Label Labels::fitted(Length radius, char letter, int grade) const {
  const Length nominal = 2.0 * radius;
  const bool hole = letter >= 'A' && letter <= 'Z';
  const auto limits = hole ? standards::hole_deviation(nominal, letter, grade)
                           : standards::shaft_deviation(nominal, letter, grade);
  Label label = diameter(radius);
  if (limits) {
    const auto signed_text = [&](Length v) {
      const std::string text = number(v, fit_decimals());
      return v > Length{} ? "+" + text : text;
    };
    const std::string upper = limits->upper == Length{} ? "0" : signed_text(limits->upper);
    const std::string lower = limits->lower == Length{} ? "0" : signed_text(limits->lower);
    label.lines[0] += fmt::format(" {}{} ({}/{})", letter, grade, upper, lower);
  }
  return label;
}

Label Labels::plus_minus(Length v, Length tolerance, std::string before) const {
  const double step = std::pow(10.0, -decimals()), noise = 1e-6;
  const double rounded = std::floor(in_unit(tolerance) / step + noise) * step; // never wider than allowed
  const Length printed = unit_ == Unit::inch ? units::inches(rounded) : units::millimetres(rounded);
  return size(v, std::move(before), fmt::format(" ±{}", number(printed)));
}

std::vector<std::string> Labels::tapped(const standards::Screw &screw, int count, Length thread,
                                        const fixture::Drilling &drill) const {
  // Screws are metric in every shop: their callout stays so, its depths in the sheet's unit.
  return {fmt::format("{}× {}×{:g}-6H ↧{}", count, screw.name, in_mm(screw.pitch), number(thread)),
          fmt::format("drill ⌀{} ↧{}", number(2.0 * drill.radius), number(drill.depth))};
}

std::string Labels::roughness(double micrometres) const {
  // Both series double from step to step: 1.6 is called 63, 3.2 is called 125 (ISO 1302, ASME B46.1).
  constexpr double at_one_point_six = 62.5 / 1.6;
  return unit_ == Unit::inch ? fmt::format("{:.0f} µin", std::ceil(micrometres * at_one_point_six))
                             : fmt::format("Ra {:g}", micrometres);
}

Label Labels::text(std::vector<std::string> lines) {
  return {.lines = std::move(lines)};
}

} // namespace purgewright::drawing
