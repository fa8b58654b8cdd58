#include "purgewright/flow/case.hpp"

#include "purgewright/fixture/shapes.hpp"
#include "unit/gas/design_of.hpp"

#include <catch2/catch.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <sstream>

using namespace purgewright;
using namespace purgewright::flow;
using Catch::Contains;
using gas::test::PurgeDesign;

namespace {

constexpr units::Temperature warm = units::kelvins(366.0);

Case case_of(const PurgeDesign &d, Stage stage, std::size_t cells = 6000) {
  return write_case(d.job, d.layout, d.volumes, d.purge(), {.stage = stage, .cells = cells, .duration = {}},
                    warm);
}

const std::string &text_of(const Case &written, const std::string &path) {
  const auto found = std::ranges::find(written.files, path, &CaseFile::path);
  REQUIRE(found != written.files.end());
  return found->text;
}

// What chamber_gas counts and the mesh leaves out: plenum with its gasket, diffuser holes.
units::Volume left_out(const fixture::Layout &l) {
  const auto &plenum = l.body.plenum;
  const auto plan = fixture::rounded_rectangle(plenum.length(), plenum.width, plenum.corner_radius);
  const auto &diffuser = l.body.diffuser;
  units::Volume holes{};
  for (int row = 0; row < diffuser.rows; ++row) {
    holes += double(diffuser.columns) *
             fixture::hole_from_plane_to_cylinder(diffuser.hole_radius, diffuser.y_of(row),
                                                  l.body.cavity_radius, -plenum.ceiling);
  }
  return plan * (plenum.ceiling - l.body.bottom + l.gasket) + holes;
}

std::set<std::string> names_in_braces(const std::string &text, const std::string &after) {
  std::set<std::string> names;
  std::istringstream lines(text.substr(text.find(after)));
  std::string word;
  for (std::string line; std::getline(lines, line);) {
    std::istringstream words(line);
    std::string second;
    if (words >> word >> second && second == "{") {
      names.insert(word);
    }
  }
  return names;
}

} // namespace

TEST_CASE("the mesh holds the gas that the closed forms give") {
  for (const std::string name : {"logger-25", "logger-38", "logger-51"}) {
    INFO(name);
    const PurgeDesign d = gas::test::example(name);
    const Case bore = case_of(d, Stage::bore, 60000);
    CHECK(bore.gas.value() == Approx(d.volumes.bore_gas.value()).epsilon(0.02));
    const Case chamber = case_of(d, Stage::prepurge, 60000);
    CHECK(chamber.gas.value() == Approx((d.volumes.chamber_gas - left_out(d.layout)).value()).epsilon(0.02));
  }
}

TEST_CASE("openings of a fine mesh are as wide as they are drilled") {
  const PurgeDesign d = gas::test::example("logger-25");
  for (const Stage stage : all_stages) {
    for (const MeshedOpening &opening : case_of(d, stage, 20000).openings) {
      INFO(to_text(stage) << " " << opening.name);
      if (opening.name != "outlet") { // as wide as all that comes in
        CHECK(opening.meshed.value() == Approx(opening.drilled.value()).epsilon(0.35));
      }
    }
  }
}

TEST_CASE("every field names every patch of the mesh") {
  const PurgeDesign d = gas::test::example("logger-25");
  for (const Stage stage : all_stages) {
    INFO(to_text(stage));
    const Case written = case_of(d, stage);
    std::set<std::string> patches;
    std::istringstream lines(text_of(written, "constant/polyMesh/boundary"));
    std::string before;
    for (std::string line; std::getline(lines, line); before = line) {
      if (line == "{" && before != "FoamFile") {
        patches.insert(before);
      }
    }
    CHECK(patches.contains("walls"));
    for (const CaseFile &file : written.files) {
      if (file.path.starts_with("0/")) {
        INFO(file.path);
        CHECK(names_in_braces(file.text, "boundaryField") == patches);
      }
    }
    CHECK(text_of(written, "system/controlDict").find(is_hot(stage) ? hot_solver : cold_solver) !=
          std::string::npos);
  }
}

TEST_CASE("what flows in is the stage's, halved with the space") {
  const PurgeDesign d = gas::test::example("logger-25");
  const auto purge = d.purge();
  const auto half = [](units::VolumeFlow flow) {
    return fmt::format("volumetricFlowRate {:.9g};", 0.5 * flow.value());
  };
  CHECK_THAT(text_of(case_of(d, Stage::bore), "0/U"), Contains(half(purge.bore.prepurge)));
  CHECK_THAT(text_of(case_of(d, Stage::prepurge), "0/U"),
             Contains("diffuser { type flowRateInletVelocity; " + half(purge.chamber.prepurge)));
  CHECK_THAT(text_of(case_of(d, Stage::away), "0/U"),
             Contains("diffuser { type flowRateInletVelocity; " + half(purge.chamber.welding)));
  CHECK_THAT(text_of(case_of(d, Stage::torch), "0/U"),
             Contains("cup { type flowRateInletVelocity; " + half(d.job.torch.gas_flow)));
}

TEST_CASE("a joint is as hot as its stage says, the fixture as warm as it settles") {
  const PurgeDesign d = gas::test::example("logger-25");
  const std::string text = text_of(case_of(d, Stage::away), "0/T");
  CHECK_THAT(text, Contains(fmt::format("joint {{ type fixedValue; value uniform {:.9g}; }}",
                                        d.purge().torch.metal.value())));
  CHECK_THAT(text, Contains("walls { type fixedValue; value uniform 366; }"));
}

TEST_CASE("the same job writes the same case, and no path of the machine stands in it") {
  const PurgeDesign d = gas::test::example("logger-25");
  const Case first = case_of(d, Stage::away), second = case_of(d, Stage::away);
  REQUIRE(first.files.size() == second.files.size());
  for (std::size_t i = 0; i < first.files.size(); ++i) {
    CHECK(first.files[i].path == second.files[i].path);
    CHECK(first.files[i].text == second.files[i].text);
    CHECK_THAT(first.files[i].text, !Contains("/home/") && !Contains("/tmp/"));
  }
}

TEST_CASE("an outlet below lies under one above, and nothing else differs in the bore") {
  const PurgeDesign d = gas::test::example("logger-25");
  const Case above = case_of(d, Stage::bore), below = case_of(d, Stage::bore_outlet_below);
  CHECK(above.cells == below.cells);
  CHECK(text_of(above, "constant/polyMesh/points") == text_of(below, "constant/polyMesh/points"));
  CHECK(text_of(above, "constant/polyMesh/faces") != text_of(below, "constant/polyMesh/faces"));
}

TEST_CASE("a case says what it is worth") {
  const Case written = case_of(gas::test::example("logger-25"), Stage::torch);
  CHECK_THAT(text_of(written, "about.txt"), Contains("computed, not measured") && Contains("oxygen meter"));
}

TEST_CASE("a stage is known by its name alone") {
  for (const Stage stage : all_stages) {
    CHECK(stage_named(to_text(stage)) == stage);
  }
  CHECK_FALSE(stage_named("welding"));
}

TEST_CASE("a case is cut among processes only as far as each has cells to work on") {
  CHECK(most_processes(0) == 1);
  CHECK(most_processes(least_cells_of_process - 1) == 1);
  CHECK(most_processes(2 * least_cells_of_process - 1) == 1);
  CHECK(most_processes(2 * least_cells_of_process) == 2);
  CHECK(most_processes(usual_cells) == 40);
}
