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

// value at least `limit`: pass, else `otherwise`.
inline Verdict at_least(double value, double limit, Status otherwise = Status::fail) {
  constexpr double noise = 1e-9; // relative: sizes that are equal by design pass
  return {value >= limit - noise * (limit < 0 ? -limit : limit) ? Status::pass : otherwise, value, limit,
          Bound::at_least};
}

inline Verdict at_most(double value, double limit, Status otherwise = Status::fail) {
  constexpr double noise = 1e-9;
  return {value <= limit + noise * (limit < 0 ? -limit : limit) ? Status::pass : otherwise, value, limit,
          Bound::at_most};
}

} // namespace purgewright::checks
