#include "kernel_process.hpp"

#include "commands.hpp"

#include "purgewright/fixture/figures.hpp"
#include "purgewright/study/request.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <csignal>
#include <fcntl.h>
#include <poll.h>
#include <spawn.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <system_error>
#include <unistd.h>
#include <utility>

extern char **environ; // NOLINT: POSIX gives it no header

namespace purgewright::cli {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view program_name = "purgewright-solids";

[[noreturn]] void fail(const std::string &what) {
  throw KernelFault(ExitCode::internal_fault, "internal fault: " + what + "; nothing is written");
}

fs::path find_program() {
  std::error_code error;
  const fs::path here = fs::read_symlink("/proc/self/exe", error).parent_path();
  for (const fs::path &folder : {here, here / PURGEWRIGHT_LIBEXEC}) {
    if (fs::exists(folder / program_name, error)) {
      return folder / program_name;
    }
  }
  fail(fmt::format("{} does not stand beside purgewright in {}", program_name, here.string()));
}

// Both ends of a two-way pipe; writing to an end that nobody reads any more is an error and no signal.
class Line {
 public:
  Line() {
    if (::socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, ends_.data()) != 0) {
      throw std::system_error(errno, std::generic_category(), "socketpair");
    }
  }
  ~Line() {
    close(0);
    close(1);
  }
  Line(const Line &) = delete;
  Line &operator=(const Line &) = delete;
  int here() const { return ends_[0]; }
  int there() const { return ends_[1]; }
  void close(std::size_t end) {
    if (ends_.at(end) >= 0) {
      ::close(std::exchange(ends_.at(end), -1));
    }
  }

 private:
  std::array<int, 2> ends_{-1, -1};
};

// The running program; killed and waited for when its scope is left before its end.
class Child {
 public:
  Child(const fs::path &program, const fs::path &folder, int line, const sigset_t &signals) {
    std::array<std::string, 2> words{program.string(), folder.string()};
    std::array<char *, 3> argv{words[0].data(), words[1].data(), nullptr};
    posix_spawn_file_actions_t actions;
    ::posix_spawn_file_actions_init(&actions);
    ::posix_spawn_file_actions_adddup2(&actions, line, STDIN_FILENO);
    ::posix_spawn_file_actions_adddup2(&actions, line, STDOUT_FILENO);
    ::posix_spawn_file_actions_addclosefrom_np(&actions, STDERR_FILENO + 1);
    posix_spawnattr_t attributes;
    ::posix_spawnattr_init(&attributes);
    ::posix_spawnattr_setflags(&attributes, POSIX_SPAWN_SETSIGMASK);
    ::posix_spawnattr_setsigmask(&attributes, &signals);
    const int error = ::posix_spawn(&process_, program.c_str(), &actions, &attributes, argv.data(), environ);
    ::posix_spawnattr_destroy(&attributes);
    ::posix_spawn_file_actions_destroy(&actions);
    if (error != 0) {
      fail(fmt::format("{} does not start ({})", program_name, std::generic_category().message(error)));
    }
  }
  ~Child() {
    if (process_ > 0) {
      ::kill(process_, SIGKILL);
      wait();
    }
  }
  Child(const Child &) = delete;
  Child &operator=(const Child &) = delete;

  int wait() {
    int status = 0;
    while (::waitpid(process_, &status, 0) < 0 && errno == EINTR) {
    }
    process_ = 0;
    return status;
  }

 private:
  pid_t process_ = 0;
};

// Waits until the line is ready or it is time to end.
void await(int line, short events, const Halt &halt) {
  std::array<pollfd, 2> waiting{pollfd{line, events, 0}, pollfd{halt.descriptor, POLLIN, 0}};
  ::poll(waiting.data(), waiting.size(), -1);
  halt.check();
}

// All of the message, and its end. What a program that ended early does not take, its status explains.
void send(int line, std::string_view message, const Halt &halt) {
  while (!message.empty()) {
    await(line, POLLOUT, halt);
    const ssize_t count = ::send(line, message.data(), message.size(), MSG_NOSIGNAL | MSG_DONTWAIT);
    if (count < 0 && errno != EAGAIN && errno != EINTR) {
      break;
    }
    message.remove_prefix(static_cast<std::size_t>(std::max<ssize_t>(count, 0)));
  }
  ::shutdown(line, SHUT_WR);
}

// Passes on what the other program says, line by line, until it ends.
study::Answer follow(int line, const Halt &halt,
                     const std::function<void(const study::Answer &, study::Said)> &on_line) {
  study::Answer answer;
  std::string text;
  std::array<char, 4096> buffer{};
  for (;;) {
    await(line, POLLIN, halt);
    const ssize_t count = ::recv(line, buffer.data(), buffer.size(), MSG_DONTWAIT);
    if (count < 0 && (errno == EINTR || errno == EAGAIN)) {
      continue;
    }
    if (count <= 0) {
      return answer;
    }
    for (const char c : std::string_view(buffer.data(), static_cast<std::size_t>(count))) {
      if (c != '\n') {
        text += c;
        continue;
      }
      on_line(answer, answer.take(text));
      text.clear();
    }
  }
}

void require_good_end(int status, const study::Answer &answer) {
  if (WIFSIGNALED(status)) {
    fail(fmt::format("the geometry kernel crashed (signal {}) while {}", WTERMSIG(status),
                     answer.last_step.empty() ? "starting" : answer.last_step));
  }
  const auto code = static_cast<ExitCode>(WEXITSTATUS(status));
  if (code != ExitCode::done) {
    const bool passed_on = code == ExitCode::cannot_write || code == ExitCode::bad_input;
    throw KernelFault(passed_on ? code : ExitCode::internal_fault,
                      answer.faults + "the solids could not be built; nothing is written");
  }
}

std::vector<std::string> view_files() {
  return {"assembly.glb", "gas-spaces.glb", "setup-sheet.pdf", "plots/temperatures.svg", "plots/oxygen.svg"};
}

// What every design has; the rest depends on the job.
std::vector<std::string> promised(const checks::Design &design, study::Extent extent) {
  if (extent == study::Extent::page) {
    return view_files();
  }
  std::vector<std::string> paths = view_files();
  paths.emplace_back("assembly.step");
  for (const auto &part : fixture::part_metals(design.job, design.layout, design.volumes)) {
    if (part.volume > units::Volume{}) { // else this design does not need it
      paths.push_back(fmt::format("parts/{}.step", part.name));
      paths.push_back(fmt::format("parts/{}.stl", part.name));
      paths.push_back(fmt::format("drawings/{}.pdf", part.name));
    }
  }
  return paths;
}

void require_promised(const study::Answer &answer, const std::vector<std::string> &paths,
                      const fs::path &folder) {
  for (const std::string &path : paths) {
    if (!answer.made.contains(path)) {
      fail(fmt::format("{} ended without {}", program_name, path));
    }
  }
  const auto there = report::marks_below(folder);
  for (const auto &[path, hash] : answer.made) {
    const auto mark = there.find(path);
    if (mark == there.end() || mark->second.sha256 != hash) {
      fail(fmt::format("{} is not as {} wrote it", path, program_name));
    }
  }
}

void pass_on(const study::Answer &so_far, study::Said said, const fs::path &folder,
             const Building &building) {
  if (said == study::Said::step && building.on_step) {
    building.on_step(so_far.last_step);
  } else if (said == study::Said::view && building.on_view) {
    require_promised(so_far, view_files(), folder);
    building.on_view(so_far);
  }
}

} // namespace

study::Answer build_solids(const study::Study &study, const fs::path &folder, const Halt &halt,
                           const Building &building) {
  const fs::path program = find_program();
  const std::string message =
      study::to_message({study.sources, study.chosen, std::string(tool_version), building.extent});
  Line line;
  Child child(program, folder, line.there(), halt.mask);
  line.close(1);
  send(line.here(), message, halt);
  study::Answer answer;
  try {
    answer = follow(line.here(), halt, [&](const study::Answer &so_far, study::Said said) {
      pass_on(so_far, said, folder, building);
    });
  } catch (const study::BadMessage &error) {
    fail(fmt::format("{} answers {}", program_name, error.what()));
  }
  require_good_end(child.wait(), answer);
  if (answer.of != report::sha256(message)) {
    fail(fmt::format("{} did not work on what it was given", program_name));
  }
  require_promised(answer, promised(study.findings.design, building.extent), folder);
  return answer;
}

} // namespace purgewright::cli
