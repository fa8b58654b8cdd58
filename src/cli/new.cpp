#include "commands.hpp"
#include "output_folder.hpp"

#include "purgewright/job/schema.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

namespace purgewright::cli {
namespace {

// Templates name the schema that stands beside them; with it, editors complete the job and check it as one
// types. A schema that stands there already may serve other jobs and stays.
void write_schema_beside(const std::filesystem::path &job) {
  const std::filesystem::path schema = job.parent_path() / "job.schema.json";
  if (!std::filesystem::exists(schema)) {
    write_new_file(schema, job::job_schema_json());
    complain(fmt::format("{} stands beside it, so that editors complete and check the job", schema.string()));
  }
}

} // namespace

ExitCode run_new(const NewOptions &options) {
  const auto &all = templates();
  const auto found = std::ranges::find(all, options.template_name, &Template::name);
  if (found == all.end()) {
    std::string names;
    for (const auto &known : all) {
      names += fmt::format("{}{}", names.empty() ? "" : ", ", known.name);
    }
    complain(fmt::format("error: there is no template '{}'; there are: {}", options.template_name, names));
    return ExitCode::bad_input;
  }
  const std::string path = options.output.empty() ? fmt::format("{}.yaml", found->name) : options.output;
  write_new_file(path, found->text);
  print(fmt::format("{}\n", path));
  write_schema_beside(path);
  return ExitCode::done;
}

} // namespace purgewright::cli
