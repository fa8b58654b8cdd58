// Text that OpenFOAM reads: file headers and lists. Private to the flow floor.
#pragma once

#include <fmt/format.h>

#include <string>
#include <string_view>

namespace purgewright::flow {

inline std::string foam_header(std::string_view kind, std::string_view object, std::string_view location) {
  return fmt::format(
      "FoamFile\n{{\n  version 2.0;\n  format ascii;\n  class {};\n  location \"{}\";\n  object "
      "{};\n}}\n\n",
      kind, location, object);
}

inline std::string foam_list(std::size_t count, std::string_view lines) {
  return fmt::format("{}\n(\n{})\n", count, lines);
}

} // namespace purgewright::flow
