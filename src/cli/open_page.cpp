#include "commands.hpp"

#include <fmt/format.h>

#include <array>
#include <spawn.h>
#include <sys/wait.h>
#include <system_error>

extern char **environ; // NOLINT: POSIX gives it no header

namespace purgewright::cli {

// A shell between, which ends at once: the page's program is then no child of this one.
void open_page(const std::string &address) {
  std::string page = address;
  std::string shell = "sh", command = "-c",
              script = "command -v xdg-open >/dev/null || exit 127\n"
                       "xdg-open \"$0\" >/dev/null 2>&1 </dev/null &";
  std::array<char *, 5> arguments{shell.data(), command.data(), script.data(), page.data(), nullptr};
  pid_t process = 0;
  const int error = ::posix_spawnp(&process, shell.c_str(), nullptr, nullptr, arguments.data(), environ);
  int status = 0;
  if (error != 0 || ::waitpid(process, &status, 0) < 0 || status != 0) {
    complain("--open: there is no xdg-open here; open the page in a browser");
  }
}

} // namespace purgewright::cli
