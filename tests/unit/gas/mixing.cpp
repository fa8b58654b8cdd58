#include "purgewright/gas/mixing.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numeric>
#include <stdexcept>

using namespace purgewright;
using namespace purgewright::gas;

TEST_CASE("Mixed and displaced times scale with volume over flow", "[unit][gas]") {
  const auto volume = units::litres(2.0);
  const auto flow = units::litres_per_minute(4.0);
  CHECK(displacement_time(volume, flow).value() == Approx(30.0));
  CHECK(mixed_time(volume, flow, 0.2, 0.2 / std::exp(1.0)).value() == Approx(30.0));
  CHECK(mixed_time(volume, flow, 0.2, 0.2 / std::exp(1.0), 0.0, 0.25).value() == Approx(120.0));
}

TEST_CASE("A target at or under the supply's level is refused", "[unit][gas]") {
  CHECK_THROWS_AS(mixed_volumes(0.2, 5e-6, 5e-6), std::domain_error);
  CHECK_THROWS_AS(mixed_volumes(0.2, 1e-6, 5e-6), std::domain_error);
  CHECK_THROWS_AS(mixed_volumes(0.1, 0.2), std::domain_error);
  CHECK_THROWS_AS(tanks_volumes(0.5, 0.2, 1e-5), std::domain_error);
  CHECK_THROWS_AS(mixed_time(units::litres(1.0), units::litres_per_minute(0.0), 0.2, 0.1), std::domain_error);
}

TEST_CASE("One tank is the exponential, to parts per million and beyond", "[unit][gas]") {
  for (const double theta : {0.0, 0.1, 1.0, 10.0, 25.0})
    CHECK(tanks_remaining(1.0, theta) == Approx(std::exp(-theta)).epsilon(1e-12));
}

TEST_CASE("Many tanks approach plug flow", "[unit][gas]") {
  CHECK(tanks_remaining(1e5, 0.98) > 1.0 - 1e-9);
  CHECK(tanks_remaining(1e5, 1.02) < 1e-9);
  CHECK(tanks_volumes(1e5, 0.2095, 1e-5) == Approx(1.0).margin(0.02));
}

TEST_CASE("The tail keeps its digits where 1 - F has none", "[unit][gas]") {
  // Three tanks at theta 20: exp(-60) (1 + 60 + 1800).
  CHECK(tanks_remaining(3.0, 20.0) == Approx(std::exp(-60.0) * 1861.0).epsilon(1e-10));
  CHECK(tanks_swept(3.0, 20.0) == 1.0);
}

TEST_CASE("A chain of unequal tanks has the wanted variance", "[unit][gas]") {
  for (const double n : {1.0, 1.001, 1.5, 2.0, 2.3, 7.9, 8.0, 15.5, 199.5, 200.0}) {
    const auto fractions = chain_fractions(n);
    INFO("n " << n);
    CHECK(std::accumulate(fractions.begin(), fractions.end(), 0.0) == Approx(1.0).epsilon(1e-12));
    CHECK(std::inner_product(fractions.begin(), fractions.end(), fractions.begin(), 0.0) ==
          Approx(1.0 / n).epsilon(1e-12));
    CHECK(fractions.size() == static_cast<std::size_t>(std::ceil(n)));
    for (const double fraction : fractions)
      CHECK(fraction > 0.0);
  }
  CHECK_THROWS_AS(chain_fractions(0.9), std::domain_error);
}

TEST_CASE("Dispersion stays finite for any Peclet number", "[unit][gas]") {
  for (const double peclet : {1e-3, 1.0, 800.0, 1e4, 1e6})
    for (const double theta : {0.0, 1e-6, 0.5, 1.0, 1.5, 50.0}) {
      INFO("Pe " << peclet << " theta " << theta);
      const double rest = dispersion_remaining(peclet, theta), swept = dispersion_swept(peclet, theta);
      CHECK(rest >= 0.0);
      CHECK(rest <= 1.0);
      CHECK(rest + swept == Approx(1.0).epsilon(1e-12));
    }
  CHECK(dispersion_swept(1e6, 0.999) < 0.25);
  CHECK(dispersion_swept(1e6, 0.99) < 1e-9);
  CHECK(dispersion_swept(1e6, 1.01) > 1.0 - 1e-9);
}

TEST_CASE("The scaled form equals the printed form where that one still computes", "[unit][gas]") {
  for (const double peclet : {5.0, 40.0, 300.0})
    for (const double theta : {0.7, 1.0, 1.3}) {
      const double s = 2.0 * std::sqrt(theta / peclet);
      const double printed =
          0.5 * (std::erfc((1.0 - theta) / s) + std::exp(peclet) * std::erfc((1.0 + theta) / s));
      CHECK(dispersion_swept(peclet, theta) == Approx(printed).epsilon(1e-9));
    }
}

TEST_CASE("Volumes of a dispersed line reach the level asked for", "[unit][gas]") {
  for (const double peclet : {0.1, 3.0, 50.0, 5000.0}) {
    const double volumes = dispersion_volumes(peclet, 0.2095, 2e-5, 2e-6);
    CHECK(dispersion_remaining(peclet, volumes) == Approx(remaining_share(0.2095, 2e-5, 2e-6)).epsilon(1e-6));
  }
  CHECK(dispersion_volumes(1e6, 0.2095, 1e-5) == Approx(1.0).margin(0.01));
  CHECK(dispersion_volumes(50.0, 0.2, 0.2) == 0.0);
}

TEST_CASE("Variance and tanks of a closed vessel agree from mixed to plug", "[unit][gas]") {
  CHECK(closed_vessel_variance(0.0) == 1.0);
  CHECK(closed_vessel_variance(1e-3) == Approx(closed_vessel_variance(0.999e-3)).epsilon(1e-5));
  CHECK(equivalent_tanks(1e4) == Approx(5000.5).epsilon(1e-6)); // Pe/2 + 1/2
  for (const double n : {1.0001, 1.7, 5.0, 60.0, 9e4})
    CHECK(equivalent_tanks(equivalent_peclet(n)) == Approx(n).epsilon(1e-9));
  CHECK(equivalent_peclet(1.0) == 0.0);
}

TEST_CASE("Laminar dispersion starts at molecular diffusion", "[unit][gas]") {
  const auto diffusivity = units::Diffusivity::from_value(2e-5);
  CHECK(taylor_aris_tube(diffusivity, units::metres_per_second(0.0), units::millimetres(5.0)).value() ==
        2e-5);
  // Pe_h = 0.1 * 0.002 / 2e-5 = 10: 1 + 100/210.
  CHECK(taylor_aris_slot(diffusivity, units::metres_per_second(0.1), units::millimetres(2.0)).value() ==
        Approx(2e-5 * (1.0 + 100.0 / 210.0)));
  // L/R = 20, 0.1 u R / D = 0.1 * 0.1 * 0.005 / 2e-5 = 2.5.
  CHECK(taylor_development(diffusivity, units::metres_per_second(0.1), units::millimetres(5.0),
                           units::millimetres(100.0)) == Approx(8.0));
  // u* = 2 sqrt(0.03/8).
  CHECK(taylor_turbulent(units::metres_per_second(2.0), units::millimetres(10.0), 0.03).value() ==
        Approx(10.1 * 0.01 * 2.0 * std::sqrt(0.00375)));
}

TEST_CASE("Laminar convective flow has the parabolic profile's tail", "[unit][gas]") {
  CHECK(convective_remaining(0.5) == 1.0);
  CHECK(convective_remaining(5.0) == Approx(0.01));
  CHECK(convective_remaining(convective_volumes(0.2, 2e-4)) == Approx(1e-3));
}

// erfc(1) = 0.157299, erfc(2) = 0.00467773: Abramowitz & Stegun, Handbook of Mathematical Functions,
// table 7.1, from memory.
TEST_CASE("A gas spreads into the one beside it as the error function says", "[unit][gas]") {
  const auto diffusivity = units::Diffusivity::from_value(2e-5);
  const auto time = units::seconds(0.5); // 2 sqrt(D t) = 6.3246 mm
  CHECK(spread_depth(diffusivity, time, 0.5 * 0.157299).value() == Approx(6.3246e-3).epsilon(1e-4));
  CHECK(spread_depth(diffusivity, time, 0.5 * 0.00467773).value() == Approx(2.0 * 6.3246e-3).epsilon(1e-4));
  CHECK(spread_depth(diffusivity, {}, 0.1).value() == 0.0);
  CHECK_THROWS_AS(spread_depth(diffusivity, time, 0.5), std::domain_error);
  CHECK_THROWS_AS(spread_depth(diffusivity, time, 0.0), std::domain_error);
}
