#include "support/run_program.hpp"

#include <cerrno>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <fcntl.h>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace purgewright::test {
namespace {

namespace fs = std::filesystem;

// In the child: never returns.
[[noreturn]] void become(const std::string &program, const std::vector<std::string> &arguments,
                         const RunOptions &options, const fs::path &out, const fs::path &err) {
  constexpr int cannot_start = 127;
  constexpr unsigned nobody = 65534;
  const int out_file = ::open(out.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
  const int err_file = ::open(err.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
  const int nothing = ::open("/dev/null", O_RDONLY);
  if (out_file < 0 || err_file < 0 || ::dup2(nothing, 0) < 0 || ::dup2(out_file, 1) < 0 ||
      ::dup2(err_file, 2) < 0) {
    ::_exit(cannot_start);
  }
  if (!options.folder.empty() && ::chdir(options.folder.c_str()) != 0) {
    ::_exit(cannot_start);
  }
  if (options.as_nobody && ::geteuid() == 0 && (::setgid(nobody) != 0 || ::setuid(nobody) != 0)) {
    ::_exit(cannot_start);
  }
  for (const auto &[name, value] : options.environment) {
    ::setenv(name.c_str(), value.c_str(), 1);
  }
  std::vector<char *> line{const_cast<char *>(program.c_str())};
  for (const auto &argument : arguments) {
    line.push_back(const_cast<char *>(argument.c_str()));
  }
  line.push_back(nullptr);
  ::execv(program.c_str(), line.data());
  ::_exit(cannot_start);
}

int status_of(int wait_status) {
  constexpr int signalled = 128;
  return WIFEXITED(wait_status) ? WEXITSTATUS(wait_status) : signalled + WTERMSIG(wait_status);
}

} // namespace

ScratchFolder::ScratchFolder() {
  std::string name = (fs::temp_directory_path() / "purgewright-e2e-XXXXXX").string();
  if (::mkdtemp(name.data()) == nullptr) {
    throw std::runtime_error("no temporary folder can be made");
  }
  path_ = name;
}

ScratchFolder::~ScratchFolder() {
  std::error_code ignored;
  for (fs::recursive_directory_iterator at(path_, ignored), end; !ignored && at != end;
       at.increment(ignored)) {
    if (at->is_directory(ignored)) {
      fs::permissions(at->path(), fs::perms::owner_all, fs::perm_options::add, ignored);
    }
  }
  fs::remove_all(path_, ignored);
}

std::string bytes_of(const fs::path &path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) {
    throw std::runtime_error(path.string() + " cannot be read");
  }
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

void write_bytes(const fs::path &path, const std::string &bytes) {
  std::ofstream file(path, std::ios::binary);
  file << bytes;
  if (!file.flush()) {
    throw std::runtime_error(path.string() + " cannot be written");
  }
}

std::map<std::string, std::string> tree(const fs::path &folder) {
  std::map<std::string, std::string> files;
  for (const auto &entry : fs::recursive_directory_iterator(folder)) {
    if (entry.is_regular_file()) {
      files[fs::relative(entry.path(), folder).string()] = bytes_of(entry.path());
    }
  }
  return files;
}

Finished run(const std::string &program, const std::vector<std::string> &arguments,
             const RunOptions &options) {
  const ScratchFolder said;
  const pid_t child = ::fork();
  if (child < 0) {
    throw std::runtime_error("no process can be started");
  }
  if (child == 0) {
    become(program, arguments, options, said / "out", said / "err");
  }
  if (options.kill_after > 0.0) {
    std::this_thread::sleep_for(std::chrono::duration<double>(options.kill_after));
    ::kill(child, options.kill_with);
  }
  int wait_status = 0;
  while (::waitpid(child, &wait_status, 0) < 0) {
    if (errno != EINTR) {
      throw std::runtime_error("the process was lost");
    }
  }
  return {status_of(wait_status), bytes_of(said / "out"), bytes_of(said / "err")};
}

} // namespace purgewright::test
