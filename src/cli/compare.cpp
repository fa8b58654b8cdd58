#include "commands.hpp"
#include "output_folder.hpp"
#include "signals.hpp"

#include "purgewright/files/text.hpp"
#include "purgewright/html/comparison_page.hpp"
#include "purgewright/study/comparison.hpp"

#include <fmt/format.h>

#include <utility>

namespace purgewright::cli {
namespace {

// Each file read once; those that cannot be read are told with the rest of their faults.
std::vector<job::Sources> gather_all(const std::vector<std::string> &paths) {
  std::vector<job::Sources> all;
  all.reserve(paths.size());
  for (const auto &path : paths) {
    all.push_back(job::gather(path));
  }
  return all;
}

std::vector<report::ReadJob> read_jobs(const std::vector<job::Sources> &all) {
  std::vector<report::ReadJob> jobs;
  jobs.reserve(all.size());
  for (const auto &sources : all) {
    jobs.push_back(read_job_of(job::read_draft(sources).draft[job::Key::job_name].text, sources));
  }
  return jobs;
}

} // namespace

ExitCode run_compare(const CompareOptions &options) {
  if (options.quick && options.vary.empty()) {
    complain("error: --quick is for sweeps: give --vary");
    return ExitCode::bad_input;
  }
  if (!options.vary.empty() && options.jobs.size() != 1) {
    complain("error: --vary sweeps one job; give one file");
    return ExitCode::bad_input;
  }
  const auto all = gather_all(options.jobs);
  study::Comparing comparing;
  try {
    comparing = options.vary.empty()
                    ? study::compare(all, options.wanted)
                    : study::sweep(all.front(), options.vary,
                                   options.quick ? study::Judging::quick : study::Judging::every_rule,
                                   options.wanted);
  } catch (const study::BadSweep &error) {
    complain(fmt::format("error: {}", error.what()));
    return ExitCode::bad_input;
  }
  if (complain_of(comparing.problems) || !comparing.comparison) {
    return ExitCode::bad_input;
  }
  const std::string json = report::comparison_json(*comparing.comparison);
  const std::string target = options.output.empty() ? "out/compare" : options.output;
  {
    Signals signals;
    OutputFolder folder(target, "compare");
    folder.write("comparison.csv", report::comparison_csv(*comparing.comparison));
    folder.write("comparison.json", json);
    if (comparing.comparison->designs.size() <= html::most_designs_shown) {
      folder.write("comparison.html", html::comparison_page(*comparing.comparison, tool_version));
    }
    folder.write("manifest.json", report::manifest_json(folder.staging(), {.command = "compare",
                                                                           .version = tool_version,
                                                                           .jobs = read_jobs(all)}));
    signals.check();
    folder.commit();
  }
  print(options.json ? json
                     : report::comparison_text(*comparing.comparison) +
                           fmt::format("\nFiles are in {}\n", files::printable(target)));
  return report::any_fails(*comparing.comparison) ? ExitCode::rule_fails : ExitCode::done;
}

} // namespace purgewright::cli
