#include "purgewright/solids/kernel/distance.hpp"
#include "purgewright/solids/kernel/ray.hpp"

#include "kernel_test.hpp"
#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/primitives.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace purgewright;
using namespace purgewright::solids::kernel;
using test::length;
using test::point;

namespace {

double mm_of(units::Length found) { return units::to_millimetres(found); }

Approx near(double value) { return Approx(value).margin(1e-6).epsilon(0.0); }

Solid unit_box() { return box(point(0, 0, 0), point(10, 10, 10)); }

} // namespace

TEST_CASE("distances between solids are those worked by hand", "[unit]") {
  Solid const block = unit_box();
  CHECK(mm_of(distance(block, box(point(13, 14, 0), point(20, 20, 5)))) == near(5.0)); // 3, 4, 5
  CHECK(mm_of(distance(block, box(point(10, 0, 0), point(20, 10, 10)))) == near(0.0)); // face to face
  CHECK(mm_of(distance(block, box(point(2, 2, 2), point(3, 3, 3)))) == near(0.0));     // one within the other
  Solid const rod = cylinder({point(20, 5, 0), along_z}, length(3.0), length(10.0));
  CHECK(mm_of(distance(block, rod)) == near(7.0));
  Solid const tube = cut(cylinder({point(20, 5, 0), along_z}, length(9.0), length(10.0)),
                         {cylinder({point(20, 5, -1), along_z}, length(8.0), length(12.0))});
  CHECK(mm_of(distance(tube, rod)) == near(5.0)); // in a bore, to its wall
}

TEST_CASE("distances from lines, to solids and to lines", "[unit]") {
  Solid const block = unit_box();
  CHECK(mm_of(distance(Line{point(14, -5, 13), point(14, 20, 13)}, block)) == near(5.0));
  CHECK(mm_of(distance(Line{point(5, 5, -5), point(5, 5, 20)}, block)) == near(0.0));
  CHECK(mm_of(distance(Line{point(5, 5, 4), point(5, 5, 6)}, block)) == near(0.0)); // wholly inside
  CHECK(mm_of(distance(Line{point(0, 0, 0), point(9, 0, 0)}, Line{point(4, 3, 4), point(4, 9, 4)})) == near(5.0));
  CHECK_THROWS_AS(distance(Line{point(1, 1, 1), point(1, 1, 1)}, block), SolidError);
}

TEST_CASE("a ray finds the nearest face or passes", "[unit]") {
  Target const target(unit_box());
  auto const hit = target.first_hit({point(-7, 5, 5), along_x, length(100.0)});
  REQUIRE(hit);
  CHECK(mm_of(*hit) == near(7.0));
  CHECK(mm_of(*target.first_hit({point(5, 5, 5), along_z, length(100.0)})) == near(5.0)); // from inside
  CHECK_FALSE(target.first_hit({point(-7, 5, 5), along_x, length(6.0)}));                  // out of reach
  CHECK_FALSE(target.first_hit({point(-7, 5, 5), against_x, length(100.0)}));
  CHECK_FALSE(target.first_hit({point(-7, 11, 5), along_x, length(100.0)}));
  double const half = 0.5 * std::sqrt(2.0);
  CHECK(mm_of(*target.first_hit({point(-3, 5, 7), {half, 0.0, -half}, length(100.0)})) == near(3.0 * std::sqrt(2.0)));
  CHECK_THROWS_AS(target.first_hit({point(0, 0, 0), {0.0, 0.0, 0.0}, length(1.0)}), SolidError);
}
