// SI to shop units and text.
#include "purgewright/units/dimension.hpp"
#include "purgewright/units/parse.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <string>
#include <string_view>

using namespace purgewright::units;

namespace {

constexpr Dimension all_dimensions[] = {
    Dimension::count,   Dimension::ratio,       Dimension::length,   Dimension::area,    Dimension::volume,
    Dimension::mass,    Dimension::time,        Dimension::velocity, Dimension::flow,    Dimension::pressure,
    Dimension::density, Dimension::temperature, Dimension::angle,    Dimension::current, Dimension::voltage,
    Dimension::power,   Dimension::frequency,   Dimension::cost,     Dimension::price};

struct Row {
  double si;
  Dimension dimension;
  std::string_view metric, inch;
};

// clang-format off
const Row rows[] = {
    {0.03175, Dimension::length, "31.75 mm", "1.25 in"},
    {0.0, Dimension::length, "0 mm", "0 in"},
    {-0.001, Dimension::length, "-1 mm", "-0.03937 in"},
    {1e-6, Dimension::length, "0.001 mm", "0.00003937 in"},
    {9.99996, Dimension::length, "10000 mm", "393.7 in"},
    {123.456, Dimension::length, "123500 mm", "4860 in"},
    {1e-4, Dimension::flow, "6 L/min", "12.71 ft3/h"},
    {1e-5, Dimension::volume, "10 mL", "0.6102 in3"},
    {0.0025, Dimension::volume, "2.5 L", "152.6 in3"},
    {0.05, Dimension::volume, "50 L", "1.766 ft3"},
    {50.0, Dimension::volume, "50000 L", "1766 ft3"},
    {50.0, Dimension::pressure, "50 Pa", "0.007252 psi"},
    {2e5, Dimension::pressure, "200 kPa", "29.01 psi"},
    {700.15, Dimension::temperature, "427 degC", "800.6 degF"},
    {233.15, Dimension::temperature, "-40 degC", "-40 degF"},
    {0.002, Dimension::velocity, "2 mm/s", "4.724 in/min"},
    {0.1, Dimension::velocity, "100 mm/s", "19.69 ft/min"},
    {0.25, Dimension::mass, "250 g", "0.5512 lb"},
    {2.5, Dimension::mass, "2.5 kg", "5.512 lb"},
    {2e-5, Dimension::area, "20 mm2", "0.031 in2"},
    {90.0, Dimension::time, "90 s", "90 s"},
    {600.0, Dimension::time, "10 min", "10 min"},
    {36000.0, Dimension::time, "10 h", "10 h"},
    {0.2617993877991494, Dimension::angle, "15 deg", "15 deg"},
    {0.77, Dimension::ratio, "0.77", "0.77"},
    {5e-5, Dimension::ratio, "50 ppm", "50 ppm"},
    {3.0, Dimension::count, "3", "3"},
    {6.0 / 3600, Dimension::frequency, "6 1/h", "6 1/h"},
    {40.0, Dimension::current, "40 A", "40 A"},
};
// clang-format on

} // namespace

TEST_CASE("SI values print in shop units", "[unit][units]") {
  for (const Row &row : rows) {
    CHECK(shop_text(row.si, row.dimension, UnitSystem::metric) == row.metric);
    CHECK(shop_text(row.si, row.dimension, UnitSystem::inch) == row.inch);
  }
}

TEST_CASE("digits bound the printed figures", "[unit][units]") {
  CHECK(shop_text(0.0123456789, Dimension::length, UnitSystem::metric, 1) == "10 mm");
  CHECK(shop_text(0.0123456789, Dimension::length, UnitSystem::metric, 2) == "12 mm");
  CHECK(shop_text(0.0123456789, Dimension::length, UnitSystem::metric, 6) == "12.3457 mm");
  CHECK(shop_text(0.0099999, Dimension::length, UnitSystem::metric, 3) == "10 mm");
  CHECK(shop_text(0.0123456789, Dimension::length, UnitSystem::metric, 0) == "10 mm");
}

TEST_CASE("ordinary sizes print without exponent", "[unit][units]") {
  for (double size = 1e-6; size < 1e9; size *= 7.3) {
    const std::string text = shop_text(size, Dimension::current, UnitSystem::metric);
    CHECK(text.find('e') == std::string::npos);
    CHECK(text.find(',') == std::string::npos);
  }
}

TEST_CASE("printed text reads back as the number it shows", "[unit][units]") {
  for (const Dimension dimension : all_dimensions) {
    if (dimension == Dimension::cost || dimension == Dimension::price)
      continue;
    for (const UnitSystem system : {UnitSystem::metric, UnitSystem::inch})
      for (const double si : {250.0, 3000.0, 70000.0}) {
        const std::string text = shop_text(si, dimension, system, 9);
        const Parsed parsed = parse_quantity(text, dimension);
        INFO(text << ": " << parsed.problem);
        REQUIRE(parsed.si);
        CHECK(*parsed.si == Approx(si).epsilon(2e-8));
      }
  }
}

TEST_CASE("every dimension has its texts, and its examples parse", "[unit][units]") {
  for (const Dimension dimension : all_dimensions) {
    INFO(plain_name(dimension));
    CHECK_FALSE(si_unit(dimension).empty());
    CHECK_FALSE(plain_name(dimension).empty());
    CHECK_FALSE(example_units(dimension).empty());
    const std::string_view examples = example_text(dimension);
    const std::string_view first = examples.substr(0, examples.find_first_of(","));
    const std::string_view one = first.substr(0, first.find(" or "));
    CHECK(parse_quantity(one, dimension).si.has_value());
    if (const auto last = examples.rfind(" or "); last != std::string_view::npos)
      CHECK(parse_quantity(examples.substr(last + 4), dimension).si.has_value());
  }
}

TEST_CASE("one of the SI unit is one", "[unit][units]") {
  for (const Dimension dimension : all_dimensions) {
    if (dimension == Dimension::count || dimension == Dimension::ratio || dimension == Dimension::cost ||
        dimension == Dimension::price)
      continue;
    INFO(si_unit(dimension));
    CHECK(parse_quantity("1 " + std::string(si_unit(dimension)), dimension).si == 1.0);
  }
}

TEST_CASE("Terms of a sum and a value beside its limit are printed in one unit", "[unit][units]") {
  const auto beside = [](double si, double other, Dimension dimension) {
    return shop_text_beside(si, other, dimension, UnitSystem::metric);
  };
  CHECK(beside(75.0, 600.0, Dimension::time) == "1.25 min");
  CHECK(beside(600.0, 75.0, Dimension::time) == "600 s");
  CHECK(beside(2e-5, 1.5e-3, Dimension::volume) == "0.02 L");
  CHECK(beside(0.25, 2.0, Dimension::mass) == "0.25 kg");
  CHECK(beside(0.002, 5e-5, Dimension::ratio) == "2000 ppm");
  CHECK(shop_text_beside(1e-5, 0.05, Dimension::volume, UnitSystem::inch) == "0.0003531 ft3");
}

TEST_CASE("A limit is never printed laxer than it is", "[unit][units]") {
  const auto text = [](double si, Rounding rounding, int digits = 4) {
    return shop_text_beside(si, si, Dimension::length, UnitSystem::metric, digits, rounding);
  };
  CHECK(text(0.0284449, Rounding::nearest) == "28.44 mm");
  CHECK(text(0.0284449, Rounding::up) == "28.45 mm");
  CHECK(text(0.0284451, Rounding::down) == "28.44 mm");
  CHECK(text(0.0284451, Rounding::nearest) == "28.45 mm");
  CHECK(text(-0.0284449, Rounding::down) == "-28.45 mm");
  CHECK(text(-0.0284449, Rounding::up) == "-28.44 mm");
  CHECK(text(0.0099999, Rounding::down) == "9.999 mm");
  CHECK(text(0.0099999, Rounding::nearest) == "10 mm");
  CHECK(text(0.005 * 3.0, Rounding::down) == "15 mm"); // noise of arithmetic is no reason to go on
  CHECK(text(0.1 + 0.2 - 0.3 + 0.015, Rounding::up) == "15 mm");
  CHECK(text(0.0, Rounding::up) == "0 mm");
  for (const double si : {1.23456e-3, 9.87654e-2, 0.4449999, 7.7777e-4}) {
    CAPTURE(si);
    CHECK(*parse_quantity(text(si, Rounding::down), Dimension::length).si <= si);
    CHECK(*parse_quantity(text(si, Rounding::up), Dimension::length).si >= si);
  }
}
