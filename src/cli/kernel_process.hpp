// Runs purgewright-solids, the program that builds the solids; it stands beside this one, or in the libexec
// folder of an installation.
//
// Guarantee: the clashes it found, empty when no two parts share metal.
// Errors: KernelFault with the exit status to end with; the other program has then said on stderr what is
// wrong, or crashed, and the message says at which step.
#pragma once

#include "purgewright/checks/design.hpp"
#include "purgewright/checks/remedy.hpp"
#include "purgewright/cli/exit_code.hpp"

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

// A job file, and the values chosen for what it leaves open.
struct SolidsOf {
  std::string job;
  std::vector<checks::Change> chosen{};
};

std::vector<checks::Clash> build_solids(const SolidsOf &, const std::filesystem::path &folder,
                                        const std::function<void(std::string_view)> &on_step);

} // namespace purgewright::cli
