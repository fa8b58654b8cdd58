// Where tacks and runs lie round the joint and in which order they are made.
//
// Frame: angles on the index collar, counterclockwise seen from +X (looking at the cap).
// Errors: std::domain_error for counts under 1.
// Source: opposite tacks balance the pull of shrinkage: common practice, no source.
#pragma once

#include "purgewright/job/job.hpp"
#include "purgewright/units/quantity.hpp"

#include <vector>

namespace purgewright::heat {

// Positions 0 .. count - 1 in welding order: the first, the one opposite, then the place farthest from every
// tack set so far and the one opposite, until all are set. 4: 0 2 1 3; 6: 0 3 1 4 2 5; 8: 0 4 2 6 1 5 3 7.
std::vector<int> tack_order(int count);

// Start and end of a pass of the arc; the end may lie beyond a full turn.
struct Pass {
  units::Angle start{}, end{};
  units::Angle extent() const { return end >= start ? end - start : start - end; }
};

// Tacks in order, `length` of arc travel each, equally spaced from the start angle.
std::vector<Pass> tack_passes(const job::Job &, units::Length length);

// Runs in order, in the job's direction from its start angle: each begins `overlap` before the end of the one
// before, the last ends `overlap` beyond the start of the first.
std::vector<Pass> run_passes(const job::Job &);

} // namespace purgewright::heat
