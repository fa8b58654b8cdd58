// One value of a job file: from a node of the tree to an entry of the draft, or a diagnostic.
#pragma once

#include "job/yaml_tree.hpp"
#include "purgewright/job/draft.hpp"

#include <string>
#include <string_view>
#include <variant>

namespace purgewright::job {

// Errors: a Diagnostic without file name in place of the entry.
std::variant<Entry, Diagnostic> read_value(const FieldInfo &, const YamlNode &);

// The text with control characters and line ends replaced by spaces, so that a message stays one plain line.
std::string printable(std::string text);

// A text from the user as a message may show it: shortened and printable.
std::string shown(std::string_view text);

} // namespace purgewright::job
