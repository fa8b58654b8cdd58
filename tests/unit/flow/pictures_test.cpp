#include "purgewright/flow/pictures.hpp"

#include "purgewright/gas/properties.hpp"
#include "unit/gas/design_of.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <set>

using namespace purgewright;
using namespace purgewright::flow;
using Catch::Contains;
using gas::test::PurgeDesign;

namespace {

Case case_of(const PurgeDesign &d, Stage stage) {
  return write_case(d.job, d.layout, d.volumes, d.purge(), {.stage = stage, .cells = 2000, .duration = {}},
                    units::kelvins(366.0));
}

std::size_t count(const std::string &text, const std::string &word) {
  std::size_t found = 0;
  for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
    ++found;
  }
  return found;
}

// As OpenFOAM writes one.
std::string field_of(const std::vector<double> &air) {
  return fmt::format("FoamFile\n{{\n    object      alpha.air;\n}}\ndimensions [0 0 0 0 0 0 0];\n\n"
                     "internalField   nonuniform List<scalar> \n{}\n(\n{}\n)\n;\n",
                     air.size(), fmt::join(air, "\n"));
}

} // namespace

TEST_CASE("the plane of symmetry is cut out of the mesh: as large as the gas there, each cell once") {
  const PurgeDesign d(gas::test::example_job("logger-25"));
  const Case written = case_of(d, Stage::bore);
  REQUIRE_FALSE(written.slice.empty());
  std::set<std::size_t> cells;
  double area = 0.0;
  for (const Tile &tile : written.slice) {
    CHECK(tile.x_min < tile.x_max);
    CHECK(tile.z_min < tile.z_max);
    CHECK(tile.cell < written.cells);
    CHECK(cells.insert(tile.cell).second);
    area += (tile.x_max - tile.x_min) * (tile.z_max - tile.z_min);
  }
  const units::Length bore = d.job.tube.length - d.layout.plug.spigot_length;
  CHECK(area == Approx((bore * d.job.tube.inside_diameter).value()).epsilon(0.06)); // walls are steps
}

TEST_CASE("a solved field is read cell by cell, and coloured by its oxygen") {
  const PurgeDesign d(gas::test::example_job("logger-25"));
  Case written = case_of(d, Stage::bore);
  std::vector<double> air(written.cells, 0.0);
  const std::size_t dirty = written.slice.front().cell;
  air[dirty] = 1.0;
  const auto oxygen = read_field(field_of(air), d.job, written);
  REQUIRE(oxygen.size() == written.cells);
  CHECK(oxygen[dirty] == Approx(gas::air_oxygen));
  CHECK(std::ranges::count(oxygen, d.job.gas.oxygen_in_supply) == static_cast<long>(written.cells) - 1);
  const auto rects = [&](const std::vector<double> &shares) {
    return slice_svg(d.job, written, shares, units::seconds(2.0));
  };
  const std::string one = rects(oxygen), none = rects(std::vector<double>(written.cells, 0.0));
  CHECK(count(one, "<rect") == count(none, "<rect"));
  CHECK(count(one, "#281842") == count(none, "#281842") + 1); // air's own colour
  CHECK_THAT(one, Contains("after 2 s"));
  CHECK(count(one, "http") == 1); // the namespace's name
}

TEST_CASE("what is no field of the case is refused with the cell that is wrong") {
  const PurgeDesign d(gas::test::example_job("logger-25"));
  Case written = case_of(d, Stage::bore);
  written.cells = 3;
  CHECK(read_field(field_of({0.0, 0.5, 1.0}), d.job, written).size() == 3);
  CHECK_THROWS_WITH(read_field(field_of({0.0, 0.5}), d.job, written), Contains("cell 2"));
  CHECK_THROWS_WITH(read_field(field_of({0.0, 1.5, 0.0}), d.job, written), Contains("cell 1"));
  CHECK_THROWS_WITH(read_field("internalField   uniform 0;\nboundary (", d.job, written),
                    Contains("no list"));
  CHECK_THROWS_AS(read_field("", d.job, written), BadRecord);
}

TEST_CASE("the curve of a title with markup in it stays text") {
  job::Job job = gas::test::example_job("logger-25");
  job.identity.name = "a<script>&b";
  const PurgeDesign d(job);
  const Case written = case_of(d, Stage::open);
  const Record record{.places = {"joint_top"}, .times = {0.5, 1.0}, .oxygen = {{1e-4}, {2e-5}}};
  const std::string svg = curve_svg(d.job, d.purge(), written, record);
  CHECK_THAT(svg, Contains("a&lt;script>&amp;b") && !Contains("<script"));
  CHECK(count(svg, "<polyline") == 1);
  CHECK_THAT(svg, Contains("limit"));
}
