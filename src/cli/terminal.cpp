#include "commands.hpp"

#include <cstdio>
#include <cstdlib>
#include <unistd.h>

namespace purgewright::cli {
namespace {

void write(std::FILE *stream, std::string_view text) {
  std::fwrite(text.data(), 1, text.size(), stream);
}

} // namespace

void print(std::string_view text) {
  write(stdout, text);
}

void complain(std::string_view text) {
  write(stderr, text);
  write(stderr, "\n");
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
