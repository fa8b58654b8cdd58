#include "labels.hpp"

#include <fmt/format.h>

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

std::string Labels::limits(Length most, Length least) const {
  constexpr double noise = 1e-6; // of a step
  for (int places = fit_decimals();; ++places) {
    const double steps = std::pow(10.0, places);
    const double upper = std::floor(in_unit(most) * steps + noise),
                 lower = std::ceil(in_unit(least) * steps - noise);
    constexpr int finest = 6;
    if (upper > lower || places == finest) {
      return fmt::format("({}/{})", number(from_unit(upper / steps), places),
                         number(from_unit(lower / steps), places));
    }
  }
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
    Label label = size(nominal, fit_decimals(), "⌀");
    if (deviation) {
      label.lines[0] += fmt::format(" {}{} {}", letter, grade,
                                    limits(nominal + deviation->upper, nominal + deviation->lower));
    }
    return label;
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
  constexpr double noise = 1e-6;
  constexpr double fewest = 3.0; // steps of its last digit, so that little of it is rounded away
  int places = decimals();
  while (in_unit(tolerance) * std::pow(10.0, places) < fewest && places < fit_decimals()) {
    ++places;
  }
  const double step = std::pow(10.0, -places);
  const double rounded = std::floor(in_unit(tolerance) / step + noise) * step; // never wider than allowed
  return size(v, places, std::move(before), fmt::format(" ±{}", number(from_unit(rounded), places)));
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
