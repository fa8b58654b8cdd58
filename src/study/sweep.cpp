// Rows of a sweep, made by all cores and taken in order.
#include "rows.hpp"

#include "purgewright/job/nearest.hpp"

#include <fmt/format.h>
#include <tbb/global_control.h>
#include <tbb/parallel_pipeline.h>
#include <tbb/task_arena.h>

#include <algorithm>
#include <atomic>
#include <optional>
#include <utility>

namespace purgewright::study {
namespace {

// A row with its purge and heat takes a tenth of a second or two: this many take the better part of an hour.
constexpr std::size_t most_judged_designs = 10'000;

using Sweeps = std::vector<job::Sweep>;
using Ids = std::span<const std::string>;

struct Row {
  report::ComparedDesign design;
  job::Diagnostics problems; // the row is no design when one is an error
};

using Batch = std::vector<Row>;

// A row's values stated in the draft.
void vary(const Sweeps &sweeps, const std::vector<double> &values, job::Draft &draft) {
  for (std::size_t k = 0; k < sweeps.size(); ++k) {
    auto &entry = draft[sweeps[k].field->key];
    entry.stated = true;
    entry.is_share = false;
    entry.number = values[k];
    entry.text = sweeps[k].currency;
  }
}

checks::Design evaluated(job::Job job, Judging judging) {
  return judging == Judging::quick ? checks::evaluate_closed_form(std::move(job))
                                   : checks::evaluate_row(std::move(job));
}

Row make_row(job::Draft draft, const Sweeps &sweeps, std::size_t n, Judging judging, Ids show) {
  std::vector<double> values = job::values_of_design(sweeps, n);
  vary(sweeps, values, draft);
  job::Resolution resolution = job::resolve(draft);
  if (!resolution.job) {
    return {.design = {}, .problems = std::move(resolution.problems)};
  }
  const checks::Design design = evaluated(std::move(*resolution.job), judging);
  Row row{.design = report::compared(design, {}, show), .problems = design.log.problems};
  row.design.varied = std::move(values);
  if (report::is_drawn(n, job::designs_of(sweeps))) {
    rows::draw(design, row.design);
  }
  return row;
}

Sweeps read_sweeps(std::span<const std::string> texts, Judging judging, report::ShardOf piece) {
  Sweeps sweeps;
  std::size_t total = 1;
  for (const auto &text : texts) {
    const auto [sweep, problem, nearest] = job::read_sweep(text);
    if (!nearest.empty()) {
      throw BadSweep(fmt::format("--vary {}: {}{}", text, problem, job::did_you_mean(nearest)));
    }
    if (!sweep) {
      throw BadSweep(fmt::format("--vary {}: {}; write KEY=FROM:TO:STEP, such as fixture.wall=3 mm:6 mm:1 mm",
                                 text, problem));
    }
    if (std::ranges::find(sweeps, sweep->field, &job::Sweep::field) != sweeps.end()) {
      throw BadSweep(fmt::format("--vary: {} is varied twice", sweep->field->path));
    }
    total *= sweep->count;
    if (total > job::most_designs) {
      throw BadSweep(fmt::format("the sweep has more than {} designs; take larger steps", job::most_designs));
    }
    sweeps.push_back(*sweep);
  }
  if (total < piece.count) {
    throw BadSweep(fmt::format("--shard: {} designs are fewer than {} pieces", total, piece.count));
  }
  if (judging == Judging::every_rule && piece.rows(total) > most_judged_designs) {
    throw BadSweep(
        fmt::format("{} designs are too many to judge purge and heat of each, at most {}; take "
                    "larger steps, --shard to make it in pieces, or --quick to leave those rules out",
                    piece.rows(total), most_judged_designs));
  }
  return sweeps;
}

// The draft of the sweep's first design, with what is wrong with it.
job::Resolution first_design(const job::Draft &draft, const Sweeps &sweeps, std::size_t n) {
  job::Draft first = draft;
  vary(sweeps, job::values_of_design(sweeps, n), first);
  return job::resolve(first);
}

} // namespace

Sweep::Sweep(const job::Sources &sources, std::span<const std::string> texts, Judging judging, Wanted wanted)
    : sweeps_(read_sweeps(texts, judging, wanted.piece)), judging_(judging), wanted_(std::move(wanted)) {
  head_.quick = judging == Judging::quick;
  head_.ranked = rows::ranked(wanted_.rank);
  for (const auto &swept : sweeps_) {
    head_.varied_keys.emplace_back(swept.field->path);
    head_.varied_dimensions.push_back(swept.field->dimension);
    head_.varied_currencies.push_back(swept.currency);
  }
  job::DraftReading reading = job::read_draft(sources);
  draft_ = std::move(reading.draft);
  problems_ = std::move(reading.problems);
  if (job::has_errors(problems_)) {
    return;
  }
  job::Resolution first = first_design(draft_, sweeps_, wanted_.piece.row(0));
  if (!first.job) {
    problems_ = std::move(first.problems);
    return;
  }
  head_.unit_system = first.job->shop.unit_system;
  if (!wanted_.show.empty()) {
    head_.asked = rows::asked_of(evaluated(std::move(*first.job), judging_), wanted_.show);
  }
}

std::size_t Sweep::rows() const {
  return wanted_.piece.rows(job::designs_of(sweeps_));
}

report::ComparedDesign Sweep::named(report::ComparedDesign design) const {
  for (std::size_t k = 0; k < head_.varied_keys.size(); ++k) {
    design.name += fmt::format("{}{}", k == 0 ? "" : " ", report::varied_text(head_, k, design.varied[k]));
  }
  return design;
}

job::Diagnostics Sweep::make(std::size_t from, const Take &take, unsigned threads) const {
  // Closed forms take less than handing a row over; few batches at a time bound what waits for its turn.
  const std::size_t a_batch = judging_ == Judging::quick ? 64 : 1;
  constexpr std::size_t batches_a_thread = 4;
  std::optional<tbb::global_control> limit;
  if (threads > 0) {
    limit.emplace(tbb::global_control::max_allowed_parallelism, threads);
  }
  tbb::task_arena arena(threads > 0 ? static_cast<int>(threads) : tbb::task_arena::automatic);
  std::size_t next = from;
  job::Diagnostics faults;
  std::atomic<bool> failed{false}; // the stages run beside each other
  const auto number = [&](tbb::flow_control &control) {
    const std::size_t first = next;
    next = std::min(next + a_batch, rows());
    if (first == next || failed) {
      control.stop();
    }
    return first;
  };
  const auto design = [&](std::size_t first) {
    Batch batch;
    for (std::size_t n = first; n < std::min(first + a_batch, rows()); ++n) {
      batch.push_back(make_row(draft_, sweeps_, wanted_.piece.row(n), judging_, wanted_.show));
    }
    return batch;
  };
  const auto hand_over = [&](Batch batch) {
    for (Row &row : batch) {
      if (!failed && job::has_errors(row.problems)) {
        faults = std::move(row.problems);
        failed = true;
      }
      if (!failed) {
        take(named(std::move(row.design)));
      }
    }
  };
  arena.execute([&] {
    tbb::parallel_pipeline(batches_a_thread * static_cast<std::size_t>(arena.max_concurrency()),
                           tbb::make_filter<void, std::size_t>(tbb::filter_mode::serial_in_order, number) &
                               tbb::make_filter<std::size_t, Batch>(tbb::filter_mode::parallel, design) &
                               tbb::make_filter<Batch, void>(tbb::filter_mode::serial_in_order, hand_over));
  });
  return faults;
}

Comparing sweep(const job::Sources &sources, std::span<const std::string> texts, Judging judging,
                const Wanted &wanted) {
  const Sweep swept(sources, texts, judging, wanted);
  if (job::has_errors(swept.problems())) {
    return {.comparison = std::nullopt, .problems = swept.problems()};
  }
  report::Comparison all = swept.head();
  auto faults = swept.make(0, [&](report::ComparedDesign &&row) { all.designs.push_back(std::move(row)); });
  if (!faults.empty()) {
    return {.comparison = std::nullopt, .problems = std::move(faults)};
  }
  require_ranked_known(all, report::overview(all));
  return {.comparison = std::move(all), .problems = swept.problems()};
}

} // namespace purgewright::study
