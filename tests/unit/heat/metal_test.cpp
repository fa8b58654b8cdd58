#include "purgewright/heat/metal.hpp"

#include "purgewright/standards/tables.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace purgewright;
using namespace purgewright::heat;

namespace {

constexpr const char *names[] = {"titanium-grade-2", "titanium-grade-9", "titanium-6al-4v"};

} // namespace

TEST_CASE("Every metal that may be welded has thermal properties that fit the table's", "[unit][heat]") {
  int weldable = 0;
  for (const auto &row : standards::metals()) {
    if (row.weldable_here) {
      ++weldable;
      const Metal *metal = thermal_metal(row.name);
      REQUIRE(metal != nullptr);
      CAPTURE(metal->name);
      CHECK(metal->density == row.density);
      CHECK(metal->conductivity_at(units::celsius(20.0)) == row.conductivity.room());
      CHECK(metal->specific_heat_at(units::celsius(20.0)) == row.specific_heat.room());
      CHECK(metal->solidus == row.melting_start);
    }
  }
  CHECK(weldable == 3);
  CHECK(thermal_metal("copper-c110") == nullptr);
}

TEST_CASE("Enthalpy is the integral of the apparent heat", "[unit][heat]") {
  for (const char *name : names) {
    const Metal &metal = *thermal_metal(name);
    CHECK(metal.enthalpy_at(units::kelvins(298.15)) == 0.0);
    for (double t = 203.7; t < 3990.0; t += 37.3) {
      constexpr double h = 0.01;
      const double slope =
          (metal.enthalpy_at(units::kelvins(t + h)) - metal.enthalpy_at(units::kelvins(t - h))) / (2.0 * h);
      CAPTURE(name, t);
      CHECK(slope == Approx(metal.apparent_heat_at(units::kelvins(t))).epsilon(1e-3));
    }
  }
}

TEST_CASE("Melting takes the latent heat besides the sensible", "[unit][heat]") {
  for (const char *name : names) {
    const Metal &metal = *thermal_metal(name);
    const double width = metal.liquidus.value() - metal.solidus.value();
    const double taken = metal.enthalpy_at(metal.liquidus) - metal.enthalpy_at(metal.solidus);
    const double sensible =
        width * metal.specific_heat_at(units::kelvins(metal.solidus.value() + 0.5 * width));
    CHECK(taken - sensible == Approx(metal.latent_heat).epsilon(0.01));
    CHECK(metal.latent_heat > 250e3);
    CHECK(metal.latent_heat < 350e3);
  }
}

TEST_CASE("Conductivity rises into the pool, properties stay beyond the tables", "[unit][heat]") {
  const Metal &metal = *thermal_metal("titanium-grade-2");
  CHECK(metal.conductivity_at(metal.liquidus) == metal.pool_conductivity);
  CHECK(metal.conductivity_at(metal.solidus) < 0.5 * metal.pool_conductivity);
  CHECK(metal.specific_heat_at(units::kelvins(2500.0)) == metal.specific_heat.back().value);
  CHECK(metal.specific_heat_at(units::kelvins(210.0)) == metal.specific_heat.front().value);
}

TEST_CASE("Metals refuse what lies outside their range", "[unit][heat]") {
  const Metal &metal = *thermal_metal("titanium-grade-9");
  CHECK_THROWS_AS(metal.conductivity_at(units::kelvins(199.0)), std::domain_error);
  CHECK_THROWS_AS(metal.specific_heat_at(units::kelvins(4001.0)), std::domain_error);
  CHECK_THROWS_AS(metal.enthalpy_at(units::kelvins(std::nan(""))), std::domain_error);
  const auto density = units::kilograms_per_cubic_metre(4500.0);
  CHECK_THROWS_AS(constant_metal(0.0, density, 500.0, 0.3), std::domain_error);
  CHECK_THROWS_AS(constant_metal(10.0, density, -1.0, 0.3), std::domain_error);
  CHECK_THROWS_AS(constant_metal(10.0, density, 500.0, 1.1), std::domain_error);
}
