// A solid moved to its place.
//
// Units: quantity types. Frame: global; see Placement in frame.hpp.
// Range and errors: SolidError for a zero axis.
// Guarantee: no copy of geometry; the argument stays where it was.
// Source: plain geometry.
#pragma once

#include "purgewright/solids/kernel/frame.hpp"
#include "purgewright/solids/kernel/solid.hpp"

namespace purgewright::solids::kernel {

Solid placed(Solid const &solid, Placement const &placement);

} // namespace purgewright::solids::kernel
