#include "kernel_process.hpp"

#include "commands.hpp"

#include <fmt/format.h>

#include <array>
#include <cerrno>
#include <fcntl.h>
#include <spawn.h>
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
  throw KernelFault(ExitCode::internal_fault,
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

// Passes on each line the other program says and returns the last.
std::string follow(int input, const std::function<void(std::string_view)> &on_step) {
  std::string last;
  std::string line;
  std::array<char, 256> buffer{};
  for (;;) {
    const ssize_t count = ::read(input, buffer.data(), buffer.size());
    if (count < 0 && errno == EINTR) {
      continue;
    }
    if (count <= 0) {
      return last;
    }
    for (const char c : std::string_view(buffer.data(), static_cast<std::size_t>(count))) {
      if (c != '\n') {
        line += c;
        continue;
      }
      on_step(line);
      last = std::exchange(line, {});
    }
  }
}

} // namespace

void build_solids(const std::string &job, const fs::path &folder,
                  const std::function<void(std::string_view)> &on_step) {
  const fs::path program = find_program();
  Pipe pipe;
  const pid_t process =
      start(program, {program.string(), job, folder.string(), std::string(tool_version)}, pipe.ends[1]);
  pipe.close(1);
  const std::string last = follow(pipe.ends[0], on_step);
  int status = 0;
  while (::waitpid(process, &status, 0) < 0 && errno == EINTR) {
  }
  if (WIFSIGNALED(status)) {
    throw KernelFault(ExitCode::internal_fault,
                      fmt::format("internal fault: the geometry kernel crashed (signal {}) while {}; nothing is written",
                                  WTERMSIG(status), last.empty() ? "starting" : last));
  }
  if (const int code = WEXITSTATUS(status); code != 0) {
    throw KernelFault(code == static_cast<int>(ExitCode::cannot_write) ? ExitCode::cannot_write
                                                                       : ExitCode::internal_fault,
                      "the solids could not be built; nothing is written");
  }
}

} // namespace purgewright::cli
