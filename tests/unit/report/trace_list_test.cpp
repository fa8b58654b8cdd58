// What `trace` lists: everything by topic, or what speaks of some words.
#include "purgewright/report/text.hpp"

#include "support/paths.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

using namespace purgewright;
using Catch::Matchers::Contains;

TEST_CASE("trace lists every figure and rule by topic, or those that hold all words") {
  const auto resolution = job::read_job(test::example_job("logger-25"));
  REQUIRE(resolution.job);
  const auto findings = report::find(checks::evaluate_row(*resolution.job));
  const std::string all = report::list_text(findings, {});
  for (const auto &figure : findings.figures) {
    INFO(figure.id);
    CHECK_THAT(all, Contains("\n  " + figure.id + " "));
  }
  for (const auto &rule : findings.rules) {
    INFO(rule.id);
    CHECK_THAT(all, Contains("\n  " + rule.id + " "));
  }
  CHECK(all.find("\npurge\n") < all.find("\nheat\n"));

  const std::string some = report::list_text(findings, std::vector<std::string>{"Oxygen", "BORE"});
  CHECK_THAT(some, Contains("purge.bore.oxygen_floor ") && Contains("rules\n") &&
                       Contains("gas.bore_limit ") && !Contains("chamber.oxygen_floor") &&
                       !Contains("heat.cycle"));
  CHECK(report::list_text(findings, std::vector<std::string>{"oxygen", "no such word"}).empty());
}

TEST_CASE("several ids are traced in turn; one that is none leaves it to the search") {
  const auto resolution = job::read_job(test::example_job("logger-25"));
  REQUIRE(resolution.job);
  const auto findings = report::find(checks::evaluate_row(*resolution.job));
  const std::string gas = "volume.chamber_gas", rule = "access.slot_width";
  const auto both = report::trace_text(findings, std::vector{gas, rule});
  REQUIRE(both);
  CHECK(*both == *report::trace_text(findings, std::string_view(gas)) + "\n" +
                     *report::trace_text(findings, std::string_view(rule)));
  CHECK_FALSE(report::trace_text(findings, std::vector{gas, std::string("oxygen")}));
  CHECK_FALSE(report::trace_text(findings, std::vector<std::string>{}));
}
