// Runs a program and keeps what it said; a folder that goes away with the test.
#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace purgewright::test {

// A folder of its own under the system's temporary one, removed at the end of the scope.
class ScratchFolder {
 public:
  ScratchFolder();
  ~ScratchFolder();
  ScratchFolder(const ScratchFolder &) = delete;
  ScratchFolder &operator=(const ScratchFolder &) = delete;
  const std::filesystem::path &path() const { return path_; }
  std::filesystem::path operator/(const std::string &name) const { return path_ / name; }

 private:
  std::filesystem::path path_;
};

std::string bytes_of(const std::filesystem::path &);
void write_bytes(const std::filesystem::path &, const std::string &);

// Every file below a folder by its relative path, with its bytes.
std::map<std::string, std::string> tree(const std::filesystem::path &);

struct Finished {
  int status = -1; // exit status, or 128 + the signal that ended it
  std::string out, err;
};

struct RunOptions {
  std::filesystem::path folder{};                   // to run in; the current one when empty
  std::map<std::string, std::string> environment{}; // set besides the current ones
  double kill_after = 0.0;                          // s; 0: wait for the end
  int kill_with = 9;                                // SIGKILL
  bool as_nobody = false;                           // give up root's rights, so that permissions count
};

Finished run(const std::string &program, const std::vector<std::string> &arguments,
             const RunOptions &options = {});

} // namespace purgewright::test
