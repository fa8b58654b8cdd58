// The kernel shape behind a Solid, for the floors that may use the kernel (drawing, exchange).
//
// Units: millimetres. Frame: the solid's.
// Range and errors: meshed_shape as mesh.hpp.
// Guarantee: the shape must not be changed nor meshed in place; meshed_shape gives a copy that carries
// triangles, made afresh at each call.
// Source: OpenCASCADE 7.6.3.
#pragma once

#include "purgewright/solids/kernel/frame.hpp"
#include "purgewright/solids/kernel/mesh.hpp"
#include "purgewright/solids/kernel/solid.hpp"

#include <TopoDS_Shape.hxx>
#include <gp_Ax2.hxx>
#include <gp_Pnt.hxx>
#include <gp_Trsf.hxx>

namespace purgewright::solids::kernel {

inline TopoDS_Shape const &occt(Solid const &solid) {
  return solid.shape();
}
gp_Pnt occt(Point const &point);
gp_Ax2 occt(Frame const &frame);
gp_Trsf occt(Placement const &placement);

TopoDS_Shape meshed_shape(Solid const &solid, MeshOptions const &options);

} // namespace purgewright::solids::kernel
