// The pool that the welder sees: its size on the model's cells, and the pedal that keeps it. Private to heat.
//
// Units: metres; power as a share. Guarantee: pure functions of the model's state. Source: a cell is liquid
// from its metal's liquidus on; its edge lies where temperature crosses it, straight between cells.
#pragma once

#include "purgewright/heat/model.hpp"

namespace purgewright::heat::detail {

struct Pool {
  double width = 0.0;  // along the metal across the joint, at the angle
  double length = 0.0; // along the joint, at the hotter of the two edges
};
Pool pool_at(const Model &, std::size_t angle, double joint_radius);

// Temperature of a ring under a standing arc, which cells as wide as its heat smear: the mean rise of the
// cells about the angle x the middle of a Gaussian over its mean in them. The heat's width grows with the
// time it had to spread.
units::Temperature under_standing_arc(const Model &, std::size_t ring, const Arc &, units::Temperature before,
                                      units::Time burning);

// Share of the set current with which a welder who watches the pool goes on: less where it is wider than he
// wants, more where it is narrower, never more than is set.
double pedal_after(double share, double width, double wanted);

} // namespace purgewright::heat::detail
