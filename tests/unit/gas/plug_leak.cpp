// What the plug's rubber lets in, on paper.
#include "unit/gas/design_of.hpp"

#include "purgewright/gas/bounds.hpp"

#include <catch2/catch.hpp>

using namespace purgewright;
using namespace purgewright::gas;

TEST_CASE("oxygen through the plug's O-ring is that of a flat wall of silicone", "[unit][gas][plan]") {
  const auto job = gas::test::example_job("logger-25");
  const auto layout = fixture::lay_out(job);
  // A ring as high as it is wide round the spigot of 23.5 mm: 2 pi 11.75 mm of rubber a unit of its width.
  // 605 barrer (Robb 1968) = 605 x 7.5006e-18 m3(STP) m / (m2 s Pa); air holds 0.2095 x 101325 Pa of oxygen.
  const double at_stp = 605 * 7.5006e-18 * 0.2095 * 101325 * 2 * units::pi * 11.75e-3;
  const auto leak = plug_leak(job, layout);
  CHECK(leak.oxygen.value() == Approx(at_stp * 293.15 / 273.15).epsilon(2e-3));
  CHECK(leak.exchange.value() == 0.0); // squeezed at its worst: no gap
}

TEST_CASE("a ring without squeeze leaves a gap that air diffuses through", "[unit][gas][plan]") {
  const auto job = gas::test::example_job("logger-25");
  auto layout = fixture::lay_out(job);
  layout.plug.seal.squeeze_least = -0.1;
  // A tenth of the section open all round, as long as the section: D x 0.1 x 2 pi r; argon in air at 20 degC
  // about 0.19 cm2/s.
  CHECK(plug_leak(job, layout).exchange.value() ==
        Approx(0.19e-4 * 0.1 * 2 * units::pi * 11.75e-3).epsilon(0.1));
}
