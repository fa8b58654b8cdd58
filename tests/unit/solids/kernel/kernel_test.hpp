// Shorthand for tests of solids: points in millimetres and relative comparison.
//
// Units: millimetres where a name says mm. Frame: global.
// Range and errors: none. Guarantee: none beyond the tests.
// Source: none.
#pragma once

#include "purgewright/solids/kernel/frame.hpp"
#include "purgewright/solids/kernel/measure.hpp"
#include "purgewright/solids/kernel/solid.hpp"
#include "purgewright/units/quantity.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace purgewright::test {

inline units::Length length(double mm) {
  return units::millimetres(mm);
}

inline solids::kernel::Point point(double x, double y, double z) {
  return {length(x), length(y), length(z)};
}

inline double mm3(units::Volume volume) {
  return volume.value() * 1e9;
}
inline double mm2(units::Area area) {
  return area.value() * 1e6;
}
inline double volume_mm3(solids::kernel::Solid const &solid) {
  return mm3(solids::kernel::volume(solid));
}

inline double off(double value, double expected) {
  return std::abs(value / expected - 1.0);
}

inline double off(solids::kernel::Point const &p, double x, double y, double z) {
  using units::to_millimetres;
  return std::max({std::abs(to_millimetres(p.x) - x), std::abs(to_millimetres(p.y) - y),
                   std::abs(to_millimetres(p.z) - z)});
}

// What the integration promises, see measure.hpp.
inline constexpr double volume_accuracy = 1e-9;
// Boxes are good to the kernel's confusion distance, 1e-7 mm, of edges and faces together.
inline constexpr double box_accuracy_mm = 3e-7;

inline constexpr double pi = units::pi;

} // namespace purgewright::test
