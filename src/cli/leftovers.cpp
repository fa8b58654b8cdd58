#include "leftovers.hpp"

#include "purgewright/files/file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <fcntl.h>
#include <sys/file.h>
#include <system_error>
#include <unistd.h>

namespace purgewright::cli {
namespace {

namespace fs = std::filesystem;
using files::FileError;

constexpr const char *owner_name = "owner";

// Longer than any run: designs take minutes.
constexpr std::chrono::hours oldest_run{24};

// Names one boot of one machine.
std::string this_boot() {
  return files::read("/proc/sys/kernel/random/boot_id");
}

// The youngest of a folder and what is directly in it, by the disk's clock.
fs::file_time_type last_change(const fs::path &folder) {
  auto latest = fs::last_write_time(folder);
  for (const auto &entry : fs::directory_iterator(folder)) {
    latest = std::max(latest, entry.last_write_time());
  }
  return latest;
}

bool ended(const fs::path &holder, const fs::path &own) {
  const bool old = last_change(own) - last_change(holder) > oldest_run;
  const int lock = ::open((holder / owner_name).c_str(), O_RDWR | O_CLOEXEC | O_NOFOLLOW);
  if (lock < 0) {
    return old; // killed before it marked the folder, or marking it now
  }
  const bool free = ::flock(lock, LOCK_EX | LOCK_NB) == 0;
  const bool held = !free && errno == EWOULDBLOCK;
  const bool ours = files::read(holder / owner_name) == this_boot();
  ::close(lock);
  return !held && ((free && ours) || old);
}

// A run that had no exchange of names to use may have been killed with the former folder in its hands.
void put_back(const fs::path &holder, const fs::path &target) {
  if (!fs::exists(fs::symlink_status(target)) && fs::exists(holder / "old")) {
    fs::rename(holder / "old", target);
  }
}

} // namespace

std::string partial_prefix(const fs::path &target) {
  return fmt::format(".{}.partial-", target.filename().string());
}

int mark_as_own(const fs::path &holder) {
  const fs::path owner = holder / owner_name;
  const int lock = ::open(owner.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
  if (lock < 0) {
    throw FileError(owner, std::generic_category().message(errno));
  }
  ::flock(lock, LOCK_EX | LOCK_NB); // where a disk has no locks, the age alone protects the folder
  files::write(owner, this_boot());
  return lock;
}

void sweep_leftovers(const fs::path &target, const fs::path &own) {
  const std::string prefix = partial_prefix(target);
  std::error_code ignored;
  for (const auto &entry : fs::directory_iterator(target.parent_path(), ignored)) {
    const std::string name = entry.path().filename().string();
    if (!name.starts_with(prefix) || entry.path() == own || entry.is_symlink(ignored) ||
        !entry.is_directory(ignored)) {
      continue;
    }
    try {
      if (ended(entry.path(), own)) {
        put_back(entry.path(), target);
        fs::remove_all(entry.path());
      }
    } catch (const std::exception &) { // another run's sweep was first, or it is another user's
    }
  }
}

} // namespace purgewright::cli
