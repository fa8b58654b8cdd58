// Oxygen at the joint over the prepurge, inside and outside, for plots: as the model mixes each space, and
// the two bounds of it, displaced and stirred throughout.
//
// Units: quantity types; oxygen is a volume fraction. Errors: std::domain_error for a duration not above 0 or
// intervals outside 1 to 100000; the layout must be buildable. Guarantee: the network of gas/purge.hpp, whose
// times are where these curves cross the limits. Source: as gas/purge.hpp.
#pragma once

#include "purgewright/gas/purge.hpp"

#include <vector>

namespace purgewright::gas {

struct OxygenCurve {
  std::vector<double> best, displaced, stirred; // at every time
};

struct OxygenCurves {
  std::vector<units::Time> times; // from 0, evenly
  OxygenCurve bore, chamber;      // inside and outside of the joint
};

OxygenCurves prepurge_curves(const job::Job &, const fixture::Layout &, const fixture::Volumes &,
                             const fixture::Areas &, const Bounds &, const MeasuredMixing &,
                             units::Time duration, int intervals);

} // namespace purgewright::gas
