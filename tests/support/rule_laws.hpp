// Every rule judged on a buildable job gives a number, a limit and, where it does not pass, a remedy.
#pragma once

#include "purgewright/checks/rules.hpp"

#include <fmt/format.h>

#include <cmath>
#include <string>
#include <vector>

namespace purgewright::test {

inline std::vector<std::string> rule_faults(checks::Design design) {
  design.solids_known = true;
  const auto results = checks::judge(design);
  std::vector<std::string> faults;
  if (!checks::not_judged(design)
           .empty()) { // a rule of a log or a family that the job has not is no such rule
    faults.push_back(fmt::format("{} is not judged", checks::not_judged(design).front().rule));
  }
  for (const auto &result : results) {
    if (!std::isfinite(result.value) || !std::isfinite(result.limit)) {
      faults.push_back(result.id + ": no number");
    }
    if ((result.status == checks::Status::pass) != result.remedy.empty()) {
      faults.push_back(result.id + ": a remedy where none is due, or none where one is");
    }
  }
  return faults;
}

} // namespace purgewright::test
