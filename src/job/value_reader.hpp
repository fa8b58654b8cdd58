// One value of a job file: from a node of the tree to an entry of the draft, or a diagnostic.
#pragma once

#include "job/yaml_tree.hpp"
#include "purgewright/job/draft.hpp"

#include <variant>

namespace purgewright::job {

// Errors: a Diagnostic without file name in place of the entry.
std::variant<Entry, Diagnostic> read_value(const FieldInfo &, const YamlNode &);

} // namespace purgewright::job
