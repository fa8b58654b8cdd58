#include "purgewright/gas/hose.hpp"

#include "purgewright/gas/mixing.hpp"

#include <catch2/catch.hpp>

#include <stdexcept>

using namespace purgewright;
using namespace purgewright::gas;

namespace {

const Hose hose{.length = units::metres(3.0),
                .inside_diameter = units::millimetres(4.0),
                .outside_diameter = units::millimetres(6.0)};
const auto diffusivity_of_oxygen = units::Diffusivity::from_value(1.9e-5);

} // namespace

TEST_CASE("Hose materials are found by their word", "[unit][gas]") {
  for (const char *name : {"silicone", "pvc", "polyurethane", "ptfe", "fep", "nylon", "rubber", "steel"}) {
    INFO(name);
    REQUIRE(hose_material(name) != nullptr);
    CHECK_FALSE(hose_material(name)->source.empty());
  }
  CHECK(hose_material("straw") == nullptr);
  CHECK(hose_material("silicone")->permeability > 100.0 * hose_material("ptfe")->permeability);
}

TEST_CASE("The barrer has its defined value", "[unit][gas]") {
  CHECK(barrer ==
        Approx(7.50062e-18).epsilon(1e-5)); // m3(STP) m / (m2 s Pa), Stern, J. Polym. Sci. A-2 6, 1933 (1968)
}

TEST_CASE("Permeation grows with length and falls with flow", "[unit][gas]") {
  const double permeability = hose_material("silicone")->permeability;
  Hose longer = hose;
  longer.length = 2.0 * hose.length;
  const auto oxygen = hose_oxygen_at_stp(hose, permeability);
  CHECK(hose_oxygen_at_stp(longer, permeability).value() == Approx(2.0 * oxygen.value()));
  CHECK(hose_rise(oxygen, units::litres_per_minute(10.0)) ==
        Approx(0.5 * hose_rise(oxygen, units::litres_per_minute(5.0))));
  CHECK(from_stp(oxygen, units::celsius(20.0)).value() == Approx(oxygen.value() * 293.15 / 273.15));
  CHECK_THROWS_AS(hose_rise(units::litres_per_minute(1.0), units::litres_per_minute(5.0)), std::domain_error);
  Hose inverted = hose;
  inverted.outside_diameter = units::millimetres(3.0);
  CHECK_THROWS_AS(hose_oxygen_at_stp(inverted, permeability), std::domain_error);
}

TEST_CASE("Flushing an idle hose takes between one volume and the mixed time", "[unit][gas]") {
  const auto volume = hose_volume(hose);
  CHECK(volume.value() == Approx(3.0 * units::pi * 4e-6));
  for (const double litres : {0.5, 5.0}) {
    const auto flow = units::litres_per_minute(litres);
    const auto time = hose_flush_time(hose, flow, diffusivity_of_oxygen, 0.2095, 2e-5, 2e-6);
    CHECK(time > displacement_time(volume, flow));
    CHECK(time < mixed_time(volume, flow, 0.2095, 2e-5, 2e-6));
  }
  // u 0.6631 m/s, Pe_R 69.8, Dax 1.948e-3 m2/s, Pe 1021.4 over 3 m.
  const auto slow = units::litres_per_minute(0.5);
  CHECK(hose_flush_time(hose, slow, diffusivity_of_oxygen, 0.2095, 2e-5).value() ==
        Approx((volume / slow).value() * tanks_volumes(511.2, 0.2095, 2e-5)).epsilon(1e-4));
  // A hose without wall permeation still cannot fall under its supply.
  CHECK_THROWS_AS(
      hose_flush_time(hose, units::litres_per_minute(5.0), diffusivity_of_oxygen, 0.2095, 1e-6, 2e-6),
      std::domain_error);
}
