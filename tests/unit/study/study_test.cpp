// What a study hands on: values that were chosen, what the solids tell, the files that a job names.
#include "purgewright/report/manifest.hpp"
#include "purgewright/study/study.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace purgewright;

namespace {

job::Sources sources(const std::string &more = "") {
  job::Sources all;
  all.job.label = "job.yaml";
  all.job.bytes =
      "job: {name: plain}\n"
      "tube: {material: titanium-grade-2, outside_diameter: 25.4 mm, wall: 0.9 mm, length: 160 mm}\n"
      "cap: {shape: flat, diameter: 25.4 mm, thickness: 1.2 mm}\n" +
      more;
  return all;
}

const checks::RuleResult &clash_rule(const study::Study &study) {
  const auto &rules = study.findings.rules;
  const auto found = std::ranges::find(rules, "assembly.no_interference", &checks::RuleResult::id);
  REQUIRE(found != rules.end());
  return *found;
}

} // namespace

TEST_CASE("a value that was chosen for a job says so, and stands in the job that is built", "[unit][study]") {
  const auto chosen = std::vector<checks::Change>{{job::Key::fixture_wall, 0.006, 0.005}};
  const job::Resolution built = study::chosen_job(sources(), chosen);
  REQUIRE(built.job);
  const job::Origin &origin = built.job->origins[static_cast<std::size_t>(job::Key::fixture_wall)];
  CHECK(origin.basis == units::Basis::computed);
  CHECK(origin.reason == checks::solved_reason);
  const auto opening = study::open(sources(), study::Choose::what_is_open);
  REQUIRE(opening.study);
  REQUIRE_FALSE(opening.study->chosen.empty());
  for (const auto &change : opening.study->chosen) {
    const auto &job = opening.study->findings.design.job;
    CHECK(job.origins[static_cast<std::size_t>(change.key)].reason == checks::solved_reason);
  }
}

TEST_CASE("clashes of the solids join the findings", "[unit][study]") {
  auto opening = study::open(sources());
  REQUIRE(opening.study);
  study::add_clashes(*opening.study, {{"end-plug", "base-plate",
                                       units::metres(1e-3) * units::metres(1e-3) * units::metres(1e-3)}});
  CHECK(clash_rule(*opening.study).status == checks::Status::fail);
  REQUIRE(opening.study->findings.design.clashes.size() == 1);
  auto sound = study::open(sources());
  study::add_clashes(*sound.study, {});
  CHECK(clash_rule(*sound.study).status == checks::Status::pass);
}

TEST_CASE("files that a job names are listed by their own hashes", "[unit][study]") {
  auto all = sources();
  all.family = {{"b.yaml", "b.yaml", "of the family", {}, {}}};
  all.log = job::Document{"log.csv", "log.csv", "of the meter", {}, {}};
  const auto inputs = study::inputs_of(all);
  REQUIRE(inputs.size() == 2);
  CHECK(inputs[0].sha256 == report::sha256("of the family"));
  CHECK(inputs[1].sha256 == report::sha256("of the meter"));
}
