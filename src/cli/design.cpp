#include "commands.hpp"
#include "kernel_process.hpp"
#include "output_folder.hpp"

#include "purgewright/report/manifest.hpp"
#include "purgewright/report/parts_list.hpp"
#include "purgewright/report/text.hpp"

#include <fmt/format.h>

namespace purgewright::cli {
namespace {

ExitCode write_nothing(const report::Findings &findings, const DesignOptions &options, std::string_view why) {
  print(options.json ? report::results_json(findings)
                     : report::summary_text(findings, {.colour = colour_on_stdout()}));
  complain(fmt::format("error: {}: nothing is written", why));
  return ExitCode::rule_fails;
}

constexpr std::string_view strict_refusal = "a rule fails and --strict is on";

// What only the solids can tell joins the findings.
void add_clashes(Loaded &loaded, std::vector<checks::Clash> clashes) {
  checks::Design design = std::move(loaded.findings.design);
  design.clashes = std::move(clashes);
  design.solids_known = true;
  loaded.findings = judged(loaded.draft, std::move(design));
}

std::vector<report::InputFile> files_named_by(const job::Job &job) {
  const auto folder = std::filesystem::path(job.file).parent_path();
  std::vector<report::InputFile> files;
  for (const auto &member : job.family) {
    files.push_back(
        {std::filesystem::path(member->file).lexically_relative(folder).generic_string(), member->file});
  }
  if (!job.gas.log.empty()) {
    files.push_back({job.gas.log, folder / job.gas.log});
  }
  return files;
}

} // namespace

ExitCode run_design(const DesignOptions &options) {
  auto loaded = load(options.job, options.solve);
  if (!loaded) {
    return ExitCode::bad_input;
  }
  const auto *findings = &loaded->findings;
  const std::string job_bytes = file_bytes(options.job); // now: it may be edited while the solids are built
  const auto inputs = files_named_by(findings->design.job);
  if (!findings->design.layout.buildable()) {
    return write_nothing(*findings, options, "dimensions clash, the fixture cannot be built as asked");
  }
  if (options.strict && outcome(*findings) != ExitCode::done) {
    return write_nothing(*findings, options, strict_refusal);
  }
  const std::string target =
      options.output.empty() ? fmt::format("out/{}", findings->design.job.identity.name) : options.output;
  {
    Progress progress;
    OutputFolder folder(target);
    add_clashes(*loaded, build_solids({options.job, loaded->chosen}, folder.staging(),
                                      [&](std::string_view step) { progress.say(step); }));
    if (options.strict && outcome(*findings) != ExitCode::done) {
      return write_nothing(*findings, options, strict_refusal);
    }
    folder.write("results.json", report::results_json(*findings));
    folder.write("parts-list.csv", report::parts_list_csv(findings->design));
    folder.write("manifest.json", report::manifest_json(folder.staging(), job_bytes, inputs, tool_version));
    folder.commit();
  }
  print(options.json ? report::results_json(*findings)
                     : report::summary_text(*findings, {.colour = colour_on_stdout()}) +
                           chosen_text(*loaded) + fmt::format("\nFiles are in {}\n", target));
  return outcome(*findings);
}

} // namespace purgewright::cli
