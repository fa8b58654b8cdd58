#include "output_folder.hpp"

#include "purgewright/exchange/file_error.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <charconv>
#include <cstdio>
#include <fcntl.h>
#include <fstream>
#include <signal.h>
#include <system_error>
#include <unistd.h>

namespace purgewright::cli {
namespace {

namespace fs = std::filesystem;
using exchange::FileError;

constexpr std::string_view partial_mark = ".partial-";

std::string partial_prefix(const fs::path &target) {
  return fmt::format(".{}{}", target.filename().string(), partial_mark);
}

// Removes folders of runs whose process is gone.
void sweep_leftovers(const fs::path &target) {
  std::error_code ignored;
  const std::string prefix = partial_prefix(target);
  for (const auto &entry : fs::directory_iterator(target.parent_path(), ignored)) {
    const std::string name = entry.path().filename().string();
    if (!name.starts_with(prefix)) {
      continue;
    }
    int process = 0;
    const char *end = name.data() + name.size();
    const auto read = std::from_chars(name.data() + prefix.size(), end, process);
    if (read.ec == std::errc() && read.ptr == end && ::kill(process, 0) != 0 && errno == ESRCH) {
      fs::remove_all(entry.path(), ignored);
    }
  }
}

// Only a folder this program wrote is replaced: one with a manifest, or an empty one.
void refuse_foreign(const fs::path &target) {
  if (!fs::exists(target)) {
    return;
  }
  if (!fs::is_directory(target)) {
    throw FileError(target, "is a file; choose another folder with -o");
  }
  if (!fs::is_empty(target) && !fs::exists(target / "manifest.json")) {
    throw FileError(target,
                    "holds files of another origin (no manifest.json); choose another folder with -o");
  }
}

} // namespace

OutputFolder::OutputFolder(fs::path target) : target_(fs::absolute(std::move(target)).lexically_normal()) {
  if (!target_.has_filename()) {
    target_ = target_.parent_path();
  }
  std::error_code error;
  refuse_foreign(target_);
  fs::create_directories(target_.parent_path(), error);
  if (error) {
    throw FileError(target_.parent_path(), error.message());
  }
  sweep_leftovers(target_);
  staging_ = target_.parent_path() / fmt::format("{}{}", partial_prefix(target_), ::getpid());
  fs::remove_all(staging_, error);
  if (!fs::create_directory(staging_, error)) {
    throw FileError(staging_, error ? error.message() : "cannot be made");
  }
}

OutputFolder::~OutputFolder() {
  std::error_code ignored;
  if (!staging_.empty()) {
    fs::remove_all(staging_, ignored);
  }
}

void OutputFolder::write(const fs::path &relative, std::string_view bytes) const {
  const fs::path path = staging_ / relative;
  std::error_code error;
  fs::create_directories(path.parent_path(), error);
  std::ofstream file(path, std::ios::binary);
  file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  file.close();
  if (!file) {
    throw FileError(path, "cannot be written (is the disk full?)");
  }
}

void OutputFolder::commit() {
  // Where a folder stands already the two swap names in one step, so that there is never none.
  if (fs::exists(target_)) {
    if (::renameat2(AT_FDCWD, staging_.c_str(), AT_FDCWD, target_.c_str(), RENAME_EXCHANGE) == 0) {
      return; // the destructor removes the former folder, now under the staging name
    }
    throw FileError(target_, std::generic_category().message(errno));
  }
  std::error_code error;
  fs::rename(staging_, target_, error);
  if (error) {
    throw FileError(target_, error.message());
  }
  staging_.clear();
}

void write_file(const fs::path &path, std::string_view bytes) {
  fs::path partial = path;
  partial += fmt::format("{}{}", partial_mark, ::getpid());
  std::ofstream file(partial, std::ios::binary);
  file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  file.close();
  std::error_code error;
  if (file) {
    fs::rename(partial, path, error);
  }
  if (!file || error) {
    std::error_code ignored;
    fs::remove(partial, ignored);
    throw FileError(path, error ? error.message() : "cannot be written");
  }
}

} // namespace purgewright::cli
