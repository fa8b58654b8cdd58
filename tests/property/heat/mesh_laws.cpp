// Order of the method: halving every cell quarters the error in space, halving the step quarters that in
// time.
#include "purgewright/heat/plan.hpp"
#include "support/paths.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <string>

using namespace purgewright;
using namespace purgewright::heat;

namespace {

// Order seen between three results of which each has half the step of the one before.
double order(double first, double second, double third) {
  return std::log2(std::abs((first - second) / (second - third)));
}

// Fixed steps, so that errors in time are the same on every mesh; a model starts with 0.1 s at most.
Accuracy fixed_steps(double step) {
  return {.step_error = units::TemperatureDifference::from_value(1e6),
          .relative_step_error = 0.0,
          .arc_step = 1e6,
          .longest_step = units::seconds(step)};
}

// Heat that has left the work: it depends on every cell's temperature, smoothly.
double lost(const Chain &chain, double step) {
  const Surroundings air{
      .ambient = units::celsius(20.0), .outside_coefficient = 300.0, .inside_coefficient = 100.0};
  Model model(chain, air, fixed_steps(step));
  const Arc wide{.power = units::Power::from_value(150.0),
                 .radius = units::millimetres(6.0),
                 .joint_radius = units::millimetres(12.0),
                 .start = units::radians(0.3),
                 .speed = 0.15};
  model.weld(wide, units::seconds(4.0));
  model.cool(units::seconds(6.0));
  return model.energy().lost;
}

Chain tube(int factor) {
  return plain_wall(*thermal_metal("titanium-grade-2"), units::millimetres(12.0), units::millimetres(1.0),
                    units::millimetres(80.0), 12 * factor, 12 * factor, 2.0);
}

} // namespace

TEST_CASE("Second order in space on a tube", "[property][heat]") {
  const double seen = order(lost(tube(1), 0.05), lost(tube(2), 0.05), lost(tube(4), 0.05));
  CHECK(seen > 1.7);
  CHECK(seen < 2.4);
}

TEST_CASE("Second order in space on tube and cap", "[property][heat]") {
  for (const std::string name : {"logger-25", "logger-38", "logger-51"}) {
    const auto read = job::read_job(purgewright::test::example_job(name));
    REQUIRE(read.job);
    const fixture::Layout layout = fixture::lay_out(*read.job);
    double results[3];
    for (int i = 0; i < 3; ++i) {
      const int factor = 1 << i;
      Chain chain = chain_of(*read.job, layout, {14 * factor, 8 * factor, 12 * factor, 3.0}, {});
      chain.contacts.clear(); // their edges fall inside cells
      for (Ring &ring : chain.rings) {
        const double round = 2.0 * units::pi * ring.radius * ring.length;
        ring.outside = round;
        ring.inside = round;
      }
      results[i] = lost(chain, 0.05);
    }
    const double seen = order(results[0], results[1], results[2]);
    CAPTURE(name);
    CHECK(seen > 1.8);
    CHECK(seen < 2.3);
  }
}

TEST_CASE("Second order in time", "[property][heat]") {
  const Chain chain = tube(1);
  const double seen = order(lost(chain, 0.05), lost(chain, 0.025), lost(chain, 0.0125));
  CHECK(seen > 1.7);
  CHECK(seen < 2.4);
}

TEST_CASE("Steps of any length stay bounded", "[property][heat]") {
  const Surroundings air{.ambient = units::celsius(20.0), .outside_coefficient = 10.0};
  for (const double step : {0.1, 10.0, 1000.0}) {
    Model model(tube(2), air, fixed_steps(step));
    for (std::size_t i = model.chain().joint - 4; i <= model.chain().joint; ++i) {
      model.set_ring(i, units::celsius(1400.0));
    }
    const Region all{0, model.chain().rings.size()};
    for (int i = 0; i < 20; ++i) {
      model.cool(units::seconds(step));
      CAPTURE(step, i);
      CHECK(model.hottest(all) <= units::celsius(1400.0));
      CHECK(model.mean(0).value() > 250.0);
    }
  }
}
