// Shapes that several parts cut with; private to the solids floor.
#pragma once

#include "purgewright/fixture/layout.hpp"
#include "purgewright/solids/kernel/primitives.hpp"

#include <vector>

namespace purgewright::solids {

using kernel::Point;
using kernel::ProfilePoint;
using kernel::Solid;
using units::Length;

// Drill-pointed step from one bore down to a smaller one takes this length.
Length step_length(Length large, Length small);

// Profile of a gas way seen from the mouth inwards, axial 0 at the face it is drilled from: spot face (if any),
// port, drill-pointed step, passage down to `end`; it starts outside the metal. The caller closes it.
std::vector<ProfilePoint> port_profile(Length spot_radius, Length spot_depth, Length port_radius, Length port_depth,
                                       Length passage_radius, Length end);

// Cavity, slot (unbroken edge, up to `slot_top`), plenum and diffuser of the chamber as separate tools. The plenum
// and cavity end `overshoot` beyond the +X face: nothing for the gas space, the cutter's overshoot for the metal.
std::vector<Solid> chamber_spaces(const fixture::ChamberBody &, Length slot_top, Length overshoot);

} // namespace purgewright::solids
