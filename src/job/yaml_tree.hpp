// A job file's text as a small tree with the place of every node, or the one fault that makes it unreadable.
//
// Valid range: at most 1 MiB of UTF-8, one document, at most 8 levels and 2000 nodes, no anchors, aliases or
// tags. A text beyond that is refused while it is being read, so a bomb costs no more than its own length.
// Errors: returned as a Diagnostic without file name; nothing is thrown on input.
#pragma once

#include "purgewright/job/diagnostic.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::job {

inline constexpr int nesting_most = 8;
inline constexpr int nodes_most = 2000;

struct YamlNode {
  enum class Kind { null, scalar, list, map };
  Kind kind = Kind::null;
  Mark mark{};
  std::string text;               // of a scalar
  std::vector<YamlNode> children; // items of a list; key, value, key, value ... of a map
};

struct YamlReading {
  std::optional<YamlNode> root;
  std::optional<Diagnostic> problem; // set when root is not
};

YamlReading read_yaml(std::string_view text);

} // namespace purgewright::job
