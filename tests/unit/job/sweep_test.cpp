#include "purgewright/job/sweep.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

using namespace purgewright::job;

TEST_CASE("a sweep takes every step from FROM to TO and never a value beyond TO", "[unit]") {
  for (const auto *text : {"fixture.wall=2 mm:9 mm:0.7 mm", "fixture.wall=0.1 in:0.7 in:0.1 in",
                           "gas.oxygen_limit.bore=10 ppm:1 %:0.0009", "torch.tilt=0 deg:45 deg:0.9 deg",
                           "rotation.tacks=2:24:11"}) {
    INFO(text);
    const auto [sweep, problem, nearest] = read_sweep(text);
    REQUIRE(sweep);
    CHECK(problem.empty());
    CHECK(sweep->at(0) == sweep->from);
    const double last = sweep->at(sweep->count - 1);
    CHECK(last <= sweep->to);
    CHECK(last <= sweep->field->most);
    CHECK(last > sweep->to - sweep->step);
  }
}

TEST_CASE("a sweep counts its values, both ends included", "[unit]") {
  const auto count = [](std::string_view text) { return read_sweep(text).sweep.value().count; };
  CHECK(count("fixture.wall=3 mm:6 mm:1 mm") == 4);
  CHECK(count("fixture.wall=3 mm:6 mm:2 mm") == 2);
  CHECK(count("fixture.wall=3 mm:3 mm:1 mm") == 1);
  CHECK(count("fixture.wall=2 mm:9 mm:0.7 mm") == 11);
  CHECK(count("rotation.tacks=2:8:2") == 4);
}

TEST_CASE("a sweep that is not one is refused in a sentence", "[unit]") {
  const auto problem = [](std::string_view text) {
    const auto reading = read_sweep(text);
    CHECK_FALSE(reading.sweep.has_value());
    return reading.problem;
  };
  CHECK(problem("fixture.wall") == "a part is missing");
  CHECK(problem("fixture.wall=3 mm:4 mm") == "a part is missing");
  CHECK(problem("fixture.wal=3 mm:4 mm:1 mm") == "there is no key 'fixture.wal'");
  CHECK(problem("cap.shape=1:2:1") == "'cap.shape' is not a number");
  CHECK(problem("fixture.wall=4 mm:3 mm:1 mm") == "the step must be above zero and FROM not above TO");
  CHECK(problem("fixture.wall=3 mm:4 mm:0 mm") == "the step must be above zero and FROM not above TO");
  CHECK(problem("fixture.wall=3 mm:4 mm:1e-300 mm") == "more than 1000000 designs");
  CHECK(problem("fixture.wall=3 mm:99 mm:1 mm") == "fixture.wall allows 1.5 mm to 25 mm");
  CHECK(problem("fixture.wall=3:4:1").find("has no unit") != std::string::npos);
}

TEST_CASE("a temperature's step is a difference, in whatever unit", "[unit]") {
  for (const auto *text : {"weld.shielding_temperature=300 degC:500 degC:50 degC",
                           "weld.shielding_temperature=572 degF:932 degF:90 degF",
                           "weld.shielding_temperature=300 degC:500 degC:50 K"}) {
    INFO(text);
    const auto reading = read_sweep(text);
    REQUIRE(reading.sweep);
    CHECK(reading.sweep->count == 5);
    CHECK(reading.sweep->step == Approx(50.0).epsilon(1e-12));
    CHECK(reading.sweep->at(4) == Approx(773.15).epsilon(1e-12));
  }
}

TEST_CASE("a price's sweep keeps its currency, one for all three", "[unit]") {
  const auto reading = read_sweep("shop.argon_price=9 CHF/m3:12 CHF/m3:1 CHF/m3");
  REQUIRE(reading.sweep);
  CHECK(reading.sweep->currency == "CHF");
  CHECK(read_sweep("shop.argon_price=9 CHF/m3:12 EUR/m3:1 CHF/m3").problem == "the currencies differ");
  CHECK(read_sweep("shop.argon_price=9 CHF/m3:12 CHF/m3:1 EUR/m3").problem == "the currencies differ");
}

TEST_CASE("designs of several sweeps are counted, the last key varying fastest") {
  const std::vector<Sweep> sweeps{read_sweep("fixture.wall=3 mm:4 mm:1 mm").sweep.value(),
                                  read_sweep("fixture.radial_clearance=5 mm:7 mm:1 mm").sweep.value()};
  REQUIRE(designs_of(sweeps) == 6);
  CHECK(designs_of({}) == 1);
  const auto second = values_of_design(sweeps, 1), last = values_of_design(sweeps, 5);
  CHECK(second[0] == Approx(3e-3));
  CHECK(second[1] == Approx(6e-3));
  CHECK(last[0] == Approx(4e-3));
  CHECK(last[1] == Approx(7e-3));
}

TEST_CASE("a key of a sweep that is a slip away from one is answered with that one") {
  const auto nearest = [](const std::string &key) { return read_sweep(key + "=3 mm:4 mm:1 mm").nearest; };
  CHECK(nearest("fixtur.wall") == "fixture.wall");
  CHECK(nearest("fixture.wal") == "fixture.wall");
  CHECK(nearest("Fixture.Wall") == "fixture.wall");
  CHECK(nearest("gas.dome_height") == "cap.dome_height");
  CHECK(nearest("colour.of.paint").empty());
  CHECK(nearest("fixture.wall").empty());
}
