// Tools and hands as solids, and the places they sweep; private to the solids floor.
#pragma once

#include "purgewright/fixture/access.hpp"
#include "purgewright/solids/kernel/distance.hpp"
#include "purgewright/solids/kernel/solid.hpp"

#include <vector>

namespace purgewright::solids {

kernel::Solid as_solid(const fixture::Box &);
kernel::Solid as_solid(const fixture::Turned &);
kernel::Solid as_solid(const fixture::Approach &); // one along X
kernel::Line axis_of(const fixture::Approach &);
kernel::Line axis_of(const fixture::Turned &);

// All that the cap's widest half passes through on its way straight down from `top` to the tube's axis; below
// it the cavity is round and wider than the slot.
std::vector<kernel::Solid> lowered_cap(const job::Cap &, units::Length top);

kernel::Solid torch_barrel(const fixture::TorchBody &);
kernel::Solid torch_handle(const fixture::TorchBody &);

} // namespace purgewright::solids
