// The purge's figures, with formulas and the ids they are made of.
#pragma once

#include "purgewright/gas/purge.hpp"
#include "purgewright/units/figure.hpp"

namespace purgewright::gas {

units::Figures figures(const job::Job &, const Bounds &, const Purge &);

} // namespace purgewright::gas
