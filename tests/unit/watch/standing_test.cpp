// A save under watch: numbers, a fault, its cure. The sound job's keys are the required ones alone.
#include "watch/standing.hpp"

#include <catch2/catch.hpp>

#include <chrono>
#include <string>

namespace study = purgewright::study;
using purgewright::job::Sources;
using purgewright::watch::Clock;
using purgewright::watch::Plan;
using purgewright::watch::same_bytes;
using purgewright::watch::Standing;

namespace {

Sources sources_of(const std::string &text) {
  return {.job = {{}, "logger.yaml", text, {}, {}}, .family = {}, .log = std::nullopt};
}

std::string with_wall(const std::string &wall) {
  return "job:  {name: logger}\n"
         "tube: {material: titanium-grade-2, outside_diameter: 25.4 mm, wall: " +
         wall +
         ", length: 190 mm}\n"
         "cap:  {shape: flat, diameter: 25.4 mm, thickness: 1.2 mm}\n";
}

Clock::time_point at(int second) {
  return Clock::time_point{} + std::chrono::seconds(second);
}

void save(Standing &standing, const std::string &text, int second) {
  const Sources sources = sources_of(text);
  standing.save(sources, at(second));
  study::Opening first = study::open_coarsely(sources);
  const bool good = first.study.has_value();
  standing.take(std::move(first), Plan::coarse);
  if (good) {
    CHECK(standing.plan() == Plan::coarse);
    standing.take(study::open(sources), Plan::fine);
  }
}

} // namespace

TEST_CASE("a fault leaves the last good numbers standing, and its cure replaces them", "[unit][watch]") {
  Standing standing;
  save(standing, with_wall("0.9 mm"), 1);
  REQUIRE(standing.numbers());
  CHECK_FALSE(standing.faulty());
  CHECK(standing.plan() == Plan::fine);
  CHECK(standing.numbers_saved() == at(1));
  CHECK_FALSE(standing.before());
  const auto good = standing.numbers();

  save(standing, with_wall("thick"), 2);
  CHECK(standing.faulty());
  REQUIRE(standing.problems().size() == 1);
  CHECK(standing.problems().front().mark.line == 2);
  CHECK(standing.problems().front().key == "tube.wall");
  CHECK(standing.numbers() == good);
  CHECK(standing.numbers_saved() == at(1));
  CHECK(standing.saved() == at(2));

  save(standing, with_wall("1.2 mm"), 3);
  CHECK_FALSE(standing.faulty());
  CHECK(standing.problems().empty());
  CHECK(standing.numbers() != good);
  CHECK(standing.numbers_saved() == at(3));
  CHECK(standing.before() == good); // and not the coarse plan of the same save
  CHECK(standing.numbers()->findings.design.job.tube.wall.value() == Approx(0.0012));
}

TEST_CASE("a job that begins with a fault has no numbers", "[unit][watch]") {
  Standing standing;
  save(standing, "job: {name: logger}\n", 1);
  CHECK(standing.faulty());
  CHECK_FALSE(standing.judged());
  CHECK_FALSE(standing.numbers());
}

TEST_CASE("dimensions that clash are judged, and leave the numbers before them", "[unit][watch]") {
  Standing standing;
  save(standing, with_wall("0.9 mm"), 1);
  const auto good = standing.numbers();
  // A tube that does not reach over the stands it is asked to lie on.
  std::string text = with_wall("0.9 mm") + "fixture: {cradle: stands}\n";
  text.replace(text.find("190 mm"), 6, "60 mm");
  save(standing, text, 2);
  CHECK_FALSE(standing.faulty());
  REQUIRE(standing.judged());
  CHECK_FALSE(standing.judged()->findings.design.layout.buildable());
  CHECK(standing.judged_saved() == at(2));
  CHECK(standing.numbers() == good);
  CHECK(standing.numbers_saved() == at(1));
}

TEST_CASE("solids join the numbers that they were built of, and no others", "[unit][watch]") {
  Standing standing;
  save(standing, with_wall("0.9 mm"), 1);
  const auto built = standing.numbers();
  save(standing, with_wall("thick"), 2);
  CHECK(standing.take_clashes(built, {{"cap", "backing-pin", purgewright::units::cubic_metres(1e-9)}}));
  CHECK(standing.numbers()->findings.design.solids_known);
  CHECK(purgewright::checks::worst(standing.numbers()->findings.rules) == purgewright::checks::Status::fail);
  const auto known = standing.numbers();
  save(standing, with_wall("1.2 mm"), 3);
  CHECK_FALSE(standing.take_clashes(known, {}));
  CHECK_FALSE(standing.numbers()->findings.design.solids_known);
}

TEST_CASE("sources are the same by their bytes", "[unit][watch]") {
  Sources one = sources_of("job: {}"), other = one;
  other.job.label = "elsewhere/logger.yaml";
  CHECK(same_bytes(one, other));
  other.job.bytes += "\n";
  CHECK_FALSE(same_bytes(one, other));
  other = one;
  other.log = purgewright::job::Document{"log.csv", "log.csv", "a", {}, {}};
  CHECK_FALSE(same_bytes(one, other));
  one.log = other.log;
  CHECK(same_bytes(one, other));
  other.log->bytes = "b";
  CHECK_FALSE(same_bytes(one, other));
}
