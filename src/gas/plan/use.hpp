// Gas used over a part's cycle, cost, bottle and room; private to the purge plan.
#pragma once

#include "scene.hpp"

namespace purgewright::gas::plan {

// Needs times and flows of the plan; holds come from the closed-form cooling of a thin sheet, an estimate.
Use gas_use(const Subject &, const Purge &);

} // namespace purgewright::gas::plan
