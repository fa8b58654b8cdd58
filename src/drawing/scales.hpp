// Scales of the preferred series.
//
// Units: paper length over full size. Frame: none. Range and errors: none. Guarantee: largest first.
// Source: ISO 5455; 1:2.5 between its recommended ones, for what 1:2 does not fit and 1:5 hides.
#pragma once

#include <string>

namespace purgewright::drawing {

struct Scale {
  double factor;
  const char *text;
};
inline constexpr Scale scales[] = {{10, "10:1"}, {5, "5:1"},     {2, "2:1"},   {1, "1:1"},
                                   {0.5, "1:2"}, {0.4, "1:2.5"}, {0.2, "1:5"}, {0.1, "1:10"}};

std::string scale_text(double factor);

} // namespace purgewright::drawing
