// Jobs and designs that break rules, and what a design breaks.
#pragma once

#include "purgewright/checks/rules.hpp"

#include <map>
#include <string>
#include <utility>
#include <vector>

namespace purgewright::checks::test {

using job::Key;

using Edits = std::vector<std::pair<Key, double>>; // SI; index of a choice
using Found = std::map<std::string, Status>;       // rules that do not pass

constexpr double mm = 1e-3, ppm = 1e-6, degree = units::pi / 180.0;

// examples/logger-25 with these values.
job::Job edited(const Edits &);

Found not_passed(const Design &);
Found not_passed(const Edits &);
std::string names(const Found &);

// A large thin tube that passes every rule.
Edits large(Edits more);

struct Bad {
  std::string rule;
  Status status;
  Edits edits;
};

// Jobs that break one rule and no other.
const std::vector<Bad> &bad_alone();
// Jobs that break a rule which does not break alone.
const std::vector<Bad> &bad_with_others();

struct Altered {
  std::string rule;
  Status status;
  void (*alter)(Design &);
};

// A sound design altered by hand, so that it breaks one rule and no other.
const std::vector<Altered> &altered();

} // namespace purgewright::checks::test
