// Lengths at which socket head screws are listed.
//
// Units: quantity types, under the head. Errors: none; beyond the list its longest.
// Guarantee: the shortest listed length not under the need. Source: preferred lengths of ISO 4762 and ASME
// B18.3, from memory.
#pragma once

#include "purgewright/units/quantity.hpp"

namespace purgewright::standards {

units::Length listed_screw_length(units::Length least, bool inch = false);

} // namespace purgewright::standards
