// The example jobs, for benchmarks.
#pragma once

#include "purgewright/job/job.hpp"

#include <array>
#include <stdexcept>
#include <string>

namespace purgewright::bench {

inline constexpr std::array<const char *, 3> examples{"logger-25", "logger-38", "logger-51"};

inline std::string example_path(const std::string &name) {
  return std::string(PURGEWRIGHT_EXAMPLES) + "/" + name + ".yaml";
}

inline job::Job example_job(const std::string &name) {
  job::Resolution resolution = job::read_job(example_path(name));
  if (!resolution.job) {
    throw std::runtime_error(name + ": the example is no valid job");
  }
  return std::move(*resolution.job);
}

} // namespace purgewright::bench
