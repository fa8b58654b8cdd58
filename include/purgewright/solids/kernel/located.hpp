// A solid with the boxes of its faces, for many questions about what lies near it: what is far by its box is
// never measured.
//
// Units: quantity types. Frame: global.
// Range and errors: SolidError if the kernel fails.
// Guarantee: a box holds its face but for the kernel's confusion distance; no mesh is asked.
// Source: OpenCASCADE 7.6.3.
#pragma once

#include "purgewright/solids/kernel/measure.hpp"

#include <vector>

namespace purgewright::solids::kernel {

struct Located {
  Solid solid;
  Bounds box;
  std::vector<Bounds> face_boxes; // in the kernel's order of faces
};

Located located(Solid const &solid);

// The boxes move along where the solid is only shifted, and are found again where it is turned.
Located placed(Located const &solid, Placement const &placement);

// Least distance between two boxes, zero where they meet.
units::Length apart(Bounds const &a, Bounds const &b);

// Volume that two boxes share.
units::Volume shared(Bounds const &a, Bounds const &b);

bool holds(Bounds const &outer, Bounds const &inner);

} // namespace purgewright::solids::kernel
