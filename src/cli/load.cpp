#include "commands.hpp"

#include <fmt/format.h>

#include <utility>

namespace purgewright::cli {

bool complain_of(const job::Diagnostics &problems) {
  for (const auto &problem : problems) {
    complain(job::to_text(problem));
  }
  return job::has_errors(problems);
}

std::optional<study::Study> load(const std::string &path, bool solve) {
  study::Opening opening =
      study::open(job::gather(path), solve ? study::Choose::what_is_open : study::Choose::nothing);
  complain_of(opening.problems);
  return std::move(opening.study);
}

std::string chosen_text(const study::Study &loaded) {
  if (loaded.chosen.empty()) {
    return {};
  }
  const auto system = loaded.findings.design.job.shop.unit_system;
  std::string text = "\nChosen (--solve), from what the job leaves open\n";
  for (const auto &change : loaded.chosen) {
    text += fmt::format("  {} {} instead of {}\n", job::field(change.key).path,
                        checks::value_text(change.key, change.to, system),
                        checks::value_text(change.key, change.from, system));
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

report::ReadJob read_job_of(std::string name, const job::Sources &sources) {
  return {std::move(name), report::sha256(sources.job.bytes), study::inputs_of(sources)};
}

} // namespace purgewright::cli
