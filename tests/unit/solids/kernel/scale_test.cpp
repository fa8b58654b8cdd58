#include "purgewright/solids/kernel/scale.hpp"

#include "kernel_test.hpp"

#include <catch2/catch.hpp>

using namespace purgewright;
using namespace purgewright::solids::kernel;

TEST_CASE("the same dimension reached in two ways is bit-equal in the kernel", "[unit]") {
  units::Length const sum = test::length(0.1) + test::length(0.2);
  REQUIRE(sum != test::length(0.3)); // as plain numbers they differ
  CHECK(mm(sum) == mm(test::length(0.3)));
  CHECK(mm(units::inches(1.0)) == 25.4);
  CHECK(mm(3.0 * units::inches(0.1)) == 7.62);
}

TEST_CASE("kernel numbers convert back", "[unit]") {
  CHECK(length_from_mm(25.4).value() == Approx(0.0254).epsilon(1e-15));
  CHECK(area_from_mm2(1.0).value() == Approx(1e-6).epsilon(1e-15));
  CHECK(volume_from_mm3(1.0).value() == Approx(1e-9).epsilon(1e-15));
  CHECK(rad(units::degrees(180.0)) == units::pi);
}
