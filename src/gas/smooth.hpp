// A step without corners between two levels, for bands that are published as bands.
#pragma once

#include <algorithm>

namespace purgewright::gas::detail {

// 0 at and below `from`, 1 at and above `to`, cubic with flat ends between; from < to.
constexpr double smooth_step(double x, double from, double to) {
  const double t = std::clamp((x - from) / (to - from), 0.0, 1.0);
  return t * t * (3.0 - 2.0 * t);
}

} // namespace purgewright::gas::detail
