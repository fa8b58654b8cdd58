#include "commands.hpp"

#include <fstream>
#include <iterator>
#include <utility>

namespace purgewright::cli {

std::optional<report::Findings> load(const std::string &path) {
  job::Resolution resolution = job::read_job(path);
  for (const auto &problem : resolution.problems) {
    complain(job::to_text(problem));
  }
  if (!resolution.job) {
    return std::nullopt;
  }
  checks::Design design = checks::evaluate(std::move(*resolution.job));
  bool usable = true;
  for (const auto &problem : design.log.problems) {
    complain(job::to_text(problem));
    usable = usable && problem.severity != job::Severity::error;
  }
  return usable ? std::optional(report::find(std::move(design))) : std::nullopt;
}

ExitCode outcome(const report::Findings &findings) {
  return checks::worst(findings.rules) == checks::Status::fail ? ExitCode::rule_fails : ExitCode::done;
}

std::string file_bytes(const std::string &path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

} // namespace purgewright::cli
