#include "watch/saves.hpp"

#include <cerrno>
#include <climits>
#include <cstring>
#include <string>
#include <sys/inotify.h>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>

namespace purgewright::watch {
namespace {

namespace fs = std::filesystem;

// A save is whole when the file is closed, or when it has taken the name.
constexpr std::uint32_t events = IN_CLOSE_WRITE | IN_MOVED_TO | IN_MOVED_FROM | IN_DELETE | IN_CREATE;

// What the path leads to through links, step by step: a change of any of them is one of the file.
std::set<fs::path> places_of(const fs::path &path) {
  constexpr int most_links = 40; // as the system's own limit
  std::set<fs::path> places;
  fs::path at = fs::absolute(path);
  std::error_code error;
  for (int i = 0; i < most_links && places.insert(at).second && fs::is_symlink(at, error); ++i) {
    at = (at.parent_path() / fs::read_symlink(at, error)).lexically_normal();
  }
  return places;
}

std::array<long long, 5> mark_of(const fs::path &path) {
  struct stat status {};
  if (::stat(path.c_str(), &status) != 0) {
    return {};
  }
  return {static_cast<long long>(status.st_ino), static_cast<long long>(status.st_size),
          static_cast<long long>(status.st_mtim.tv_sec), static_cast<long long>(status.st_mtim.tv_nsec),
          static_cast<long long>(status.st_ctim.tv_nsec)};
}

} // namespace

Saves::Saves() : descriptor_(::inotify_init1(IN_NONBLOCK | IN_CLOEXEC)) {
  if (descriptor_ < 0) {
    throw std::system_error(errno, std::generic_category(), "inotify");
  }
}

Saves::~Saves() {
  ::close(descriptor_);
}

void Saves::follow(const std::vector<fs::path> &paths) {
  std::map<fs::path, Mark> files;
  for (const auto &path : paths) {
    for (const auto &place : places_of(path)) {
      const auto known = files_.find(place);
      files.emplace(place, known == files_.end() ? mark_of(place) : known->second);
      const fs::path folder = place.parent_path();
      if (!folders_.contains(folder)) {
        folders_.emplace(folder, ::inotify_add_watch(descriptor_, folder.c_str(), events));
      }
    }
  }
  files_ = std::move(files);
}

// Takes in what the kernel has said; whether it was of one of the files.
bool Saves::noticed() {
  alignas(inotify_event) std::array<char, 16 * (sizeof(inotify_event) + NAME_MAX + 1)> buffer{};
  bool found = false;
  for (ssize_t count = 0; (count = ::read(descriptor_, buffer.data(), buffer.size())) > 0;) {
    for (ssize_t at = 0; at < count;) {
      inotify_event event{};
      std::memcpy(&event, buffer.data() + at, sizeof event);
      const char *const name = buffer.data() + at + sizeof event;
      for (const auto &[folder, watched] : folders_) {
        found = found || (event.mask & IN_Q_OVERFLOW) != 0 ||
                (watched == event.wd && event.len > 0 && files_.contains(folder / name));
      }
      at += static_cast<ssize_t>(sizeof event + event.len);
    }
  }
  return found;
}

bool Saves::any() {
  bool changed = noticed();
  for (auto &[path, mark] : files_) {
    const Mark now = mark_of(path);
    changed = changed || now != mark;
    mark = now;
  }
  return changed;
}

} // namespace purgewright::watch
