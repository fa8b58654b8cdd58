// Numbered steps in columns of text.
//
// Units: millimetres on paper. Frame: sheet. Range and errors: an area wide enough for a word. Guarantee: no
// text leaves the area, a step stands in one column. Source: common practice, no source.
#pragma once

#include "purgewright/drawing/sheet.hpp"

#include <string>
#include <vector>

namespace purgewright::drawing {

// Words in as few lines as the width allows.
std::vector<std::string> wrapped_words(std::string_view text, double height, double width);

// The texts of each page that the steps take.
using StepsPage = std::vector<Text>;
std::vector<StepsPage> steps_pages(const std::vector<std::string> &steps, const Box &area);

} // namespace purgewright::drawing
