#include "purgewright/standards/tables.hpp"

#include <array>
#include <cstddef>

namespace purgewright::standards {

namespace {

using units::micrometres;
using units::millimetres;

constexpr int grade_first = 5;
constexpr int grade_last = 13;

// Magnitude of the fundamental deviation by letter; ISO 286-1 gives a hole the shaft's with the other sign.
struct Step {
  double over, up_to;           // nominal, mm
  std::array<double, 9> grades; // IT5 to IT13, um
  double d, e, f, g;            // um
  double k;                     // lower deviation of shaft k for grades up to 7, um
  double n;                     // under nominal, the upper deviation of hole N7, um
};

constexpr std::array<Step, 7> steps{{
    {3, 6, {5, 8, 12, 18, 30, 48, 75, 120, 180}, 30, 20, 10, 4, 1, 4},
    {6, 10, {6, 9, 15, 22, 36, 58, 90, 150, 220}, 40, 25, 13, 5, 1, 4},
    {10, 18, {8, 11, 18, 27, 43, 70, 110, 180, 270}, 50, 32, 16, 6, 1, 5},
    {18, 30, {9, 13, 21, 33, 52, 84, 130, 210, 330}, 65, 40, 20, 7, 2, 7},
    {30, 50, {11, 16, 25, 39, 62, 100, 160, 250, 390}, 80, 50, 25, 9, 2, 8},
    {50, 80, {13, 19, 30, 46, 74, 120, 190, 300, 460}, 100, 60, 30, 10, 2, 9},
    {80, 120, {15, 22, 35, 54, 87, 140, 220, 350, 540}, 120, 72, 36, 12, 3, 10},
}};

// Nominal sizes arrive by arithmetic; a picometre over a step's end still belongs to the step.
constexpr Length rounding = units::metres(1e-12);

const Step *step_of(Length nominal) {
  for (const Step &step : steps)
    if (nominal > millimetres(step.over) + rounding && nominal <= millimetres(step.up_to) + rounding)
      return &step;
  return nullptr;
}

std::optional<double> distance_from_nominal(const Step &step, char letter) {
  switch (letter) {
  case 'd':
    return step.d;
  case 'e':
    return step.e;
  case 'f':
    return step.f;
  case 'g':
    return step.g;
  case 'h':
    return 0.0;
  default:
    return std::nullopt;
  }
}

std::optional<double> tolerance(const Step &step, int grade) {
  if (grade < grade_first || grade > grade_last)
    return std::nullopt;
  return step.grades[static_cast<std::size_t>(grade - grade_first)];
}

Limits micrometre_limits(double lower, double upper) {
  return {micrometres(lower), micrometres(upper)};
}

} // namespace

std::optional<Limits> hole_deviation(Length nominal, char letter, int grade) {
  const Step *step = step_of(nominal);
  if (step == nullptr || letter < 'A' || letter > 'Z')
    return std::nullopt;
  const auto width = tolerance(*step, grade);
  if (letter == 'N' && grade == 7) {
    return micrometre_limits(-step->n - *width, -step->n);
  }
  const auto distance = distance_from_nominal(*step, static_cast<char>(letter - 'A' + 'a'));
  if (!distance || !width)
    return std::nullopt;
  return micrometre_limits(*distance, *distance + *width);
}

std::optional<Limits> shaft_deviation(Length nominal, char letter, int grade) {
  const Step *step = step_of(nominal);
  if (step == nullptr)
    return std::nullopt;
  const auto width = tolerance(*step, grade);
  if (!width)
    return std::nullopt;
  if (letter == 'k') {
    const double lower = grade <= 7 ? step->k : 0.0;
    return micrometre_limits(lower, lower + *width);
  }
  const auto distance = distance_from_nominal(*step, letter);
  if (!distance)
    return std::nullopt;
  return micrometre_limits(-*distance - *width, -*distance);
}

std::string_view fits_source() {
  return "ISO 286-1 tables 1, 4 and 5; hole N7 and deviations over 80 mm from memory of the standard";
}

} // namespace purgewright::standards
