#include "purgewright/solids/kernel/chamfer.hpp"

#include "kernel_test.hpp"
#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/cutters.hpp"
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

TEST_CASE("chamfer of a box's top edges leaves a prismatoid", "[unit]") {
  Solid const block = box(point(0, 0, 0), point(20, 12, 10));
  EdgeBox const top{point(0, 0, 10), point(20, 12, 10)};
  CHECK(count_edges(block, top) == 4);
  Solid const broken = chamfer_edges(block, top, length(1.0));
  double const layer = (20.0 * 12.0 + 4.0 * 19.0 * 11.0 + 18.0 * 10.0) / 6.0;
  CHECK(off(volume_mm3(broken), 20.0 * 12.0 * 9.0 + layer) < volume_accuracy);
  CHECK(face_count(broken) == 10);
}

TEST_CASE("chamfer of a bore's rim is a cone", "[unit]") {
  Solid const block =
      cut(box(point(-10, -10, 0), point(10, 10, 10)),
          {through_cutter({.origin = point(0, 0, 10), .axis = against_z}, length(8.0), length(10.0))});
  EdgeBox const rim{point(-5, -5, 10), point(5, 5, 10)};
  CHECK(count_edges(block, rim) == 1);
  Solid const broken = chamfer_edges(block, rim, length(0.5));
  double const cone = pi / 3.0 * 0.5 * (16.0 + 4.0 * 4.5 + 20.25);
  CHECK(off(volume_mm3(broken), 4000.0 - pi * 16.0 * 9.5 - cone) < volume_accuracy);
}

TEST_CASE("seams and tangent joins are not edges to break", "[unit]") {
  Solid const post = cylinder({}, length(4.0), length(10.0));
  CHECK(count_edges(post, {point(-5, -5, 0), point(5, 5, 10)}) == 2);
  Solid const obround = rounded_rectangle_prism({}, stadium(length(20), length(8)), length(5));
  CHECK(count_edges(obround, {point(-20, -20, -1), point(20, 20, 6)}) == 12);
}

TEST_CASE("an obround slot's rim is broken all round", "[unit]") {
  Solid const block = box(point(-20, -10, 0), point(20, 10, 8));
  Solid const slot =
      rounded_rectangle_prism({.origin = point(0, 0, 3)}, stadium(length(24), length(8)), length(6));
  Solid const broken = chamfer_edges(cut(block, {slot}), {point(-15, -5, 8), point(15, 5, 8)}, length(0.4));
  // The chamfer's section is a triangle carried round the rim; its centroid lies a third of a leg outside.
  double const run = 2.0 * 16.0 + 2.0 * pi * (4.0 + 0.4 / 3.0);
  double const plan = 16.0 * 8.0 + pi * 16.0;
  CHECK(off(volume_mm3(broken), 40.0 * 20.0 * 8.0 - plan * 5.0 - 0.5 * 0.16 * run) < volume_accuracy);
}

TEST_CASE("a chamfer that cannot be made says which edges fail", "[unit]") {
  Solid const block = box(point(0, 0, 0), point(20, 12, 10));
  EdgeBox const top{point(0, 0, 10), point(20, 12, 10)};
  try {
    chamfer_edges(block, top, length(15.0));
    FAIL("no error");
  } catch (SolidError const &error) {
    CHECK(error.operation == "chamfer");
    CHECK_THAT(error.inputs_mm, Catch::Contains("distance 15"));
    CHECK_THAT(error.kernel_text, Catch::Contains("edges"));
  }
  CHECK_THROWS_AS(chamfer_edges(block, {point(3, 3, 10), point(4, 4, 10)}, length(1.0)), SolidError);
  CHECK_THROWS_AS(chamfer_edges(block, top, length(0.0)), SolidError);
}
