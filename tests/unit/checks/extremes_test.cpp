// A job file may state any value that its key allows: what comes is a design with every rule judged, or a
// refusal with its reason, never a fault of the program.
#include "purgewright/checks/rules.hpp"
#include "support/paths.hpp"

#include <catch2/catch.hpp>

using namespace purgewright;
using namespace purgewright::checks;

namespace {

constexpr std::size_t not_judged_here = 14; // one needs the solids, twelve a log, one a family
constexpr std::size_t rules_of_a_ring = 2;  // of the plug's: its stretch and its share of the groove

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
  const std::size_t left_out =
      not_judged_here + (design.layout.plug.seal.ring == nullptr ? rules_of_a_ring : 0);
  CHECK(results.size() ==
        (design.layout.buildable() ? rules().size() - left_out : design.layout.conflicts.size()));
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
