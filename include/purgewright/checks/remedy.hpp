// Remedies by search: the smallest change of one job value that makes a rule pass, and the smallest chamber
// that passes every rule, over what the job leaves open.
//
// Units: SI, as the draft's numbers. Errors: none; where no single value helps, the answer is empty.
// Guarantee: deterministic. A change is judged by laying out and judging the changed job again, so what is
// proposed does pass, and breaks no rule that passed before.
// Method: the value moves from where it is in growing steps until the rule passes, then the gap is halved;
// the last passing value is rounded onward to three digits of the shop's unit and judged once more.
#pragma once

#include "purgewright/checks/rules.hpp"
#include "purgewright/job/draft.hpp"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace purgewright::checks {

struct Change {
  job::Key key{};
  double from = 0.0, to = 0.0;
};

// For the rule or clash of this id, which the design must break. `keys` limits the search to these keys;
// empty: any.
std::optional<Change> find_change(const job::Draft &, const Design &, std::string_view rule,
                                  std::span<const job::Key> keys = {});

// The key's value as a job file writes it: "28.4 mm", or the name of a choice.
std::string value_text(job::Key, double value, units::UnitSystem);

// "fixture.slot.width at least 28.4 mm (now 27 mm)"
std::string to_text(const Change &, units::UnitSystem);

// Adds to the remedy of each result that does not pass the change found for it.
void add_changes(const job::Draft &, const Design &, std::vector<RuleResult> &);

struct Solution {
  job::Draft draft;            // with the chosen values stated
  std::vector<Change> choices; // of keys that the job leaves open; empty when it is best as it is
  bool passes = false;         // no rule fails
};

// The least chamber gas volume at which no rule fails and none is on caution that was not before. Chosen are
// fixture.radial_clearance and fixture.end_clearance on the shop's grid, and other fixture values where a
// rule needs them. Where these let no design pass, other kinds of plug and cradle are tried as well
// (fixture.plug, fixture.cradle): what the job leaves to the layout. What the job states stays.
Solution solve(const job::Draft &);

inline constexpr std::string_view solved_reason =
    "chosen by --solve: smallest chamber gas volume that passes every rule";

} // namespace purgewright::checks
