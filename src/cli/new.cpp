#include "commands.hpp"
#include "new_job.hpp"
#include "output_folder.hpp"

#include "purgewright/checks/rules.hpp"
#include "purgewright/files/file.hpp"
#include "purgewright/job/draft.hpp"
#include "purgewright/job/nearest.hpp"
#include "purgewright/job/schema.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <iterator>
#include <string_view>
#include <system_error>
#include <vector>

namespace purgewright::cli {
namespace {

namespace fs = std::filesystem;

// Templates name the schema that stands beside them; with it, editors complete the job and check it as one
// types. A schema that stands there already may serve other jobs and stays. Both files are written, or none.
void write_both(const fs::path &job, std::string_view text) {
  const fs::path schema = job.parent_path() / "job.schema.json";
  const bool there = fs::exists(schema);
  if (!there && fs::is_symlink(schema)) {
    throw files::FileError(schema,
                           "is a link to nothing; remove it, or name a file in another folder with -o");
  }
  write_new_file(job, text);
  if (there) {
    return;
  }
  try {
    write_new_file(schema, job::job_schema_json());
  } catch (const files::FileError &) {
    std::error_code ignored;
    fs::remove(job, ignored);
    throw;
  }
  complain(fmt::format("{} stands beside it, so that editors complete and check the job", schema.string()));
}

std::string path_for(const NewOptions &options, std::string_view name) {
  return options.output.empty() ? fmt::format("{}.yaml", name) : options.output;
}

ExitCode refuse(const std::string &problem) {
  complain("error: " + problem);
  return ExitCode::bad_input;
}

// Sizes that no job may have are told as faults of the text that would be written; rules that fail it all the
// same are told, for a person to weigh.
ExitCode new_of_sizes(const NewOptions &options) {
  const NewJob fresh = job_of_sizes(options.tube, options.cap.empty() ? "flat" : options.cap);
  if (!fresh.problem.empty()) {
    return refuse(fresh.problem);
  }
  job::DraftReading reading = job::read_draft_text(fresh.text, "--tube");
  job::Resolution resolution = job::resolve(reading.draft);
  for (job::Diagnostics *problems : {&reading.problems, &resolution.problems}) {
    std::ranges::for_each(*problems,
                          [](job::Diagnostic &problem) { problem.mark = {}; }); // no one sees that text
  }
  if (complain_of(reading.problems) || complain_of(resolution.problems) || !resolution.job) {
    return ExitCode::bad_input;
  }
  const std::string path = path_for(options, resolution.job->identity.name);
  write_both(path, fresh.text);
  print(fmt::format("{}\n", path));
  const checks::Tally rules = checks::tally(checks::evaluate_row(*resolution.job));
  if (rules.failing > 0) {
    complain(fmt::format("it does not pass as it stands: {} of its rules {}, {} the most; `purgewright check "
                         "{}` says what would "
                         "cure it",
                         rules.failing, rules.failing == 1 ? "fails" : "fail", rules.worst, path));
    return ExitCode::rule_fails;
  }
  return ExitCode::done;
}

ExitCode new_of_template(const NewOptions &options) {
  const auto &all = templates();
  const auto found = std::ranges::find(all, options.template_name, &Template::name);
  if (found == all.end()) {
    std::vector<std::string_view> names;
    std::ranges::transform(all, std::back_inserter(names), &Template::name);
    return refuse(fmt::format("there is no template '{}'; there are: {}{}", options.template_name,
                              fmt::join(names, ", "),
                              job::did_you_mean(job::nearest_choice(options.template_name, names))));
  }
  const std::string path = path_for(options, found->name);
  write_both(path, found->text);
  print(fmt::format("{}\n", path));
  return ExitCode::done;
}

} // namespace

ExitCode run_new(const NewOptions &options) {
  const bool sized = !options.tube.empty() || !options.cap.empty();
  if (sized && !options.template_name.empty()) {
    return refuse("name a template or give --tube, not both");
  }
  if (!sized && options.template_name.empty()) {
    return refuse(
        "name a template (flat-cap, domed-cap, spigot-cap), or give the tube's sizes: --tube '1 in x 0.035 "
        "in x 8 in'");
  }
  if (sized && options.tube.empty()) {
    return refuse("--cap goes with --tube '1 in x 0.035 in x 8 in'");
  }
  return sized ? new_of_sizes(options) : new_of_template(options);
}

} // namespace purgewright::cli
