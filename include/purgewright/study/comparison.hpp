// Several jobs, or one over a range of values, as rows side by side.
//
// Units: SI. Frame: none.
// Range and errors: faults of the jobs are Diagnostics; a sweep that cannot be read or is too long throws
// BadSweep, which names it and says what would be right.
// Guarantee: opens no file; the same sources give the same rows.
#pragma once

#include "purgewright/job/draft.hpp"
#include "purgewright/job/sources.hpp"
#include "purgewright/job/sweep.hpp"
#include "purgewright/report/shard.hpp"

#include <functional>
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

// Every combination of the varied values on one job, the last key varying fastest; rows are made as they are
// taken and none is kept.
class Sweep {
 public:
  Sweep(const job::Sources &, std::span<const std::string> texts, Judging, Wanted = {});

  // Of the job, and of the first row; errors among them: there is nothing to make.
  const job::Diagnostics &problems() const { return problems_; }
  // The keys and what is asked for, without designs.
  const report::Comparison &head() const { return head_; }
  std::size_t rows() const; // of the piece

  // Rows `from`.. in order, made by all cores, or by so many threads: the same rows in the same order. Ends
  // at the first row that is no design, with its errors. What `take` throws ends it too.
  using Take = std::function<void(report::ComparedDesign &&)>;
  job::Diagnostics make(std::size_t from, const Take &take, unsigned threads = 0) const;

 private:
  report::ComparedDesign named(report::ComparedDesign) const;

  std::vector<job::Sweep> sweeps_;
  job::Draft draft_;
  job::Diagnostics problems_;
  report::Comparison head_;
  Judging judging_;
  Wanted wanted_;
};

// Throws BadSweep where no row has a metric that is to rank them.
void require_ranked_known(const report::Comparison &head, const report::Overview &);

// All rows of a sweep, kept.
Comparing sweep(const job::Sources &, std::span<const std::string> texts, Judging, const Wanted & = {});

} // namespace purgewright::study
