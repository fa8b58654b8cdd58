#include "commands.hpp"
#include "output_folder.hpp"

#include "purgewright/exchange/step.hpp"
#include "purgewright/exchange/stl.hpp"
#include "purgewright/report/manifest.hpp"
#include "purgewright/report/parts_list.hpp"
#include "purgewright/report/text.hpp"
#include "purgewright/solids/agreement.hpp"
#include "purgewright/solids/parts.hpp"

#include <fmt/chrono.h>
#include <fmt/format.h>

#include <charconv>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <iterator>

namespace purgewright::cli {
namespace {

// Files carry a date chosen from outside, never the clock, so that the same job gives the same bytes.
std::string time_stamp() {
  std::time_t seconds = 0;
  if (const char *epoch = std::getenv("SOURCE_DATE_EPOCH")) {
    const std::string_view text(epoch);
    std::from_chars(text.data(), text.data() + text.size(), seconds);
  }
  return fmt::format("{:%Y-%m-%dT%H:%M:%S}", fmt::gmtime(seconds));
}

exchange::Colour colour_of(const solids::Part &part) {
  constexpr exchange::Colour metal{0.72, 0.75, 0.78}, plug{0.80, 0.62, 0.30}, pin{0.45, 0.47, 0.50},
      titanium{0.60, 0.56, 0.66};
  if (!part.made) {
    return titanium;
  }
  return part.name == "end-plug" ? plug : part.name == "backing-pin" || part.name == "purge-lance" ? pin : metal;
}

exchange::Part as_file_part(const solids::Part &part) {
  exchange::Part file{.name = part.name, .description = part.title, .properties = {}, .solid = part.solid};
  for (const auto &note : part.notes) {
    file.properties.push_back({fmt::format("note {}", file.properties.size() + 1), note});
  }
  return file;
}

void write_solids(const report::Findings &findings, const OutputFolder &folder, Progress &progress) {
  const auto &design = findings.design;
  progress.say("building solids");
  const solids::Assembly assembly = solids::build_assembly(design.job, design.layout);
  progress.say("measuring gas spaces");
  solids::require_agreement(design.job, design.volumes, assembly,
                            solids::measure_gas(design.job, design.layout, assembly));
  const exchange::StepHeader header{.time_stamp = time_stamp(),
                                    .author = design.job.identity.prepared_by,
                                    .originating_system = fmt::format("purgewright {}", tool_version)};
  exchange::Assembly whole{.name = design.job.identity.name, .description = design.job.identity.title, .items = {}};
  for (const auto &part : assembly.parts) {
    exchange::Part file = as_file_part(part);
    if (part.made) {
      progress.say(fmt::format("writing {}", part.name));
      folder.write(fmt::format("parts/{}.step", part.name), exchange::step_text(file, header));
      folder.write(fmt::format("parts/{}.stl", part.name), exchange::stl_file(part.solid).bytes);
    }
    for (const auto &place : part.more_places) {
      whole.items.push_back({file, colour_of(part), place});
    }
    whole.items.push_back({std::move(file), colour_of(part), part.place});
  }
  progress.say("writing assembly");
  folder.write("assembly.step", exchange::step_text(whole, header));
}

std::string file_bytes(const std::string &path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

} // namespace

ExitCode run_design(const DesignOptions &options) {
  const auto findings = load(options.job);
  if (!findings) {
    return ExitCode::bad_input;
  }
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
    write_solids(*findings, folder, progress);
    folder.write("results.json", report::results_json(*findings));
    folder.write("parts-list.csv", report::parts_list_csv(findings->design));
    folder.write("manifest.json", report::manifest_json(folder.staging(), file_bytes(options.job), tool_version));
    folder.commit();
  }
  print(options.json ? report::results_json(*findings)
                     : report::summary_text(*findings, {.colour = colour_on_stdout()}) +
                           fmt::format("\nFiles are in {}\n", target));
  return result;
}

} // namespace purgewright::cli
