// How far the shrinking of the runs pulls the cap's rim to one side on the way round, and how long it takes,
// for the two orders of welding.
//
// Model: a run draws cap and tube together by a tenth of its width; tacks and what is not welded yet give
// way. The cap stays flat, so that it tilts by the first harmonic of what is welded so far: where that is
// largest, the joint's gap is narrower by `rim_shift` on one side and wider on the other. After the last run
// it is even again; what stays of it is less. Tacks hold against it, so that it comes out too large. Units:
// quantity types. Errors: those of plan.hpp and fixture/order.hpp. Guarantee: deterministic. Source:
// standards::transverse_shrinkage.
#pragma once

#include "purgewright/heat/plan.hpp"

#include <array>

namespace purgewright::heat {

// Largest pull to one side while runs of equal length are made at these places, 0 .. n - 1 round the joint.
units::Length rim_shift(const fixture::Order &places, units::Length shrinkage);

struct OrderAdvice {
  struct Row {
    units::Length rim_shift{};
    units::Time cycle{}; // of the coarse plan
  };
  Row consecutive, alternating;
};
// Both cycles; the pulls are 0 until add_rim_shifts.
OrderAdvice advise_order(const job::Job &, const fixture::Layout &, Options);
// Both pulls by a pool of this width, so that they are the same number wherever they are printed or judged.
void add_rim_shifts(const job::Job &, units::Length pool, OrderAdvice &);

} // namespace purgewright::heat
