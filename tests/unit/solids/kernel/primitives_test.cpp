#include "purgewright/solids/kernel/primitives.hpp"

#include "kernel_test.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace purgewright;
using namespace purgewright::solids::kernel;
using test::length;
using test::off;
using test::pi;
using test::point;
using test::volume_accuracy;
using test::volume_mm3;

namespace {

void check_one_solid(Solid const &solid, double expected_mm3, int faces, double accuracy = volume_accuracy) {
  CHECK(is_one_closed_solid(solid));
  CHECK(off(volume_mm3(solid), expected_mm3) < accuracy);
  CHECK(face_count(solid) == faces);
}

} // namespace

TEST_CASE("box", "[unit]") {
  Solid const solid = box(point(-1.0, -2.0, -3.0), point(4.0, 5.0, 6.0));
  check_one_solid(solid, 5.0 * 7.0 * 9.0, 6);
  CHECK(off(test::mm2(surface_area(solid)), 2.0 * (35.0 + 45.0 + 63.0)) < volume_accuracy);
  CHECK(off(bounding_box(solid).least, -1.0, -2.0, -3.0) < test::box_accuracy_mm);
  CHECK(off(bounding_box(solid).greatest, 4.0, 5.0, 6.0) < test::box_accuracy_mm);
}

TEST_CASE("cylinder stands on its frame", "[unit]") {
  Solid const solid = cylinder({.origin = point(1.0, 2.0, 3.0), .axis = along_x}, length(5.0), length(20.0));
  check_one_solid(solid, pi * 25.0 * 20.0, 3);
  CHECK(off(bounding_box(solid).least, 1.0, -3.0, -2.0) < test::box_accuracy_mm);
  CHECK(off(bounding_box(solid).greatest, 21.0, 7.0, 8.0) < test::box_accuracy_mm);
  CHECK(off(centroid(solid), 11.0, 2.0, 3.0) < 1e-9);
}

TEST_CASE("revolve: stepped pin, either sense of going round", "[unit]") {
  std::vector<ProfilePoint> profile{{length(0.0), length(0.0)},  {length(0.0), length(6.0)},
                                    {length(4.0), length(6.0)},  {length(4.0), length(3.0)},
                                    {length(10.0), length(3.0)}, {length(10.0), length(0.0)}};
  double const expected = pi * (36.0 * 4.0 + 9.0 * 6.0);
  check_one_solid(revolve({.axis = along_x}, profile), expected, 5);
  CHECK(off(test::mm3(volume_of_revolution(profile)), expected) < 1e-14);
  std::reverse(profile.begin(), profile.end());
  check_one_solid(revolve({.axis = against_z}, profile), expected, 5);
}

TEST_CASE("revolve: ring and cone", "[unit]") {
  std::vector<ProfilePoint> const ring{{length(0.0), length(4.0)},
                                       {length(3.0), length(4.0)},
                                       {length(3.0), length(5.0)},
                                       {length(0.0), length(5.0)}};
  check_one_solid(revolve({}, ring), pi * (25.0 - 16.0) * 3.0, 4);
  std::vector<ProfilePoint> const cone{
      {length(0.0), length(0.0)}, {length(0.0), length(3.0)}, {length(7.0), length(0.0)}};
  check_one_solid(revolve({}, cone), pi / 3.0 * 9.0 * 7.0, 2);
}

TEST_CASE("revolve: an arc clear of the axis makes a torus, by Pappus", "[unit]") {
  // Two half circles of radius 2 about (0, 10).
  std::vector<ProfilePoint> const circle{
      {length(0.0), length(8.0), ProfilePoint::Via{length(2.0), length(10.0)}},
      {length(0.0), length(12.0), ProfilePoint::Via{length(-2.0), length(10.0)}}};
  double const expected = 2.0 * pi * 10.0 * pi * 4.0;
  CHECK(off(test::mm3(volume_of_revolution(circle)), expected) < 1e-14);
  check_one_solid(revolve({}, circle), expected, 2, 1e-8);
}

TEST_CASE("sphere and its segments", "[unit]") {
  check_one_solid(sphere({}, length(5.0)), 4.0 / 3.0 * pi * 125.0, 1);
  for (double const h : {0.5, 3.0, 5.0, 8.0}) {
    CAPTURE(h);
    Solid const segment = sphere_segment({.axis = along_x}, length(5.0), length(h));
    check_one_solid(segment, pi * h * h * (15.0 - h) / 3.0, 2);
    CHECK(std::abs(units::to_millimetres(bounding_box(segment).greatest.x) - h) < test::box_accuracy_mm);
  }
}

TEST_CASE("rounded-rectangle prism from sharp to obround", "[unit]") {
  Frame const frame{.origin = point(1.0, 2.0, 3.0), .axis = along_z, .across = along_y};
  struct Row {
    double corner;
    int faces;
  };
  for (auto const &[corner, faces] : {Row{0.0, 6}, Row{2.0, 10}, Row{5.0, 8}}) {
    CAPTURE(corner);
    Solid const solid =
        rounded_rectangle_prism(frame, {length(30.0), length(10.0), length(corner)}, length(4.0));
    check_one_solid(solid, (300.0 - (4.0 - pi) * corner * corner) * 4.0, faces);
    CHECK(off(bounding_box(solid).least, -4.0, -13.0, 3.0) < test::box_accuracy_mm);
    CHECK(off(bounding_box(solid).greatest, 6.0, 17.0, 7.0) < test::box_accuracy_mm);
  }
}

TEST_CASE("ring prisms keep corners concentric", "[unit]") {
  double const outer = 40.0 * 20.0 - (4.0 - pi) * 25.0;
  double const inner = 36.0 * 16.0 - (4.0 - pi) * 9.0;
  check_one_solid(
      rounded_rectangle_ring_prism({}, {length(40.0), length(20.0), length(5.0)}, length(2.0), length(3.0)),
      (outer - inner) * 3.0, 18);
  double const groove = (30.0 * 20.0 + pi * 100.0) - (30.0 * 16.0 + pi * 64.0);
  check_one_solid(stadium_ring_prism({.axis = against_x, .across = along_y}, length(50.0), length(20.0),
                                     length(2.0), length(1.5)),
                  groove * 1.5, 14);
}

TEST_CASE("sizes that make no solid are refused with the inputs", "[unit]") {
  double const nan = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(box(point(0, 0, 0), point(1, 1, 0)), SolidError);
  CHECK_THROWS_AS(box(point(0, 0, 0), point(1, 1, -1)), SolidError);
  CHECK_THROWS_AS(box(point(nan, 0, 0), point(1, 1, 1)), SolidError);
  CHECK_THROWS_AS(cylinder({}, length(0.0), length(1.0)), SolidError);
  CHECK_THROWS_AS(cylinder({}, length(nan), length(1.0)), SolidError);
  CHECK_THROWS_AS(cylinder({.axis = {0.0, 0.0, 0.0}}, length(1.0), length(1.0)), SolidError);
  CHECK_THROWS_AS(cylinder({.axis = along_z, .across = along_z}, length(1.0), length(1.0)), SolidError);
  CHECK_THROWS_AS(sphere_segment({}, length(5.0), length(10.0)), SolidError);
  CHECK_THROWS_AS(rounded_rectangle_prism({}, {length(10), length(4), length(2.1)}, length(1)), SolidError);
  CHECK_THROWS_AS(stadium_ring_prism({}, length(10), length(4), length(2.0), length(1)), SolidError);
  CHECK_THROWS_AS(revolve({}, {{length(0), length(0)}, {length(1), length(0)}}), SolidError);
  CHECK_THROWS_AS(revolve({}, {{length(0), length(-1)}, {length(1), length(0)}, {length(1), length(1)}}),
                  SolidError);
  // Crossing itself.
  CHECK_THROWS_AS(
      revolve(
          {},
          {{length(0), length(1)}, {length(4), length(3)}, {length(4), length(1)}, {length(0), length(3)}}),
      SolidError);
}

TEST_CASE("an error carries part, operation, inputs and reason", "[unit]") {
  try {
    in_part("end-plug", [] { return cylinder({}, length(-2.0), length(1.0)); });
    FAIL("no error");
  } catch (SolidError const &error) {
    CHECK(error.part == "end-plug");
    CHECK(error.operation == "cylinder");
    CHECK_THAT(error.inputs_mm, Catch::Contains("radius -2, length 1"));
    CHECK_THAT(error.kernel_text, Catch::Contains("radius"));
    CHECK_THAT(error.what(), Catch::StartsWith("end-plug: cylinder"));
  }
}
