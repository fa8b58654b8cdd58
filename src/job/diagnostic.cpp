#include "purgewright/job/diagnostic.hpp"

#include "purgewright/job/nearest.hpp"

#include "purgewright/files/text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace purgewright::job {

bool has_errors(const Diagnostics &problems) {
  return std::ranges::any_of(problems, [](const Diagnostic &d) { return d.severity == Severity::error; });
}

std::string to_text(const Diagnostic &d) {
  std::string text = d.file;
  if (d.mark.line > 0) {
    text += fmt::format("{}{}:{}", text.empty() ? "" : ":", d.mark.line, d.mark.column);
  }
  if (!text.empty()) {
    text += ": ";
  }
  text += d.severity == Severity::error ? "error: " : "caution: ";
  if (!d.key.empty()) {
    text += d.key + ": ";
  }
  text += d.problem;
  if (!d.allowed.empty()) {
    text += "; allowed: " + d.allowed;
  }
  text += did_you_mean(d.nearest);
  return files::printable(text); // whatever a file, its name or its keys hold, a message is one plain line
}

} // namespace purgewright::job
