#include "html/fault_box.hpp"

#include "html/markup.hpp"

#include "purgewright/files/text.hpp"

#include <fmt/chrono.h>
#include <fmt/format.h>

#include <algorithm>
#include <ctime>
#include <string_view>

namespace purgewright::html {
namespace {

std::string_view line_of(std::string_view text, int number) {
  for (int i = 1; i < number && !text.empty(); ++i) {
    const auto end = text.find('\n');
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  }
  return text.substr(0, text.find_first_of("\r\n"));
}

// Bytes before the column, which counts characters.
std::size_t bytes_before(std::string_view line, int column) {
  std::size_t at = 0;
  for (int i = 1; i < column && at < line.size(); ++i) {
    at += std::max<std::size_t>(1, files::utf8_length(line.substr(at)));
  }
  return std::min(at, line.size());
}

// The file of this label, if its lines are at hand.
const job::Document *document_of(const std::string &label, const job::Sources &sources) {
  if (sources.job.label == label) {
    return &sources.job;
  }
  const auto member = std::ranges::find(sources.family, label, &job::Document::label);
  if (member != sources.family.end()) {
    return &*member;
  }
  return sources.log && sources.log->label == label ? &*sources.log : nullptr;
}

// The line with what stands at the fault's place marked, up to the next blank or sign of YAML.
std::string excerpt(const job::Diagnostic &problem, const job::Sources &sources) {
  const job::Document *document = document_of(problem.file, sources);
  if (document == nullptr || problem.mark.line < 1) {
    return {};
  }
  const std::string_view line = line_of(document->bytes, problem.mark.line);
  const std::size_t begin = bytes_before(line, problem.mark.column);
  const std::size_t end = std::min(line.find_first_of(" \t,:{}[]", begin), line.size());
  if (line.empty()) {
    return {};
  }
  const auto text = [](std::string_view bytes) { return safe(files::printable(bytes)); };
  return fmt::format("<pre class=\"source\"><span class=\"line\">{}</span> {}<mark>{}</mark>{}</pre>",
                     problem.mark.line, text(line.substr(0, begin)), text(line.substr(begin, end - begin)),
                     text(line.substr(end)));
}

std::string place(const job::Diagnostic &problem) {
  std::string text = safe(files::printable(problem.file));
  if (problem.mark.line > 0) {
    text += fmt::format(":{}", problem.mark.line);
    text += problem.mark.column > 0 ? fmt::format(":{}", problem.mark.column) : "";
  }
  return text;
}

std::string sentence(std::string_view before, const std::string &text, std::string_view after) {
  return text.empty() ? std::string()
                      : fmt::format("<p>{}<b>{}</b>{}</p>", before, safe(files::printable(text)), after);
}

std::string item(const job::Diagnostic &problem, const job::Sources &sources) {
  const bool error = problem.severity == job::Severity::error;
  return fmt::format(
      "<li><p><code>{}</code> <span class=\"mark {}\">{}</span> {}{}</p>{}{}{}</li>\n", place(problem),
      error ? "fail" : "caution", error ? "fault" : "caution",
      problem.key.empty() ? std::string() : "<b>" + safe(files::printable(problem.key)) + "</b>: ",
      safe(files::printable(problem.problem)), excerpt(problem, sources),
      sentence("Allowed: ", problem.allowed, ""), sentence("Did you mean ", problem.nearest, "?"));
}

} // namespace

std::string clock_time(SaveTime time) {
  const std::time_t seconds = SaveTime::clock::to_time_t(time);
  std::tm local{};
  ::localtime_r(&seconds, &local);
  return fmt::format("{:%H:%M:%S}", local);
}

std::string fault_list(const job::Diagnostics &problems, const job::Sources &sources) {
  std::string text = "<ol class=\"faults\">\n";
  for (const auto &problem : problems) {
    text += item(problem, sources);
  }
  return text + "</ol>\n";
}

std::string fault_box(const job::Diagnostics &problems, const job::Sources &sources,
                      std::optional<SaveTime> numbers_saved) {
  if (problems.empty()) {
    return {};
  }
  const auto faults = std::ranges::count(problems, job::Severity::error, &job::Diagnostic::severity);
  const bool any = faults > 0;
  const std::string head = faults == 1 ? "This save has a fault"
                           : any       ? fmt::format("This save has {} faults", faults)
                                       : "To weigh in the job file";
  const std::string words =
      !any ? std::string()
      : numbers_saved
          ? fmt::format("<p>None of its numbers are shown. What stands below is from before, from "
                        "the save at {}.</p>\n",
                        clock_time(*numbers_saved))
          : std::string("<p>There are no numbers yet: they come with the first save without a "
                        "fault.</p>\n");
  return fmt::format("<section class=\"answer {}\" aria-labelledby=\"faults-head\" role=\"alert\">\n<h2 "
                     "id=\"faults-head\">{}</h2>\n{}{}</section>\n",
                     any ? "fail" : "caution", head, words, fault_list(problems, sources));
}

} // namespace purgewright::html
