// results.json: every figure and every rule of a design in SI, for scripts; templates/results.schema.json is
// its JSON Schema. A number that is not finite is left out rather than written as null.
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
};

// Evaluates figures and rules of a design once; every output is made of this.
Findings find(checks::Design);

std::string results_json(const Findings &);

} // namespace purgewright::report
