// Share of a Gaussian arc's heat that falls into each cell over a step. Private to heat.
//
// Units: metres, radians. Guarantee: both sets of shares add up to 1; exact integrals of the Gaussian over
// cell and step, cut off beyond 6 standard deviations.
#pragma once

#include "purgewright/heat/chain.hpp"

#include <Eigen/Core>

namespace purgewright::heat::detail {

// Along the chain: centred `offset` from the joint.
Eigen::ArrayXd shares_along(const Chain &, double offset, double deviation);

// Round the axis: the centre moves evenly from `from` to `to`.
void shares_round(double from, double to, double deviation, Eigen::ArrayXd &shares);

} // namespace purgewright::heat::detail
