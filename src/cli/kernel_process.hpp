// Runs purgewright-solids, the program that builds the solids; it stands beside this one, or in the libexec
// folder of an installation.
//
// Guarantee: it works on the bytes that the study was made of, which its answer proves, and every file it
// says it made, and every file that a design needs, stands in the folder as it said; else KernelFault.
// Returned are the clashes it found, empty when no two parts share metal.
// Errors: KernelFault with the exit status to end with; its message holds what the other program says is
// wrong, or at which step it crashed. Whatever Halt::check throws; the other program has ended then.
#pragma once

#include "signals.hpp"

#include "purgewright/cli/exit_code.hpp"
#include "purgewright/study/request.hpp"
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

struct Building {
  study::Extent extent = study::Extent::folder;
  std::function<void(std::string_view)> on_step{};
  std::function<void(const study::Answer &)> on_view{}; // the files named so far are as it wrote them
};

// What was made and found, all of it looked at.
study::Answer build_solids(const study::Study &, const std::filesystem::path &folder, const Halt &,
                           const Building &);

} // namespace purgewright::cli
