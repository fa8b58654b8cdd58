#include "purgewright/standards/screw_lengths.hpp"

#include <algorithm>
#include <array>

namespace purgewright::standards {

units::Length listed_screw_length(units::Length least) {
  constexpr std::array<double, 18> lengths{6,  8,  10, 12, 16, 20, 25, 30, 35,
                                           40, 45, 50, 55, 60, 65, 70, 80, 90}; // mm
  constexpr double rounding = 1e-6; // mm: a need that is a listed length by design
  const auto found = std::ranges::lower_bound(lengths, units::to_millimetres(least) - rounding);
  return units::millimetres(found == lengths.end() ? lengths.back() : *found);
}

} // namespace purgewright::standards
