// Every piece of the assembly where it stands, ready to be measured against the others.
//
// Frame: joint's frame. Range and errors: kernel::SolidError if the kernel fails.
// Guarantee: the assembly's order, further pieces of a part after its first; the assembly must outlive the
// names.
#pragma once

#include "purgewright/solids/kernel/located.hpp"
#include "purgewright/solids/parts.hpp"

#include <string_view>
#include <vector>

namespace purgewright::solids {

struct Standing {
  std::string_view name; // of the part in the assembly
  PartKind kind = PartKind::made;
  kernel::Located at;
};

std::vector<Standing> stand(const Assembly &);

} // namespace purgewright::solids
