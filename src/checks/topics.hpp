// One table of rules a topic; private to the checks floor.
#pragma once

#include "purgewright/checks/rules.hpp"

namespace purgewright::checks {

std::span<const Rule> access_rules();
std::span<const Rule> assembly_rules();
std::span<const Rule> fit_rules();
std::span<const Rule> seal_rules();
std::span<const Rule> machining_rules();
std::span<const Rule> gas_rules();
std::span<const Rule> log_rules();
std::span<const Rule> bench_rules();
std::span<const Rule> heat_rules();

// How warm the fixture may settle, parts one after another: what its gaskets stand and lets holds end.
units::Temperature series_limit(const Design &);

// And for the plug's rubber and the wiper to stand a part's minutes: straight between their peaks in the
// first part and on the settled fixture; that fixture's own temperature where they stand it.
units::Temperature rubber_limit(const Design &);

// What the rules on rim and pull take for the pool's width.
units::Length judged_pool(const heat::HeatPlan &);

// `otherwise` where the value does not keep to its limit.
inline Verdict judged(double value, double limit, Bound bound, Status otherwise) {
  return {keeps(value, limit, bound) ? Status::pass : otherwise, value, limit, bound};
}
inline Verdict at_least(double value, double limit, Status otherwise = Status::fail) {
  return judged(value, limit, Bound::at_least, otherwise);
}
inline Verdict at_most(double value, double limit, Status otherwise = Status::fail) {
  return judged(value, limit, Bound::at_most, otherwise);
}
inline Verdict above(double value, double limit, Status otherwise = Status::fail) {
  return judged(value, limit, Bound::above, otherwise);
}

} // namespace purgewright::checks
