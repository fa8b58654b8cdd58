#include "purgewright/standards/tables.hpp"

#include "reference_data.hpp"

using namespace purgewright;
using namespace standards_reference;
using standards::Limits;

namespace {

double micrometres_of(units::Length length) {
  return length.value() * 1e6;
}

void check_limits(const std::optional<Limits> &limits, const YAML::Node &pair, double tolerance) {
  REQUIRE(limits.has_value());
  CHECK(micrometres_of(limits->lower) == near(pair[0].as<double>(), tolerance));
  CHECK(micrometres_of(limits->upper) == near(pair[1].as<double>(), tolerance));
}

void check_deviations(const char *id) {
  const Expected data = expected("fits.yaml", id);
  for (const YAML::Node &row : data.values) {
    const units::Length nominal = units::millimetres(number(row, "nominal_mm"));
    const char letter = row["letter"].as<char>();
    const int grade = row["grade"].as<int>();
    INFO(nominal.value() * 1e3 << " " << letter << grade);
    const bool hole = text(row, "kind") == "hole";
    const auto limits = hole ? standards::hole_deviation(nominal, letter, grade)
                             : standards::shaft_deviation(nominal, letter, grade);
    check_limits(limits, row["deviation"], data.tolerance);
  }
}

void check_fits(const char *id) {
  const Expected data = expected("fits.yaml", id);
  for (const YAML::Node &row : data.values) {
    INFO(text(row, "fit"));
    const units::Length nominal = units::millimetres(number(row, "nominal_mm"));
    const auto hole = standards::hole_deviation(nominal, row["hole"][0].as<char>(), row["hole"][1].as<int>());
    const auto shaft =
        standards::shaft_deviation(nominal, row["shaft"][0].as<char>(), row["shaft"][1].as<int>());
    check_limits(hole, row["hole_deviation"], data.tolerance);
    check_limits(shaft, row["shaft_deviation"], data.tolerance);
    CHECK(micrometres_of(hole->lower - shaft->upper) == near(at(row, "clearance", 0), data.tolerance));
    CHECK(micrometres_of(hole->upper - shaft->lower) == near(at(row, "clearance", 1), data.tolerance));
  }
}

} // namespace

TEST_CASE("ISO 286 deviations as published", "[reference][standards]") {
  for (const char *id : {"published_deviations", "printed_shafts", "printed_shafts_over_80"})
    check_deviations(id);
}

TEST_CASE("ISO 286 deviations as remembered", "[reference][standards]") {
  check_deviations("remembered_deviations");
}

TEST_CASE("ISO 286 fits as published", "[reference][standards]") {
  check_fits("published_fits");
}

TEST_CASE("ISO 286 fits worked by hand", "[reference][standards]") {
  check_fits("worked_fits");
}

TEST_CASE("standard tolerance grades as published", "[reference][standards]") {
  const Expected data = expected("fits.yaml", "tolerance_grades");
  for (const YAML::Node &row : data.values)
    for (const double nominal_mm : {number(row, "over_mm") + 0.001, number(row, "up_to_mm")})
      for (std::size_t i = 0; i < 9; ++i) {
        INFO(nominal_mm << " IT" << 5 + i);
        const auto hole =
            standards::hole_deviation(units::millimetres(nominal_mm), 'H', static_cast<int>(5 + i));
        REQUIRE(hole.has_value());
        CHECK(micrometres_of(hole->upper) == near(at(row, "grades", i), data.tolerance));
      }
}
