// A sweep as the command line states it, "fixture.radial_clearance=4 mm:10 mm:0.5 mm": one key of the job
// file and the values it takes.
//
// Units: SI; STEP of a temperature is a difference. Valid range: a quantity or a count; FROM and TO within
// the key's limits, FROM not above TO, STEP above zero, at most `most_designs` values, the three of a price
// in one currency. Errors: none thrown; a reading without sweep says what is wrong in one sentence.
// Guarantee: every value of a sweep lies within the key's limits, TO is among them when a whole number of
// steps leads to it.
#pragma once

#include "purgewright/job/keys.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::job {

inline constexpr std::size_t most_designs = 1'000'000; // of one command, all its sweeps together

struct Sweep {
  const FieldInfo *field = nullptr;
  double from = 0.0, step = 0.0, to = 0.0;
  std::size_t count = 0;
  std::string currency;         // of a price, ISO 4217
  double at(std::size_t) const; // counted from 0
};

struct SweepReading {
  std::optional<Sweep> sweep;
  std::string problem; // empty when there is a sweep
  std::string nearest; // key that a slip may have meant
};

SweepReading read_sweep(std::string_view text);

// Designs of all sweeps together.
std::size_t designs_of(std::span<const Sweep>);
// What each sweep's key has in design n, from 0; the last key varies fastest.
std::vector<double> values_of_design(std::span<const Sweep>, std::size_t n);

} // namespace purgewright::job
