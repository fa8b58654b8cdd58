#include "purgewright/solids/kernel/scale.hpp"

#include <cmath>

namespace purgewright::solids::kernel {

double mm(units::Length length) {
  constexpr double steps_per_metre = 1e12;
  constexpr double steps_per_millimetre = 1e9;
  return std::round(length.value() * steps_per_metre) / steps_per_millimetre;
}

double rad(units::Angle angle) {
  return angle.value();
}

units::Length length_from_mm(double millimetres) {
  return units::millimetres(millimetres);
}

units::Area area_from_mm2(double square_millimetres) {
  return units::square_metres(square_millimetres * 1e-6);
}

units::Volume volume_from_mm3(double cubic_millimetres) {
  return units::cubic_metres(cubic_millimetres * 1e-9);
}

} // namespace purgewright::solids::kernel
