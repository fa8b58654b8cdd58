// Breaks edges chosen by where they lie.
//
// Units: quantity types. Frame: that of the solid.
// Range and errors: SolidError when no edge is chosen, or the kernel cannot make the chamfer; the text
// then names the edges that fail when tried alone.
// Guarantee: the result is one closed valid solid; edges are taken in the solid's own order. Chamfer last:
// later cuts through a chamfer are the frailest operation there is.
// Source: OpenCASCADE 7.6.3 behaviour as measured.
#pragma once

#include "purgewright/solids/kernel/frame.hpp"
#include "purgewright/solids/kernel/solid.hpp"
#include "purgewright/units/quantity.hpp"

namespace purgewright::solids::kernel {

// An edge is chosen when it lies wholly within this box, give or take selection_slack. least.z ==
// greatest.z chooses edges in that plane.
struct EdgeBox {
  Point least;
  Point greatest;
};

inline constexpr units::Length selection_slack = units::micrometres(0.1);

// Edges where two faces meet at an angle; seams and tangent joins are left out.
int count_edges(Solid const &solid, EdgeBox const &where);

// Equal legs of `distance` on both faces.
Solid chamfer_edges(Solid const &solid, EdgeBox const &where, units::Length distance);

} // namespace purgewright::solids::kernel
