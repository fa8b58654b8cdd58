// Sees that a file has been saved, however an editor does that: written over, or replaced by another of the
// name. The kernel's notice wakes it at once; where there is none, as for a disk of another machine, a look
// at time, size and number of the files does so twice a second.
//
// Units, frame: none. Errors: std::system_error when the kernel gives no descriptor; a folder that cannot be
// watched is looked at. Guarantee: opens no file. Source: inotify(7), stat(2).
#pragma once

#include <array>
#include <chrono>
#include <filesystem>
#include <map>
#include <set>
#include <vector>

namespace purgewright::watch {

inline constexpr std::chrono::milliseconds look_again{500};

class Saves {
 public:
  Saves();
  ~Saves();
  Saves(const Saves &) = delete;
  Saves &operator=(const Saves &) = delete;

  // Readable when something has happened to a file.
  int descriptor() const { return descriptor_; }

  // These files from now on, links to them included.
  void follow(const std::vector<std::filesystem::path> &);

  // Whether any of them may have changed since the last call.
  bool any();

 private:
  using Mark = std::array<long long, 5>; // number, size, times of the file; zeros where there is none
  bool noticed();

  int descriptor_ = -1;
  std::map<std::filesystem::path, Mark> files_;
  std::map<std::filesystem::path, int> folders_;
};

} // namespace purgewright::watch
