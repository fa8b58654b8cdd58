#include "purgewright/solids/kernel/mesh.hpp"

#include "kernel_test.hpp"
#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/cutters.hpp"
#include "purgewright/solids/kernel/placed.hpp"
#include "purgewright/solids/kernel/primitives.hpp"

#include <catch2/catch.hpp>

using namespace purgewright;
using namespace purgewright::solids::kernel;
using test::length;
using test::off;
using test::point;

namespace {

Solid drilled_block() {
  return cut(box(point(-20, -10, -10), point(20, 10, 10)),
             {through_cutter({.origin = point(-20, 0, 0), .axis = along_x}, length(12.0), length(40.0)),
              through_cutter({.origin = point(3, -10, 1), .axis = along_y}, length(3.0), length(20.0)),
              drill_cutter({.origin = point(-10, 0, 10), .axis = against_z}, length(2.5), length(6.0))});
}

} // namespace

TEST_CASE("meshes of every kind of face are closed and face outwards", "[unit]") {
  std::vector<Solid> const solids{
      box(point(0, 0, 0), point(1, 2, 3)),
      cylinder({}, length(3.0), length(5.0)),
      sphere({}, length(4.0)),
      sphere_segment({.axis = along_x}, length(4.0), length(1.0)),
      stadium_ring_prism({}, length(20), length(10), length(1), length(1)),
      drilled_block(),
      placed(drilled_block(), {point(1, 2, 3), {1.0, 1.0, 0.0}, units::degrees(33)})};
  for (std::size_t i = 0; i < solids.size(); ++i) {
    CAPTURE(i);
    Mesh const mesh = triangulate(solids[i], {.deflection = length(0.01)});
    CHECK(is_closed(mesh));
    CHECK(off(volume(mesh).value(), volume(solids[i]).value()) < 0.02);
  }
}

TEST_CASE("the mesh follows its deflection each time, also after a coarser one", "[unit]") {
  Solid const solid = cylinder({}, length(20.0), length(10.0));
  auto const error = [&](double deflection) {
    Mesh const mesh = triangulate(solid, {.deflection = length(deflection), .angle = units::degrees(60.0)});
    return 1.0 - units::ratio(volume(mesh), volume(solid));
  };
  double const coarse = error(1.0);
  double const fine = error(0.01);
  CHECK(coarse > 0.01);
  CHECK(fine < 0.001); // a chord of sagitta s takes 4 s / (3 r) of the section
  CHECK(error(1.0) == coarse);
}

TEST_CASE("meshing leaves the measures of the solid as they were", "[unit]") {
  Solid const solid = cylinder({}, length(20.0), length(10.0));
  double const volume_before = volume(solid).value();
  double const area_before = surface_area(solid).value();
  Bounds const box_before = bounding_box(solid);
  triangulate(solid, {.deflection = length(1.0)});
  CHECK(volume(solid).value() == volume_before);
  CHECK(surface_area(solid).value() == area_before);
  CHECK(bounding_box(solid).greatest.x == box_before.greatest.x);
  CHECK(off(bounding_box(solid).greatest, 20.0, 20.0, 10.0) < test::box_accuracy_mm);
}

TEST_CASE("the same solid gives the same mesh", "[unit]") {
  Mesh const first = triangulate(drilled_block(), {.deflection = length(0.02)});
  Mesh const second = triangulate(drilled_block(), {.deflection = length(0.02)});
  CHECK(first.vertices_mm == second.vertices_mm);
  CHECK(first.triangles == second.triangles);
}

TEST_CASE("closedness is seen to fail", "[unit]") {
  Mesh mesh = triangulate(box(point(0, 0, 0), point(1, 1, 1)), {.deflection = length(0.1)});
  REQUIRE(is_closed(mesh));
  SECTION("a facet is missing") {
    mesh.triangles.pop_back();
  }
  SECTION("a facet is turned over") {
    std::swap(mesh.triangles[3][0], mesh.triangles[3][1]);
  }
  SECTION("a facet comes twice") {
    mesh.triangles.push_back(mesh.triangles[0]);
  }
  SECTION("nothing is there") {
    mesh.triangles.clear();
  }
  CHECK_FALSE(is_closed(mesh));
}

TEST_CASE("options out of range are refused", "[unit]") {
  Solid const solid = sphere({}, length(4.0));
  CHECK_THROWS_AS(triangulate(solid, {.deflection = length(0.0)}), SolidError);
  CHECK_THROWS_AS(triangulate(solid, {.deflection = length(0.1), .angle = units::degrees(0.0)}), SolidError);
}
