// Several jobs, or one over a range of values, as rows side by side.
//
// Units: SI. Frame: none.
// Range and errors: faults of the jobs are Diagnostics; a sweep that cannot be read or is too long throws
// BadSweep, which names it and says what would be right.
// Guarantee: opens no file; the same sources give the same rows.
#pragma once

#include "purgewright/job/sources.hpp"
#include "purgewright/report/shard.hpp"

#include <optional>
#include <span>
#include <stdexcept>
#include <string>
#include <vector>

namespace purgewright::study {

// Of a sweep, or of an id to show or to rank by that the designs do not have.
struct BadSweep : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// What a row of a sweep is judged by: every rule that needs no solids (gas, and heat by its coarse plan), or
// the closed forms alone, thousands a second.
enum class Judging { every_rule, quick };

struct Comparing {
  std::optional<report::Comparison> comparison; // absent when a problem is an error
  job::Diagnostics problems;
};

// Ids of figures beyond the metrics, and of metrics to be weighed against each other; of a sweep, which
// piece.
struct Wanted {
  std::vector<std::string> show{}, rank{};
  report::ShardOf piece{};
};

// A row a job, each judged by everything that needs no solids.
Comparing compare(std::span<const job::Sources>, const Wanted & = {});

// Every combination of the varied values on one job, the last key varying fastest.
Comparing sweep(const job::Sources &, std::span<const std::string> sweeps, Judging, const Wanted & = {});

} // namespace purgewright::study
