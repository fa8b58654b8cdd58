#include "purgewright/solids/kernel/cutters.hpp"

#include "kernel_test.hpp"
#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/primitives.hpp"

#include <catch2/catch.hpp>

using namespace purgewright;
using namespace purgewright::solids::kernel;
using test::length;
using test::off;
using test::pi;
using test::point;
using test::volume_accuracy;
using test::volume_mm3;

namespace {

Solid plate() {
  return box(point(-10, -10, 0), point(10, 10, 5));
}
Frame const mouth{.origin = point(0, 0, 5), .axis = against_z};

} // namespace

TEST_CASE("a hole that stops a millionth short leaves a skin that passes as valid; the cutter does not",
          "[unit]") {
  Solid const short_tool = blind_cutter(mouth, length(4.0), length(5.0 - 1e-6));
  Solid const skin = cut(plate(), {short_tool});
  CHECK(is_one_closed_solid(skin)); // the kernel sees nothing wrong
  CHECK(face_count(skin) == 8);     // the hole's bottom is there

  Solid const through = cut(plate(), {through_cutter(mouth, length(4.0), length(5.0))});
  CHECK(face_count(through) == 7);
  CHECK(off(volume_mm3(through), 2000.0 - pi * 4.0 * 5.0) < volume_accuracy);
}

TEST_CASE("the overshoot goes where it is said to", "[unit]") {
  Bounds const blind = bounding_box(blind_cutter(mouth, length(4.0), length(2.0)));
  CHECK(off(blind.least, -2.0, -2.0, 3.0) < test::box_accuracy_mm);
  CHECK(off(blind.greatest, 2.0, 2.0, 5.0 + units::to_millimetres(cutter_overshoot)) < test::box_accuracy_mm);
  Bounds const pocket =
      bounding_box(box_cutter(point(0, 0, 0), point(2, 2, 2), {.greatest_x = true, .least_z = true}));
  CHECK(off(pocket.least, 0.0, 0.0, -1.0) < test::box_accuracy_mm);
  CHECK(off(pocket.greatest, 3.0, 2.0, 2.0) < test::box_accuracy_mm);
}

TEST_CASE("blind and drilled holes remove their closed-form volume", "[unit]") {
  Solid const blind = cut(plate(), {blind_cutter(mouth, length(4.0), length(2.0))});
  CHECK(off(volume_mm3(blind), 2000.0 - pi * 4.0 * 2.0) < volume_accuracy);
  CHECK(face_count(blind) == 8);

  double const point_depth = 2.0 / std::tan(59.0 * pi / 180.0);
  Solid const drilled = cut(plate(), {drill_cutter(mouth, length(4.0), length(2.0))});
  CHECK(off(volume_mm3(drilled), 2000.0 - pi * 4.0 * (2.0 + point_depth / 3.0)) < volume_accuracy);
  CHECK_THROWS_AS(drill_cutter(mouth, length(4.0), length(2.0), units::degrees(180.0)), SolidError);
}
