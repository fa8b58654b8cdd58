#include "purgewright/gas/jets.hpp"

#include <boost/numeric/odeint.hpp>
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <stdexcept>

using namespace purgewright;
using namespace purgewright::gas;

namespace {

Inlet argon_inlet(double speed) {
  return {.speed = units::metres_per_second(speed),
          .radius = units::millimetres(1.0),
          .space_height = units::millimetres(40.0),
          .reduced_gravity = 3.7,
          .feed = Feed::low};
}

} // namespace

TEST_CASE("Jet regimes change at the published Reynolds numbers", "[unit][gas]") {
  CHECK(jet_regime(299.0) == JetRegime::dissipated_laminar);
  CHECK(jet_regime(300.0) == JetRegime::laminar);
  CHECK(jet_regime(1000.0) == JetRegime::semi_turbulent);
  CHECK(jet_regime(3000.0) == JetRegime::turbulent);
  CHECK(reynolds(units::metres_per_second(2.0), units::millimetres(3.0),
                 units::Diffusivity::from_value(1.5e-5)) == Approx(400.0));
}

TEST_CASE("Fountain height has no step and never falls with speed", "[unit][gas]") {
  double before = 0.0;
  for (double froude = 0.0; froude < 6.0; froude += 1e-3) {
    const double height = fountain_height(froude, units::metres(1.0)).value();
    REQUIRE(height >= before);
    if (froude > 0.1)
      REQUIRE(height - before < 0.01);
    before = height;
  }
}

TEST_CASE("Plume flow follows the five-thirds law", "[unit][gas]") {
  const double near = plume_flow(1e-4, units::metres(0.1)).value();
  CHECK(plume_flow(1e-4, units::metres(0.8)).value() == Approx(32.0 * near));
  CHECK(plume_flow(8e-4, units::metres(0.1)).value() == Approx(2.0 * near));
  CHECK(thermal_buoyancy_flux(units::Power::from_value(100.0), units::kilograms_per_cubic_metre(1.2), 1000.0,
                              units::kelvins(300.0)) == Approx(9.80665 * 100.0 / 3.6e5));
}

// The front moves at the plume's volume flow over the section: integrated step by step as the twin.
TEST_CASE("Filling-box front is the integral of the plume's flow", "[unit][gas]") {
  const FillingBox box{.section = units::square_metres(4e-3),
                       .height = units::metres(0.06),
                       .buoyancy_flux = buoyancy_flux(units::litres_per_minute(5.0), 3.7)};
  namespace odeint = boost::numeric::odeint;
  double front = 0.06;
  odeint::integrate_adaptive(
      odeint::make_controlled<odeint::runge_kutta_dopri5<double>>(1e-12, 1e-10),
      [&](const double &z, double &slope, double) {
        slope = -plume_flow(box.buoyancy_flux, units::metres(std::max(z, 0.0))).value() / 4e-3;
      },
      front, 0.0, 10.0, 0.01);
  CHECK(first_front(box, units::seconds(10.0)).value() == Approx(front).epsilon(1e-7));
  CHECK(first_front_time(box, units::metres(front)).value() == Approx(10.0).epsilon(1e-6));
  CHECK(first_front(box, units::seconds(0.0)) == box.height);
  CHECK_THROWS_AS(first_front_time(box, units::metres(0.07)), std::domain_error);
}

TEST_CASE("Jets stir a length set by their spread, less when many share the duct", "[unit][gas]") {
  const DuctJets one{.duct_diameter = units::millimetres(22.0),
                     .jet_diameter = units::millimetres(2.0),
                     .count = 1,
                     .jet_reynolds = 5000.0};
  // 10 mm at 11 degrees to the side.
  CHECK(units::to_millimetres(jet_stirred_length(one)) == Approx(51.446).epsilon(1e-4));
  DuctJets four = one;
  four.count = 4; // cells of 11 mm, 4.5 mm to the side
  CHECK(units::to_millimetres(jet_stirred_length(four)) == Approx(23.151).epsilon(1e-4));
  DuctJets gentle = one;
  gentle.jet_reynolds = 20.0; // 0.088 * 20 steps of 10 mm
  CHECK(units::to_millimetres(jet_stirred_length(gentle)) == Approx(17.6));
  DuctJets full = one;
  full.jet_diameter = full.duct_diameter;
  CHECK(jet_stirred_length(full).value() == 0.0);
}

TEST_CASE("Slow dense gas fed low lies, fast gas stirs, nothing jumps between", "[unit][gas]") {
  CHECK(stirring(argon_inlet(0.02)).weight == 0.0);
  CHECK(stirring(argon_inlet(5.0)).weight == 1.0);
  double before = 0.0;
  for (double speed = 0.0; speed < 5.0; speed += 1e-3) {
    const double weight = stirring(argon_inlet(speed)).weight;
    REQUIRE(weight >= before);
    REQUIRE(weight - before < 0.01);
    before = weight;
  }
}

TEST_CASE("A fast jet that falls back low in a tall space leaves it lying", "[unit][gas]") {
  Inlet inlet = argon_inlet(0.5); // Fr 8, rise 20 mm
  inlet.space_height = units::millimetres(200.0);
  CHECK(stirring(inlet).froude > stirring_froude);
  CHECK(stirring(inlet).weight == 0.0);
  inlet.along_gravity_axis = false; // a sideways jet is not saved by its low rise
  CHECK(stirring(inlet).weight == 1.0);
}

TEST_CASE("Gas fed at the wrong end stirs and is named", "[unit][gas]") {
  Inlet helium = argon_inlet(0.02);
  helium.reduced_gravity = -8.0;
  CHECK(stirring(helium).wrong_end);
  CHECK(stirring(helium).weight == 1.0);
  helium.feed = Feed::high;
  CHECK_FALSE(stirring(helium).wrong_end);
  CHECK(stirring(helium).weight == 0.0);
  Inlet even = argon_inlet(0.02);
  even.reduced_gravity = 0.0;
  CHECK(stirring(even).weight == 1.0);
  CHECK_FALSE(stirring(even).wrong_end);
}

TEST_CASE("Blended tanks run from lying to stirred", "[unit][gas]") {
  CHECK(blended_tanks(0.0, 12.0) == Approx(12.0));
  CHECK(blended_tanks(1.0, 12.0) == 1.0);
  CHECK(blended_tanks(0.5, 12.0) == Approx(1.0 / (0.5 + 0.5 / 12.0)));
  CHECK_THROWS_AS(blended_tanks(1.1, 12.0), std::domain_error);
}

TEST_CASE("A hot tube's free convection in argon, on paper", "[unit][gas][jets]") {
  // 25.4 mm at 700 K in argon at 293 K, properties at 496.5 K: CRC Handbook, 500 K: 33.9 uPa s and 26.8 mW/(m
  // K), scaled by 496.5/500; density 39.948e-3 x 101325 / (8.3145 x 496.5) = 0.9805 kg/m3; Pr 2/3.
  const double scale = 496.5 / 500.0, slowness = 33.9e-6 * scale / 0.9805, d = 25.4e-3;
  const double rayleigh = 9.80665 * 407.0 / 496.5 * d * d * d * (2.0 / 3.0) / (slowness * slowness);
  const double spread = std::pow(1.0 + std::pow(0.559 * 1.5, 9.0 / 16.0), 4.0 / 9.0);
  const double nusselt = 0.36 + 0.518 * std::pow(rayleigh, 0.25) / spread;
  const double paper = nusselt * 26.8e-3 * scale * units::pi * 12.7e-3 * 407.0;
  CHECK(paper == Approx(2.9).epsilon(0.05));
  const HotCylinder hot{units::metres(d), units::millimetres(12.7), units::kelvins(700.0)};
  CHECK(free_convection(hot, Species::argon, units::kelvins(293.0)).value() == Approx(paper).epsilon(0.03));
  const HotCylinder still{units::metres(d), units::millimetres(12.7), units::kelvins(293.0)};
  CHECK(free_convection(still, Species::argon, units::kelvins(293.0)).value() == 0.0);
  CHECK_THROWS_AS(free_convection(still, Species::argon, units::kelvins(294.0)), std::domain_error);
}
