#include "purgewright/job/sources.hpp"

#include "purgewright/files/file.hpp"
#include "purgewright/job/nearest.hpp"

#include <algorithm>
#include <filesystem>
#include <system_error>
#include <utility>

namespace purgewright::job {
namespace {

namespace fs = std::filesystem;

Document read_document(std::string name, const fs::path &path, std::size_t most) {
  Document document{std::move(name), path.string(), {}, {}, {}};
  try {
    document.bytes = files::read(path, most);
  } catch (const files::FileError &error) {
    document.problem = error.reason;
  }
  return document;
}

// A file that the job names. Only a command line may name standard input, which would be another file each
// time; a file of that name is "./-".
Document read_named(const std::string &name, const fs::path &folder, std::size_t most) {
  if (name == files::standard_input) {
    return {name, name, {}, "a job names files, and not standard input", {}};
  }
  return read_document(name, folder / name, most);
}

// The folder that the job's own names start from.
fs::path folder_of(const fs::path &job) {
  std::error_code ignored;
  if (!fs::is_regular_file(job, ignored)) {
    return {};
  }
  return (fs::is_symlink(job, ignored) ? fs::canonical(job, ignored) : job).parent_path();
}

// The other job file beside this one that a typing slip may have meant.
std::string nearest_file(const fs::path &folder, const fs::path &own, const std::string &name) {
  std::error_code ignored;
  std::vector<std::string> beside;
  for (const auto &entry : fs::directory_iterator(folder.empty() ? fs::path(".") : folder, ignored)) {
    if (entry.path().extension() == ".yaml" && entry.path().filename() != own.filename()) {
      beside.push_back(entry.path().filename().string());
    }
  }
  std::ranges::sort(beside);
  const std::vector<std::string_view> names(beside.begin(), beside.end());
  return std::string(nearest_choice(name, names));
}

} // namespace

Sources gather(const std::string &path) {
  Sources sources{.job = read_document({}, path, file_size_most), .family = {}, .log = std::nullopt};
  if (!sources.job.problem.empty()) {
    return sources;
  }
  const Draft draft = read_draft_text(sources.job.bytes, path).draft;
  const fs::path folder = folder_of(path);
  for (const std::string &name : draft[Key::fixture_family].list) {
    std::error_code ignored;
    if (name != files::standard_input && fs::equivalent(folder / name, path, ignored)) {
      continue; // one list may serve all jobs of a family
    }
    Document member = read_named(name, folder, file_size_most);
    if (member.bytes == sources.job.bytes) {
      continue; // the job itself, read from a pipe
    }
    if (!member.problem.empty()) {
      member.nearest = nearest_file(folder, path, name);
    }
    sources.family.push_back(std::move(member));
  }
  if (const Entry &log = draft[Key::gas_log]; log.stated && !log.text.empty()) {
    sources.log = read_named(log.text, folder, log_size_most);
  }
  return sources;
}

} // namespace purgewright::job
