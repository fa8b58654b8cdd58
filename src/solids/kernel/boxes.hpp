// Faces of a solid and boxes of kernel shapes; private to the kernel wrapper.
//
// Units: quantity types. Frame: global.
// Range and errors: Standard_Failure if the kernel fails: to be called inside guarded().
// Guarantee: no mesh is asked, no tolerance added.
// Source: OpenCASCADE 7.6.3.
#pragma once

#include "purgewright/solids/kernel/measure.hpp"

#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS_Shape.hxx>

namespace purgewright::solids::kernel {

TopTools_IndexedMapOfShape faces_of(Solid const &solid); // from 1 on
Bounds box_of(TopoDS_Shape const &shape);

} // namespace purgewright::solids::kernel
