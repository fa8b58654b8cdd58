#include "commands.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <utility>

namespace purgewright::cli {
namespace {

bool complain_of(const job::Diagnostics &problems) {
  for (const auto &problem : problems) {
    complain(job::to_text(problem));
  }
  return job::has_errors(problems);
}

// Puts the chosen values in the job's place and says where they come from.
job::Job solved(const checks::Solution &solution) {
  job::Job job = std::move(*job::resolve(solution.draft).job); // every choice has been resolved before
  for (const auto &choice : solution.choices) {
    job.origins[static_cast<std::size_t>(choice.key)] = {units::Basis::computed, {}, checks::solved_reason};
  }
  return job;
}

} // namespace

std::optional<Loaded> load(const std::string &path, bool solve) {
  job::Resolution resolution = job::read_job(path);
  complain_of(resolution.problems);
  if (!resolution.job) {
    return std::nullopt;
  }
  Loaded loaded{
      .draft = job::read_draft(path).draft, .findings = {}, .chosen = {}}; // no fault, as the job has none
  if (solve) {
    checks::Solution solution = checks::solve(loaded.draft);
    resolution.job = solved(solution);
    loaded.draft = std::move(solution.draft);
    loaded.chosen = std::move(solution.choices);
  }
  checks::Design design = checks::evaluate(std::move(*resolution.job));
  if (complain_of(design.log.problems)) {
    return std::nullopt;
  }
  loaded.findings = judged(loaded.draft, std::move(design));
  return loaded;
}

report::Findings judged(const job::Draft &draft, checks::Design design) {
  report::Findings findings = report::find(std::move(design));
  checks::add_changes(draft, findings.design, findings.rules);
  return findings;
}

std::string chosen_text(const Loaded &loaded) {
  if (loaded.chosen.empty()) {
    return {};
  }
  const auto system = loaded.findings.design.job.shop.unit_system;
  std::string text = "\nChosen (--solve), from what the job leaves open\n";
  for (const auto &change : loaded.chosen) {
    const auto &field = job::field(change.key);
    text += fmt::format("  {} {} instead of {}\n", field.path,
                        units::shop_text(change.to, field.dimension, system),
                        units::shop_text(change.from, field.dimension, system));
  }
  text += "  write these values into the job file to keep them\n";
  if (!loaded.findings.design.job.family.empty()) {
    text += "  and before the other jobs of fixture.family are designed: the common bench goes with them\n";
  }
  return text;
}

ExitCode outcome(const report::Findings &findings) {
  return checks::worst(findings.rules) == checks::Status::fail ? ExitCode::rule_fails : ExitCode::done;
}

std::string file_bytes(const std::string &path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

} // namespace purgewright::cli
