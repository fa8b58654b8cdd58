// Laws of a layout as they are gathered; private to the judges in this folder.
#pragma once

#include "purgewright/fixture/layout.hpp"
#include "purgewright/job/job.hpp"

#include <fmt/format.h>

#include <cmath>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::test {

// Rounding of a sum of ten sizes of 100 mm is below 1e-13 m; a thousand times that is no metal.
inline constexpr double rounding = 1e-7; // mm
// Metal thinner than this tears out when drilled or bored: half of the layout's own least web.
inline constexpr double web = 0.75; // mm

inline double mm(units::Length length) {
  return units::to_millimetres(length);
}

// Length of the point of a 118 degree drill.
inline double point(double radius) {
  return radius / std::tan(59.0 * units::pi / 180.0);
}

struct Laws {
  std::vector<std::string> broken{};
  void more(double value, double limit, std::string_view what) {
    if (!(value >= limit - rounding)) {
      broken.push_back(fmt::format("{}: {:.6f}, least {:.6f}", what, value, limit));
    }
  }
};

// Cradle stands, base plate and slot cover.
void judge_bench(const job::Job &, const fixture::Layout &, Laws &);

} // namespace purgewright::test
