#include "cli/new_job.hpp"

#include "purgewright/job/draft.hpp"
#include "purgewright/job/job.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace purgewright;
using Catch::Matchers::Contains;

namespace {

job::Job job_of(const std::string &tube, const std::string &cap = "flat") {
  const auto fresh = cli::job_of_sizes(tube, cap);
  INFO(fresh.problem);
  REQUIRE(fresh.problem.empty());
  const auto resolution = job::resolve(job::read_draft_text(fresh.text, "job").draft);
  INFO(fresh.text);
  REQUIRE(resolution.job);
  return *resolution.job;
}

double mm(units::Length length) {
  return units::to_millimetres(length);
}

} // namespace

TEST_CASE("sizes become a job, however the unit is spelt") {
  for (const std::string tube : {"1 in x 0.035 in x 8 in", "1 x 0.035 x 8 in", "1\" x 0.035\" x 8\"",
                                 "1 IN X 0.035 IN. X 8 in.", "1in\u00d70.035in\u00d78in"}) {
    INFO(tube);
    const auto job = job_of(tube);
    CHECK(mm(job.tube.outside_diameter) == Approx(25.4));
    CHECK(mm(0.5 * (job.tube.outside_diameter - job.tube.inside_diameter)) == Approx(0.889));
    CHECK(mm(job.tube.length) == Approx(203.2));
    CHECK(mm(job.cap.diameter) == Approx(25.4));
    CHECK(job.shop.unit_system == units::UnitSystem::inch);
  }
  const auto job = job_of("1 1/4 in x 1.2 mm x 150 mm", "spigot");
  CHECK(mm(job.tube.outside_diameter) == Approx(31.75));
  CHECK(job.cap.shape == job::CapShape::spigot);
  CHECK(job.shop.unit_system == units::UnitSystem::inch);
  CHECK(job_of("25.4 x 0.9 x 190 mm", "domed").shop.unit_system == units::UnitSystem::metric);
}

TEST_CASE("the cap is a third thicker than the wall, in whole steps of the shop") {
  CHECK(mm(job_of("25.4 x 0.9 x 190 mm").cap.thickness) == Approx(1.2));
  CHECK(mm(job_of("1 x 0.035 x 8 in").cap.thickness) == Approx(0.05 * 25.4));
}

TEST_CASE("sizes that are none are told with the form that would be right") {
  for (const std::string tube : {"", "1 in", "1 in x 0.035 in", "1 x 0.035 x 8", "1 in x thin x 8 in",
                                 "1,5 in x 0.035 in x 8 in", "1 in x 2 kg x 8 in", "1 x 2 x 3 x 4 in"}) {
    INFO(tube);
    const auto fresh = cli::job_of_sizes(tube, "flat");
    CHECK(fresh.text.empty());
    CHECK_THAT(fresh.problem, Contains("--tube") && Contains("1 in x 0.035 in x 8 in"));
  }
  CHECK_THAT(cli::job_of_sizes("1 x 0.035 x 8 in", "round").problem, Contains("flat, domed, spigot"));
}

TEST_CASE("a cap's shape is a slip away from one that there is") {
  CHECK_THAT(cli::job_of_sizes("1 in x 0.035 in x 8 in", "Flat").problem, Contains("did you mean 'flat'"));
  CHECK_THAT(cli::job_of_sizes("1 in x 0.035 in x 8 in", "round").problem, !Contains("did you mean"));
}
