// The one way a length or an angle becomes a kernel number, and back.
//
// Units: the kernel works in millimetres and radians.
// Guarantee: mm() rounds to a grid of 1e-9 mm, a hundredth of the kernel's confusion distance, so that a
// dimension reached by two ways of adding comes out bit-equal and faces meant to coincide do coincide;
// written files then carry 25.4 and not 25.400000000000002. Safe from any thread.
// Source: common practice, no source.
#pragma once

#include "purgewright/units/quantity.hpp"

namespace purgewright::solids::kernel {

double mm(units::Length length);
double rad(units::Angle angle);

units::Length length_from_mm(double millimetres);
units::Area area_from_mm2(double square_millimetres);
units::Volume volume_from_mm3(double cubic_millimetres);

} // namespace purgewright::solids::kernel
