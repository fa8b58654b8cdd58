// Jobs and layouts the heat tests work on.
#pragma once

#include "purgewright/fixture/layout.hpp"
#include "purgewright/job/job.hpp"
#include "support/paths.hpp"

#include <catch2/catch.hpp>

#include <string>

namespace purgewright::heat::test {

struct Subject {
  job::Job job;
  fixture::Layout layout;
};

inline Subject example(const std::string &name) {
  const auto read = job::read_job(purgewright::test::example_job(name));
  REQUIRE(read.job);
  return {*read.job, fixture::lay_out(*read.job)};
}

} // namespace purgewright::heat::test
