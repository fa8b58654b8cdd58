#include "purgewright/job/job.hpp"

#include <catch2/catch.hpp>

using namespace purgewright;

namespace {

job::Origin diameter_of(const std::string &written) {
  auto reading = job::read_draft_text(
      "job: {name: inches}\ntube: {material: titanium-grade-2, outside_diameter: " + written +
          ", wall: 0.9 mm, length: 190 mm}\n" + "cap: {shape: flat, diameter: 25.4 mm, thickness: 1.2 mm}\n",
      "job.yaml");
  auto resolution = job::resolve(reading.draft);
  REQUIRE(resolution.job);
  return resolution.job->origin(job::Key::tube_outside_diameter);
}

} // namespace

TEST_CASE("a job remembers that a length was written in inches") {
  for (const std::string written : {"1 in", "1.0in", "1 inch", "2/2 in"}) {
    INFO(written);
    CHECK(diameter_of(written).inches);
  }
  for (const std::string written : {"25.4 mm", "2.54 cm", "0.0254 m"}) {
    INFO(written);
    CHECK_FALSE(diameter_of(written).inches);
  }
}
