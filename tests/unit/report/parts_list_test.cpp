#include "purgewright/report/parts_list.hpp"

#include "purgewright/fixture/figures.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace purgewright;

namespace {

checks::Design design_in(const std::string &units) {
  auto reading = job::read_draft_text("job: {name: masses}\n"
                                      "tube: {material: Grade 2, outside_diameter: 25.4 mm, wall: 0.9 mm, "
                                      "length: 190 mm}\n"
                                      "cap: {shape: flat, diameter: 25.4 mm, thickness: 1.2 mm}\n"
                                      "shop: {units: " +
                                          units + "}\n",
                                      "job.yaml");
  auto resolution = job::resolve(reading.draft);
  REQUIRE(resolution.job);
  return checks::evaluate_purge(*resolution.job);
}

} // namespace

// A pound is 0.45359237 kg by the international agreement of 1959.
TEST_CASE("masses of the parts list are in the unit that its heading names") {
  using Catch::Contains;
  for (const auto &[units, heading, kilograms] : {std::tuple("metric", "mass a piece [kg]", 1.0),
                                                  std::tuple("inch", "mass a piece [lb]", 0.45359237)}) {
    const auto design = design_in(units);
    CHECK_THAT(report::parts_list_csv(design), Contains(heading));
    const auto metals = fixture::part_metals(design.job, design.layout, design.volumes);
    int weighed = 0;
    for (const auto &row : report::part_rows(design)) {
      const auto metal = std::ranges::find(metals, row.item.id, &fixture::PartMetal::name);
      if (metal != metals.end() && !row.mass.empty()) {
        INFO(units << " " << row.item.id);
        CHECK(std::stod(row.mass) * kilograms == Approx(metal->mass().value()).margin(0.0006));
        ++weighed;
      }
    }
    CHECK(weighed > 10);
  }
}
