// The jobs in examples/.
#pragma once

#include "purgewright/job/job.hpp"
#include "support/paths.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <utility>

namespace purgewright::test {

inline job::Job example(const std::string &name) {
  auto read = job::read_job(example_job(name));
  REQUIRE(read.job);
  return std::move(*read.job);
}

} // namespace purgewright::test
