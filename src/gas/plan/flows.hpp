// Flows of the welding stage; private to the purge plan.
#pragma once

#include "scene.hpp"

namespace purgewright::gas::plan {

// Fills welding flows of both circuits, their reasons and floors.
void choose_welding_flows(const Subject &, Purge &);

// Overpressure the puddle may carry: capillary hold of the molten joint with its safety factor, or the plain
// limit.
units::Pressure bore_limit(const job::Job &);

// Share of the bore's gas that the last run heats to the shielding temperature or more: half the torch's cup
// and a tube radius from the joint, of the bore's length. The reach of a radius: common practice, no source.
double heated_share(const job::Job &, const fixture::Layout &);

} // namespace purgewright::gas::plan
