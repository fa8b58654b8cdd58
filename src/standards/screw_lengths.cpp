#include "purgewright/standards/screw_lengths.hpp"

#include <algorithm>
#include <array>

namespace purgewright::standards {

units::Length listed_screw_length(units::Length least, bool inch) {
  constexpr std::array<double, 17> eighths{2,  2.5, 3,  4,  5,  6,  7,  8, 10,
                                           12, 14,  16, 18, 20, 22, 24, 28}; // in/8
  constexpr std::array<double, 18> lengths{6,  8,  10, 12, 16, 20, 25, 30, 35,
                                           40, 45, 50, 55, 60, 65, 70, 80, 90}; // mm
  constexpr double rounding = 1e-6; // mm: a need that is a listed length by design
  const auto shortest = [&](const auto &list, double step) {
    const auto found = std::ranges::lower_bound(list, (units::to_millimetres(least) - rounding) / step);
    return units::millimetres(step * (found == list.end() ? list.back() : *found));
  };
  constexpr double eighth = 25.4 / 8.0; // mm
  return inch ? shortest(eighths, eighth) : shortest(lengths, 1.0);
}

} // namespace purgewright::standards
