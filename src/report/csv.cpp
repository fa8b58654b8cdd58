#include "csv.hpp"

namespace purgewright::report {

std::string csv_cell(const std::string &text) {
  if (text.find_first_of(",\"\r\n") == std::string::npos) {
    return text;
  }
  std::string quoted = "\"";
  for (const char c : text) {
    quoted.append(c == '"' ? 2 : 1, c);
  }
  quoted += '"';
  return quoted;
}

} // namespace purgewright::report
