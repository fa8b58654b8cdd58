#include "purgewright/solids/kernel/placed.hpp"

#include "kernel_test.hpp"
#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/primitives.hpp"

#include <catch2/catch.hpp>

using namespace purgewright;
using namespace purgewright::solids::kernel;
using test::length;
using test::off;
using test::point;

TEST_CASE("a placement turns about the global origin, then shifts", "[unit]") {
  Solid const bar = box(point(1, 0, 0), point(11, 2, 3));
  Solid const moved = placed(bar, {point(100, 0, 0), along_z, units::degrees(90.0)});
  CHECK(off(bounding_box(moved).least, 98.0, 1.0, 0.0) < test::box_accuracy_mm);
  CHECK(off(bounding_box(moved).greatest, 100.0, 11.0, 3.0) < test::box_accuracy_mm);
  CHECK(off(test::volume_mm3(moved), 60.0) < test::volume_accuracy);
  CHECK(off(bounding_box(bar).least, 1.0, 0.0, 0.0) < test::box_accuracy_mm);
}

TEST_CASE("placed solids take part in operations", "[unit]") {
  Solid const peg =
      placed(cylinder({}, length(2.0), length(10.0)), {point(5, 5, -1), along_z, units::Angle{}});
  Solid const plate = box(point(0, 0, 0), point(10, 10, 4));
  CHECK(off(test::volume_mm3(cut(plate, {peg})), 400.0 - test::pi * 4.0 * 4.0) < test::volume_accuracy);
  CHECK_THROWS_AS(placed(peg, {.axis = {0.0, 0.0, 0.0}}), SolidError);
}
