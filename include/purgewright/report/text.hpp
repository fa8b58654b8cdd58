// What `check`, `design` and `trace` print for people.
//
// Units: shop units of the job; flows always in L/min and ft3/h, as flowmeters carry either.
// Guarantee: same findings, same text; ANSI colour only when asked.
#pragma once

#include "purgewright/report/results.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace purgewright::report {

struct TextStyle {
  bool colour = false;
};

// Gas table, volumes, sizes, rules, and (for check) the defaults with their reasons and the cautions.
std::string check_text(const Findings &, TextStyle);

// The same without defaults: what to know at a glance.
std::string summary_text(const Findings &, TextStyle);

// Where one number comes from: formula, inputs down to the job file's lines, source; of a rule its value,
// limit, source, status and remedy. nullopt when there is no such id; nearest_id() then helps.
std::optional<std::string> trace_text(const Findings &, std::string_view id);
std::string nearest_id(const Findings &, std::string_view id);

// Cautions that stand on every sheet.
std::string cautions_text();

} // namespace purgewright::report
