// Runs purgewright-solids, the program that builds the solids; it stands beside this one, or in the libexec
// folder of an installation.
//
// Guarantee: it works on the bytes that the study was made of, which its answer proves, and every file it
// says it made, and every file that a design needs, stands in the folder as it said; else KernelFault.
// Returned are the clashes it found, empty when no two parts share metal.
// Errors: KernelFault with the exit status to end with; the other program has then said on stderr what is
// wrong, or crashed, and the message says at which step. Interrupted when a signal comes; the other program
// has ended then.
#pragma once

#include "signals.hpp"

#include "purgewright/cli/exit_code.hpp"
#include "purgewright/study/study.hpp"

#include <filesystem>
#include <functional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::cli {

struct KernelFault : std::runtime_error {
  KernelFault(ExitCode with, const std::string &message) : std::runtime_error(message), code(with) {}
  ExitCode code;
};

std::vector<checks::Clash> build_solids(const study::Study &, const std::filesystem::path &folder, Signals &,
                                        const std::function<void(std::string_view)> &on_step);

} // namespace purgewright::cli
