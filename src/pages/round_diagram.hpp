// The joint as a circle with tacks and runs, seen looking at the cap, zero at the top under the torch.
//
// Units: mm. Frame: canvas.hpp. Range, errors: none. Guarantee: same design, same drawing. Source:
// fixture/order.hpp. Private to pages.
#pragma once

#include "canvas.hpp"

#include "purgewright/report/results.hpp"

namespace purgewright::pages {

void draw_round(Canvas &, const Box &, const report::Findings &, double points);

} // namespace purgewright::pages
