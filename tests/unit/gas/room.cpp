#include "purgewright/gas/room.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <stdexcept>

using namespace purgewright;
using namespace purgewright::gas;

TEST_CASE("A room's oxygen goes from fresh air to its steady level", "[unit][gas]") {
  const auto room = units::cubic_metres(30.0);
  const auto air = ventilation(room, 2.0);
  const auto release = units::litres_per_minute(20.0);
  CHECK(room_after(room, air, release, units::seconds(0.0)) == air_oxygen);
  CHECK(room_after(room, air, release, units::seconds(1e6)) ==
        Approx(room_steady(air, release)).epsilon(1e-12));
  // One air change: 1 - 1/e of the way.
  const double way = (air_oxygen - room_after(room, air, release, units::seconds(1800.0))) /
                     (air_oxygen - room_steady(air, release));
  CHECK(way == Approx(1.0 - std::exp(-1.0)).epsilon(1e-9));
}

TEST_CASE("A closed room loses oxygen exponentially", "[unit][gas]") {
  const auto room = units::cubic_metres(12.0);
  const auto none = units::VolumeFlow{};
  CHECK(room_after(room, none, units::litres_per_minute(20.0), units::seconds(36000.0)) ==
        Approx(air_oxygen * std::exp(-1.0)).epsilon(1e-12));
  CHECK_THROWS_AS(room_steady(none, units::litres_per_minute(20.0)), std::domain_error);
}

TEST_CASE("Ventilation for a limit holds the limit", "[unit][gas]") {
  const auto release = units::litres_per_minute(25.0);
  CHECK(room_steady(ventilation_for(release), release) == Approx(deficient_oxygen).epsilon(1e-12));
  CHECK_THROWS_AS(ventilation_for(release, 0.21), std::domain_error);
}

TEST_CASE("Compressibility is 1 at no pressure and smooth across the table", "[unit][gas]") {
  CHECK(compressibility(Species::argon, units::celsius(20.0), units::pascals(0.0)) == 1.0);
  CHECK(compressibility(Species::argon, units::kelvins(293.15), units::pascals(20e6)) == 0.9443);
  CHECK(compressibility(Species::argon, units::kelvins(323.15), units::pascals(30e6)) == 1.0196);
  // A bottle of 300 bar on its gauge: an atmosphere on along the last slope.
  CHECK(compressibility(Species::argon, units::kelvins(293.15), units::pascals(30e6) + standard_atmosphere) ==
        Approx(0.9873 + (0.9873 - 0.9728) * 0.101325 / 2.5));
  CHECK(compressibility(Species::argon, units::kelvins(298.15), units::pascals(20e6)) ==
        Approx(0.5 * (0.9443 + 0.9578)));
  CHECK(compressibility(Species::helium, units::celsius(20.0), units::pascals(20e6)) ==
        Approx(1.0968).epsilon(1e-3));
  CHECK_THROWS_AS(compressibility(Species::argon, units::celsius(60.0), units::pascals(1e6)),
                  std::domain_error);
  CHECK_THROWS_AS(compressibility(Species::air, units::celsius(20.0), units::pascals(1e6)),
                  std::domain_error);
}

TEST_CASE("A bottle changed early gives less", "[unit][gas]") {
  Bottle bottle{.water_volume = units::litres(50.0), .filling = units::pascals(200e5)};
  const double full = bottle_gas(bottle).value();
  bottle.residual = units::pascals(200e5);
  CHECK(bottle_gas(bottle).value() == 0.0);
  bottle.residual = units::pascals(10e5);
  const double used = bottle_gas(bottle).value();
  CHECK(used < full);
  CHECK(full - used == Approx(0.050 * 10e5 / 101325.0).epsilon(0.01)); // nearly ideal at 10 bar
  CHECK(parts_per_bottle(units::cubic_metres(10.0), units::litres(40.0)) == Approx(250.0));
  bottle.residual = units::pascals(201e5);
  CHECK_THROWS_AS(bottle_gas(bottle), std::domain_error);
}
