// A job with everything that its sheets are drawn from.
#pragma once

#include "support/paths.hpp"
#include "support/random_job.hpp"

#include "purgewright/drawing/sheets.hpp"

#include <catch2/catch.hpp>

namespace purgewright::test {

struct DrawnJob {
  job::Job job;
  fixture::Layout layout;
  fixture::Volumes volumes;
  solids::Assembly assembly;
  std::vector<drawing::Sheet> sheets;
};

inline DrawnJob drawn(const job::Job &job, const std::vector<std::string> &failing = {}) {
  DrawnJob out{job, fixture::lay_out(job), {}, {}, {}};
  out.volumes = fixture::volumes(job, out.layout);
  out.assembly = solids::build_assembly(job, out.layout);
  out.sheets = drawing::make_sheets(job, out.layout, out.volumes, out.assembly,
                                    {"2026-01-02", "purgewright", failing});
  return out;
}

inline job::Job read_example(const std::string &name) {
  auto resolution = job::read_job(purgewright::test::example_job(name));
  REQUIRE(resolution.job);
  return *resolution.job;
}

} // namespace purgewright::test
