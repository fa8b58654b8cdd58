#include "leftovers.hpp"

#include "purgewright/files/file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <cstdlib>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <system_error>
#include <thread>
#include <unistd.h>
#include <vector>

namespace purgewright::cli {
namespace {

namespace fs = std::filesystem;
using files::FileError;

constexpr const char *owner_name = "owner";
constexpr std::string_view owner_word = "purgewright, boot "; // how a mark begins

// Longer than any run: designs take minutes.
constexpr std::chrono::hours oldest_run{24};

// Names this program and one boot of one machine.
std::string own_mark() {
  return fmt::format("{}{}", owner_word, files::read("/proc/sys/kernel/random/boot_id"));
}

// What the owner file of a hidden folder of this program says; empty when it is none.
std::string mark_of(const fs::path &holder) {
  constexpr std::size_t most = 1024; // bytes; ten times a mark
  const fs::path owner = holder / owner_name;
  if (fs::symlink_status(owner).type() != fs::file_type::regular) {
    return {};
  }
  const std::string mark = files::read(owner, most);
  return mark.starts_with(owner_word) ? mark : std::string();
}

// Marks the hidden folder as this run's; returns the descriptor that holds the lock.
int mark_as_own(const fs::path &holder) {
  const fs::path owner = holder / owner_name;
  const int lock = ::open(owner.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
  if (lock < 0) {
    throw FileError(owner, std::generic_category().message(errno));
  }
  ::flock(lock, LOCK_EX | LOCK_NB); // where a disk has no locks, the age alone protects the folder
  files::write(owner, own_mark());
  return lock;
}

// The youngest of a folder and what is directly in it, by the disk's clock.
fs::file_time_type last_change(const fs::path &folder) {
  auto latest = fs::last_write_time(folder);
  for (const auto &entry : fs::directory_iterator(folder)) {
    latest = std::max(latest, entry.last_write_time());
  }
  return latest;
}

// Nothing in it but, at most, a mark that was not written any more.
bool bare(const fs::path &holder) {
  return std::all_of(
      fs::directory_iterator(holder), fs::directory_iterator(), [](const fs::directory_entry &entry) {
        return entry.path().filename() == owner_name &&
               entry.symlink_status().type() == fs::file_type::regular && entry.file_size() == 0;
      });
}

bool of_this_user(const fs::path &folder) {
  struct stat status {};
  return ::lstat(folder.c_str(), &status) == 0 && status.st_uid == ::geteuid();
}

bool ended(const fs::path &holder, const fs::path &own, bool nobody_marks) {
  if (!of_this_user(holder)) {
    return false; // a folder that all may write to holds anybody's
  }
  const std::string mark = mark_of(holder);
  if (mark.empty()) {
    return nobody_marks && bare(holder); // else made by somebody else, or a run is marking it now
  }
  const bool old = last_change(own) - last_change(holder) > oldest_run;
  const int lock = ::open((holder / owner_name).c_str(), O_RDWR | O_CLOEXEC | O_NOFOLLOW);
  if (lock < 0) {
    return false; // another user's
  }
  const bool free = ::flock(lock, LOCK_EX | LOCK_NB) == 0;
  const bool held = !free && errno == EWOULDBLOCK;
  const bool ours = mark == own_mark();
  ::close(lock);
  return !held && ((free && ours) || old);
}

// A run that had no exchange of names to use may have been killed with the former folder in its hands.
void put_back(const fs::path &holder, const fs::path &target) {
  if (!fs::exists(fs::symlink_status(target)) && fs::exists(holder / "old")) {
    fs::rename(holder / "old", target);
  }
}

// The mark goes last: what a killed sweep leaves is still known as this program's.
void remove_holder(const fs::path &holder) {
  std::error_code ignored;
  std::vector<fs::path> inside;
  for (const auto &entry : fs::directory_iterator(holder, ignored)) {
    if (entry.path().filename() != owner_name) {
      inside.push_back(entry.path());
    }
  }
  std::for_each(inside.begin(), inside.end(), remove_tree);
  remove_tree(holder);
}

} // namespace

MarkingLock::MarkingLock(const fs::path &folder, Use use)
    : folder_(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
  constexpr int tries = 100;
  constexpr std::chrono::milliseconds pause{10}; // a sweep takes no longer than a second
  if (use == Use::sweeping) {
    held_ = folder_ >= 0 && ::flock(folder_, LOCK_EX | LOCK_NB) == 0;
    return;
  }
  for (int i = 0; folder_ >= 0 && !held_ && i < tries; ++i) {
    held_ = ::flock(folder_, LOCK_SH | LOCK_NB) == 0;
    if (!held_) {
      std::this_thread::sleep_for(pause);
    }
  }
}

MarkingLock::~MarkingLock() {
  if (folder_ >= 0) {
    ::close(folder_);
  }
}

std::string partial_prefix(const fs::path &target) {
  return fmt::format(".{}.partial-", target.filename().string());
}

Holder make_holder(const fs::path &target) {
  const MarkingLock making(target.parent_path(), MarkingLock::Use::marking);
  std::string name = (target.parent_path() / (partial_prefix(target) + "XXXXXX")).string();
  if (::mkdtemp(name.data()) == nullptr) {
    throw FileError(target.parent_path(), std::generic_category().message(errno));
  }
  try {
    return {name, mark_as_own(name)};
  } catch (...) {
    std::error_code ignored;
    fs::remove_all(name, ignored);
    throw;
  }
}

void remove_tree(const fs::path &folder) {
  std::error_code ignored;
  const auto open = [&](const fs::path &path) {
    fs::permissions(path, fs::perms::owner_all, fs::perm_options::add, ignored);
  };
  if (fs::symlink_status(folder, ignored).type() == fs::file_type::directory) {
    open(folder);
    for (fs::recursive_directory_iterator at(folder, ignored), end; at != end; at.increment(ignored)) {
      if (at->symlink_status(ignored).type() == fs::file_type::directory) {
        open(at->path()); // before it is entered
      }
    }
  }
  fs::remove_all(folder, ignored);
}

void sweep_leftovers(const fs::path &target, const fs::path &own) {
  const std::string prefix = partial_prefix(target);
  const MarkingLock alone(target.parent_path(), MarkingLock::Use::sweeping);
  std::error_code ignored;
  for (const auto &entry : fs::directory_iterator(target.parent_path(), ignored)) {
    const std::string name = entry.path().filename().string();
    if (!name.starts_with(prefix) || entry.path() == own || entry.is_symlink(ignored) ||
        !entry.is_directory(ignored)) {
      continue;
    }
    try {
      if (ended(entry.path(), own, alone.held())) {
        put_back(entry.path(), target);
        remove_holder(entry.path());
      }
    } catch (const std::exception &) { // another run's sweep was first, or it is another user's
    }
  }
}

} // namespace purgewright::cli
