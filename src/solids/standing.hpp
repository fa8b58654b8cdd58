// Parts where they stand, with their boxes; private to the solids floor.
#pragma once

#include "purgewright/solids/kernel/measure.hpp"
#include "purgewright/solids/parts.hpp"

namespace purgewright::solids {

struct Standing {
  std::string_view name; // of the part in the assembly, which must outlive this
  kernel::Solid solid;   // joint's frame
  kernel::Bounds box;
};

enum class Bought { included, left_out };

// Every piece, in the assembly's order.
std::vector<Standing> stand(const Assembly &, Bought);

// Least distance between the boxes, zero where they meet.
units::Length apart(const kernel::Bounds &, const kernel::Bounds &);

} // namespace purgewright::solids
