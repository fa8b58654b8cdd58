#include "commands.hpp"
#include "output_folder.hpp"

#include "purgewright/report/compare.hpp"
#include "purgewright/report/manifest.hpp"
#include "purgewright/units/parse.hpp"

#include <fmt/format.h>

#include <cmath>
#include <filesystem>
#include <utility>

namespace purgewright::cli {
namespace {

struct Sweep {
  const job::FieldInfo *field = nullptr;
  double from = 0.0, step = 0.0;
  std::size_t count = 0;
  double at(std::size_t i) const { return from + step * double(i); }
};

constexpr std::size_t most_designs = 1'000'000;

// "fixture.radial_clearance=4 mm:10 mm:0.5 mm"; says on stderr what is wrong and returns nothing.
std::optional<Sweep> read_sweep(const std::string &text) {
  const auto fault = [&](const std::string &why) {
    complain(fmt::format("error: --vary {}: {}; write KEY=FROM:TO:STEP, such as fixture.wall=3 mm:6 mm:1 mm",
                         text, why));
    return std::nullopt;
  };
  const auto equals = text.find('=');
  const auto first = text.find(':', equals == std::string::npos ? 0 : equals);
  const auto second = first == std::string::npos ? first : text.find(':', first + 1);
  if (equals == std::string::npos || second == std::string::npos) {
    return fault("a part is missing");
  }
  Sweep sweep{.field = job::field(std::string_view(text).substr(0, equals))};
  if (sweep.field == nullptr) {
    return fault(fmt::format("there is no key '{}'", text.substr(0, equals)));
  }
  if (sweep.field->kind != job::FieldKind::quantity && sweep.field->kind != job::FieldKind::count) {
    return fault(fmt::format("'{}' is not a number", sweep.field->path));
  }
  std::array<double, 3> values{};
  const std::array<std::string, 3> parts{text.substr(equals + 1, first - equals - 1),
                                         text.substr(first + 1, second - first - 1), text.substr(second + 1)};
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const auto parsed = units::parse_quantity(parts[i], sweep.field->dimension);
    if (!parsed.si) {
      return fault(parsed.problem);
    }
    values[i] = *parsed.si;
  }
  constexpr double noise = 1e-9; // of a step: the last value counts when it is hit but for rounding
  if (!(values[2] > 0.0) || values[1] < values[0]) {
    return fault("the step must be above zero and FROM not above TO");
  }
  for (const double value : {values[0], values[1]}) {
    if (value < sweep.field->least || value > sweep.field->most) {
      return fault(fmt::format(
          "{} allows {} to {}", sweep.field->path,
          units::shop_text(sweep.field->least, sweep.field->dimension, units::UnitSystem::metric),
          units::shop_text(sweep.field->most, sweep.field->dimension, units::UnitSystem::metric)));
    }
  }
  const double steps = std::floor((values[1] - values[0]) / values[2] + noise);
  if (steps >= double(most_designs)) {
    return fault(fmt::format("more than {} designs", most_designs));
  }
  sweep.from = values[0];
  sweep.step = values[2];
  sweep.count = static_cast<std::size_t>(steps) + 1;
  return sweep;
}

// Every combination of the varied values on one job, the last key varying fastest.
bool run_sweep(job::Draft draft, const std::vector<Sweep> &sweeps, report::Comparison &comparison) {
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
  std::vector<Sweep> sweeps;
  report::Comparison comparison;
  std::size_t total = 1;
  for (const auto &text : options.vary) {
    const auto sweep = read_sweep(text);
    if (!sweep) {
      return std::nullopt;
    }
    total *= sweep->count;
    if (total > most_designs) {
      complain(fmt::format("error: the sweep has more than {} designs; take larger steps", most_designs));
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
