#include "purgewright/study/comparison.hpp"

#include "purgewright/job/sweep.hpp"
#include "purgewright/units/parse.hpp"

#include <fmt/format.h>

#include <utility>
#include <vector>

namespace purgewright::study {
namespace {

// The varied values of row n stated in the draft, and returned.
std::vector<double> vary(std::span<const job::Sweep> sweeps, std::size_t n, job::Draft &draft) {
  std::vector<double> values(sweeps.size());
  for (std::size_t k = sweeps.size(); k-- > 0;) {
    values[k] = sweeps[k].at(n % sweeps[k].count);
    n /= sweeps[k].count;
    auto &entry = draft[sweeps[k].field->key];
    entry.stated = true;
    entry.is_share = false;
    entry.number = values[k];
  }
  return values;
}

// How a row of a sweep is judged.
report::MetricValues judged_row(job::Job job) {
  return report::measure(checks::evaluate_closed_form(std::move(job)));
}

// How a job of its own is judged.
report::MetricValues judged_job(job::Job job) {
  return report::measure(checks::evaluate(std::move(job)));
}

std::string swept_name(const report::Comparison &comparison, const std::vector<double> &varied) {
  std::string name;
  for (std::size_t k = 0; k < varied.size(); ++k) {
    name += fmt::format("{}{}={}", k == 0 ? "" : " ", comparison.varied_keys[k],
                        units::shop_text(varied[k], comparison.varied_dimensions[k], comparison.unit_system));
  }
  return name;
}

std::vector<job::Sweep> read_sweeps(std::span<const std::string> texts) {
  std::vector<job::Sweep> sweeps;
  std::size_t total = 1;
  for (const auto &text : texts) {
    const auto [sweep, problem] = job::read_sweep(text);
    if (!sweep) {
      throw BadSweep(fmt::format("--vary {}: {}; write KEY=FROM:TO:STEP, such as fixture.wall=3 mm:6 mm:1 mm",
                                 text, problem));
    }
    total *= sweep->count;
    if (total > job::most_designs) {
      throw BadSweep(fmt::format("the sweep has more than {} designs; take larger steps", job::most_designs));
    }
    sweeps.push_back(*sweep);
  }
  return sweeps;
}

} // namespace

Comparing compare(std::span<const job::Sources> all) {
  Comparing result{.comparison = report::Comparison{}, .problems = {}};
  for (const auto &sources : all) {
    job::Resolution resolution = job::read_job(sources);
    result.problems.insert(result.problems.end(), resolution.problems.begin(), resolution.problems.end());
    if (resolution.job) {
      report::ComparedDesign design;
      design.name = resolution.job->identity.name;
      result.comparison->unit_system = resolution.job->shop.unit_system;
      design.values = judged_job(std::move(*resolution.job));
      result.comparison->designs.push_back(std::move(design));
    }
  }
  if (job::has_errors(result.problems)) {
    result.comparison.reset();
  }
  return result;
}

Comparing sweep(const job::Sources &sources, std::span<const std::string> texts) {
  const std::vector<job::Sweep> sweeps = read_sweeps(texts);
  job::DraftReading reading = job::read_draft(sources);
  if (job::has_errors(reading.problems)) {
    return {.comparison = std::nullopt, .problems = std::move(reading.problems)};
  }
  report::Comparison comparison;
  std::size_t total = 1;
  for (const auto &swept : sweeps) {
    comparison.varied_keys.emplace_back(swept.field->path);
    comparison.varied_dimensions.push_back(swept.field->dimension);
    total *= swept.count;
  }
  for (std::size_t n = 0; n < total; ++n) {
    report::ComparedDesign design;
    design.varied = vary(sweeps, n, reading.draft);
    job::Resolution resolution = job::resolve(reading.draft);
    if (!resolution.job) {
      return {.comparison = std::nullopt, .problems = std::move(resolution.problems)};
    }
    comparison.unit_system = resolution.job->shop.unit_system;
    design.name = swept_name(comparison, design.varied);
    design.values = judged_row(std::move(*resolution.job));
    comparison.designs.push_back(std::move(design));
  }
  return {.comparison = std::move(comparison), .problems = std::move(reading.problems)};
}

} // namespace purgewright::study
