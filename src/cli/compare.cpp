#include "commands.hpp"
#include "output_folder.hpp"

#include "purgewright/job/sweep.hpp"
#include "purgewright/report/compare.hpp"
#include "purgewright/report/manifest.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <utility>

namespace purgewright::cli {
namespace {

// Every combination of the varied values on one job, the last key varying fastest.
bool run_sweep(job::Draft draft, const std::vector<job::Sweep> &sweeps, report::Comparison &comparison) {
  std::size_t total = 1;
  for (const auto &sweep : sweeps) {
    total *= sweep.count;
  }
  for (std::size_t n = 0; n < total; ++n) {
    report::ComparedDesign design;
    std::size_t rest = n;
    design.varied.resize(sweeps.size());
    for (std::size_t k = sweeps.size(); k-- > 0;) {
      design.varied[k] = sweeps[k].at(rest % sweeps[k].count);
      rest /= sweeps[k].count;
      auto &entry = draft[sweeps[k].field->key];
      entry.stated = true;
      entry.is_share = false;
      entry.number = design.varied[k];
    }
    job::Resolution resolution = job::resolve(draft);
    if (!resolution.job) {
      for (const auto &problem : resolution.problems) {
        complain(job::to_text(problem));
      }
      return false;
    }
    comparison.unit_system = resolution.job->shop.unit_system;
    design.values = report::measure(checks::evaluate_closed_form(std::move(*resolution.job)));
    comparison.designs.push_back(std::move(design));
  }
  return true;
}

void name_swept(report::Comparison &comparison) {
  for (auto &design : comparison.designs) {
    for (std::size_t k = 0; k < comparison.varied_keys.size(); ++k) {
      design.name += fmt::format(
          "{}{}={}", k == 0 ? "" : " ", comparison.varied_keys[k],
          units::shop_text(design.varied[k], comparison.varied_dimensions[k], comparison.unit_system));
    }
  }
}

std::optional<report::Comparison> sweep_job(const CompareOptions &options) {
  if (options.jobs.size() != 1) {
    complain("error: --vary sweeps one job; give one file");
    return std::nullopt;
  }
  std::vector<job::Sweep> sweeps;
  report::Comparison comparison;
  std::size_t total = 1;
  for (const auto &text : options.vary) {
    const auto [sweep, problem] = job::read_sweep(text);
    if (!sweep) {
      complain(
          fmt::format("error: --vary {}: {}; write KEY=FROM:TO:STEP, such as fixture.wall=3 mm:6 mm:1 mm",
                      text, problem));
      return std::nullopt;
    }
    total *= sweep->count;
    if (total > job::most_designs) {
      complain(
          fmt::format("error: the sweep has more than {} designs; take larger steps", job::most_designs));
      return std::nullopt;
    }
    comparison.varied_keys.emplace_back(sweep->field->path);
    comparison.varied_dimensions.push_back(sweep->field->dimension);
    sweeps.push_back(*sweep);
  }
  job::DraftReading reading = job::read_draft(options.jobs.front());
  for (const auto &problem : reading.problems) {
    complain(job::to_text(problem));
  }
  if (job::has_errors(reading.problems) || !run_sweep(std::move(reading.draft), sweeps, comparison)) {
    return std::nullopt;
  }
  name_swept(comparison);
  return comparison;
}

std::optional<report::Comparison> compare_jobs(const CompareOptions &options) {
  report::Comparison comparison;
  bool all_read = true;
  for (const auto &path : options.jobs) {
    job::Resolution resolution = job::read_job(path);
    for (const auto &problem : resolution.problems) {
      complain(job::to_text(problem));
    }
    if (!resolution.job) {
      all_read = false;
      continue;
    }
    report::ComparedDesign design;
    design.name = resolution.job->identity.name;
    comparison.unit_system = resolution.job->shop.unit_system;
    design.values = report::measure(checks::evaluate(std::move(*resolution.job)));
    comparison.designs.push_back(std::move(design));
  }
  return all_read ? std::optional(std::move(comparison)) : std::nullopt;
}

std::string all_job_bytes(const CompareOptions &options) {
  std::string bytes;
  for (const auto &path : options.jobs) {
    bytes += file_bytes(path);
  }
  return bytes;
}

} // namespace

ExitCode run_compare(const CompareOptions &options) {
  const auto comparison = options.vary.empty() ? compare_jobs(options) : sweep_job(options);
  if (!comparison) {
    return ExitCode::bad_input;
  }
  const std::string json = report::comparison_json(*comparison);
  const std::filesystem::path target = options.output.empty() ? "out/compare" : options.output;
  OutputFolder folder(target);
  folder.write("comparison.csv", report::comparison_csv(*comparison));
  folder.write("comparison.json", json);
  folder.write("manifest.json",
               report::manifest_json(folder.staging(), all_job_bytes(options), {}, tool_version));
  folder.commit();
  print(options.json
            ? json
            : report::comparison_text(*comparison) + fmt::format("\nFiles are in {}\n", target.string()));
  return ExitCode::done;
}

} // namespace purgewright::cli
