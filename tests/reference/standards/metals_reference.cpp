#include "purgewright/standards/tables.hpp"

#include "reference_data.hpp"

using namespace purgewright;
using namespace standards_reference;

namespace {

const standards::Metal &metal_of(const YAML::Node &row) {
  INFO(text(row, "name"));
  const auto *metal = standards::metal(text(row, "name"));
  REQUIRE(metal != nullptr);
  return *metal;
}

void check_metals(const char *id) {
  const Expected data = expected("metals.yaml", id);
  for (const YAML::Node &row : data.values) {
    const auto &metal = metal_of(row);
    INFO(text(row, "name"));
    if (row["density"])
      CHECK(metal.density.value() == about(number(row, "density"), data.tolerance));
    if (row["conductivity"])
      CHECK(metal.conductivity.room() == about(number(row, "conductivity"), data.tolerance));
    if (row["specific_heat"]) {
      CHECK(metal.specific_heat.room() >= at(row, "specific_heat", 0));
      CHECK(metal.specific_heat.room() <= at(row, "specific_heat", 1));
    }
    if (row["expansion"])
      CHECK(metal.expansion == about(number(row, "expansion"), data.tolerance));
    if (row["melting_start"])
      CHECK(units::to_celsius(metal.melting_start) == near(number(row, "melting_start"), 0.5));
  }
}

} // namespace

TEST_CASE("metal properties as published", "[reference][standards]") {
  for (const char *id :
       {"grade_2", "grade_9", "grade_5", "grade_5_heat", "aluminium_6061", "stainless_304", "copper"})
    check_metals(id);
}

TEST_CASE("metal properties as remembered", "[reference][standards]") {
  check_metals("remembered");
}

TEST_CASE("specific heat of Grade 2 lies near pure titanium's", "[reference][standards]") {
  const Expected data = expected("metals.yaml", "pure_titanium_specific_heat");
  for (const YAML::Node &row : data.values)
    CHECK(metal_of(row).specific_heat.room() == about(number(row, "specific_heat"), data.tolerance));
}

TEST_CASE("titanium stays under gas down to the published temperature", "[reference][standards]") {
  const Expected data = expected("metals.yaml", "shielding");
  for (const YAML::Node &row : data.values) {
    const auto &metal = metal_of(row);
    REQUIRE(metal.shielding_temperature.has_value());
    CHECK(units::to_celsius(*metal.shielding_temperature) ==
          near(number(row, "temperature"), data.tolerance));
  }
}
