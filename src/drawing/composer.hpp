// Turns a part's plan into placed sheets: scale, rows, dimensions, captions, frame and title block.
//
// Units: millimetres on paper. Frame: sheet. Range and errors: a plan that no scale fits is drawn at the
// smallest one with its clashes counted in the sheets. Guarantee: same plan, same sheets. Source: ISO 5455
// (scales), ISO 128-3 (captions, cutting planes).
#pragma once

#include "paper.hpp"

namespace purgewright::drawing {

std::vector<Sheet> compose(const job::Job &, PartPlan, const Issue &);

} // namespace purgewright::drawing
