// A sketch of the joint: edges of tube and cap, where the electrode aims, how long the arc is, how it leans.
//
// Units: millimetres on the page; the joint is drawn as large as the box leaves room for, wall and cap to one
// scale. Frame: canvas.hpp. Errors: those of the canvas. Guarantee: keeps within the box. Private to pages.
#pragma once

#include "canvas.hpp"

#include "purgewright/report/results.hpp"

namespace purgewright::pages {

void draw_joint(Canvas &, const Box &, const report::Findings &, double points);

} // namespace purgewright::pages
