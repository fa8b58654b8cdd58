#include "purgewright/files/file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <fcntl.h>
#include <poll.h>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>

namespace purgewright::files {
namespace {

std::string reason(int error) {
  return error == ENOENT ? "there is no such file" : std::generic_category().message(error);
}

// An open file, closed at the end of its scope; standard input stays open.
class Handle {
 public:
  explicit Handle(int number) : number_(number) {}
  ~Handle() {
    if (number_ > STDIN_FILENO) {
      ::close(number_);
    }
  }
  Handle(const Handle &) = delete;
  Handle &operator=(const Handle &) = delete;
  int number() const { return number_; }
  bool close() { return ::close(std::exchange(number_, -1)) == 0; }

 private:
  int number_;
};

// O_NONBLOCK: opening a FIFO does not wait for its other end, opening a device for nothing.
int open_to_read(const std::filesystem::path &path) {
  if (path == standard_input || path == "/dev/stdin") {
    return STDIN_FILENO;
  }
  return ::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC);
}

bool is_pipe(mode_t mode) {
  return S_ISFIFO(mode) || S_ISSOCK(mode);
}

mode_t require_readable(const std::filesystem::path &path, int file) {
  struct stat status {};
  if (::fstat(file, &status) != 0) {
    throw FileError(path, reason(errno));
  }
  if (S_ISDIR(status.st_mode)) {
    throw FileError(path, "this is a folder");
  }
  if (!S_ISREG(status.st_mode) && !is_pipe(status.st_mode)) {
    throw FileError(path, ::isatty(file) == 1 ? "this is a terminal" : "this is a device");
  }
  return status.st_mode;
}

void wait_for_bytes(const std::filesystem::path &path, int file) {
  pollfd waiting{.fd = file, .events = POLLIN, .revents = 0};
  const auto limit = std::chrono::duration_cast<std::chrono::milliseconds>(longest_silence).count();
  for (;;) {
    const int ready = ::poll(&waiting, 1, static_cast<int>(limit));
    if (ready > 0) {
      return;
    }
    if (ready == 0) {
      throw FileError(path, fmt::format("the pipe has been silent for {} s", longest_silence.count()));
    }
    if (errno != EINTR) {
      throw FileError(path, reason(errno));
    }
  }
}

std::string size_text(std::size_t bytes) {
  constexpr std::size_t mebibyte = 1'048'576, megabyte = 1'000'000;
  return bytes % mebibyte == 0 ? fmt::format("{} MiB", bytes / mebibyte)
                               : fmt::format("{} MB", bytes / megabyte);
}

} // namespace

std::string read(const std::filesystem::path &path, std::size_t most) {
  const Handle file(open_to_read(path));
  if (file.number() < 0) {
    throw FileError(path, reason(errno));
  }
  const bool pipe = is_pipe(require_readable(path, file.number()));
  std::string bytes;
  std::array<char, 65536> block{};
  for (;;) {
    if (pipe) {
      wait_for_bytes(path, file.number());
    }
    const ssize_t count = ::read(file.number(), block.data(), block.size());
    if (count == 0) {
      return bytes;
    }
    if (count < 0) {
      if (errno == EINTR || (pipe && errno == EAGAIN)) {
        continue;
      }
      throw FileError(path, reason(errno));
    }
    if (static_cast<std::size_t>(count) > most - bytes.size()) {
      throw FileError(path, "the file is larger than " + size_text(most));
    }
    bytes.append(block.data(), static_cast<std::size_t>(count));
  }
}

void write(const std::filesystem::path &path, std::string_view bytes) {
  constexpr mode_t everyone = 0666; // less the user's mask
  Handle file(::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, everyone));
  if (file.number() < 0) {
    throw FileError(path, reason(errno));
  }
  while (!bytes.empty()) {
    const ssize_t count = ::write(file.number(), bytes.data(), bytes.size());
    if (count < 0 && errno != EINTR) {
      throw FileError(path, reason(errno));
    }
    bytes.remove_prefix(static_cast<std::size_t>(std::max<ssize_t>(count, 0)));
  }
  if (!file.close()) {
    throw FileError(path, reason(errno));
  }
}

void make_folder(const std::filesystem::path &path) {
  std::error_code error;
  std::filesystem::create_directories(path, error);
  if (error) {
    throw FileError(path, error.message());
  }
}

} // namespace purgewright::files
