// Room for hands and tools on the examples, and what happens when closed form and solids disagree or parts
// clash.
#include "purgewright/solids/clearances.hpp"
#include "purgewright/solids/interference.hpp"
#include "support/examples.hpp"

#include "support/clearance_laws.hpp"
#include "support/layout_laws.hpp"

#include <catch2/catch.hpp>

#include <set>

using namespace purgewright;
using purgewright::test::example;

TEST_CASE("examples: the closed form finds the room that the solids leave, and no parts clash", "[unit]") {
  for (const std::string &name : test::example_names()) {
    const job::Job job = example(name);
    const auto layout = fixture::lay_out(job);
    const auto assembly = solids::build_assembly(job, layout);
    const auto standing = solids::stand(assembly);
    const auto measured = solids::measure_clearances(job, layout, standing);
    const auto closed = fixture::clearances(job, layout);
    std::vector<std::string> faults;
    test::judge_clearances(measured, closed, faults);
    INFO(name << "\n" << test::lines(faults));
    CHECK(faults.empty());
    CHECK_NOTHROW(solids::require_clearance_agreement(measured, closed));
    CHECK(solids::find_clashes(standing).empty());
  }
}

TEST_CASE("a closed form that promises more room than there is, is refused by name", "[unit]") {
  using Catch::Contains;
  const job::Job job = example("logger-25");
  const auto closed = fixture::clearances(job, fixture::lay_out(job));
  auto measured = closed;
  measured.torch -= units::micrometres(2.0);
  CHECK_THROWS_WITH(solids::require_clearance_agreement(measured, closed), Contains("torch"));
  measured = closed;
  measured.sight -= units::radians(1e-4);
  CHECK_THROWS_WITH(solids::require_clearance_agreement(measured, closed), Contains("sight"));
  measured = closed;
  measured.turning += units::millimetres(1.0); // more than promised is no fault
  CHECK_NOTHROW(solids::require_clearance_agreement(measured, closed));
}

TEST_CASE("parts pushed into each other are found and named, with the metal they share", "[unit]") {
  const job::Job job = example("logger-25");
  auto assembly = solids::build_assembly(job, fixture::lay_out(job));
  for (auto &part : assembly.parts) {
    if (part.name == "cap") {
      part.place.offset.x -= units::millimetres(0.3); // into the tube's end
    }
  }
  const auto clashes = solids::find_clashes(solids::stand(assembly));
  REQUIRE(clashes.size() == 1);
  CHECK(clashes[0].first == "tube");
  CHECK(clashes[0].second == "cap");
  const auto ring =
      0.25 * units::pi * (units::square(job.tube.outside_diameter) - units::square(job.tube.inside_diameter));
  CHECK((clashes[0].shared / ring).value() == Approx(0.3e-3).epsilon(1e-8));
}

TEST_CASE("one of four screws out of its place is found among those that are not", "[unit]") {
  const job::Job job = example("logger-25");
  auto assembly = solids::build_assembly(job, fixture::lay_out(job));
  for (auto &part : assembly.parts) {
    if (part.name == "screw-chamber") {
      part.more_places[1].offset.y += units::millimetres(2.0);
    }
  }
  const auto clashes = solids::find_clashes(solids::stand(assembly));
  std::set<std::string> met;
  for (const auto &clash : clashes) {
    CHECK(clash.second == "screw-chamber");
    met.insert(clash.first);
  }
  CHECK(met == std::set<std::string>{"chamber-body", "plenum-gasket", "plenum-cover", "base-plate"});
}
