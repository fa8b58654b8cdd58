// Which values of a job may cure which rule; private to the checks floor.
#pragma once

#include "purgewright/job/keys.hpp"

#include <span>
#include <string_view>

namespace purgewright::checks {

// A value that may cure a rule, and the way it should move.
struct Knob {
  std::string_view rule;
  job::Key key;
  int way; // +1 larger, -1 smaller
};

// Those known to move a rule.
std::span<const Knob> knobs();

} // namespace purgewright::checks
