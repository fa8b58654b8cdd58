#include "output_folder.hpp"

#include "leftovers.hpp"

#include "purgewright/files/file.hpp"
#include "purgewright/report/manifest.hpp"

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <fcntl.h>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>
#include <utility>

namespace purgewright::cli {
namespace {

namespace fs = std::filesystem;
using files::FileError;

std::string reason(int error) {
  return std::generic_category().message(error);
}

// Where the folder is to stand: links followed, also one whose end does not exist yet.
fs::path resolved(fs::path path) {
  constexpr int most_links = 40; // as the system's own limit
  for (int i = 0; fs::is_symlink(path); ++i) {
    if (i == most_links) {
      throw FileError(path, reason(ELOOP));
    }
    path = path.parent_path() / fs::read_symlink(path);
  }
  path = fs::absolute(path).lexically_normal();
  return path.has_filename() ? path : path.parent_path();
}

struct stat status_of(const fs::path &path) {
  struct stat status {};
  if (::lstat(path.c_str(), &status) != 0) {
    throw FileError(path, reason(errno));
  }
  return status;
}

bool holds(const fs::path &folder, const fs::path &other) {
  const fs::path relative = fs::weakly_canonical(other).lexically_relative(fs::weakly_canonical(folder));
  return !relative.empty() && *relative.begin() != "..";
}

// What can be told before anything is built.
void require_free(const fs::path &target, const std::string &command) {
  if (!fs::exists(target)) {
    return;
  }
  const struct stat status = status_of(target);
  if (!S_ISDIR(status.st_mode)) {
    throw FileError(target, "is a file; choose another folder with -o");
  }
  if (holds(target, fs::current_path())) {
    throw FileError(target, "is the folder you work in, or holds it; choose another with -o");
  }
  if (status.st_uid != ::geteuid()) {
    throw FileError(target, "belongs to another user; choose another folder with -o");
  }
  if (::access(target.c_str(), R_OK | W_OK | X_OK) != 0) {
    throw FileError(target, reason(errno));
  }
  if (status.st_dev != status_of(target.parent_path()).st_dev) {
    throw FileError(target, "is a disk of its own and cannot be replaced; choose a folder on it with -o");
  }
  report::require_replaceable(target, command);
}

} // namespace

OutputFolder::OutputFolder(const fs::path &target, std::string command)
    : target_(resolved(target)), command_(std::move(command)) {
  require_free(target_, command_);
  files::make_folder(target_.parent_path());
  make_holder();
  sweep_leftovers(target_, holder_);
}

void OutputFolder::make_holder() {
  std::string name = (target_.parent_path() / (partial_prefix(target_) + "XXXXXX")).string();
  if (::mkdtemp(name.data()) == nullptr) {
    throw FileError(target_.parent_path(), reason(errno));
  }
  holder_ = name;
  try {
    lock_ = mark_as_own(holder_);
    files::make_folder(staging());
  } catch (...) {
    std::error_code ignored;
    fs::remove_all(holder_, ignored);
    throw;
  }
}

OutputFolder::~OutputFolder() {
  std::error_code ignored;
  fs::remove_all(staging(), ignored);
  if (fs::exists(target_, ignored) || !fs::exists(holder_ / "old", ignored)) {
    fs::remove_all(holder_, ignored); // else the next run puts the former folder back
  }
  ::close(lock_);
}

void OutputFolder::write(const fs::path &relative, std::string_view bytes) const {
  const fs::path path = staging() / relative;
  files::make_folder(path.parent_path());
  files::write(path, bytes);
}

// The former folder is looked at once more where nobody adds to it any longer, and put back if it may not go.
void OutputFolder::replace() const {
  const auto swap = [&] {
    return ::renameat2(AT_FDCWD, staging().c_str(), AT_FDCWD, target_.c_str(), RENAME_EXCHANGE) == 0;
  };
  if (swap()) {
    try {
      report::require_replaceable(staging(), command_);
    } catch (...) {
      swap();
      throw;
    }
    return;
  }
  if (errno != EINVAL && errno != ENOSYS) {
    throw FileError(target_, reason(errno));
  }
  // A disk that cannot exchange two names, as over NFS: for a moment there is no folder of this name.
  const fs::path former = holder_ / "old";
  fs::rename(target_, former);
  try {
    report::require_replaceable(former, command_);
    fs::rename(staging(), target_);
  } catch (...) {
    fs::rename(former, target_);
    throw;
  }
}

void OutputFolder::commit() {
  require_free(target_, command_);
  if (fs::exists(target_)) {
    replace();
    return;
  }
  std::error_code error;
  fs::rename(staging(), target_, error);
  if (error) {
    throw FileError(target_, error.message());
  }
}

void write_new_file(const fs::path &path, std::string_view bytes) {
  const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
  if (file < 0) {
    throw FileError(path, errno == EEXIST ? "stands already; name another file with -o" : reason(errno));
  }
  ::close(file);
  try {
    files::write(path, bytes);
  } catch (const FileError &) {
    ::unlink(path.c_str());
    throw;
  }
}

} // namespace purgewright::cli
