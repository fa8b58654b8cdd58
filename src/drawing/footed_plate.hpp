// The foot of an upright plate as its sheet shows it: lugs with holes from above, for cradle stand and axial
// stop. Private to the drawing floor.
//
// Units: quantity types in, millimetres at full size out. Frame: the plate's own (fixture/bench_parts.hpp),
// its face seen from +X, its side from -Y. Guarantee: features are named PART.foot_y and so on.
#pragma once

#include "part_plans.hpp"

namespace purgewright::drawing {

struct FootedPlate {
  std::string_view part;
  fixture::Length thickness{}, width{}, z_min{}, z_max{};
  const fixture::ScrewedFoot &foot;
};

// Sides of the plate from its top down over its lugs, and the underside; the holes.
void foot_outline(ViewPlan &face, const FootedPlate &);
void foot_wishes(ViewPlan &face, const Labels &, const FootedPlate &);

// Outline over the thickness, its dimensions and those of the holes' place in it.
ViewPlan footed_side(const Labels &, const FootedPlate &);

} // namespace purgewright::drawing
