#include "purgewright/solids/kernel/located.hpp"

#include "purgewright/solids/kernel/placed.hpp"
#include "solids/kernel/boxes.hpp"
#include "solids/kernel/guard.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::solids::kernel {

namespace {

double gap(units::Length low, units::Length high, units::Length other_low, units::Length other_high) {
  return std::max({0.0, (low - other_high).value(), (other_low - high).value()});
}

double overlap(units::Length low, units::Length high, units::Length other_low, units::Length other_high) {
  return std::max(0.0, (std::min(high, other_high) - std::max(low, other_low)).value());
}

Point shifted(Point const &point, Point const &by) {
  return {point.x + by.x, point.y + by.y, point.z + by.z};
}

Bounds shifted(Bounds const &box, Point const &by) {
  return {shifted(box.least, by), shifted(box.greatest, by)};
}

Bounds around(std::vector<Bounds> const &boxes) {
  Bounds all = boxes.front();
  for (Bounds const &box : boxes) {
    all.least = {std::min(all.least.x, box.least.x), std::min(all.least.y, box.least.y),
                 std::min(all.least.z, box.least.z)};
    all.greatest = {std::max(all.greatest.x, box.greatest.x), std::max(all.greatest.y, box.greatest.y),
                    std::max(all.greatest.z, box.greatest.z)};
  }
  return all;
}

} // namespace

Located located(Solid const &solid) {
  return guarded({"locate", ""}, [&] {
    std::vector<Bounds> boxes;
    TopTools_IndexedMapOfShape const faces = faces_of(solid);
    for (int i = 1; i <= faces.Extent(); ++i)
      boxes.push_back(box_of(faces(i)));
    Bounds const box = around(boxes);
    return Located{solid, box, std::move(boxes)};
  });
}

Located placed(Located const &solid, Placement const &placement) {
  Solid moved = placed(solid.solid, placement);
  if (placement.angle.value() != 0.0)
    return located(moved);
  Located result{std::move(moved), shifted(solid.box, placement.offset), solid.face_boxes};
  for (Bounds &box : result.face_boxes)
    box = shifted(box, placement.offset);
  return result;
}

units::Length apart(Bounds const &a, Bounds const &b) {
  return units::metres(std::hypot(gap(a.least.x, a.greatest.x, b.least.x, b.greatest.x),
                                  gap(a.least.y, a.greatest.y, b.least.y, b.greatest.y),
                                  gap(a.least.z, a.greatest.z, b.least.z, b.greatest.z)));
}

units::Volume shared(Bounds const &a, Bounds const &b) {
  return units::cubic_metres(overlap(a.least.x, a.greatest.x, b.least.x, b.greatest.x) *
                             overlap(a.least.y, a.greatest.y, b.least.y, b.greatest.y) *
                             overlap(a.least.z, a.greatest.z, b.least.z, b.greatest.z));
}

bool holds(Bounds const &outer, Bounds const &inner) {
  return outer.least.x <= inner.least.x && inner.greatest.x <= outer.greatest.x &&
         outer.least.y <= inner.least.y && inner.greatest.y <= outer.greatest.y &&
         outer.least.z <= inner.least.z && inner.greatest.z <= outer.greatest.z;
}

} // namespace purgewright::solids::kernel
