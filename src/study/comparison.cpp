#include "purgewright/study/comparison.hpp"

#include "purgewright/job/nearest.hpp"
#include "purgewright/job/sweep.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <future>
#include <iterator>
#include <thread>
#include <utility>
#include <vector>

namespace purgewright::study {
namespace {

// A row with its purge and heat takes a tenth of a second or two: this many take the better part of an hour.
constexpr std::size_t most_judged_designs = 10'000;

using Sweeps = std::vector<job::Sweep>;
using Ids = std::span<const std::string>;

struct Row {
  report::ComparedDesign design;
  std::vector<report::Asked> asked; // of the first row alone
  job::Diagnostics problems;        // the row is no design when one is an error
  units::UnitSystem unit_system{};
};

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

std::string nearest_figure(const checks::Design &design, std::string_view id) {
  const auto figures = checks::figures(design);
  std::vector<std::string_view> ids;
  std::ranges::transform(figures, std::back_inserter(ids), &units::Figure::id);
  return std::string(job::nearest_choice(id, ids));
}

std::vector<report::Asked> asked_of(const checks::Design &design, Ids show) {
  try {
    return show.empty() ? std::vector<report::Asked>{} : report::asked_of(design, show);
  } catch (const std::out_of_range &error) {
    const std::string_view id = error.what();
    throw BadSweep(
        fmt::format("--show: the design has no quantity '{}'; `purgewright trace JOB` lists them all{}", id,
                    job::did_you_mean(nearest_figure(design, id))));
  }
}

void draw(const checks::Design &design, report::ComparedDesign &row) {
  if (design.layout.buildable()) {
    row.outlines = fixture::outlines(design.job, design.layout);
  }
}

Row make_row(job::Draft draft, const Sweeps &sweeps, std::size_t n, Judging judging, Ids show, bool first) {
  std::vector<double> values = job::values_of_design(sweeps, n);
  vary(sweeps, values, draft);
  job::Resolution resolution = job::resolve(draft);
  if (!resolution.job) {
    return {.design = {}, .asked = {}, .problems = std::move(resolution.problems)};
  }
  const auto evaluation = judging == Judging::quick ? checks::evaluate_closed_form : checks::evaluate_row;
  checks::Design design = evaluation(std::move(*resolution.job));
  Row row{.design = report::compared(design, {}, show),
          .asked = first ? asked_of(design, show) : std::vector<report::Asked>{},
          .problems = std::move(design.log.problems),
          .unit_system = design.job.shop.unit_system};
  row.design.varied = std::move(values);
  if (report::is_drawn(n, job::designs_of(sweeps))) {
    draw(design, row.design);
  }
  return row;
}

// Every row by itself and in its own place, so that the number of threads changes nothing.
std::vector<Row> make_rows(const job::Draft &draft, const Sweeps &sweeps, Judging judging,
                           const Wanted &wanted) {
  std::vector<Row> rows(wanted.piece.rows(job::designs_of(sweeps)));
  std::atomic<std::size_t> next{0};
  const auto work = [&] {
    for (std::size_t n = next++; n < rows.size(); n = next++) {
      rows[n] = make_row(draft, sweeps, wanted.piece.row(n), judging, wanted.show, n == 0);
    }
  };
  std::vector<std::future<void>> others;
  for (unsigned i = 1; i < std::thread::hardware_concurrency(); ++i) {
    others.push_back(std::async(std::launch::async, work));
  }
  work();
  for (auto &other : others) {
    other.get();
  }
  return rows;
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

void name_rows(report::Comparison &comparison) {
  for (auto &design : comparison.designs) {
    for (std::size_t k = 0; k < comparison.varied_keys.size(); ++k) {
      design.name +=
          fmt::format("{}{}", k == 0 ? "" : " ", report::varied_text(comparison, k, design.varied[k]));
    }
  }
}

// Which metrics the ids name; of each some design must know its value.
std::vector<std::size_t> ranked(Ids ids) {
  std::vector<std::size_t> metrics;
  for (const std::string &id : ids) {
    const auto metric = report::rankable(id);
    if (!metric) {
      std::vector<std::string_view> allowed;
      for (const report::Metric &each : report::metrics()) {
        if (each.better != report::Better::neither) {
          allowed.push_back(each.id);
        }
      }
      throw BadSweep(fmt::format("--rank {}: designs are ranked by {}{}", id, fmt::join(allowed, ", "),
                                 job::did_you_mean(job::nearest_choice(id, allowed))));
    }
    metrics.push_back(*metric);
  }
  return metrics;
}

void require_ranked_known(const report::Comparison &comparison) {
  for (const std::size_t metric : comparison.ranked) {
    if (!report::is_known(comparison, metric)) {
      throw BadSweep(fmt::format("--rank {}: no design here has it{}", report::metrics()[metric].id,
                                 comparison.quick ? "; --quick leaves out purge and heat" : ""));
    }
  }
}

void add(job::Diagnostics &all, const job::Diagnostics &more) {
  all.insert(all.end(), more.begin(), more.end());
}

} // namespace

Comparing compare(std::span<const job::Sources> all, const Wanted &wanted) {
  Comparing result{.comparison = report::Comparison{}, .problems = {}};
  result.comparison->ranked = ranked(wanted.rank);
  for (const auto &sources : all) {
    job::Resolution resolution = job::read_job(sources);
    add(result.problems, resolution.problems);
    if (resolution.job) {
      result.comparison->unit_system = resolution.job->shop.unit_system;
      const checks::Design design = checks::evaluate(std::move(*resolution.job));
      add(result.problems, design.log.problems);
      if (result.comparison->designs.empty()) {
        result.comparison->asked = asked_of(design, wanted.show);
      }
      result.comparison->designs.push_back(report::compared(design, design.job.identity.name, wanted.show));
      if (report::is_drawn(result.comparison->designs.size() - 1, all.size())) {
        draw(design, result.comparison->designs.back());
      }
    }
  }
  if (job::has_errors(result.problems)) {
    result.comparison.reset();
  } else {
    require_ranked_known(*result.comparison);
  }
  return result;
}

Comparing sweep(const job::Sources &sources, std::span<const std::string> texts, Judging judging,
                const Wanted &wanted) {
  const Sweeps sweeps = read_sweeps(texts, judging, wanted.piece);
  job::DraftReading reading = job::read_draft(sources);
  if (job::has_errors(reading.problems)) {
    return {.comparison = std::nullopt, .problems = std::move(reading.problems)};
  }
  report::Comparison comparison;
  comparison.quick = judging == Judging::quick;
  comparison.ranked = ranked(wanted.rank);
  for (const auto &swept : sweeps) {
    comparison.varied_keys.emplace_back(swept.field->path);
    comparison.varied_dimensions.push_back(swept.field->dimension);
    comparison.varied_currencies.push_back(swept.currency);
  }
  for (Row &row : make_rows(reading.draft, sweeps, judging, wanted)) {
    if (job::has_errors(row.problems)) {
      return {.comparison = std::nullopt, .problems = std::move(row.problems)};
    }
    comparison.unit_system = row.unit_system;
    if (comparison.designs.empty()) {
      comparison.asked = std::move(row.asked);
    }
    comparison.designs.push_back(std::move(row.design));
  }
  name_rows(comparison);
  require_ranked_known(comparison);
  return {.comparison = std::move(comparison), .problems = std::move(reading.problems)};
}

} // namespace purgewright::study
