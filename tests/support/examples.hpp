// The jobs in examples/.
#pragma once

#include "purgewright/job/job.hpp"
#include "support/paths.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <utility>
#include <vector>

namespace purgewright::test {

inline job::Job example(const std::string &name) {
  auto read = job::read_job(example_job(name));
  REQUIRE(read.job);
  return std::move(*read.job);
}

// Keys of an example changed: SI, the index of a choice.
inline job::Draft example_draft(const std::string &name,
                                const std::vector<std::pair<job::Key, double>> &edits) {
  auto reading = job::read_draft(example_job(name));
  REQUIRE(reading.problems.empty());
  for (const auto &[key, number] : edits) {
    auto &entry = reading.draft[key];
    entry.stated = true;
    entry.is_share = false;
    entry.number = number;
  }
  return reading.draft;
}

} // namespace purgewright::test
