// A job file may state any value that its key allows: what comes is a design with every rule judged, or a
// refusal with its reason, never a fault of the program.
#include "purgewright/checks/rules.hpp"
#include "support/paths.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <iterator>

using namespace purgewright;
using namespace purgewright::checks;

namespace {

// Rules that concern the design, judged or named as not judged: the solids' and the warm plan's.
void check_completeness(const Design &design, const std::vector<RuleResult> &results) {
  if (!design.layout.buildable()) {
    CHECK(results.size() == design.layout.conflicts.size());
    return;
  }
  std::vector<std::string_view> left_out;
  std::ranges::transform(not_judged(design), std::back_inserter(left_out), &NotJudged::rule);
  CHECK(left_out == std::vector<std::string_view>{"assembly.no_interference", "heat.warm_holds_reached"});
  const auto about = std::ranges::count_if(rules(), [&](const Rule &rule) { return concerns(rule, design); });
  CHECK(results.size() + left_out.size() == static_cast<std::size_t>(about));
}

// The example with one key at this number; a refusal of the job is an answer too.
void judge_at(const std::string &example, const job::FieldInfo &field, double number) {
  auto reading = job::read_draft(purgewright::test::example_job(example));
  REQUIRE(reading.problems.empty());
  auto &entry = reading.draft[field.key];
  entry.stated = true;
  entry.is_share = false;
  entry.number = number;
  INFO(example << ": " << field.path << " = " << number);
  auto resolution = job::resolve(reading.draft);
  if (!resolution.job) {
    CHECK_FALSE(resolution.problems.empty());
    return;
  }
  Design design;
  REQUIRE_NOTHROW(design = evaluate_purge(std::move(*resolution.job)));
  const auto results = judge(design);
  CHECK_FALSE(results.empty());
  check_completeness(design, results);
}

void judge_ends(const std::string &example) {
  for (const auto &field : job::fields()) {
    if (field.kind == job::FieldKind::quantity || field.kind == job::FieldKind::count) {
      judge_at(example, field, field.least);
      judge_at(example, field, field.most);
    }
    if (field.kind == job::FieldKind::choice) {
      for (std::size_t i = 0; i < field.choices.size(); ++i) {
        judge_at(example, field, static_cast<double>(i));
      }
    }
  }
}

} // namespace

TEST_CASE("each key at either end of its range: tube with a vent") {
  judge_ends("logger-25");
}
TEST_CASE("each key at either end of its range: tube without one") {
  judge_ends("logger-51");
}
