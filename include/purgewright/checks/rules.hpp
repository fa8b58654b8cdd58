// Rules: named checks of a design, each with the measured value, its limit, where the limit comes from and
// what to change. A rule is a line of the table that rules() returns; judging one is plain arithmetic without
// text, so sweeps can count failures of thousands of designs a second.
//
// Units: values and limits are SI of the rule's dimension.
// To add a rule: write its judge in the file of its topic in src/checks and list it in that file's table.
#pragma once

#include "purgewright/checks/design.hpp"
#include "purgewright/units/dimension.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::checks {

enum class Status { pass, caution, fail };
std::string_view to_text(Status);

struct Verdict {
  Status status = Status::pass;
  double value = 0.0;
  double limit = 0.0;
};

// What a rule must know beyond the closed form; it is left out where that is not known. Heat is known with
// the purge, by its coarse plan alone in a search.
enum class Needs { nothing, purge, heat, solids };

struct Rule {
  std::string_view id, title, source;
  units::Dimension dimension;
  Verdict (*judge)(const Design &);
  std::string_view remedy; // said when the rule does not pass
  Needs needs = Needs::nothing;
  std::string (*advice)(const Design &) = nullptr; // more of the remedy, from the design's own numbers
};

struct RuleResult {
  std::string id, title;
  Status status = Status::pass;
  double value = 0.0, limit = 0.0;
  units::Dimension dimension{};
  std::string source, remedy;
};

// Whether the design holds what the rule judges.
bool judgeable(const Rule &, const Design &);

// All rules, in the order they are reported.
std::span<const Rule> rules();

// Every rule's result; dimensions that clash come first, each as a failed rule whose value is the clash.
std::vector<RuleResult> judge(const Design &);

// Number of rules that fail, without making any text; a rule counts when what it needs is known.
int failures(const Design &);

Status worst(const std::vector<RuleResult> &);

} // namespace purgewright::checks
