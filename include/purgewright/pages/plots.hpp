// Plots of a design as the bytes of an SVG: temperatures over the weld, oxygen over the prepurge.
//
// Units: mm on paper; axes in the job's units, oxygen in ppm. Frame: none. Range and errors: the purge and
// heat of the design must be known; std::runtime_error when no font is installed. Guarantee: same findings,
// same bytes. Source: heat/plan.hpp, gas/curves.hpp.
#pragma once

#include "purgewright/report/results.hpp"

#include <string>

namespace purgewright::pages {

// Joint, cap centre and tube over the O-ring; arcs shaded.
std::string temperatures_svg(const report::Findings &);

// Inside and outside of the joint, with the bounds of mixing.
std::string oxygen_svg(const report::Findings &);

} // namespace purgewright::pages
