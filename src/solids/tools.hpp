// Shapes that several parts cut with; private to the solids floor.
#pragma once

#include "purgewright/fixture/layout.hpp"
#include "purgewright/solids/kernel/primitives.hpp"

#include <vector>

namespace purgewright::solids {

using kernel::Point;
using kernel::ProfilePoint;
using kernel::Solid;
using units::Length;

// Drill-pointed step from one bore down to a smaller one takes this length.
Length step_length(Length large, Length small);

// Profile of a gas way seen from the mouth inwards, axial 0 at the face it is drilled from: spot face (if
// any), port, drill-pointed step, passage down to `end`; it starts outside the metal. The caller closes it.
std::vector<ProfilePoint> port_profile(Length spot_radius, Length spot_depth, Length port_radius,
                                       Length port_depth, Length passage_radius, Length end);

// Upright plate with lugs on either side of its foot, in its own frame: x -thickness..0.
struct FootedPlate {
  Length thickness{}, width{}, z_min{}, z_max{};
  fixture::ScrewedFoot foot;
};
// The plate over both lugs, from which the tools cut its shoulders and the lugs' holes.
Solid footed_blank(const FootedPlate &);
std::vector<Solid> foot_cutters(const FootedPlate &);

// The block the chamber is milled from; also the envelope of its gas space.
Solid chamber_stock(const fixture::ChamberBody &);

// The plenum's outline between two heights.
Solid plenum_pocket(const fixture::Plenum &, Length from, Length to);

// Cavity, slot (edge unbroken) and plenum of the chamber as separate tools that overshoot the outer faces.
std::vector<Solid> chamber_spaces(const fixture::ChamberBody &);

// The diffuser's holes as tools; none touches another, and both ends of each lie in open space.
std::vector<Solid> diffuser_holes(const fixture::ChamberBody &);

// Rim of a domed cap's outer or inner sphere in the plane of the joint, with the arc that leads to the apex.
ProfilePoint dome_outside(const job::Cap &);
ProfilePoint dome_inside(const job::Cap &);

} // namespace purgewright::solids
