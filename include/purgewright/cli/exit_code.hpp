// Exit status of the program; scripts rely on the numbers.
#pragma once

namespace purgewright::cli {

enum class ExitCode : int {
  done = 0,
  rule_fails = 1, // of any design that is compared; files are still written unless the geometry is impossible
  bad_input = 2,  // job file or command line
  cannot_write = 3,
  internal_fault = 4,
};

} // namespace purgewright::cli
