// Volume, area, box and counts of a solid.
//
// Units: quantity types. Frame: global.
// Range and errors: SolidError if the kernel fails.
// Guarantee: volume and area to 1e-9 relative on plane, cylinder, cone and sphere faces, also where
// cylinders cross, and to 1e-8 on a torus; boxes exact to the kernel's confusion distance and never taken
// from a mesh. Measuring changes nothing. Source: adaptive face integration; measured against Archimedes'
// crossing cylinders, see the tests.
#pragma once

#include "purgewright/solids/kernel/frame.hpp"
#include "purgewright/solids/kernel/solid.hpp"
#include "purgewright/units/quantity.hpp"

namespace purgewright::solids::kernel {

struct Bounds {
  Point least;
  Point greatest;
};

units::Volume volume(Solid const &solid);
units::Area surface_area(Solid const &solid);
Point centroid(Solid const &solid);
Bounds bounding_box(Solid const &solid);

int face_count(Solid const &solid);
int solid_count(Solid const &solid);

// Valid boundary, exactly one solid, every shell closed, positive volume.
bool is_one_closed_solid(Solid const &solid);

} // namespace purgewright::solids::kernel
