// Tubes, torch cups and machining practice.
#include "purgewright/standards/tables.hpp"

#include "reference_data.hpp"

using namespace purgewright;
using namespace standards_reference;

TEST_CASE("titanium tube tolerances", "[reference][standards]") {
  const Expected data = expected("tubes.yaml", "outside_diameter");
  const auto tolerance_at = [](double diameter_in) {
    const auto tolerance = standards::tube_outside_tolerance(units::inches(diameter_in));
    REQUIRE(tolerance.has_value());
    return units::to_inches(*tolerance);
  };
  for (const YAML::Node &row : data.values) {
    INFO(number(row, "from"));
    const double tolerance = number(row, "tolerance");
    if (number(row, "from") > 0.0)
      CHECK(tolerance_at(number(row, "from")) == near(tolerance, data.tolerance));
    CHECK(tolerance_at(0.5 * (number(row, "from") + number(row, "to"))) == near(tolerance, data.tolerance));
    CHECK(tolerance_at(number(row, "to") - 0.001) == near(tolerance, data.tolerance));
  }
  const Expected wall = expected("tubes.yaml", "wall");
  CHECK(standards::tube_wall_tolerance() == near(number(wall.values[0], "tolerance"), wall.tolerance));
}

TEST_CASE("torch cups by number", "[reference][standards]") {
  const Expected inch = expected("torch.yaml", "inch_orifice");
  const Expected metric = expected("torch.yaml", "metric_orifice");
  const YAML::Node wall = expected("torch.yaml", "wall").values[0];
  REQUIRE(inch.values.size() == standards::torch_cups().size());
  REQUIRE(metric.values.size() == standards::torch_cups().size());
  for (std::size_t i = 0; i < standards::torch_cups().size(); ++i) {
    const auto &cup = standards::torch_cups()[i];
    INFO(cup.number);
    CHECK(cup.number == inch.values[i]["number"].as<int>());
    CHECK(cup.number == metric.values[i]["number"].as<int>());
    CHECK(units::to_inches(cup.bore) == near(number(inch.values[i], "orifice"), inch.tolerance));
    CHECK(units::to_millimetres(cup.bore) == near(number(metric.values[i], "orifice"), metric.tolerance));
    const double cup_wall = 0.5 * units::to_millimetres(cup.outside_diameter - cup.bore);
    CHECK(cup_wall > at(wall, "wall", 0));
    CHECK(cup_wall < at(wall, "wall", 1));
  }
}

TEST_CASE("machining practice", "[reference][standards]") {
  const auto &rules = standards::machining_rules();
  const Expected data = expected("machining.yaml", "published");
  const YAML::Node row = data.values[0];
  CHECK(rules.pocket_depth_per_corner_radius_max ==
        near(number(row, "pocket_depth_per_corner_radius_max"), data.tolerance));
  CHECK(rules.drill_depth_per_diameter_best ==
        near(number(row, "drill_depth_per_diameter_best"), data.tolerance));
  CHECK(rules.drill_depth_per_diameter_max ==
        near(number(row, "drill_depth_per_diameter_max"), data.tolerance));
  CHECK(rules.thread_engagement_per_diameter ==
        near(number(row, "thread_engagement_per_diameter"), data.tolerance));

  const YAML::Node range = expected("machining.yaml", "remembered").values[0];
  const auto within = [&range](double value, const char *key) {
    INFO(key);
    CHECK(value >= at(range, key, 0) - 1e-9);
    CHECK(value <= at(range, key, 1) + 1e-9);
  };
  within(rules.end_mill_stickout_per_diameter_max, "end_mill_stickout_per_diameter_max");
  within(units::to_millimetres(rules.wall_min), "wall_min_mm");
  within(rules.edge_distance_per_diameter, "edge_distance_per_diameter");
  within(units::to_degrees(rules.drill_point), "drill_point_degrees");
}
