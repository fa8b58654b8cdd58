#include "commands.hpp"

#include "purgewright/files/file.hpp"
#include "purgewright/files/text.hpp"

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <fcntl.h>
#include <system_error>
#include <unistd.h>

namespace purgewright::cli {
namespace {

void write(std::FILE *stream, std::string_view text) {
  std::fwrite(text.data(), 1, text.size(), stream);
}

} // namespace

namespace {

[[noreturn]] void cannot_print() {
  throw files::FileError("standard output", std::generic_category().message(errno));
}

} // namespace

void print(std::string_view text) {
  if (std::fwrite(text.data(), 1, text.size(), stdout) != text.size()) {
    cannot_print();
  }
}

void flush() {
  if (std::fflush(stdout) != 0) {
    cannot_print();
  }
}

void complain(std::string_view text) {
  for (std::size_t end = 0; end != std::string_view::npos;) {
    end = text.find('\n');
    write(stderr, files::printable(text.substr(0, end)));
    write(stderr, "\n");
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  }
}

void fill_standard_descriptors() {
  for (const int number : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
    if (::fcntl(number, F_GETFD) < 0 && errno == EBADF) {
      ::open("/dev/null", number == STDOUT_FILENO ? O_RDONLY : O_WRONLY); // takes the lowest number free
    }
  }
}

bool colour_on_stdout() {
  const char *no_color = std::getenv("NO_COLOR");
  return ::isatty(STDOUT_FILENO) == 1 && (no_color == nullptr || *no_color == '\0');
}

Progress::Progress() : shown_(::isatty(STDERR_FILENO) == 1) {}

void Progress::say(std::string_view step) {
  if (shown_) {
    write(stderr, "\r\x1b[K");
    write(stderr, step);
    std::fflush(stderr);
  }
}

Progress::~Progress() {
  if (shown_) {
    write(stderr, "\r\x1b[K");
  }
}

} // namespace purgewright::cli
