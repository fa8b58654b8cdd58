// Flows of the welding stage; private to the purge plan.
#pragma once

#include "scene.hpp"

namespace purgewright::gas::plan {

// Fills welding flows of both circuits, their reasons and floors.
void choose_welding_flows(const Subject &, Purge &);

// Overpressure the puddle may carry: capillary hold of the molten joint with its safety factor, or the plain
// limit.
units::Pressure bore_limit(const job::Job &);

} // namespace purgewright::gas::plan
