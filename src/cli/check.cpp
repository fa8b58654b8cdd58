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
  const auto &findings = loaded->findings;
  const auto &words = options.words;
  if (words.size() == 1) {
    if (const auto text = report::trace_text(findings, words.front())) {
      print(*text);
      return ExitCode::done;
    }
  }
  if (const std::string list = report::list_text(findings, words); !list.empty()) {
    print(list);
    return ExitCode::done;
  }
  const std::string asked = fmt::format("{}", fmt::join(words, " "));
  const std::string near = report::nearest_id(findings, asked);
  complain(fmt::format("error: there is no quantity or rule '{}', and none has these words{}; `purgewright "
                       "trace {}` lists them all",
                       asked, near.empty() ? "" : fmt::format("; did you mean '{}'?", near), options.job));
  return ExitCode::bad_input;
}

} // namespace purgewright::cli
