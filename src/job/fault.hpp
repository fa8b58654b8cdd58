// Makes a Diagnostic of severity error; the file's name is added once, where all faults come together.
#pragma once

#include "purgewright/job/diagnostic.hpp"

#include <string>
#include <utility>

namespace purgewright::job {

inline Diagnostic fault(Mark mark, std::string key, std::string problem, std::string allowed,
                        std::string nearest = {}) {
  Diagnostic d;
  d.mark = mark;
  d.key = std::move(key);
  d.problem = std::move(problem);
  d.allowed = std::move(allowed);
  d.nearest = std::move(nearest);
  return d;
}

} // namespace purgewright::job
