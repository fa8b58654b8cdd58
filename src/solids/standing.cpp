#include "standing.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::solids {
namespace {

double gap(units::Length low, units::Length high, units::Length other_low, units::Length other_high) {
  return std::max({0.0, (low - other_high).value(), (other_low - high).value()});
}

Standing standing(const Part &part, const kernel::Placement &place) {
  kernel::Solid solid = kernel::placed(part.solid, place);
  const kernel::Bounds box = kernel::bounding_box(solid);
  return {part.name, std::move(solid), box};
}

} // namespace

std::vector<Standing> stand(const Assembly &assembly, Bought bought) {
  std::vector<Standing> all;
  for (const Part &part : assembly.parts) {
    if (part.kind == PartKind::bought && bought == Bought::left_out) {
      continue;
    }
    all.push_back(standing(part, part.place));
    for (const auto &place : part.more_places) {
      all.push_back(standing(part, place));
    }
  }
  return all;
}

units::Length apart(const kernel::Bounds &a, const kernel::Bounds &b) {
  return units::metres(std::hypot(gap(a.least.x, a.greatest.x, b.least.x, b.greatest.x),
                                  gap(a.least.y, a.greatest.y, b.least.y, b.greatest.y),
                                  gap(a.least.z, a.greatest.z, b.least.z, b.greatest.z)));
}

} // namespace purgewright::solids
