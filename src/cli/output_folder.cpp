#include "output_folder.hpp"

#include "commands.hpp"
#include "leftovers.hpp"

#include "purgewright/files/file.hpp"
#include "purgewright/report/manifest.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <deque>
#include <fcntl.h>
#include <memory>
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

// Where the folder is to stand, step by step as the system goes: a link is followed before the ".." behind it
// counts, also a link whose end does not exist yet.
fs::path resolved(const fs::path &path) {
  constexpr int most_links = 40; // as the system's own limit
  const fs::path whole = fs::absolute(path);
  std::deque<fs::path> steps(whole.begin(), whole.end());
  fs::path at;
  for (int links = 0; !steps.empty();) {
    const fs::path step = steps.front();
    steps.pop_front();
    if (step == "..") {
      at = at.parent_path();
    } else if (step.empty() || step == ".") {
      continue;
    } else if (!fs::is_symlink(at / step)) {
      at /= step; // the root, which a link may begin with, replaces all before it
    } else if (++links > most_links) {
      throw FileError(path, reason(ELOOP));
    } else {
      const fs::path end = fs::read_symlink(at / step);
      steps.insert(steps.begin(), end.begin(), end.end());
    }
  }
  return at;
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

// The folder, which may stand elsewhere than it is named, holds nothing that would be lost.
void require_replaceable(const fs::path &folder, const fs::path &named, const std::string &command) {
  try {
    report::require_replaceable(folder, command);
  } catch (const FileError &error) {
    const fs::path path = error.path == folder ? named : named / error.path.lexically_relative(folder);
    throw FileError(path, error.reason + "; choose another folder with -o");
  }
}

// A folder below that this user can neither clear nor open to itself would be left behind.
void require_removable(const fs::path &target) {
  for (const auto &entry : fs::recursive_directory_iterator(target)) {
    if (entry.is_directory() && !entry.is_symlink() && status_of(entry.path()).st_uid != ::geteuid() &&
        ::access(entry.path().c_str(), R_OK | W_OK | X_OK) != 0) {
      throw FileError(entry.path(), "belongs to another user; choose another folder with -o");
    }
  }
}

// The new folder is as open as the former, and what is made in it goes to the same group.
void take_mode(const fs::path &folder, const fs::path &former) {
  constexpr mode_t bits = 07777;
  constexpr auto same_user = static_cast<uid_t>(-1);
  const struct stat status = status_of(former);
  mode_t mode = status.st_mode & bits;
  if (::chown(folder.c_str(), same_user, status.st_gid) != 0) {
    mode &= ~static_cast<mode_t>(S_ISUID | S_ISGID); // a group that the user is not in cannot be handed on
  }
  if (::chmod(folder.c_str(), mode) != 0) {
    throw FileError(folder, reason(errno));
  }
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
  require_replaceable(target, target, command);
  require_removable(target);
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
  const Holder made = cli::make_holder(target_);
  holder_ = made.folder;
  lock_ = made.lock;
  try {
    files::make_folder(staging());
    if (fs::exists(target_)) {
      take_mode(staging(), target_);
    }
  } catch (...) {
    std::error_code ignored;
    fs::remove_all(holder_, ignored);
    throw;
  }
}

OutputFolder::~OutputFolder() {
  std::error_code ignored;
  remove_tree(staging());
  const bool kept = !fs::exists(target_, ignored) && fs::exists(holder_ / "old", ignored);
  if (!kept) {
    remove_tree(holder_);
  }
  if (fs::exists(holder_, ignored)) {
    complain(
        fmt::format("left behind: {}: {}", holder_.string(),
                    kept ? "holds the former folder, which the next run puts back" : "cannot be removed"));
  }
  ::close(lock_);
}

void OutputFolder::write(const fs::path &relative, std::string_view bytes) const {
  const fs::path path = staging() / relative;
  files::make_folder(path.parent_path());
  files::write(path, bytes);
}

void OutputFolder::write_pieces(const fs::path &relative,
                                const std::function<void(const Sink &)> &give) const {
  const fs::path path = staging() / relative;
  const auto close = [](std::FILE *file) { std::fclose(file); };
  std::unique_ptr<std::FILE, decltype(close)> file(std::fopen(path.c_str(), "wxe"), close);
  if (!file) {
    throw FileError(path, reason(errno));
  }
  give([&](std::string_view piece) {
    if (std::fwrite(piece.data(), 1, piece.size(), file.get()) != piece.size()) {
      throw FileError(path, reason(errno));
    }
  });
  if (std::fclose(file.release()) != 0) {
    throw FileError(path, reason(errno));
  }
}

// The former folder is looked at once more where nobody adds to it any longer, and put back if it may not go.
void OutputFolder::replace() const {
  const auto swap = [&] {
    return ::renameat2(AT_FDCWD, staging().c_str(), AT_FDCWD, target_.c_str(), RENAME_EXCHANGE) == 0;
  };
  if (swap()) {
    try {
      require_replaceable(staging(), target_, command_);
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
    require_replaceable(former, target_, command_);
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
