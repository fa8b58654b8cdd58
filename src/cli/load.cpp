#include "commands.hpp"

#include <algorithm>

namespace purgewright::cli {

std::optional<report::Findings> load(const std::string &path) {
  job::Resolution resolution = job::read_job(path);
  for (const auto &problem : resolution.problems) {
    complain(job::to_text(problem));
  }
  if (!resolution.job) {
    return std::nullopt;
  }
  return report::find(checks::evaluate(std::move(*resolution.job)));
}

ExitCode outcome(const report::Findings &findings) {
  return checks::worst(findings.rules) == checks::Status::fail ? ExitCode::rule_fails : ExitCode::done;
}

} // namespace purgewright::cli
