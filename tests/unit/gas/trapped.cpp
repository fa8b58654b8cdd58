#include "purgewright/gas/trapped.hpp"

#include <catch2/catch.hpp>

#include <stdexcept>

using namespace purgewright;
using namespace purgewright::gas;

TEST_CASE("Gas heated as a whole follows its absolute temperature", "[unit][gas]") {
  CHECK(trapped_rise(1.0, units::kelvins(300.0), units::kelvins(600.0)).value() == Approx(101325.0));
  CHECK(trapped_rise(0.0, units::kelvins(300.0), units::kelvins(600.0)).value() == 0.0);
}

TEST_CASE("Moles and volume are kept when a part is heated", "[unit][gas]") {
  const double fraction = 0.3,
               p = 101325.0 + trapped_rise(fraction, units::kelvins(293.0), units::kelvins(900.0)).value();
  CHECK(p * (fraction / 900.0 + (1.0 - fraction) / 293.0) == Approx(101325.0 / 293.0).epsilon(1e-12));
}

TEST_CASE("The fraction for a limit gives that limit", "[unit][gas]") {
  const auto cold = units::kelvins(293.0), hot = units::kelvins(900.0);
  const double fraction = heated_fraction_for(units::pascals(500.0), cold, hot);
  CHECK(trapped_rise(fraction, cold, hot).value() == Approx(500.0).epsilon(1e-9));
  CHECK(heated_fraction_for(units::pascals(1e9), cold, hot) == 1.0);
  CHECK_THROWS_AS(heated_fraction_for(units::pascals(500.0), hot, cold), std::domain_error);
  CHECK_THROWS_AS(trapped_rise(1.5, cold, hot), std::domain_error);
}
