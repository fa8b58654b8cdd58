#include "purgewright/gas/cooling_estimate.hpp"

#include <catch2/catch.hpp>

#include <stdexcept>

using namespace purgewright;
using namespace purgewright::gas;

namespace {

const WallMetal titanium{
    .conductivity = 15.0, .density = units::kilograms_per_cubic_metre(4480.0), .specific_heat = 600.0};

double cooling_time(double start, double peak, double shielding) {
  return thin_plate_cooling_time(1e5, units::millimetres(0.9), titanium, units::celsius(start),
                                 units::celsius(peak), units::celsius(shielding))
      .value();
}

} // namespace

TEST_CASE("The cooling time is the time between two rises of the same law", "[unit][gas]") {
  const auto rise = [](double t) {
    return thin_plate_rise(1e5, units::millimetres(0.9), titanium, units::seconds(t)).value();
  };
  const double from = 10.0, to = 90.0;
  CHECK(cooling_time(20.0, 20.0 + rise(from), 20.0 + rise(to)) == Approx(to - from).epsilon(1e-9));
}

TEST_CASE("A warmer start cools slower, no drop takes no time", "[unit][gas]") {
  CHECK(cooling_time(200.0, 1600.0, 427.0) > cooling_time(20.0, 1600.0, 427.0));
  CHECK(cooling_time(20.0, 427.0, 427.0) == 0.0);
  CHECK_THROWS_AS(cooling_time(430.0, 1600.0, 427.0), std::domain_error);
  CHECK_THROWS_AS(cooling_time(20.0, 400.0, 427.0), std::domain_error);
}

TEST_CASE("Line energy is arc power over speed", "[unit][gas]") {
  CHECK(line_energy(units::volts(10.0), units::amperes(50.0), 0.6, units::metres_per_second(0.002)) ==
        Approx(150e3));
  CHECK_THROWS_AS(line_energy(units::volts(10.0), units::amperes(50.0), 0.6, units::metres_per_second(0.0)),
                  std::domain_error);
}
