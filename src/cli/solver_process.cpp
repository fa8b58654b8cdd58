#include "solver_process.hpp"

#include "purgewright/files/file.hpp"
#include "purgewright/flow/case.hpp"

#include <fmt/format.h>

#include <array>
#include <cerrno>
#include <charconv>
#include <csignal>
#include <cstdlib>
#include <fstream>
#include <poll.h>
#include <spawn.h>
#include <sstream>
#include <string>
#include <string_view>
#include <sys/wait.h>
#include <system_error>
#include <unistd.h>
#include <vector>

extern char **environ; // NOLINT: POSIX gives it no header

namespace purgewright::cli {
namespace {

namespace fs = std::filesystem;

constexpr int look_again = 500; // ms

// The script and all that it starts, as a process group of its own.
class Group {
 public:
  Group(const fs::path &script, long processes, const sigset_t &signals) {
    std::array<std::string, 3> words{"sh", script.string(), std::to_string(processes)};
    std::array<char *, 4> argv{words[0].data(), words[1].data(), words[2].data(), nullptr};
    posix_spawnattr_t attributes;
    ::posix_spawnattr_init(&attributes);
    ::posix_spawnattr_setflags(&attributes, POSIX_SPAWN_SETSIGMASK | POSIX_SPAWN_SETPGROUP);
    ::posix_spawnattr_setpgroup(&attributes, 0);
    ::posix_spawnattr_setsigmask(&attributes, &signals);
    const int error = ::posix_spawnp(&leader_, "sh", nullptr, &attributes, argv.data(), environ);
    ::posix_spawnattr_destroy(&attributes);
    if (error != 0) {
      leader_ = 0;
      throw SolverFault(fmt::format("sh does not start ({})", std::generic_category().message(error)));
    }
  }
  ~Group() {
    if (leader_ > 0) {
      ::kill(-leader_, SIGTERM);
      wait(0);
    }
  }
  Group(const Group &) = delete;
  Group &operator=(const Group &) = delete;

  // Whether it has ended; its status is then known.
  bool ended() { return wait(WNOHANG); }
  int status() const { return status_; }

 private:
  bool wait(int options) {
    pid_t found = 0;
    while ((found = ::waitpid(leader_, &status_, options)) < 0 && errno == EINTR) {
    }
    if (found == leader_) {
      leader_ = 0;
      return true;
    }
    return false;
  }

  pid_t leader_ = 0;
  int status_ = 0;
};

// The last time that the solver's log names, from its last few thousand bytes.
std::optional<double> last_time(const fs::path &log) {
  constexpr std::streamoff tail = 8192;
  constexpr std::string_view word = "\nTime = ";
  std::ifstream file(log, std::ios::binary | std::ios::ate);
  if (!file) {
    return std::nullopt;
  }
  const std::streamoff size = file.tellg();
  file.seekg(std::max<std::streamoff>(0, size - tail));
  std::ostringstream bytes;
  bytes << file.rdbuf();
  const std::string text = bytes.str();
  const std::size_t at = text.rfind(word);
  double time = 0.0;
  if (at == std::string::npos) {
    return std::nullopt;
  }
  const char *begin = text.data() + at + word.size();
  const auto read = std::from_chars(begin, text.data() + text.size(), time);
  return read.ec == std::errc() ? std::optional(time) : std::nullopt;
}

} // namespace

bool program_in_path(std::string_view name) {
  const char *path = std::getenv("PATH");
  std::istringstream folders(path != nullptr ? path : "");
  for (std::string folder; std::getline(folders, folder, ':');) {
    if (::access((fs::path(folder) / name).c_str(), X_OK) == 0) {
      return true;
    }
  }
  return false;
}

void run_case(const fs::path &folder, long processes, Signals &signals,
              const std::function<void(units::Time)> &on_time) {
  Group group(folder / flow::run_script, processes, signals.before());
  while (!group.ended()) {
    pollfd waiting{signals.descriptor(), POLLIN, 0};
    ::poll(&waiting, 1, look_again);
    signals.check();
    if (const auto time = last_time(folder / "log.solver")) {
      on_time(units::seconds(*time));
    }
  }
  if (!WIFEXITED(group.status()) || WEXITSTATUS(group.status()) != 0) {
    throw SolverFault("the solver did not end well; its log is log.solver in the case's folder");
  }
}

} // namespace purgewright::cli
