// Widths of lettering, so that text can be placed before it is drawn.
//
// Units: millimetres on paper; heights are those of capitals. Frame: none.
// Range and errors: any UTF-8 text; letters::FontError when no installed font has a
// character of it.
// Guarantee: widths are those the writers draw, within 2 %. One thread.
// Source: font osifont (ISO 3098 letters; Debian fonts-osifont, GPL or LGPL with font exception), else the
// system's sans serif.
#pragma once

#include "purgewright/drawing/sheet.hpp"

#include <string_view>

namespace purgewright::drawing {

double text_width(std::string_view, double height);

// Ink of a text with a little air: what must stay free of other ink.
Box text_box(const Text &);

// Font size (em) that gives capitals of this height.
double font_size(double height);
const char *font_family();

} // namespace purgewright::drawing
