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

double mm_of(units::Length found) {
  return units::to_millimetres(found);
}

Approx near(double value) {
  return Approx(value).margin(1e-6).epsilon(0.0);
}

Solid unit_box() {
  return box(point(0, 0, 0), point(10, 10, 10));
}

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
  CHECK(mm_of(distance(Line{point(0, 0, 0), point(9, 0, 0)}, Line{point(4, 3, 4), point(4, 9, 4)})) ==
        near(5.0));
  CHECK_THROWS_AS(distance(Line{point(1, 1, 1), point(1, 1, 1)}, block), SolidError);
}

TEST_CASE("a ray finds the nearest face or passes", "[unit]") {
  Target const target(unit_box());
  auto const hit = target.first_hit({point(-7, 5, 5), along_x, length(100.0)});
  REQUIRE(hit);
  CHECK(mm_of(*hit) == near(7.0));
  CHECK(mm_of(*target.first_hit({point(5, 5, 5), along_z, length(100.0)})) == near(5.0)); // from inside
  CHECK_FALSE(target.first_hit({point(-7, 5, 5), along_x, length(6.0)}));                 // out of reach
  CHECK_FALSE(target.first_hit({point(-7, 5, 5), against_x, length(100.0)}));
  CHECK_FALSE(target.first_hit({point(-7, 11, 5), along_x, length(100.0)}));
  double const half = 0.5 * std::sqrt(2.0);
  CHECK(mm_of(*target.first_hit({point(-3, 5, 7), {half, 0.0, -half}, length(100.0)})) ==
        near(3.0 * std::sqrt(2.0)));
  CHECK_THROWS_AS(target.first_hit({point(0, 0, 0), {0.0, 0.0, 0.0}, length(1.0)}), SolidError);
}

TEST_CASE("a distance looked for below a bound is the distance, or the bound", "[unit]") {
  constexpr double half = 0.70710678118654752;
  Solid const drilled = cut(unit_box(), {cylinder({point(5, 5, -1), along_z}, length(2.0), length(12.0)),
                                         cylinder({point(-1, 5, 5), along_x}, length(1.0), length(12.0))});
  Solid const cone = revolve(
      {point(20, 5, 5), against_x},
      {{length(0), length(0)}, {length(0), length(4)}, {length(5), length(1)}, {length(5), length(0)}});
  std::vector<Solid> const bodies{
      box(point(13, 14, 0), point(20, 20, 5)),
      cylinder({point(5, 5, 2), along_z}, length(0.5), length(3.0)), // within the hole, walls side by side
      cylinder({point(20, 5, 5), {0.0, half, half}}, length(3.0), length(9)), // leaning, beside the block
      cylinder({point(3, -8, 5), along_x}, length(2.0), length(4.0)),         // on a common normal
      cylinder({point(-9, 16, 14), {half, 0.0, -half}}, length(2.0), length(40.0)),
      sphere_segment({point(30, 5, 5), against_x}, length(6.0), length(4.0)),
      cone,
      box(point(2, 2, 2), point(3, 3, 3)),       // inside the metal
      box(point(-5, -5, -5), point(15, 15, 15)), // holds it
  };
  for (std::size_t i = 0; i < bodies.size(); ++i) {
    INFO("body " << i);
    for (Solid const &other : {drilled, cone, bodies[4]}) {
      double const exact = mm_of(distance(bodies[i], other));
      CHECK(mm_of(distance_below(length(1000.0), bodies[i], located(other))) == near(exact));
      CHECK(mm_of(distance_below(length(exact + 0.01), bodies[i], located(other))) == near(exact));
      CHECK(mm_of(distance_below(length(0.5 * exact), bodies[i], located(other))) == near(0.5 * exact));
    }
  }
  for (Line const &line : {Line{point(14, -5, 13), point(14, 20, 13)}, Line{point(5, 5, -5), point(5, 5, 20)},
                           Line{point(8, 8, 4), point(8, 8, 6)}, Line{point(0, 30, 0), point(30, 0, 20)}}) {
    CHECK(mm_of(distance_below(length(1000.0), line, located(drilled))) ==
          near(mm_of(distance(line, drilled))));
  }
}

TEST_CASE("crossing cylinders are nearest on their common normal, where no edge lies", "[unit]") {
  Solid const lying = cylinder({point(-50, 0, 0), along_x}, length(3.0), length(100.0));
  Solid const above = cylinder({point(0, -50, 10), along_y}, length(2.0), length(100.0));
  CHECK(mm_of(distance_below(length(1000.0), lying, located(above))) == near(5.0));
  Solid const beyond =
      cylinder({point(0, 4, 10), along_y}, length(2.0), length(100.0)); // begins past the crossing
  CHECK(mm_of(distance_below(length(1000.0), lying, located(beyond))) == near(std::hypot(4.0, 8.0) - 3.0));
}

TEST_CASE("boxes move with a shifted solid and are found again for a turned one", "[unit]") {
  Located const block = located(unit_box());
  CHECK(block.face_boxes.size() == 6);
  Located const shifted = placed(block, {.offset = point(1, 2, 3)});
  CHECK(mm_of(shifted.box.least.x) == near(1.0));
  CHECK(mm_of(shifted.box.greatest.z) == near(13.0));
  CHECK(mm_of(apart(block.box, placed(block, {.offset = point(13, 14, 0)}).box)) == near(5.0));
  CHECK(shared(block.box, shifted.box).value() == Approx(9e-3 * 8e-3 * 7e-3));
  CHECK(shared(block.box, placed(block, {.offset = point(10, 0, 0)}).box).value() == 0.0); // face to face
  Located const turned = placed(block, {.axis = along_z, .angle = units::degrees(45.0)});
  CHECK(mm_of(turned.box.greatest.y) == near(10.0 * std::sqrt(2.0)));
  CHECK(holds(shifted.box, shifted.face_boxes.front()));
  CHECK_FALSE(holds(block.box, shifted.box));
}

TEST_CASE("a target made for a region stops the rays that stay in it", "[unit]") {
  Located const block = located(unit_box());
  Bounds const beside{point(-20, 4, 4), point(5, 6, 6)}; // the near face alone
  Target const near_face(block, beside);
  CHECK(mm_of(*near_face.first_hit({point(-7, 5, 5), along_x, length(100.0)})) == near(7.0));
  CHECK_FALSE(near_face.first_hit({point(5, 5, 5), along_x, length(100.0)})); // the far face was left out
}
