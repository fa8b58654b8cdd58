// A view's lines where it stands: hatching, outlines, centre lines with their overrun, cut to a detail's
// circle.
//
// Units: millimetres on paper. Frame: sheet. Range and errors: none. Guarantee: same stand, same lines.
// Source: ISO 128-3, ISO 128-2 (centre lines end beyond the outline).
#pragma once

#include "placement.hpp"

namespace purgewright::drawing {

View drawn(const Stand &);

} // namespace purgewright::drawing
