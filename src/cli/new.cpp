#include "commands.hpp"
#include "output_folder.hpp"

#include "purgewright/files/file.hpp"
#include "purgewright/job/schema.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <system_error>

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
  write_both(path, found->text);
  print(fmt::format("{}\n", path));
  return ExitCode::done;
}

} // namespace purgewright::cli
