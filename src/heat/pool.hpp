// The pool that the welder sees: its size on the model's cells, and the pedal that keeps it. Private to heat.
//
// Units: metres; power as a share. Guarantee: pure functions of the model's state. Source: a cell is liquid
// from its metal's liquidus on; its edge lies where temperature crosses it, straight between cells.
#pragma once

#include "purgewright/heat/model.hpp"

namespace purgewright::heat::detail {

struct Pool {
  double width = 0.0;  // along the metal across the joint, where it is widest
  double length = 0.0; // along the joint, at the hottest of the rings beside it
};
Pool pool_of(const Model &, double joint_radius);

// Temperature of a ring at an angle, straight between the middles of its cells.
units::Temperature at_angle(const Model &, std::size_t ring, units::Angle);

// Temperature of a ring's edge at the joint under a standing arc, which cells as wide as its heat smear: the
// mean rise of the cells about the angle x the middle of a Gaussian over its mean in them, along and round.
// The heat's width grows with the time it had to spread.
units::Temperature under_standing_arc(const Model &, std::size_t ring, const Arc &, units::Temperature before,
                                      units::Time burning);

// How far along the joint from a standing arc metal of this kind is melted, where its middle, at first as hot
// as `before`, is `over` its liquidus (K): the heat per mass lies as a Gaussian that spreads as above. 0 when
// it is not melted. And the `over` that melts it so far.
double melted_half(const Metal &, double over, const Arc &, units::Temperature before, units::Time burning);
double over_for(const Metal &, double half, const Arc &, units::Temperature before, units::Time burning);

// Share of the set current with which a welder who watches the pool goes on after `lasted`: less where it is
// wider than he wants, more where it is narrower, never more than is set.
double pedal_after(double share, double width, double wanted, units::Time lasted);

} // namespace purgewright::heat::detail
