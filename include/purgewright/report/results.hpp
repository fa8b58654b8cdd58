// results.json: every figure and every rule of a design in SI, for scripts; templates/results.schema.json is
// its JSON Schema. A figure that is not finite is left out; a rule's value that is none is null, and the rule
// fails.
//
// Guarantee: same design, same bytes.
#pragma once

#include "purgewright/checks/rules.hpp"

#include <string>
#include <vector>

namespace purgewright::report {

struct Findings {
  checks::Design design;
  units::Figures figures;
  std::vector<checks::RuleResult> rules;
  std::vector<checks::NotJudged> not_judged; // rules that concern the design and are not among them
};

// Evaluates figures and rules of a design once; every output is made of this.
Findings find(checks::Design);

// Titles of the rules with this status.
std::vector<std::string> titles(const Findings &, checks::Status);

std::string results_json(const Findings &);

} // namespace purgewright::report
