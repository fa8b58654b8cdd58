#include "purgewright/heat/gas_film.hpp"

#include <catch2/catch.hpp>

using namespace purgewright;
using namespace purgewright::heat;
using job::GasSpecies;
using units::celsius;
using units::kelvins;
using units::millimetres;

TEST_CASE("Gas conductivity rises with temperature and stays beyond its table", "[unit][heat]") {
  for (const GasSpecies gas : {GasSpecies::argon, GasSpecies::helium}) {
    for (double t = 250.0; t < 1000.0; t += 10.0) {
      CHECK(gas_conductivity(gas, kelvins(t + 10.0)) > gas_conductivity(gas, kelvins(t)));
    }
    CHECK(gas_conductivity(gas, kelvins(1200.0)) == gas_conductivity(gas, kelvins(1000.0)));
    CHECK_THROWS_AS(gas_conductivity(gas, kelvins(249.0)), std::domain_error);
    CHECK_THROWS_AS(gas_conductivity(gas, kelvins(1501.0)), std::domain_error);
  }
  CHECK(gas_conductivity(GasSpecies::argon, kelvins(450.0)) == Approx(0.5 * (22.6e-3 + 26.8e-3)));
}

TEST_CASE("Still argon round a small tube, worked by hand", "[unit][heat]") {
  // Film 496.65 K: k 0.02666, rho 0.9803, alpha = k / (rho 520.3) = 5.227e-5, nu = 2/3 alpha; d 25.4 mm, 407
  // K: Ra = 9.807 x 407 / 496.65 x 1.6387e-5 / (alpha nu) = 7.23e4; Nu = (0.60 + 0.387 Ra^(1/6) / 1.2104)^2
  // = 7.12.
  const double h = natural_coefficient(GasSpecies::argon, millimetres(25.4), celsius(427.0), celsius(20.0));
  CHECK(h == Approx(7.12 * 0.02666 / 0.0254).epsilon(0.01));
  CHECK(natural_coefficient(GasSpecies::helium, millimetres(25.4), celsius(427.0), celsius(20.0)) > 2.0 * h);
  CHECK(natural_coefficient(GasSpecies::argon, millimetres(50.0), celsius(427.0), celsius(20.0)) < h);
  CHECK_THROWS_AS(natural_coefficient(GasSpecies::argon, millimetres(25.4), celsius(20.0), celsius(20.0)),
                  std::domain_error);
  CHECK_THROWS_AS(natural_coefficient(GasSpecies::argon, millimetres(0.0), celsius(90.0), celsius(20.0)),
                  std::domain_error);
}

TEST_CASE("No motion leaves the constant of the correlation", "[unit][heat]") {
  CHECK(cylinder_nusselt(0.0, 0.7) == Approx(0.36));
  CHECK(cylinder_nusselt(1e5, 0.7) > cylinder_nusselt(1e4, 0.7));
  CHECK_THROWS_AS(cylinder_nusselt(1e13, 0.7), std::domain_error);
  CHECK_THROWS_AS(cylinder_nusselt(1e5, 0.0), std::domain_error);
}

TEST_CASE("Laminar bore", "[unit][heat]") {
  CHECK(bore_coefficient(GasSpecies::argon, millimetres(20.0), kelvins(500.0)) ==
        Approx(3.66 * 26.8e-3 / 0.02));
  CHECK_THROWS_AS(bore_coefficient(GasSpecies::argon, millimetres(-1.0), kelvins(500.0)), std::domain_error);
}
