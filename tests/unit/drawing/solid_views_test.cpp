#include "drawing/hatch.hpp"
#include "drawing/solid_views.hpp"

#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/primitives.hpp"

#include <catch2/catch.hpp>

using namespace purgewright;
using namespace purgewright::drawing;
namespace kernel = solids::kernel;
using units::millimetres;

namespace {

kernel::Point at(double x, double y, double z) {
  return {millimetres(x), millimetres(y), millimetres(z)};
}

double area_of(const CutFace &face) {
  constexpr double spacing = 0.02;
  double area = 0.0;
  for (const Segment &s : hatch(face.loops, spacing, 0.3)) {
    area += spacing * length(s.b - s.a);
  }
  return area;
}

} // namespace

TEST_CASE("a cut face has the outline and the area of the solid in its plane") {
  const auto block = kernel::box(at(0, -5, 0), at(20, 5, 30));
  const auto across = kernel::cylinder({at(10, -6, 15), {0, 1, 0}}, millimetres(4), millimetres(12));
  const auto along = kernel::cylinder({at(-1, 0, 25), {1, 0, 0}}, millimetres(2), millimetres(9));
  const auto solid = kernel::cut(block, {across, along});
  const CutFace face = cut_face(solid, from_front, {});
  // 20 x 30 with a hole seen square, and a blind one cut along its axis: 8 deep, 4 wide, open at the side.
  CHECK(area_of(face) == Approx(600.0 - std::numbers::pi * 16.0 - 8.0 * 4.0).epsilon(2e-3));
  CHECK(face.loops.size() == 2);
  double circles = 0.0;
  for (const Curve &edge : face.edges) {
    const auto *arc = std::get_if<Arc>(&edge);
    circles += arc == nullptr ? 0.0 : arc->sweep;
  }
  CHECK(circles == Approx(full_turn));
  CHECK(cut_face(solid, from_front, {0, 9, 0}).loops.empty());
}
