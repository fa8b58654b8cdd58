// Room that hands and tools find, measured on the exact solids: the second answer beside fixture/access.hpp.
//
// Frame: joint's frame.
// Range and errors: the layout must be buildable; kernel::SolidError if the kernel fails, and from
// require_clearance_agreement when the closed form contradicts the solids, naming both values.
// Guarantee: distances to the kernel's confusion distance, the sight window to sight_accuracy; zero where
// bodies meet. The tube counts without its vents. Parts and faces farther off by their boxes than what is
// found already are not measured.
#pragma once

#include "purgewright/fixture/access.hpp"
#include "purgewright/solids/standing.hpp"

namespace purgewright::solids {

inline constexpr units::Angle sight_accuracy = units::radians(1e-6);

fixture::Clearances measure_clearances(const job::Job &, const fixture::Layout &,
                                       const std::vector<Standing> &);

// Room beside a tool among these parts alone: a fixture that is being put together.
units::Length tool_room(const fixture::Approach &, const std::vector<Standing> &);

// A micrometre: below what any of it can be made or held to, above the noise of either answer.
inline constexpr units::Length clearance_agreement = units::micrometres(1.0);

// The closed form may say less room than there is, where it takes a part for its plain block, never more.
void require_clearance_agreement(const fixture::Clearances &measured, const fixture::Clearances &closed_form);

} // namespace purgewright::solids
