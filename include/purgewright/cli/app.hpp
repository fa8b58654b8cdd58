// The command line: reads arguments, runs one command, returns its exit status. Results go to stdout,
// messages and progress to stderr.
#pragma once

#include "purgewright/cli/exit_code.hpp"

namespace purgewright::cli {

ExitCode run(int argc, const char *const *argv);

} // namespace purgewright::cli
