#include "purgewright/gas/pressure.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <stdexcept>

using namespace purgewright;
using namespace purgewright::gas;

namespace {

const Stream argon{.density = units::kilograms_per_cubic_metre(1.661),
                   .viscosity = units::DynamicViscosity::from_value(2.23e-5)};

} // namespace

TEST_CASE("Friction is laminar below 2000 and turbulent above 4000", "[unit][gas]") {
  CHECK(friction_factor(1e-9) == Approx(64e9));
  CHECK(friction_factor(500.0) == Approx(friction_factor(std::nextafter(500.0, 0.0))).epsilon(1e-9));
  CHECK(friction_factor(1500.0) == Approx(64.0 / 1500.0).epsilon(1e-3));
  CHECK(friction_factor(2500.0) == Approx(0.0352).epsilon(5e-3)); // terms 6.6e17, 6.6e18 by hand
  CHECK(friction_factor(1e4) == Approx(0.3164 * std::pow(1e4, -0.25)).epsilon(0.03)); // Blasius
  CHECK(friction_factor(1e5) == Approx(0.0180).epsilon(0.02));                        // Moody chart, smooth
  CHECK(friction_factor(1e7, 0.01) == Approx(0.0379).epsilon(0.02)); // Moody chart, fully rough
}

TEST_CASE("A slow tube drops as Hagen-Poiseuille plus its fittings", "[unit][gas]") {
  const auto flow = units::litres_per_minute(1.0);
  const TubeRun run{.length = units::metres(2.0), .diameter = units::millimetres(4.0), .losses = 1.5};
  const double speed = 1e-3 / 60.0 / (units::pi * 4e-6);
  CHECK(tube_drop(run, flow, argon).value() ==
        Approx(tube_laminar_drop(argon.viscosity, run.length, run.diameter, flow).value() +
               1.5 * 0.5 * 1.661 * speed * speed)
            .epsilon(1e-6));
}

TEST_CASE("Holes side by side share the flow", "[unit][gas]") {
  const Holes one{.diameter = units::millimetres(1.0), .thickness = units::millimetres(2.0)};
  Holes ten = one;
  ten.count = 10;
  const auto flow = units::litres_per_minute(0.5);
  CHECK(holes_drop(ten, 10.0 * flow, argon).value() == Approx(holes_drop(one, flow, argon).value()));
  CHECK(holes_flow(ten, holes_drop(ten, flow, argon), argon).value() == Approx(flow.value()).epsilon(1e-12));
  CHECK(holes_flow(one, units::pascals(0.0), argon).value() == 0.0);
}

TEST_CASE("A deep narrow hole drops as a tube", "[unit][gas]") {
  const Holes deep{.diameter = units::millimetres(0.5), .thickness = units::millimetres(50.0)};
  const auto flow = units::litres_per_minute(1e-3);
  CHECK(
      holes_drop(deep, flow, argon).value() ==
      Approx(tube_laminar_drop(argon.viscosity, deep.thickness, deep.diameter, flow).value()).epsilon(0.01));
}

TEST_CASE("A line's flow and drop are inverse to each other", "[unit][gas]") {
  const Line line{
      .tubes = {{.length = units::metres(3.0), .diameter = units::millimetres(4.0), .losses = 2.0},
                {.length = units::metres(0.05), .diameter = units::millimetres(3.0), .losses = 1.5}},
      .plates = {{.diameter = units::millimetres(1.0), .thickness = units::millimetres(1.0), .count = 12}}};
  for (const double litres : {0.01, 1.0, 8.0, 30.0}) {
    const auto flow = units::litres_per_minute(litres);
    CHECK(line_flow(line, line_drop(line, flow, argon), argon).value() == Approx(flow.value()).epsilon(1e-9));
  }
  CHECK(line_flow(line, units::pascals(0.0), argon).value() == 0.0);
  CHECK_THROWS_AS(line_flow(Line{}, units::pascals(1.0), argon), std::domain_error);
  CHECK_THROWS_AS(line_drop(line, units::litres_per_minute(-1.0), argon), std::domain_error);
}

TEST_CASE("Sudden expansion loses all of the head into a large space", "[unit][gas]") {
  CHECK(sudden_expansion_loss(units::square_metres(1e-9), units::square_metres(1.0)) == Approx(1.0));
  CHECK(sudden_expansion_loss(units::square_metres(1.0), units::square_metres(2.0)) == Approx(0.25));
  CHECK_THROWS_AS(sudden_expansion_loss(units::square_metres(2.0), units::square_metres(1.0)),
                  std::domain_error);
}

TEST_CASE("Surface tension of liquid titanium at its stated points", "[unit][gas]") {
  CHECK(titanium_surface_tension(units::kelvins(1943.0)) == Approx(1.557));
  CHECK(titanium_surface_tension(units::kelvins(2043.0)) == Approx(1.5414));
  CHECK(titanium_alloy_surface_tension(units::celsius(1660.0)) == Approx(1.389));
  CHECK_THROWS_AS(titanium_surface_tension(units::celsius(20.0)), std::domain_error);
}

TEST_CASE("Bore pressure limit is a safe share of what the liquid holds", "[unit][gas]") {
  const double gamma = 1.5;
  const auto width = units::millimetres(3.0);
  CHECK(capillary_hold(gamma, width, LiquidShape::long_gap).value() == Approx(1000.0));
  CHECK(capillary_hold(gamma, width, LiquidShape::round_pool).value() == Approx(2000.0));
  // 1 mm of titanium weighs 40.5 Pa.
  CHECK(bore_pressure_limit(gamma, width, LiquidShape::round_pool, units::millimetres(1.0)).value() ==
        Approx((2000.0 - 40.50) / 4.0).epsilon(1e-4));
  CHECK(bore_pressure_limit(gamma, units::metres(1.0), LiquidShape::long_gap, units::millimetres(1.0))
            .value() == 0.0);
}
