#include "purgewright/gas/properties.hpp"

#include <catch2/catch.hpp>

#include <limits>
#include <stdexcept>
#include <string>

using namespace purgewright;
using namespace purgewright::gas;

TEST_CASE("Diffusion is symmetric and falls as pressure rises", "[unit][gas]") {
  const auto shop = units::celsius(20.0);
  const double forward = diffusivity(Species::argon, Species::oxygen, shop).value();
  CHECK(forward == diffusivity(Species::oxygen, Species::argon, shop).value());
  CHECK(diffusivity(Species::argon, Species::oxygen, shop, 2.0 * standard_atmosphere).value() ==
        Approx(0.5 * forward).epsilon(1e-12));
}

TEST_CASE("Mixtures lie between their gases, in proportion", "[unit][gas]") {
  const auto shop = units::celsius(20.0);
  const double argon = density(Species::argon, shop).value(), air = density(Species::air, shop).value();
  CHECK(mixture_density(Species::argon, Species::air, 1.0, shop).value() == argon);
  CHECK(mixture_density(Species::argon, Species::air, 0.0, shop).value() == air);
  CHECK(mixture_density(Species::argon, Species::air, 0.25, shop).value() ==
        Approx(0.25 * argon + 0.75 * air).epsilon(1e-14));
}

TEST_CASE("Kinematic viscosity is viscosity over density", "[unit][gas]") {
  const auto warm = units::kelvins(400.0);
  CHECK(kinematic_viscosity(Species::helium, warm).value() * density(Species::helium, warm).value() ==
        Approx(viscosity(Species::helium, warm).value()).epsilon(1e-14));
}

TEST_CASE("Reduced gravity has the sign of the density difference", "[unit][gas]") {
  const auto shop = units::celsius(20.0);
  const auto helium = density(Species::helium, shop), air = density(Species::air, shop);
  CHECK(reduced_gravity(helium, air, air) < 0.0);
  CHECK(reduced_gravity(air, helium, air) == Approx(-reduced_gravity(helium, air, air)).epsilon(1e-14));
}

TEST_CASE("Every potential names where it is published", "[unit][gas]") {
  for (const Species species :
       {Species::argon, Species::helium, Species::oxygen, Species::nitrogen, Species::air})
    CHECK_FALSE(lennard_jones(species).source.empty());
}

TEST_CASE("Properties refuse states outside their range, by name and value", "[unit][gas]") {
  CHECK_THROWS_AS(viscosity(Species::argon, units::kelvins(199.0)), std::domain_error);
  CHECK_THROWS_AS(viscosity(Species::argon, units::kelvins(1001.0)), std::domain_error);
  CHECK_THROWS_AS(density(Species::argon, units::kelvins(300.0), units::pascals(2e6)), std::domain_error);
  CHECK_THROWS_AS(viscosity(Species::argon, units::kelvins(std::numeric_limits<double>::quiet_NaN())),
                  std::domain_error);
  CHECK_NOTHROW(viscosity(Species::helium, units::kelvins(1000.0)));
  try {
    mixture_density(Species::argon, Species::air, 1.5, units::kelvins(300.0));
    FAIL("a fraction of 1.5 was accepted");
  } catch (const std::domain_error &error) {
    CHECK(std::string(error.what()) == "mixture_density: fraction must lie in 0 to 1, got 1.5");
  }
}

TEST_CASE("Heat capacity of the purge gases and of air", "[unit][gas]") {
  // NIST Chemistry WebBook, 25 degC and 1 atm, from memory: 520.3, 5193, 920, 1041; air 1006 (CRC Handbook).
  CHECK(specific_heat(Species::argon) == Approx(520.3).epsilon(1e-3));
  CHECK(specific_heat(Species::helium) == Approx(5193.0).epsilon(1e-3));
  CHECK(specific_heat(Species::oxygen) == Approx(920.0).epsilon(0.015));
  CHECK(specific_heat(Species::nitrogen) == Approx(1041.0).epsilon(0.003));
  CHECK(specific_heat(Species::air) == Approx(1006.0).epsilon(0.003));
}
