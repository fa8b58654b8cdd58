// What `check`, `design` and `trace` print for people.
//
// Units: shop units of the job; flows always in L/min and ft3/h, as flowmeters carry either.
// Guarantee: same findings, same text; ANSI colour only when asked. A line of numbers ends with the id that
// `trace` takes; lines are 110 columns wide at most, but for those of `all`.
#pragma once

#include "purgewright/report/results.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace purgewright::report {

struct TextStyle {
  bool colour = false;
  bool all = false; // reasons, parts with their chips, rules that pass and defaults as well
};

// Verdict and the rules that do not pass, cautions, what to set and do, use and sizes.
std::string check_text(const Findings &, TextStyle);

// Where one number comes from: formula, inputs down to the job file's lines, source; of a rule its value,
// limit, source, status and remedy. nullopt when there is no such id; nearest_id() then helps.
std::optional<std::string> trace_text(const Findings &, std::string_view id);
// Each id in turn; nullopt when one is none, or there are none.
std::optional<std::string> trace_text(const Findings &, std::span<const std::string> ids);
std::string nearest_id(const Findings &, std::string_view id);

// Figures and rules by topic, a line each; of those alone whose id or title holds every one of the words,
// whatever their case. Empty when there is none.
std::string list_text(const Findings &, std::span<const std::string> words);

} // namespace purgewright::report
