// Holds the solids against the closed forms: two independent answers to every volume.
//
// Range and errors: kernel::SolidError naming the part or gas space and both values when they disagree by
// more than volume_agreement of the closed form. Guarantee: every made part, the cap, and both gas spaces are
// compared.
#pragma once

#include "purgewright/fixture/volumes.hpp"
#include "purgewright/solids/parts.hpp"

namespace purgewright::solids {

// Either answer is good to 1e-9 (kernel/measure.hpp, fixture/shapes.hpp). The smallest feature of a small
// body, the drill point under one tapped hole, is 3e-6 of it and so shows when it is missing.
inline constexpr double volume_agreement = 1e-6;

void require_agreement(const job::Job &, const fixture::Volumes &, const Assembly &, const GasSpaces &);

} // namespace purgewright::solids
