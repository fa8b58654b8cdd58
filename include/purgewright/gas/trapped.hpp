// Pressure of gas trapped in a tube that is closed when its last run heats it.
//
// Units: quantity types. Errors: std::domain_error with the function's name and the value.
// Guarantee: pure functions.
#pragma once

#include "purgewright/gas/properties.hpp"
#include "purgewright/units/quantity.hpp"

namespace purgewright::gas {

// Rise of pressure when a fraction of the closed volume goes from `start` to `heated` and the rest stays at
// `start`, the pressure being the same throughout: p0 (1/(1 - f + f T0/T1) - 1). Fraction 0 to 1,
// temperatures above 0; negative when the gas cools. Source: ideal gas law, moles and volume kept.
units::Pressure trapped_rise(double heated_fraction, units::Temperature start, units::Temperature heated,
                             units::Pressure absolute = standard_atmosphere);

// Greatest fraction that may be heated before the rise reaches `limit` >= 0; 1 where no fraction reaches it.
// heated > start.
double heated_fraction_for(units::Pressure limit, units::Temperature start, units::Temperature heated,
                           units::Pressure absolute = standard_atmosphere);

} // namespace purgewright::gas
