// Pieces that the printed parts share: headings, numbers in shop units.
//
// Units: quantity types in, text out. Frame, range, errors: none. Guarantee: same findings, same text.
// Source: none. Private to report.
#pragma once

#include "purgewright/report/lines.hpp"
#include "purgewright/report/text.hpp"

#include <string>
#include <string_view>

namespace purgewright::report::parts {

std::string paint(std::string_view text, int code, TextStyle);
std::string heading(std::string_view text, TextStyle);
int colour_of(checks::Status);
std::string status_word(checks::Status, TextStyle); // as wide as the longest

inline constexpr std::size_t widest = 110; // columns of a line, but for what `--all` adds
// Words of a paragraph in lines of `widest` columns at most, the first indented by `first`, the rest by
// `next`; blanks between words stay as they are.
std::string wrapped(std::string_view paragraph, std::size_t first, std::size_t next);
// What, its value, and the id that `trace` takes.
Line row(std::string_view what, std::string_view text, std::string_view id);
std::string printed(const Lines &);

std::string shop(const Findings &, double si, units::Dimension, int digits = 4);
// In the unit in which `beside` would be printed.
std::string shop_beside(const Findings &, double si, double beside, units::Dimension, int digits = 4);
// Money's text with its currency, "12 1/m3" as "12 EUR/m3"; other text as it is.
std::string with_currency(std::string text, units::Dimension, std::string_view currency);

// A limit that stands alone in text, never laxer than it is.
std::string limit_of(const Findings &, double si, units::Dimension, checks::Bound, int digits = 4);

// "24.5 mm to 45.5 mm in diameter": what base plate, cradle stands and gas-port block would serve too.
std::string diameters_served(const checks::Design &);

// Order of tacks and runs with angles, arc times, holds and peaks; how many runs pay.
std::string heat_lines(const Findings &, TextStyle);

// What `--all` adds: why these flows, parts, what may be printed, the family, passes, defaults.
std::string details(const Findings &, TextStyle);

// What a measured log says of each circuit; empty without one.
std::string log_lines(const Findings &, TextStyle);

} // namespace purgewright::report::parts
