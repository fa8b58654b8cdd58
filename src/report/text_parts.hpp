// Pieces that the printed parts share: headings, numbers in shop units.
//
// Units: quantity types in, text out. Frame, range, errors: none. Guarantee: same findings, same text.
// Source: none. Private to report.
#pragma once

#include "purgewright/report/text.hpp"

#include <string>
#include <string_view>

namespace purgewright::report::parts {

std::string paint(std::string_view text, int code, TextStyle);
std::string heading(std::string_view text, TextStyle);
std::string shop(const Findings &, double si, units::Dimension, int digits = 4);

// "24.5 mm to 45.5 mm in diameter": what base plate, cradle stands and gas-port block would serve too.
std::string diameters_served(const checks::Design &);

// Order of tacks and runs with angles, arc times, holds and peaks; how many runs pay.
std::string heat_lines(const Findings &, TextStyle);

} // namespace purgewright::report::parts
