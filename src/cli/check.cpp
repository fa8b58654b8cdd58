#include "commands.hpp"

#include "purgewright/report/text.hpp"

#include <fmt/format.h>

namespace purgewright::cli {

ExitCode run_check(const CheckOptions &options) {
  const auto loaded = load(options.job, options.solve);
  if (!loaded) {
    return ExitCode::bad_input;
  }
  const auto &findings = loaded->findings;
  print(options.json ? report::results_json(findings)
                     : report::check_text(findings, {.colour = colour_on_stdout(), .all = options.all}) +
                           chosen_text(*loaded));
  return outcome(findings);
}

ExitCode run_trace(const TraceOptions &options) {
  const auto loaded = load(options.job);
  if (!loaded) {
    return ExitCode::bad_input;
  }
  if (const auto text = report::trace_text(loaded->findings, options.quantity)) {
    print(*text);
    return ExitCode::done;
  }
  const std::string near = report::nearest_id(loaded->findings, options.quantity);
  complain(fmt::format(
      "error: there is no quantity or rule '{}'{}; `purgewright check {} --json` lists them all",
      options.quantity, near.empty() ? "" : fmt::format("; did you mean '{}'?", near), options.job));
  return ExitCode::bad_input;
}

} // namespace purgewright::cli
