#include "purgewright/gas/openings.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <stdexcept>

using namespace purgewright;
using namespace purgewright::gas;

TEST_CASE("Impurity in the supply is the floor of counter-flow diffusion", "[unit][gas]") {
  CHECK(counterflow_fraction(0.0, 0.2095, 5e-6) == Approx(0.2095));
  CHECK(counterflow_fraction(100.0, 0.2095, 5e-6) == Approx(5e-6).epsilon(1e-12));
  CHECK(counterflow_fraction(counterflow_peclet(2e-5, 0.2095, 5e-6), 0.2095, 5e-6) ==
        Approx(2e-5).epsilon(1e-9));
  CHECK_THROWS_AS(counterflow_peclet(5e-6, 0.2095, 5e-6), std::domain_error);
}

TEST_CASE("A square slot diffuses nearly as a circle of its area, a long one more", "[unit][gas]") {
  const auto side = units::millimetres(4.0);
  const double circle = 4e-3 * 2.0 / std::sqrt(units::pi); // diameter of equal area
  CHECK(slot_shape_length(side, side).value() == Approx(circle).epsilon(1e-12));
  CHECK(slot_shape_length(units::millimetres(16.0), units::millimetres(1.0)).value() > 1.3 * circle);
  // Thin ellipse: K(k) -> ln(4 a/b).
  const double a = 1.0 / std::sqrt(units::pi);
  CHECK(slot_shape_length(units::metres(1.0), units::metres(1e-4)).value() ==
        Approx(units::pi * a / std::log(4e4)).epsilon(1e-6));
  CHECK_THROWS_AS(slot_shape_length(units::millimetres(1.0), units::millimetres(2.0)), std::domain_error);
}

TEST_CASE("A long channel's ends no longer matter", "[unit][gas]") {
  const auto diffusivity = units::Diffusivity::from_value(2e-5);
  const auto area = units::square_metres(1e-5);
  const auto shape = circle_shape_length(units::millimetres(3.57));
  CHECK(diffusive_conductance(diffusivity, area, units::metres(10.0), shape).value() ==
        Approx(2e-5 * 1e-5 / 10.0).epsilon(1e-3));
  CHECK(diffusive_conductance(diffusivity, area, units::metres(0.0), shape).value() ==
        Approx(2e-5 * 3.57e-3));
}

TEST_CASE("Outflow closes an opening to diffusion, first by half the flow", "[unit][gas]") {
  const auto g = units::cubic_metres_per_second(1e-6);
  CHECK(opposed_conductance(g, units::cubic_metres_per_second(0.0)) == g);
  CHECK(opposed_conductance(g, units::cubic_metres_per_second(1e-9)).value() ==
        Approx(1e-6 - 0.5e-9).epsilon(1e-6));
  CHECK(opposed_conductance(g, units::cubic_metres_per_second(1.0)).value() == 0.0);
  CHECK(opposed_conductance(units::cubic_metres_per_second(0.0), g).value() == 0.0);
  // The outflow for a limit brings a mixed space exactly there: c = G'/(G' + Q) c0.
  const auto q = outflow_for_limit(g, 2e-5, 0.2095);
  const auto left = opposed_conductance(g, q);
  CHECK(0.2095 * units::ratio(left, left + q) == Approx(2e-5).epsilon(1e-9));
}

TEST_CASE("A net outflow drives the neutral level to the edge of a vertical opening", "[unit][gas]") {
  const VerticalOpening slot{
      .width = units::millimetres(50.0), .height = units::millimetres(10.0), .reduced_gravity = 3.13};
  const auto exchange = vertical_exchange(slot);
  CHECK(vertical_inflow(slot, units::cubic_metres_per_second(0.0)).value() == Approx(exchange.value()));
  CHECK(vertical_inflow(slot, 2.83 * exchange).value() == 0.0);
  CHECK(vertical_inflow(slot, 2.82 * exchange).value() > 0.0);
  double before = exchange.value();
  for (double net = 0.1; net < 2.8; net += 0.1) {
    const double inflow = vertical_inflow(slot, net * exchange).value();
    CHECK(inflow < before);
    // In exchange flows, out^(2/3) + in^(2/3) = 2: the two levels share the height.
    const double in = inflow / exchange.value();
    CHECK(std::cbrt(in * in) + std::cbrt((in + net) * (in + net)) == Approx(2.0).epsilon(1e-9));
    before = inflow;
  }
}

TEST_CASE("Horizontal exchange follows the four regimes' limits", "[unit][gas]") {
  const auto flow = [](double slender) {
    return horizontal_exchange(units::metres(1.0), units::metres(slender), 1.0).value();
  };
  CHECK(flow(0.01) == Approx(0.055).epsilon(0.01));
  CHECK(flow(0.2) == Approx(0.147 * std::sqrt(0.2)).epsilon(0.06)); // Bernoulli regime, Epstein 1988
  CHECK(flow(0.6) > flow(0.1));
  CHECK(flow(1.0) == Approx(0.0887).epsilon(2e-3));                       // 0.14936 / cbrt(4.778)
  CHECK(flow(10.0) == Approx(0.32 * std::pow(10.0, -1.5)).epsilon(0.08)); // turbulent diffusion regime
  CHECK_THROWS_AS(flow(11.0), std::domain_error);
}

TEST_CASE("A draught flushes the slot above the critical speed only", "[unit][gas]") {
  const OpenSlot slot{
      .area = units::square_metres(1e-3), .space_height = units::millimetres(30.0), .reduced_gravity = 3.7};
  const DraughtBand band = critical_draught(3.7, units::millimetres(30.0));
  CHECK(draught_conductance(slot, 0.99 * band.lying).value() == 0.0);
  CHECK(draught_conductance(slot, 1.01 * band.flushed).value() ==
        Approx(0.02 * 1e-3 * 1.01 * band.flushed.value()));
  const double middle = flushed_share(3.7, units::millimetres(30.0), 0.5 * (band.lying + band.flushed));
  CHECK(middle > 0.2);
  CHECK(middle < 0.8);
  OpenSlot helium = slot;
  helium.reduced_gravity = -8.0;
  CHECK(draught_conductance(helium, units::metres_per_second(0.05)).value() == Approx(0.02 * 1e-3 * 0.05));
  CHECK(draught_conductance(helium, units::metres_per_second(0.0)).value() == 0.0);
}
