#include "commands.hpp"
#include "kernel_process.hpp"
#include "output_folder.hpp"

#include "purgewright/report/manifest.hpp"
#include "purgewright/report/parts_list.hpp"
#include "purgewright/report/text.hpp"

#include <fmt/format.h>

namespace purgewright::cli {

ExitCode run_design(const DesignOptions &options) {
  const auto findings = load(options.job);
  if (!findings) {
    return ExitCode::bad_input;
  }
  const std::string job_bytes = file_bytes(options.job); // now: it may be edited while the solids are built
  const ExitCode result = outcome(*findings);
  const bool buildable = findings->design.layout.buildable();
  if (!buildable || (options.strict && result != ExitCode::done)) {
    print(options.json ? report::results_json(*findings)
                       : report::summary_text(*findings, {.colour = colour_on_stdout()}));
    complain(buildable ? "error: a rule fails and --strict is on: nothing is written"
                       : "error: dimensions clash, the fixture cannot be built as asked: nothing is written");
    return ExitCode::rule_fails;
  }
  const std::string target =
      options.output.empty() ? fmt::format("out/{}", findings->design.job.identity.name) : options.output;
  {
    Progress progress;
    OutputFolder folder(target);
    build_solids(options.job, folder.staging(), [&](std::string_view step) { progress.say(step); });
    folder.write("results.json", report::results_json(*findings));
    folder.write("parts-list.csv", report::parts_list_csv(findings->design));
    folder.write("manifest.json", report::manifest_json(folder.staging(), job_bytes, tool_version));
    folder.commit();
  }
  print(options.json ? report::results_json(*findings)
                     : report::summary_text(*findings, {.colour = colour_on_stdout()}) +
                           fmt::format("\nFiles are in {}\n", target));
  return result;
}

} // namespace purgewright::cli
