#include "purgewright/study/study.hpp"

#include <filesystem>
#include <iterator>
#include <utility>

namespace purgewright::study {
namespace {

// A design's findings, each rule that does not pass with the smallest change that helps.
report::Findings judged(const job::Draft &draft, checks::Design design) {
  report::Findings findings = report::find(std::move(design));
  checks::add_changes(draft, findings.design, findings.rules);
  return findings;
}

// Says of the chosen values where they come from.
void mark_chosen(job::Job &job, std::span<const checks::Change> chosen) {
  for (const auto &change : chosen) {
    job.origins[static_cast<std::size_t>(change.key)] = {units::Basis::computed, {}, checks::solved_reason};
  }
}

// As the job writes it; of a path that holds for one machine alone, the file's name.
std::string portable_name(const std::string &name) {
  const std::filesystem::path path(name);
  return path.is_absolute() ? path.filename().string() : name;
}

// Whether the measured log has no fault; what is wrong with it joins the problems.
bool takes_log(Opening &opening, const checks::Design &design) {
  const auto &problems = design.log.problems;
  opening.problems.insert(opening.problems.end(), problems.begin(), problems.end());
  return !job::has_errors(problems);
}

} // namespace

Opening open(job::Sources sources, Choose choose) {
  job::Resolution resolution = job::read_job(sources);
  Opening opening{.study = std::nullopt, .problems = std::move(resolution.problems)};
  if (!resolution.job) {
    return opening;
  }
  job::Draft draft = job::read_draft(sources).draft; // without fault, as the job has none
  std::vector<checks::Change> chosen;
  if (choose == Choose::what_is_open) {
    checks::Solution solution = checks::solve(draft);
    draft = std::move(solution.draft);
    chosen = std::move(solution.choices);
    resolution.job = job::resolve(draft).job; // every choice has been resolved before
    mark_chosen(*resolution.job, chosen);
  }
  checks::Design design = checks::evaluate(std::move(*resolution.job));
  if (takes_log(opening, design)) {
    report::Findings findings = judged(draft, std::move(design));
    opening.study = Study{std::move(sources), std::move(draft), std::move(findings), std::move(chosen)};
  }
  return opening;
}

Opening open_coarsely(job::Sources sources) {
  job::DraftReading reading = job::read_draft(sources);
  job::Resolution resolution = job::read_job(sources);
  Opening opening{.study = std::nullopt, .problems = std::move(resolution.problems)};
  if (!resolution.job) {
    return opening;
  }
  checks::Design design = checks::evaluate_coarse(std::move(*resolution.job));
  if (takes_log(opening, design)) {
    opening.study = Study{std::move(sources), std::move(reading.draft), report::find(std::move(design)), {}};
  }
  return opening;
}

void add_clashes(Study &study, std::vector<checks::Clash> clashes) {
  checks::Design design = std::move(study.findings.design);
  design.clashes = std::move(clashes);
  design.solids_known = true;
  study.findings = judged(study.draft, std::move(design));
}

job::Resolution chosen_job(const job::Sources &sources, std::span<const checks::Change> chosen) {
  job::DraftReading reading = job::read_draft(sources);
  if (job::has_errors(reading.problems)) {
    return {.job = std::nullopt, .problems = std::move(reading.problems)};
  }
  for (const auto &change : chosen) {
    auto &entry = reading.draft[change.key];
    entry.stated = true;
    entry.is_share = false;
    entry.number = change.to;
  }
  job::Resolution resolution = job::resolve(reading.draft);
  if (resolution.job) {
    mark_chosen(*resolution.job, chosen);
  }
  return resolution;
}

std::vector<report::InputFile> inputs_of(const job::Sources &sources) {
  std::vector<report::InputFile> inputs;
  for (const auto &member : sources.family) {
    inputs.push_back({portable_name(member.name), report::sha256(member.bytes)});
  }
  if (sources.log) {
    inputs.push_back({portable_name(sources.log->name), report::sha256(sources.log->bytes)});
  }
  return inputs;
}

} // namespace purgewright::study
