// Laws of the program's own model on the three examples: holds rise from run to run, and the fine and the
// coarse mode stay near a mesh of half the cells. They bound the discretisation; that the model is right is
// for the reference tests to say.
#include "support/examples.hpp"

#include "purgewright/heat/plan.hpp"

#include <catch2/catch.hpp>

using namespace purgewright;
using namespace purgewright::heat;
using purgewright::test::example;

namespace {

constexpr double fine_off = 0.02, coarse_off = 0.05; // of holds and hot zone, from halving cells and steps

Options converged(const job::Job &job) {
  Options options;
  options.mesh =
      mesh_for(job, units::millimetres(0.5), 1.13, units::millimetres(1.0), units::millimetres(1.4), 32, 80);
  options.accuracy = Accuracy{.step_error = units::TemperatureDifference::from_value(1.0),
                              .relative_step_error = 0.02,
                              .arc_step = 0.7,
                              .longest_step = units::seconds(10.0),
                              .crossing = units::TemperatureDifference::from_value(0.2)};
  return options;
}

} // namespace

TEST_CASE("Holds of the examples rise from run to run", "[property][heat]") {
  for (const std::string name : {"logger-25", "logger-38", "logger-51"}) {
    const job::Job job = example(name);
    for (const Detail detail : {Detail::fine, Detail::coarse}) {
      Options options;
      options.detail = detail;
      const HeatPlan plan = plan_heat(job, fixture::lay_out(job), options);
      CAPTURE(name, int(detail));
      REQUIRE(plan.runs.size() == std::size_t(job.rotation.runs));
      for (std::size_t i = 1; i < plan.runs.size(); ++i) {
        CHECK(plan.runs[i].hold > plan.runs[i - 1].hold);
        if (detail == Detail::fine) {
          CHECK(plan.runs[i].joint_before > plan.runs[i - 1].joint_before);
        }
      }
      CHECK(plan.runs.front().hold.value() > 5.0);
      CHECK(plan.runs.back().hold.value() < 120.0);
    }
  }
}

TEST_CASE("Fine and coarse plans against half the cells", "[property][heat]") {
  for (const std::string name : {"logger-25", "logger-38"}) {
    const job::Job job = example(name);
    const fixture::Layout layout = fixture::lay_out(job);
    const HeatPlan best = plan_heat(job, layout, converged(job));
    const HeatPlan fine = plan_heat(job, layout, {});
    Options options;
    options.detail = Detail::coarse;
    const HeatPlan coarse = plan_heat(job, layout, options);
    for (std::size_t i = 0; i < best.runs.size(); ++i) {
      CAPTURE(name, i);
      CHECK(fine.runs[i].hold.value() == Approx(best.runs[i].hold.value()).epsilon(fine_off));
      CHECK(coarse.runs[i].hold.value() == Approx(fine.runs[i].hold.value()).epsilon(coarse_off));
      CHECK(fine.runs[i].hot_zone.value() == Approx(best.runs[i].hot_zone.value()).epsilon(fine_off));
    }
  }
}
