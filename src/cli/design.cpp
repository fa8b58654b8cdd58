#include "commands.hpp"
#include "design_files.hpp"
#include "kernel_process.hpp"
#include "output_folder.hpp"

#include "purgewright/files/text.hpp"
#include "purgewright/html/report_page.hpp"
#include "purgewright/report/manifest.hpp"
#include "purgewright/report/parts_list.hpp"
#include "purgewright/report/text.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <utility>

namespace purgewright::cli {
namespace {

ExitCode write_nothing(const report::Findings &findings, const DesignOptions &options, std::string_view why) {
  print(options.json ? report::results_json(findings)
                     : report::check_text(findings, {.colour = colour_on_stdout()}));
  complain(fmt::format("error: {}: nothing is written", why));
  return ExitCode::rule_fails;
}

constexpr std::string_view strict_refusal = "a rule fails and --strict is on";

// Everything into the folder, which replaces the former one at the end.
void write_design(study::Study &study, const DesignOptions &options, OutputFolder &folder, Signals &signals) {
  {
    Progress progress;
    auto answer = build_solids(study, folder.staging(), signals.halt(),
                               {.on_step = [&](std::string_view step) { progress.say(step); }});
    study::add_clashes(study, std::move(answer.clashes));
  }
  const auto &findings = study.findings;
  if (options.strict && outcome(findings) != ExitCode::done) {
    return;
  }
  folder.write("results.json", report::results_json(findings));
  folder.write("parts-list.csv", report::parts_list_csv(findings.design));
  folder.write("report.html", html::report_page(findings, shown_in(folder.staging(), DesignFiles::all)));
  folder.write(
      "manifest.json",
      report::manifest_json(folder.staging(),
                            {.command = "design",
                             .version = tool_version,
                             .jobs = {read_job_of(findings.design.job.identity.name, study.sources)}}));
  signals.check();
  folder.commit();
}

} // namespace

ExitCode run_design(const DesignOptions &options) {
  auto study = load(options.job, options.solve);
  if (!study) {
    return ExitCode::bad_input;
  }
  const auto &findings = study->findings;
  if (!findings.design.layout.buildable()) {
    return write_nothing(findings, options, "dimensions clash, the fixture cannot be built as asked");
  }
  if (options.strict && outcome(findings) != ExitCode::done) {
    return write_nothing(findings, options, strict_refusal);
  }
  const std::string target =
      options.output.empty() ? fmt::format("out/{}", findings.design.job.identity.name) : options.output;
  {
    Signals signals;
    OutputFolder folder(target, "design");
    write_design(*study, options, folder, signals);
  }
  if (options.strict && outcome(findings) != ExitCode::done) {
    return write_nothing(findings, options, strict_refusal);
  }
  print(options.json
            ? report::results_json(findings)
            : report::check_text(findings, {.colour = colour_on_stdout()}) + chosen_text(*study) +
                  fmt::format("\nFiles are in {0}; to look at: {0}/report.html\n", files::printable(target)));
  if (options.open) {
    open_page(std::filesystem::absolute(target + "/report.html").string());
  }
  return outcome(findings);
}

} // namespace purgewright::cli
