// Rules: named checks of a design, each with the measured value, its limit, where the limit comes from and
// what to change. A rule is a line of the table that rules() returns; judging one is plain arithmetic without
// text, so sweeps can count failures of thousands of designs a second.
//
// Units: values and limits are SI of the rule's dimension.
// To add a rule: write its judge in the file of its topic in src/checks and list it in that file's table.
#pragma once

#include "purgewright/checks/design.hpp"
#include "purgewright/units/dimension.hpp"

#include <bitset>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::checks {

enum class Status { pass, caution, fail };
std::string_view to_text(Status);

enum class Bound { at_most, at_least, above }; // what the limit is to the value
std::string_view to_text(Bound);               // "at most"

// Whether a value keeps to its limit; sizes that are equal by design do, whatever rounding leaves between
// them.
bool keeps(double value, double limit, Bound);

struct Verdict {
  Status status = Status::pass;
  double value = 0.0;
  double limit = 0.0;
  Bound bound = Bound::at_most;
};

// What a rule must know beyond the closed form; it is left out where that is not known. Heat is known with
// the purge, by its coarse plan alone in a search, which leaves the warm fixture's plan out.
enum class Needs { nothing, purge, heat, warm_heat, solids, log };

struct Rule {
  std::string_view id, title, source;
  units::Dimension dimension;
  Verdict (*judge)(const Design &);
  std::string_view remedy; // said when the rule does not pass
  Needs needs = Needs::nothing;
  std::string (*advice)(const Design &) = nullptr; // more of the remedy, from the design's own numbers
  bool (*about)(const Design &) = nullptr; // whether job and layout hold what is judged; absent: they all do
};

struct RuleResult {
  std::string id, title;
  Status status = Status::pass;
  double value = 0.0, limit = 0.0;
  units::Dimension dimension{};
  std::string source, remedy;
  Bound bound = Bound::at_most;
  bool has_amount = true; // false: a clash that nothing measures, value and limit say nothing
};

// Share of the limit that is left: 0.25 where a value of 30 may be 40, negative where the limit is missed.
// Empty where the limit is zero or a number is none.
std::optional<double> margin(double value, double limit, Bound);

// Whether the rule is about this design: a plug ring's rule is not about a plug without one.
bool concerns(const Rule &, const Design &);

// Whether it is, and what it needs is known.
bool judgeable(const Rule &, const Design &);

// The rule's verdict; a value or limit that is not a number fails, whatever the rule's own judge made of it.
Verdict verdict(const Rule &, const Design &);

// All rules, in the order they are reported.
std::span<const Rule> rules();

// Result of every rule that concerns the design; dimensions that clash come first, each as a failed rule
// whose value is the clash.
std::vector<RuleResult> judge(const Design &);

// Rules that judge() leaves out though they concern this design, and why.
struct NotJudged {
  std::string_view rule, why;
};
std::vector<NotJudged> not_judged(const Design &);

constexpr std::size_t rules_most = 128;

// The same in numbers, for one row of many. The worst failing rule is the one that misses its limit by the
// greatest share of it, the first of equal ones. Where the layout clashes, the clashes count and no rule is
// judged.
struct Tally {
  int judged = 0, failing = 0, cautions = 0;
  std::string worst; // id; empty when none fails
  bool clashes = false;
  std::bitset<rules_most> left_out; // places in rules() of those that not_judged() names
};
Tally tally(const Design &);
std::vector<std::string_view> not_judged(const Tally &); // ids
std::bitset<rules_most>
left_out(const std::vector<std::string> &ids); // what not_judged() names; others are passed over

Status worst(const std::vector<RuleResult> &);

} // namespace purgewright::checks
