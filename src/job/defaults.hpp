// Defaults of the keys that do not depend on other keys, each with its reason.
//
// Units: SI; a choice is an index into FieldInfo::choices.
// Guarantee: constant data; reading it allocates nothing.
#pragma once

#include "purgewright/job/keys.hpp"
#include "purgewright/units/figure.hpp"

#include <string_view>

namespace purgewright::job {

struct Fallback {
  bool set = false; // false: the key has no default of its own (required, absent, or computed from others)
  double number = 0.0;
  units::Basis basis = units::Basis::fallback;
  std::string_view reason;
};

const Fallback &fallback(Key);

// Index of a name among a choice key's names; the name must be one of them.
double choice_index(Key, std::string_view name);

} // namespace purgewright::job
