// Gas used over a part's cycle, cost, bottle and room; private to the purge plan.
#pragma once

#include "scene.hpp"

namespace purgewright::gas::plan {

// Needs times and flows of the plan. `under_gas`: first arc to the end of the last hold.
Use gas_use(const Subject &, const Purge &, units::Time under_gas);

} // namespace purgewright::gas::plan
