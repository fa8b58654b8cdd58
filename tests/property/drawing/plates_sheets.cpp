// Sheets of chambers of plates: the laws of sheets on three sizes, metric and inch.
#include "sheet_faults.hpp"

#include "purgewright/fixture/cavity.hpp"

using namespace purgewright;
using namespace purgewright::test;
using namespace purgewright::drawing;

namespace {

using Faults = std::vector<std::string>;

void check_plates(const std::string &tube, const std::string &cap, const std::string &more) {
  auto reading =
      job::read_draft_text("job: {name: plates}\ntube: {material: titanium-grade-2, " + tube +
                               "}\ncap: {shape: flat, " + cap + "}\nfixture: {chamber: plates}\n" + more,
                           "plates.yaml");
  REQUIRE(reading.problems.empty());
  auto resolution = job::resolve(reading.draft);
  REQUIRE(resolution.job);
  const DrawnJob drawn_job = drawn(*resolution.job);
  for (const Sheet &sheet : drawn_job.sheets) {
    INFO(sheet.name);
    CHECK(overlaps(sheet) == Faults{});
    if (fixture::is_chamber_wall(sheet.part)) {
      CHECK(close_lines(sheet) == Faults{});
    }
  }
  CHECK(missing_sheets(drawn_job) == Faults{});
  CHECK(repeated_features(drawn_job) == Faults{});
  CHECK(wrong_measures(drawn_job).faults == Faults{});
  CHECK(silent_lengths(drawn_job).faults == Faults{});
}

} // namespace

TEST_CASE("sheets of a chamber of plates round a 1 in tube") {
  check_plates("outside_diameter: 25.4 mm, wall: 1 mm, length: 250 mm", "diameter: 25.4 mm, thickness: 2 mm",
               "");
}

TEST_CASE("sheets of a chamber of plates round a 4 in pipe, inches") {
  check_plates("outside_diameter: 4.5 in, wall: 0.12 in, length: 20 in",
               "diameter: 4.5 in, thickness: 0.125 in", "shop: {units: inch}\n");
}

TEST_CASE("sheets of a chamber of plates round a 6 in pipe") {
  check_plates("outside_diameter: 168.3 mm, wall: 2.77 mm, length: 500 mm",
               "diameter: 168.3 mm, thickness: 3 mm", "");
}
