#include "purgewright/standards/tables.hpp"

#include <array>

namespace purgewright::standards {

namespace {

struct Row {
  double under;     // outside diameter, in
  double tolerance; // plus-minus, in
};

constexpr std::array<Row, 5> rows{{{1.0, 0.004}, {1.5, 0.005}, {2.0, 0.006}, {2.5, 0.007}, {3.5, 0.010}}};

// Diameters arrive by conversion; a tube a picometre under the end of a row is at its end.
constexpr Length rounding = units::metres(1e-12);

} // namespace

std::optional<Length> tube_outside_tolerance(Length outside_diameter) {
  if (!(outside_diameter > Length{}))
    return std::nullopt;
  for (const Row &row : rows)
    if (outside_diameter < units::inches(row.under) - rounding)
      return units::inches(row.tolerance);
  return std::nullopt;
}

double tube_wall_tolerance() {
  return 0.10;
}

std::string_view tube_source() {
  return "ASTM B338, permissible variations in dimensions, from memory";
}

} // namespace purgewright::standards
