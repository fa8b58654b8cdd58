// The separate pieces of a Boolean's result.
//
// Units: none. Frame: the solid's.
// Range and errors: SolidError when there is no solid at all.
// Guarantee: pieces in the kernel's order, geometry shared with the argument; largest_piece is the one of
// greatest volume.
// Source: plain topology.
#pragma once

#include "purgewright/solids/kernel/solid.hpp"

#include <vector>

namespace purgewright::solids::kernel {

std::vector<Solid> pieces(Solid const &solid);

Solid largest_piece(Solid const &solid);

} // namespace purgewright::solids::kernel
