// Oxygen of what a solver gives for air: by volume cold, by mass hot; the rest is the supply's gas.
#pragma once

#include "purgewright/job/job.hpp"

namespace purgewright::flow {

double oxygen_of(double air, const job::Job &job, bool hot);

// A bounded solver stays within 0 and 1: a hundredth beyond is its error, more is a solution that ran away;
// common practice, no source.
inline constexpr double least_air = -0.01, most_air = 1.01;
inline bool is_share_of_air(double air) { // what is not a number is none
  return least_air <= air && air <= most_air;
}

} // namespace purgewright::flow
