#include "commands.hpp"

#include "purgewright/job/nearest.hpp"
#include "purgewright/report/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::cli {

namespace {

// Those that are no ids: beside ids the others are slips, not words to look for.
std::string strange_words(const report::Findings &findings, const std::vector<std::string> &words) {
  std::vector<std::string_view> strange;
  std::ranges::copy_if(words, std::back_inserter(strange),
                       [&](std::string_view word) { return !report::trace_text(findings, word); });
  return fmt::format("{}", fmt::join(strange, " "));
}

} // namespace

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
  if (const auto text = report::trace_text(findings, words)) {
    print(*text);
    return ExitCode::done;
  }
  if (const std::string list = report::list_text(findings, words); !list.empty()) {
    print(list);
    return ExitCode::done;
  }
  const std::string asked = strange_words(findings, words);
  const std::string near = report::nearest_id(findings, asked);
  complain(fmt::format("error: there is no quantity or rule '{}', and none has these words{}; `purgewright "
                       "trace {}` lists them all",
                       asked, job::did_you_mean(near), options.job));
  return ExitCode::bad_input;
}

} // namespace purgewright::cli
