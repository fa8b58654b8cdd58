// Metal that two parts claim at once, by Boolean common of every pair that stands near enough.
//
// Units: quantity types. Frame: joint's frame.
// Range and errors: kernel::SolidError if the kernel fails.
// Guarantee: every pair whose boxes share more than touching_volume is tried, further pieces of a part and
// the tube and cap too; a shared volume up to touching_volume is faces that lie on each other. Pieces that
// keep clear of one another are tried on a third in one operation, and one by one when that finds more. Order
// of parts in the assembly.
#pragma once

#include "purgewright/solids/standing.hpp"

namespace purgewright::solids {

// A skin as thick as the kernel's confusion distance, 1e-7 mm, over 100 cm2.
inline constexpr units::Volume touching_volume = units::cubic_metres(1e-12);

struct Clash {
  std::string first, second;
  units::Volume shared{};
};

std::vector<Clash> find_clashes(const std::vector<Standing> &);

} // namespace purgewright::solids
