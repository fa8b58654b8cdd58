#include "kernel_process.hpp"

#include "commands.hpp"

#include <fmt/format.h>

#include <array>
#include <cerrno>
#include <fcntl.h>
#include <optional>
#include <spawn.h>
#include <sstream>
#include <sys/wait.h>
#include <system_error>
#include <unistd.h>
#include <utility>
#include <vector>

extern char **environ; // NOLINT: POSIX gives it no header

namespace purgewright::cli {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view program_name = "purgewright-solids";

fs::path find_program() {
  std::error_code error;
  const fs::path here = fs::read_symlink("/proc/self/exe", error).parent_path();
  for (const fs::path &folder : {here, here / PURGEWRIGHT_LIBEXEC}) {
    if (fs::exists(folder / program_name, error)) {
      return folder / program_name;
    }
  }
  throw KernelFault(
      ExitCode::internal_fault,
      fmt::format("internal fault: {} does not stand beside purgewright in {}", program_name, here.string()));
}

// Both ends of a pipe, closed when they go out of scope.
struct Pipe {
  std::array<int, 2> ends{-1, -1};
  Pipe() {
    if (::pipe2(ends.data(), O_CLOEXEC) != 0) {
      throw std::system_error(errno, std::generic_category(), "pipe");
    }
  }
  ~Pipe() {
    close(0);
    close(1);
  }
  Pipe(const Pipe &) = delete;
  Pipe &operator=(const Pipe &) = delete;
  void close(std::size_t end) {
    if (ends.at(end) >= 0) {
      ::close(ends.at(end));
      ends.at(end) = -1;
    }
  }
};

pid_t start(const fs::path &program, std::vector<std::string> words, int output) {
  std::vector<char *> argv;
  for (auto &word : words) {
    argv.push_back(word.data());
  }
  argv.push_back(nullptr);
  posix_spawn_file_actions_t actions;
  ::posix_spawn_file_actions_init(&actions);
  ::posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
  ::posix_spawn_file_actions_adddup2(&actions, output, STDOUT_FILENO);
  pid_t process = 0;
  const int error = ::posix_spawn(&process, program.c_str(), &actions, nullptr, argv.data(), environ);
  ::posix_spawn_file_actions_destroy(&actions);
  if (error != 0) {
    throw std::system_error(error, std::generic_category(), program.string());
  }
  return process;
}

// What the other program has said.
struct Told {
  std::string last_step;
  std::vector<checks::Clash> clashes{};
};

// "clash FIRST SECOND VOLUME"; nothing for any other line.
std::optional<checks::Clash> as_clash(const std::string &line) {
  std::istringstream words(line);
  std::string word;
  checks::Clash clash;
  double shared = 0.0; // m3
  if (words >> word && word == "clash" && words >> clash.first >> clash.second >> shared) {
    clash.shared = units::cubic_metres(shared);
    return clash;
  }
  return std::nullopt;
}

// Passes on each step the other program begins, until it ends.
Told follow(int input, const std::function<void(std::string_view)> &on_step) {
  Told told;
  std::string line;
  std::array<char, 256> buffer{};
  for (;;) {
    const ssize_t count = ::read(input, buffer.data(), buffer.size());
    if (count < 0 && errno == EINTR) {
      continue;
    }
    if (count <= 0) {
      return told;
    }
    for (const char c : std::string_view(buffer.data(), static_cast<std::size_t>(count))) {
      if (c != '\n') {
        line += c;
        continue;
      }
      if (auto clash = as_clash(line)) {
        told.clashes.push_back(std::move(*clash));
      } else {
        on_step(line);
        told.last_step = line;
      }
      line.clear();
    }
  }
}

} // namespace

std::vector<checks::Clash> build_solids(const SolidsOf &of, const fs::path &folder,
                                        const std::function<void(std::string_view)> &on_step) {
  const fs::path program = find_program();
  Pipe pipe;
  std::vector<std::string> words{program.string(), of.job, folder.string(), std::string(tool_version)};
  for (const auto &change : of.chosen) { // shortest text that reads back as the same number
    words.push_back(fmt::format("{}={}", job::field(change.key).path, change.to));
  }
  const pid_t process = start(program, std::move(words), pipe.ends[1]);
  pipe.close(1);
  Told told = follow(pipe.ends[0], on_step);
  int status = 0;
  while (::waitpid(process, &status, 0) < 0 && errno == EINTR) {
  }
  if (WIFSIGNALED(status)) {
    throw KernelFault(
        ExitCode::internal_fault,
        fmt::format("internal fault: the geometry kernel crashed (signal {}) while {}; nothing is written",
                    WTERMSIG(status), told.last_step.empty() ? "starting" : told.last_step));
  }
  if (const int code = WEXITSTATUS(status); code != 0) {
    throw KernelFault(code == static_cast<int>(ExitCode::cannot_write) ? ExitCode::cannot_write
                                                                       : ExitCode::internal_fault,
                      "the solids could not be built; nothing is written");
  }
  return std::move(told.clashes);
}

} // namespace purgewright::cli
