#include "purgewright/standards/tables.hpp"

#include "reference_data.hpp"

using namespace purgewright;
using namespace standards_reference;

namespace {

constexpr double pi = 3.14159265358979323846;

const standards::Gland &gland_of(double section_in) {
  const auto *gland = standards::static_radial_gland(units::inches(section_in));
  REQUIRE(gland != nullptr);
  return *gland;
}

const standards::ORing &ring_of(const YAML::Node &row) {
  INFO(text(row, "dash"));
  const auto *ring = standards::o_ring(text(row, "dash"));
  REQUIRE(ring != nullptr);
  return *ring;
}

} // namespace

TEST_CASE("O-ring inside diameters as published", "[reference][standards]") {
  const Expected data = expected("o_rings.yaml", "published_inside_diameters");
  for (const YAML::Node &row : data.values)
    CHECK(units::to_inches(ring_of(row).inside_diameter) == near(number(row, "id_in"), data.tolerance));
}

TEST_CASE("O-ring inside diameters agree with the metric column, row by row", "[reference][standards]") {
  const Expected data = expected("o_rings.yaml", "metric_inside_diameters");
  CHECK(data.values.size() == standards::o_rings().size());
  for (const YAML::Node &row : data.values) {
    INFO(text(row, "dash"));
    CHECK(units::to_millimetres(ring_of(row).inside_diameter) == near(number(row, "id_mm"), data.tolerance));
  }
}

TEST_CASE("O-ring sections by series", "[reference][standards]") {
  const Expected data = expected("o_rings.yaml", "sections");
  for (const YAML::Node &row : data.values) {
    std::size_t rings = 0;
    for (const auto &ring : standards::o_rings()) {
      if (ring.dash[1] != text(row, "series")[0])
        continue;
      ++rings;
      CHECK(units::to_inches(ring.section) == near(number(row, "section"), data.tolerance));
      CHECK(units::to_inches(ring.section_tolerance) == near(number(row, "tolerance"), data.tolerance));
    }
    CHECK(rings > 0);
  }
}

TEST_CASE("static radial glands as published", "[reference][standards]") {
  const Expected data = expected("o_rings.yaml", "glands");
  for (const YAML::Node &row : data.values) {
    const auto &gland = gland_of(number(row, "section"));
    INFO(number(row, "section"));
    CHECK(units::to_inches(gland.section) == near(number(row, "section"), data.tolerance));
    CHECK(units::to_inches(gland.depth_min) == near(at(row, "depth", 0), data.tolerance));
    CHECK(units::to_inches(gland.depth_max) == near(at(row, "depth", 1), data.tolerance));
    CHECK(units::to_inches(gland.width) == near(number(row, "width"), data.tolerance));
    CHECK(units::to_inches(gland.width_tolerance) == near(0.005, data.tolerance));
    CHECK(units::to_inches(gland.corner_radius_min) == near(at(row, "radius", 0), data.tolerance));
    CHECK(units::to_inches(gland.corner_radius_max) == near(at(row, "radius", 1), data.tolerance));
    CHECK(units::to_inches(gland.clearance_max) == near(number(row, "clearance_max"), data.tolerance));
  }
}

TEST_CASE("printed squeeze follows from depth and section tolerance", "[reference][standards]") {
  for (const YAML::Node &row : expected("o_rings.yaml", "glands").values) {
    const auto &gland = gland_of(number(row, "section"));
    const units::Length tolerance = units::inches(number(row, "section_tolerance"));
    const double least = 100.0 * (1.0 - units::ratio(gland.depth_max, gland.section - tolerance));
    const double most = 100.0 * (1.0 - units::ratio(gland.depth_min, gland.section + tolerance));
    INFO(number(row, "section"));
    CHECK(least == near(at(row, "squeeze_percent", 0), 0.51)); // printed as whole per cent
    CHECK(most == near(at(row, "squeeze_percent", 1), 0.51));
    CHECK(100.0 * gland.squeeze_min == near(at(row, "squeeze_percent", 0), 1e-9));
    CHECK(100.0 * gland.squeeze_max == near(at(row, "squeeze_percent", 1), 1e-9));
  }
}

TEST_CASE("squeeze extremes of the thinnest section", "[reference][standards]") {
  const Expected data = expected("o_rings.yaml", "squeeze_extremes");
  const YAML::Node row = data.values[0];
  const auto &gland = gland_of(number(row, "section"));
  const auto *ring = standards::o_ring("-018");
  REQUIRE(ring != nullptr);
  const auto squeeze = [](units::Length depth, units::Length section) {
    return 100.0 * units::ratio(section - depth, section);
  };
  const double least = squeeze(gland.depth_max, ring->section - ring->section_tolerance);
  const double most = squeeze(gland.depth_min, ring->section + ring->section_tolerance);
  CHECK(least == near(at(row, "squeeze", 0), data.tolerance));
  CHECK(most == near(at(row, "squeeze", 1), data.tolerance));
  CHECK(least == near(at(row, "printed", 0), 0.51));
  CHECK(most == near(at(row, "printed", 1), 0.51));
}

TEST_CASE("a second table's depths lie inside ours", "[reference][standards]") {
  for (const YAML::Node &row : expected("o_rings.yaml", "second_table").values) {
    const auto &gland = gland_of(number(row, "section"));
    INFO(number(row, "section"));
    CHECK(units::to_inches(gland.depth_min) <= at(row, "depth", 0) + 1e-9);
    CHECK(units::to_inches(gland.depth_max) >= at(row, "depth", 1) - 1e-9);
  }
}

TEST_CASE("lead-in by section", "[reference][standards]") {
  const Expected data = expected("o_rings.yaml", "lead_in");
  for (const YAML::Node &row : data.values)
    CHECK(units::to_millimetres(gland_of(number(row, "section_in")).lead_in_length) ==
          near(number(row, "length"), data.tolerance));
}

TEST_CASE("worked male glands", "[reference][standards]") {
  const Expected data = expected("o_rings.yaml", "worked_glands");
  for (const YAML::Node &row : data.values) {
    INFO(text(row, "dash"));
    const auto &ring = ring_of(row);
    const auto &gland = gland_of(units::to_inches(ring.section));
    const units::Length depth = 0.5 * (gland.depth_min + gland.depth_max);
    const units::Length groove = units::inches(number(row, "bore")) - 2.0 * depth;
    const double stretch = units::ratio(groove - ring.inside_diameter, ring.inside_diameter);
    const units::Length section = ring.section * (1.0 - 0.5 * stretch);
    const double fill = 0.25 * pi * (ring.section * ring.section).value() / (depth * gland.width).value();
    CHECK(units::to_inches(depth) == near(number(row, "depth"), 1e-9));
    CHECK(units::to_inches(groove) == near(number(row, "groove_diameter"), 1e-6));
    CHECK(units::to_millimetres(groove) == near(number(row, "groove_diameter_mm"), 0.0005));
    CHECK(100.0 * stretch == near(number(row, "stretch"), 0.005));
    CHECK(100.0 * units::ratio(section - depth, section) == near(number(row, "squeeze"), 0.051));
    CHECK(100.0 * units::ratio(ring.section - depth, ring.section) ==
          near(number(row, "squeeze_unstretched"), 0.051));
    CHECK(100.0 * fill == near(number(row, "fill"), 0.051));
    CHECK(stretch <= standards::seal_rules().stretch_max);
    CHECK(fill <= standards::seal_rules().fill_max);
  }
}

TEST_CASE("seal rules as published", "[reference][standards]") {
  const Expected data = expected("o_rings.yaml", "rules");
  const auto &rules = standards::seal_rules();
  CHECK(100.0 * rules.stretch_max == near(number(data.values[0], "stretch_max"), data.tolerance));
  CHECK(100.0 * rules.fill_max == near(number(data.values[0], "fill_max"), data.tolerance));
}
