// Lettering without hinting or rounding, so that letters keep their spacing at any size.
//
// Units, frame, range: none. Guarantee: text measures the same when measured and when drawn.
// Source: pango 1.50, cairo 1.16. Private to the drawing floor.
#pragma once

#include <pango/pangocairo.h>

namespace purgewright::drawing {

void prepare(PangoContext *);

} // namespace purgewright::drawing
