// Runs a flow case by its own script and says how far it is.
//
// Units: quantity types. Frame: none.
// Errors: SolverFault when the script ends otherwise than well. Guarantee: the solver and its processes end
// when the scope is left early, by a signal too; what it has written by then is what the next run goes on
// from.
#pragma once

#include "signals.hpp"

#include "purgewright/units/quantity.hpp"

#include <filesystem>
#include <functional>
#include <stdexcept>

namespace purgewright::cli {

struct SolverFault : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// Whether a program of that name stands in a folder of PATH.
bool program_in_path(std::string_view name);

void run_case(const std::filesystem::path &folder, long processes, Signals &,
              const std::function<void(units::Time)> &on_time);

} // namespace purgewright::cli
