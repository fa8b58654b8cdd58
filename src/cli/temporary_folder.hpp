// A folder in the system's temporary one that is gone when this object is: for files that nobody keeps.
//
// Units, frame: none. Errors: files::FileError when it cannot be made. Guarantee: this user's alone to read;
// what a killed run left there is removed by the next, as leftovers.hpp says. Source: POSIX.1-2017 (mkdtemp).
#pragma once

#include <filesystem>
#include <string_view>

namespace purgewright::cli {

class TemporaryFolder {
 public:
  explicit TemporaryFolder(std::string_view use);
  ~TemporaryFolder();
  TemporaryFolder(const TemporaryFolder &) = delete;
  TemporaryFolder &operator=(const TemporaryFolder &) = delete;

  const std::filesystem::path &path() const { return path_; }

 private:
  std::filesystem::path path_;
  int lock_;
};

} // namespace purgewright::cli
