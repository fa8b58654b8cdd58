// Designs side by side: what is known, which rule has the least room, figures asked for.
#include "purgewright/report/compare.hpp"

#include "support/paths.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>
#include <stdexcept>
#include <string>
#include <vector>

using namespace purgewright;
using Catch::Matchers::Contains;

namespace {

job::Job job_of(const std::string &name) {
  const auto resolution = job::read_job(test::example_job(name));
  REQUIRE(resolution.job);
  return *resolution.job;
}

double value(const report::ComparedDesign &design, std::string_view id) {
  const auto at = std::ranges::find(report::metrics(), id, &report::Metric::id);
  REQUIRE(at != report::metrics().end());
  return design.values.at(static_cast<std::size_t>(at - report::metrics().begin()));
}

} // namespace

TEST_CASE("a row's metrics are the figures of the same ids") {
  auto design = checks::evaluate_row(job_of("logger-25"));
  design.purge.bore.prepurge *= 0.7; // so that no two flows are alike
  design.purge.bore.welding *= 1.3;
  const auto row = report::compared(design);
  const auto figures = checks::figures(design);
  int found = 0;
  for (const auto &metric : report::metrics()) {
    if (const auto *figure = units::find(figures, metric.id)) {
      INFO(metric.id);
      // Parts of a bottle are whole.
      const double whole = metric.id == "gas.parts_per_bottle" ? std::floor(figure->value) : figure->value;
      CHECK(value(row, metric.id) == Approx(whole));
      CHECK(units::si_unit(metric.dimension) == units::si_unit(figure->dimension));
      ++found;
    }
  }
  CHECK(found >= 18);
}

TEST_CASE("a row in closed form knows nothing of purge and heat, and says so by no number") {
  const auto row = report::compared(checks::evaluate_closed_form(job_of("logger-25")));
  CHECK(std::isnan(value(row, "purge.wait")));
  CHECK(std::isnan(value(row, "gas.cost.per_part")));
  CHECK(std::isfinite(value(row, "volume.chamber_gas")));
  CHECK(std::isfinite(value(row, "mass.total")));
  CHECK(row.tightest.rule.empty());
  report::Comparison one;
  one.designs.push_back(row);
  one.quick = true;
  CHECK_THAT(report::comparison_text(one), !Contains("oxygen in bore"));
}

TEST_CASE("the tightest rule has the least share of its limit left, unless it was laid out at its limit") {
  const auto design = checks::evaluate_row(job_of("logger-25"));
  const auto row = report::compared(design);
  REQUIRE_FALSE(row.tightest.rule.empty());
  for (const auto &rule : checks::judge(design)) {
    const auto left = checks::margin(rule.value, rule.limit, rule.bound);
    const auto known = std::ranges::find(checks::rules(), rule.id, &checks::Rule::id);
    const bool laid_out = known->needs == checks::Needs::nothing;
    if (left && std::abs(*left) > (laid_out ? 0.01 : 1e-6)) {
      INFO(rule.id);
      CHECK(row.tightest.margin <= *left);
    }
  }
  CHECK(row.tightest.rule != "machining.thinnest_wall"); // the layout leaves just the least wall
  CHECK_THAT(std::string(row.tightest.rule),
             !Catch::StartsWith("access.slot")); // slots are as long as they must
}

TEST_CASE("the room left of a limit counts from either side") {
  using checks::Bound;
  CHECK(checks::margin(30.0, 40.0, Bound::at_most).value() == Approx(0.25));
  CHECK(checks::margin(50.0, 40.0, Bound::at_most).value() == Approx(-0.25));
  CHECK(checks::margin(50.0, 40.0, Bound::at_least).value() == Approx(0.25));
  CHECK(checks::margin(-1.0, -2.0, Bound::above).value() == Approx(0.5));
  CHECK_FALSE(checks::margin(1.0, 0.0, Bound::at_least).has_value());
  CHECK_FALSE(checks::margin(std::nan(""), 1.0, Bound::at_most).has_value());
}

TEST_CASE("a row of a sweep that is the one above in all that is compared says so") {
  report::Comparison sweep;
  sweep.varied_keys = {"fixture.wall"};
  sweep.varied_dimensions = {units::Dimension::length};
  const auto row = report::compared(checks::evaluate_row(job_of("logger-25")), "first");
  for (const std::string name : {"first", "second", "third"}) {
    sweep.designs.push_back(row);
    sweep.designs.back().name = name;
    sweep.designs.back().varied = {4e-3};
  }
  sweep.designs.back().values.front() *= 1.01;
  const std::string text = report::comparison_text(sweep);
  const auto line = [&](std::string_view name) {
    const auto at = text.find(name);
    return text.substr(at, text.find('\n', at) - at);
  };
  CHECK_THAT(line("second"), Contains("the same as the line above"));
  CHECK_THAT(line("third"), !Contains("the same as the line above"));
}

TEST_CASE("figures asked for stand beside the metrics; an unknown id is refused") {
  const auto design = checks::evaluate_row(job_of("logger-25"));
  const std::vector<std::string> ids{"heat.run.1.hold", "area.vent"};
  report::Comparison both;
  both.asked = report::asked_of(design, ids);
  both.designs.push_back(report::compared(design, "one", ids));
  REQUIRE(both.designs.front().asked.size() == 2);
  CHECK(both.designs.front().asked.front() == Approx(design.heat.runs.front().hold.value()));
  CHECK_THAT(report::comparison_text(both), Contains("heat.run.1.hold"));
  CHECK_THAT(report::comparison_csv(both), Contains(",heat.run.1.hold [s],area.vent [m2],"));
  CHECK_THROWS_AS(report::asked_of(design, std::vector<std::string>{"heat.run.99.hold"}), std::out_of_range);
}

namespace {

// Rows with these values of wait and mass, failing rules where said.
report::Comparison ranked(const std::vector<std::array<double, 3>> &rows) {
  report::Comparison comparison;
  comparison.ranked = {*report::rankable("purge.wait"), *report::rankable("gas.parts_per_bottle")};
  for (const auto &[wait, bottle, failing] : rows) {
    report::ComparedDesign design;
    design.values.fill(std::nan(""));
    design.values[comparison.ranked[0]] = wait;
    design.values[comparison.ranked[1]] = bottle;
    design.rules.failing = static_cast<int>(failing);
    comparison.designs.push_back(design);
  }
  return comparison;
}

using Rows = std::vector<std::size_t>;

} // namespace

TEST_CASE("the front is what no design that passes beats: less wait, more parts of a bottle") {
  CHECK(report::front(ranked({{20, 100, 0}, {10, 50, 0}, {30, 90, 0}, {10, 40, 0}})) == Rows{1, 0});
  CHECK(report::front(ranked({{20, 100, 0}, {20, 100, 0}})) == Rows{0, 1}); // neither beats the other
  CHECK(report::front(ranked({{1, 999, 1}, {20, 100, 0}})) == Rows{1});     // a design that fails is none
  CHECK(report::front(ranked({{std::nan(""), 999, 0}, {20, 100, 0}})) == Rows{1});
  CHECK(report::front(ranked({{1, 999, 2}})).empty());
}

TEST_CASE("no design off the front is unbeaten, none on it beaten: random rows, each against each") {
  std::mt19937 random(7);
  std::uniform_int_distribution<int> few(0, 12); // equal values are usual
  for (int round = 0; round < 50; ++round) {
    std::vector<std::array<double, 3>> rows;
    for (int i = 0; i < 40; ++i) {
      rows.push_back({1.0 * few(random), 1.0 * few(random), few(random) == 0 ? 1.0 : 0.0});
    }
    const Rows found = report::front(ranked(rows));
    for (std::size_t d = 0; d < rows.size(); ++d) {
      const bool beaten = std::ranges::any_of(rows, [&](const auto &other) {
        return other[2] == 0.0 && other[0] <= rows[d][0] && other[1] >= rows[d][1] &&
               (other[0] < rows[d][0] || other[1] > rows[d][1]);
      });
      CHECK((std::ranges::find(found, d) != found.end()) == (rows[d][2] == 0.0 && !beaten));
    }
  }
}

TEST_CASE("what is neither better nor worse cannot rank designs") {
  CHECK_FALSE(report::rankable("purge.bore.welding.flow"));
  CHECK_FALSE(report::rankable("purge.wiat"));
}
