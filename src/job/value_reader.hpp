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

// A text from the user as a message may show it: shortened, control characters and line ends replaced.
std::string shown(std::string_view text);

} // namespace purgewright::job
