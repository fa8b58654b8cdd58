#include "labels.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <span>
#include <utility>

namespace purgewright::drawing {

using fixture::Length;

double Labels::in_unit(Length v) const {
  return unit_ == Unit::inch ? units::to_inches(v) : units::to_millimetres(v);
}

std::string Labels::number(Length v, int places) const {
  constexpr double noise = 1e-9; // of the unit: a tie goes away from zero, however a conversion left it
  std::string text = fmt::format("{:.{}f}", in_unit(v) + std::copysign(noise, v.value()), places);
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
  return size(v, decimals(), std::move(before), std::move(after));
}

Label Labels::size(Length v, int places, std::string before, std::string after) const {
  const std::string text = number(v, places);
  return {{before + text + after}, v, in_unit(v), std::pow(10.0, -places), before.size(), text.size()};
}

namespace {

// To what limits are rounded, coarsest first, and what share of what is allowed that must leave: an inch shop
// reads thousandths and half thousandths without a thought, and tenths of one at the finest.
struct Step {
  double step;
  int places;
  double share_left;
};
constexpr double most_of_it = 0.6, enough = 0.4;
constexpr std::array<Step, 5> inch_steps{
    {{1e-3, 3, most_of_it}, {5e-4, 4, most_of_it}, {1e-4, 4, enough}, {1e-5, 5, enough}, {1e-6, 6, 0.0}}};
constexpr std::array<Step, 4> metric_steps{
    {{1e-3, 3, most_of_it}, {1e-4, 4, enough}, {1e-5, 5, enough}, {1e-6, 6, 0.0}}};
constexpr double noise = 1e-6; // of a step

} // namespace

Label Labels::limited(Length v, Length most, Length least, std::string_view sign,
                      std::string_view symbol) const {
  const bool inch = unit_ == Unit::inch;
  const std::span<const Step> steps = inch ? std::span<const Step>(inch_steps) : metric_steps;
  for (const auto &[step, places, share_left] : steps) {
    const double upper = std::floor(in_unit(most) / step + noise),
                 lower = std::ceil(in_unit(least) / step - noise);
    if ((upper - lower) * step < share_left * in_unit(most - least)) {
      continue;
    }
    const std::string high = number(from_unit(upper * step), places),
                      low = number(from_unit(lower * step), places);
    return inch ? size(v, fit_decimals(), fmt::format("{}{}-{} (", sign, low, high),
                       fmt::format("{}{})", symbol.empty() ? "" : " ", symbol))
                : size(v, std::string(sign),
                       fmt::format("{}{} ({}/{})", symbol.empty() ? "" : " ", symbol, high, low));
  }
  return size(v);
}

Label Labels::diameter(Length radius, std::string before, std::string after) const {
  return size(2.0 * radius, before + "⌀", std::move(after));
}

Label Labels::fitted(Length radius, char letter, int grade) const {
  const Length nominal = 2.0 * radius;
  const bool hole = letter >= 'A' && letter <= 'Z';
  const auto deviation = hole ? standards::hole_deviation(nominal, letter, grade)
                              : standards::shaft_deviation(nominal, letter, grade);
  if (unit_ == Unit::inch) { // sizes, since a rounded nominal with rounded deviations may be another fit
    return deviation ? limited(nominal, nominal + deviation->upper, nominal + deviation->lower, "⌀",
                               fmt::format("{}{}", letter, grade))
                     : size(nominal, fit_decimals(), "⌀");
  }
  Label label = diameter(radius);
  if (deviation) {
    const auto signed_text = [&](Length v) {
      const std::string text = number(v, fit_decimals());
      return v > Length{} ? "+" + text : text;
    };
    const std::string upper = deviation->upper == Length{} ? "0" : signed_text(deviation->upper);
    const std::string lower = deviation->lower == Length{} ? "0" : signed_text(deviation->lower);
    label.lines[0] += fmt::format(" {}{} ({}/{})", letter, grade, upper, lower);
  }
  return label;
}

Label Labels::plus_minus(Length v, Length tolerance, std::string before) const {
  if (unit_ == Unit::inch) {
    return inch_plus_minus(v, tolerance, std::move(before));
  }
  constexpr double fewest = 3.0; // steps of its last digit, so that little of it is rounded away
  int places = decimals();
  while (in_unit(tolerance) * std::pow(10.0, places) < fewest && places < fit_decimals()) {
    ++places;
  }
  const double step = std::pow(10.0, -places);
  const double rounded = std::floor(in_unit(tolerance) / step + noise) * step; // never wider than allowed
  return size(v, places, std::move(before), fmt::format(" ±{}", number(from_unit(rounded), places)));
}

// What the nominal is off by as printed comes out of the tolerance, so that no limit lies outside. Both have
// as many decimals (ASME Y14.5).
Label Labels::inch_plus_minus(Length v, Length tolerance, std::string before) const {
  for (const auto &[step, places, share_left] : inch_steps) {
    const double digit = std::pow(10.0, -places), printed = std::round(in_unit(v) / digit) * digit;
    const double left = in_unit(tolerance) - std::abs(printed - in_unit(v));
    const double rounded = std::floor(left / step + noise) * step;
    if (rounded >= share_left * in_unit(tolerance)) {
      return size(v, places, std::move(before), fmt::format(" ±{}", number(from_unit(rounded), places)));
    }
  }
  return size(v);
}

std::string Labels::zone(Length width) const {
  const std::span<const Step> steps = unit_ == Unit::inch ? std::span<const Step>(inch_steps) : metric_steps;
  const auto whole = [&](const Step &s) { return std::floor(in_unit(width) / s.step + noise) * s.step; };
  const auto chosen =
      std::ranges::find_if(steps, [&](const Step &s) { return whole(s) >= s.share_left * in_unit(width); });
  return number(from_unit(whole(*chosen)), chosen->places);
}

std::vector<std::string> Labels::tapped(const standards::Screw &screw, int count, Length thread,
                                        const fixture::Drilling &drill) const {
  return {fmt::format("{}× {} ↧{}", count, screw.callout, number(thread)),
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
