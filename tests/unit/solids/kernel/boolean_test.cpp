#include "purgewright/solids/kernel/boolean.hpp"

#include "kernel_test.hpp"
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

namespace {

Solid along_x_cylinder(double radius, double half_length) {
  return cylinder({.origin = point(-half_length, 0, 0), .axis = along_x}, length(radius),
                  length(2.0 * half_length));
}

Solid along_y_cylinder(double radius, double half_length, double x, double z) {
  return cylinder({.origin = point(x, -half_length, z), .axis = along_y}, length(radius),
                  length(2.0 * half_length));
}

// Volume shared by cylinders of radius R along X and r along Y whose axes pass at distance h, r + h < R:
// at height h + r cos t the section is a rectangle. The integrand is smooth and periodic in t, so the
// midpoint rule converges faster than any power.
double crossing(double big, double small, double h) {
  constexpr int steps = 400;
  double sum = 0.0;
  for (int i = 0; i < steps; ++i) {
    double const t = pi * (i + 0.5) / steps;
    double const z = h + small * std::cos(t);
    double const half_width = small * std::sin(t);
    sum += 4.0 * std::sqrt(big * big - z * z) * half_width * small * std::sin(t) * pi / steps;
  }
  return sum;
}

} // namespace

TEST_CASE("two equal crossing cylinders share 16 r^3 / 3 (Archimedes, The Method)", "[unit]") {
  for (double const r : {0.4, 5.0, 30.0}) {
    CAPTURE(r);
    Solid const shared = *common(along_x_cylinder(r, 4.0 * r), along_y_cylinder(r, 4.0 * r, 0.0, 0.0));
    CHECK(off(volume_mm3(shared), 16.0 * r * r * r / 3.0) < volume_accuracy);
    CHECK(off(test::mm2(surface_area(shared)), 16.0 * r * r) < volume_accuracy);
  }
}

TEST_CASE("unequal and offset crossing cylinders", "[unit]") {
  for (double const h : {0.0, 0.5, 1.5, 1.9}) {
    CAPTURE(h);
    units::Volume const shared =
        common_volume(along_x_cylinder(5.0, 20.0), along_y_cylinder(3.0, 20.0, 0.0, h));
    CHECK(off(test::mm3(shared), crossing(5.0, 3.0, h)) < volume_accuracy);
  }
}

TEST_CASE("a block with a bore and many cross holes keeps its closed-form volume", "[unit]") {
  Solid const block = box(point(-40, -20, -20), point(40, 20, 20));
  std::vector<Solid> tools{
      through_cutter({.origin = point(-40, 0, 0), .axis = along_x}, length(30.0), length(80.0))};
  double expected = 80.0 * 40.0 * 40.0 - pi * 225.0 * 80.0;
  for (int i = 0; i < 12; ++i) {
    tools.push_back(through_cutter({.origin = point(-33.0 + 6.0 * i, -20, 0.25 * i), .axis = along_y},
                                   length(4.0), length(40.0)));
    expected -= pi * 4.0 * 40.0 - crossing(15.0, 2.0, 0.25 * i);
  }
  Solid const drilled = cut(block, tools);
  CHECK(off(volume_mm3(drilled), expected) < volume_accuracy);
  CHECK(face_count(drilled) == 6 + 1 + 24);
  CHECK(is_one_closed_solid(drilled));
}

TEST_CASE("arguments of an operation stay as they were", "[unit]") {
  Solid const block = box(point(-10, -10, -10), point(10, 10, 10));
  Solid const tool = along_x_cylinder(4.0, 20.0);
  double const block_before = volume_mm3(block);
  double const tool_before = volume_mm3(tool);
  cut(block, {tool});
  CHECK(volume_mm3(block) == block_before);
  CHECK(volume_mm3(tool) == tool_before);
  CHECK(face_count(block) == 6);
}

TEST_CASE("a cut must remove something and leave the expected number of solids", "[unit]") {
  Solid const block = box(point(-10, -10, -10), point(10, 10, 10));
  Solid const far = box(point(20, 20, 20), point(21, 21, 21));
  Solid const slab = box(point(-1, -11, -11), point(1, 11, 11));
  CHECK_THROWS_AS(cut(block, {far}), SolidError);
  CHECK_THROWS_AS(cut(block, {slab}), SolidError);
  CHECK(solid_count(cut(block, {slab}, 2)) == 2);
  CHECK_THROWS_AS(cut(far, {box(point(0, 0, 0), point(30, 30, 30))}), SolidError);
  CHECK(volume_mm3(cut(block, {})) == volume_mm3(block));
  try {
    cut(block, {slab});
  } catch (SolidError const &error) {
    CHECK(error.operation == "cut");
    CHECK_THAT(error.kernel_text, Catch::Contains("2 solids"));
    CHECK_THAT(error.inputs_mm, Catch::Contains("tools"));
  }
}

TEST_CASE("fuse of overlapping and of separate solids", "[unit]") {
  Solid const a = box(point(0, 0, 0), point(10, 10, 10));
  Solid const b = box(point(5, 5, 5), point(15, 15, 15));
  CHECK(off(volume_mm3(fuse({a, b})), 2000.0 - 125.0) < volume_accuracy);
  CHECK_THROWS_AS(fuse({a, box(point(20, 0, 0), point(30, 10, 10))}), SolidError);
  CHECK_THROWS_AS(fuse({}), SolidError);
}

TEST_CASE("common of solids that do not meet is nothing, not an error", "[unit]") {
  Solid const a = box(point(0, 0, 0), point(10, 10, 10));
  CHECK_FALSE(common(a, box(point(20, 0, 0), point(30, 10, 10))));
  CHECK_FALSE(common(a, box(point(10, 0, 0), point(20, 10, 10)))); // touching only
  CHECK(common_volume(a, box(point(20, 0, 0), point(30, 10, 10))).value() == 0.0);
  CHECK(off(test::mm3(common_volume(a, box(point(5, 5, 5), point(15, 15, 15)))), 125.0) < volume_accuracy);
  std::vector<Solid> const several{box(point(8, 8, 8), point(15, 15, 15)),
                                   box(point(-1, -1, -1), point(2, 2, 3)),
                                   box(point(20, 0, 0), point(30, 10, 10))};
  CHECK(off(test::mm3(common_volume(a, several)), 8.0 + 12.0) < volume_accuracy);
}
