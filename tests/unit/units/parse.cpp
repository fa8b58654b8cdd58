// Text to SI: one line of data each. Expected values are written from the definitions of the units.
#include "purgewright/units/parse.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <string_view>
#include <thread>
#include <vector>

using purgewright::units::Dimension;
using purgewright::units::parse_quantity;
using purgewright::units::Parsed;

namespace {

constexpr double foot3 = 0.3048 * 0.3048 * 0.3048;
constexpr double psi = 4.4482216152605 / (0.0254 * 0.0254);
constexpr double pi = 3.14159265358979323846;

struct Accepted {
  std::string_view text;
  Dimension dimension;
  double si;
};

// clang-format off
const Accepted accepted[] = {
    // numbers
    {"1.25 in", Dimension::length, 0.03175},
    {"1.25in", Dimension::length, 0.03175},
    {"  1.25   in  ", Dimension::length, 0.03175},
    {"+1.25 in", Dimension::length, 0.03175},
    {"-1.25 in", Dimension::length, -0.03175},
    {".5 in", Dimension::length, 0.0127},
    {"2. mm", Dimension::length, 0.002},
    {"1e-3 m", Dimension::length, 0.001},
    {"1E1mm", Dimension::length, 0.01},
    {"5/8 in", Dimension::length, 0.015875},
    {"1 1/4 in", Dimension::length, 0.03175},
    {"1-1/4 in", Dimension::length, 0.03175},
    {"-1 1/4 in", Dimension::length, -0.03175},
    {"1  1/4\"", Dimension::length, 0.03175},
    {"0 mm", Dimension::length, 0.0},
    {"\u22121.25 in", Dimension::length, -0.03175},
    {"1.25\u00a0in", Dimension::length, 0.03175},
    {"1.25\tin", Dimension::length, 0.03175},
    // lengths
    {"31.75 mm", Dimension::length, 0.03175},
    {"35 thou", Dimension::length, 0.000889},
    {"35 mil", Dimension::length, 0.000889},
    {"35 mils", Dimension::length, 0.000889},
    {"1.25 inch", Dimension::length, 0.03175},
    {"1.25 inches", Dimension::length, 0.03175},
    {"1.25\"", Dimension::length, 0.03175},
    {"1.25\u2033", Dimension::length, 0.03175},
    {"1.25''", Dimension::length, 0.03175},
    {"50 um", Dimension::length, 50e-6},
    {"50 \u00b5m", Dimension::length, 50e-6},
    {"50 \u03bcm", Dimension::length, 50e-6},
    {"2 ft", Dimension::length, 0.6096},
    {"1 yard", Dimension::length, 0.9144},
    {"3 m", Dimension::length, 3.0},
    {"5 (mm)", Dimension::length, 0.005},
    // areas, volumes, masses, times
    {"20 mm2", Dimension::area, 20e-6},
    {"20 mm^2", Dimension::area, 20e-6},
    {"20 mm\u00b2", Dimension::area, 20e-6},
    {"10 L", Dimension::volume, 0.01},
    {"10 l", Dimension::volume, 0.01},
    {"250 mL", Dimension::volume, 250e-6},
    {"3 in3", Dimension::volume, 3 * 0.0254 * 0.0254 * 0.0254},
    {"2 ft^3", Dimension::volume, 2 * foot3},
    {"1 lb", Dimension::mass, 0.45359237},
    {"500 g", Dimension::mass, 0.5},
    {"2 min", Dimension::time, 120.0},
    {"1.5 h", Dimension::time, 5400.0},
    {"1 hour", Dimension::time, 3600.0},
    // velocities and flows
    {"2 mm/s", Dimension::velocity, 0.002},
    {"5 in/min", Dimension::velocity, 0.127 / 60},
    {"20 ft/min", Dimension::velocity, 6.096 / 60},
    {"5 ipm", Dimension::velocity, 0.127 / 60},
    {"6 L/min", Dimension::flow, 1e-4},
    {"6 l/min", Dimension::flow, 1e-4},
    {"6 lpm", Dimension::flow, 1e-4},
    {"6 LPM", Dimension::flow, 1e-4},
    {"6 slpm", Dimension::flow, 1e-4},
    {"6 L.min-1", Dimension::flow, 1e-4},
    {"6 L min^-1", Dimension::flow, 1e-4},
    {"6 L\u00b7min-1", Dimension::flow, 1e-4},
    {"12 ft3/h", Dimension::flow, 12 * foot3 / 3600},
    {"12 ft^3/h", Dimension::flow, 12 * foot3 / 3600},
    {"12 ft\u00b3/h", Dimension::flow, 12 * foot3 / 3600},
    {"12 cfh", Dimension::flow, 12 * foot3 / 3600},
    {"12 CFH", Dimension::flow, 12 * foot3 / 3600},
    {"12 SCFH", Dimension::flow, 12 * foot3 / 3600},
    {"12 ft3/hour", Dimension::flow, 12 * foot3 / 3600},
    {"0.36 m3/h", Dimension::flow, 1e-4},
    {"100 sccm", Dimension::flow, 1e-4 / 60},
    // pressures and densities
    {"5 mbar", Dimension::pressure, 500.0},
    {"2 bar", Dimension::pressure, 2e5},
    {"200 kPa", Dimension::pressure, 2e5},
    {"50 Pa", Dimension::pressure, 50.0},
    {"30 psi", Dimension::pressure, 30 * psi},
    {"30 PSI", Dimension::pressure, 30 * psi},
    {"1 atm", Dimension::pressure, 101325.0},
    {"4.51 g/cm3", Dimension::density, 4510.0},
    {"4510 kg/m3", Dimension::density, 4510.0},
    // temperatures
    {"20 degC", Dimension::temperature, 293.15},
    {"20 \u00b0C", Dimension::temperature, 293.15},
    {"20\u00b0C", Dimension::temperature, 293.15},
    {"20 deg C", Dimension::temperature, 293.15},
    {"20 celsius", Dimension::temperature, 293.15},
    {"32 degF", Dimension::temperature, 273.15},
    {"212 \u00b0F", Dimension::temperature, 373.15},
    {"-40 degF", Dimension::temperature, 233.15},
    {"300 K", Dimension::temperature, 300.0},
    {"0 K", Dimension::temperature, 0.0},
    // angles, ratios, counts
    {"15 deg", Dimension::angle, pi / 12},
    {"15\u00b0", Dimension::angle, pi / 12},
    {"15 degrees", Dimension::angle, pi / 12},
    {"0.26 rad", Dimension::angle, 0.26},
    {"900 arcmin", Dimension::angle, pi / 12},
    {"50 ppm", Dimension::ratio, 50e-6},
    {"10 %", Dimension::ratio, 0.1},
    {"10%", Dimension::ratio, 0.1},
    {"0.5", Dimension::ratio, 0.5},
    {"1/2", Dimension::ratio, 0.5},
    {"3", Dimension::count, 3.0},
    {"3.0", Dimension::count, 3.0},
    {"-2", Dimension::count, -2.0},
    // the arc and the room
    {"40 A", Dimension::current, 40.0},
    {"10 V", Dimension::voltage, 10.0},
    {"0.3 kW", Dimension::power, 300.0},
    {"300 V.A", Dimension::power, 300.0},
    {"6 1/h", Dimension::frequency, 6.0 / 3600},
    {"6/h", Dimension::frequency, 6.0 / 3600},
    {"6 h-1", Dimension::frequency, 6.0 / 3600},
    {"1/2 1/h", Dimension::frequency, 0.5 / 3600},
    {"2 Hz", Dimension::frequency, 2.0},
};

struct Refused {
  std::string_view text;
  Dimension dimension;
  std::string_view says; // part of the problem
};

const Refused refused[] = {
    {"", Dimension::length, "empty"},
    {"   ", Dimension::length, "empty"},
    {"1.25", Dimension::length, "has no unit"},
    {"15", Dimension::angle, "has no unit"},
    {"300", Dimension::temperature, "has no unit"},
    {"in", Dimension::length, "does not start with a number"},
    {"about 3 in", Dimension::length, "does not start with a number"},
    {"--3 in", Dimension::length, "does not start with a number"},
    {"nan mm", Dimension::length, "does not start with a number"},
    {"NaN", Dimension::ratio, "does not start with a number"},
    {"inf mm", Dimension::length, "does not start with a number"},
    {"-inf mm", Dimension::length, "does not start with a number"},
    {"1e400 mm", Dimension::length, "too large"},
    {"1e308 m3", Dimension::price, "currency"},
    {"9e307 kbar", Dimension::pressure, "too large"},
    {"1,25 in", Dimension::length, "decimal point"},
    {"1,000 mm", Dimension::length, "decimal point"},
    {"1.2.3 mm", Dimension::length, "second decimal point"},
    {"5/0 in", Dimension::length, "divides by zero"},
    {"1 5/4 in", Dimension::length, "not below one"},
    {"1 4/4 in", Dimension::length, "not below one"},
    {"1.5/2 in", Dimension::length, "unknown unit"},
    {"5 / 8 in", Dimension::length, "unknown unit"},
    {"0x10 mm", Dimension::length, "unknown unit"},
    {"5 10 mm", Dimension::length, "unknown unit"},
    {"5 mm 2", Dimension::length, "unknown unit"},
    {"5 mm -1", Dimension::length, "unknown unit"},
    {"5 -mm", Dimension::length, "unknown unit"},
    {"6 -1/h", Dimension::frequency, "unknown unit"},
    {"6-1/h", Dimension::frequency, "unknown unit"},
    {"5 mm %", Dimension::length, "unknown unit"},
    {"5 mm please", Dimension::length, "unknown unit"},
    {"5 mm; 3", Dimension::length, "unknown unit"},
    {"5 mm @ 3", Dimension::length, "unknown unit"},
    {"5 mm since 3", Dimension::length, "unknown unit"},
    {"5 lg(re m)", Dimension::length, "unknown unit"},
    {"5 ln( RE m)", Dimension::length, "unknown unit"},
    {"1 l lg(re11)g(re11)", Dimension::volume, "unknown unit"}, // found by fuzzing: the database's reader leaked on it
    {"5 smoots", Dimension::velocity, "unknown unit"},
    {"5 \u20ac", Dimension::length, "unknown unit"},
    {"5 mm\xff", Dimension::length, "unknown unit"},
    {"30 psig", Dimension::pressure, "gauge or absolute"},
    {"3 barg", Dimension::pressure, "write bar"},
    {"1 in", Dimension::flow, "is a length, a flow is wanted, such as 6 L/min or 12 ft3/h"},
    {"6 L/min", Dimension::length, "is a flow, a length is wanted"},
    {"1 yard", Dimension::flow, "is a length, a flow is wanted"},
    {"50 mm2", Dimension::length, "is an area"},
    {"15 deg", Dimension::ratio, "is an angle, a ratio is wanted"},
    {"1 rad", Dimension::ratio, "is an angle"},
    {"1 arcmin", Dimension::ratio, "is an angle"},
    {"15 %", Dimension::angle, "is a ratio, an angle is wanted"},
    {"15 percent", Dimension::angle, "is a ratio"},
    {"15 deg", Dimension::temperature, "is an angle"},
    {"60 rpm", Dimension::frequency, "a frequency is wanted"},
    {"5 mol", Dimension::mass, "is a quantity in mol, a mass is wanted"},
    {"20 C", Dimension::temperature, "needs deg before C"},
    {"800 F", Dimension::temperature, "needs deg before F"},
    {"-300 degC", Dimension::temperature, "below absolute zero"},
    {"2.5", Dimension::count, "whole number"},
    {"3 mm", Dimension::count, "whole number"},
    {"3 %", Dimension::count, "whole number"},
    {"9", Dimension::price, "currency"},
    {"9 eur/m3", Dimension::price, "currency"},
    {"9 EURO/m3", Dimension::price, "currency"},
    {"9 \u20ac/m3", Dimension::price, "currency"},
    {"9 EUR", Dimension::price, "is a cost, a price is wanted"},
    {"9 EUR/kg", Dimension::price, "not money per volume"},
    {"9 EUR/", Dimension::price, "not money per volume"},
    {"9 EUR/10 L", Dimension::price, "not money per volume"},
    {"9 EUR/m3", Dimension::cost, "a cost is wanted"},
    {"9 m3", Dimension::cost, "currency"},
};
// clang-format on

} // namespace

TEST_CASE("text in many spellings becomes SI", "[unit][units]") {
  for (const Accepted &row : accepted) {
    const Parsed parsed = parse_quantity(row.text, row.dimension);
    INFO(row.text << ": " << parsed.problem);
    REQUIRE(parsed.si.has_value());
    CHECK(*parsed.si == Approx(row.si).epsilon(2e-14).margin(1e-300));
    CHECK(parsed.problem.empty());
    CHECK(parsed.currency.empty());
  }
}

TEST_CASE("text that is no such quantity is refused with the reason", "[unit][units]") {
  for (const Refused &row : refused) {
    const Parsed parsed = parse_quantity(row.text, row.dimension);
    INFO(row.text << ": " << parsed.problem);
    CHECK_FALSE(parsed.si.has_value());
    CHECK(parsed.problem.find(row.says) != std::string::npos);
    CHECK_FALSE(parsed.problem.ends_with('.'));
  }
}

TEST_CASE("overlong text and embedded zero bytes are refused", "[unit][units]") {
  CHECK_FALSE(parse_quantity("1 " + std::string(100000, 'm'), Dimension::length).si);
  CHECK_FALSE(parse_quantity(std::string("1 mm\0in", 7), Dimension::length).si);
  CHECK_FALSE(parse_quantity(std::string("1\0 mm", 5), Dimension::length).si);
  CHECK_FALSE(parse_quantity("1 " + std::string(30, '('), Dimension::length).si);
}

TEST_CASE("money keeps its currency beside the number", "[unit][units]") {
  const Parsed metric = parse_quantity("9 EUR/m3", Dimension::price);
  REQUIRE(metric.si);
  CHECK(*metric.si == 9.0);
  CHECK(metric.currency == "EUR");

  const Parsed inch = parse_quantity("0.25 USD / ft3", Dimension::price);
  REQUIRE(inch.si);
  CHECK(*inch.si == Approx(0.25 / foot3).epsilon(1e-14));
  CHECK(inch.currency == "USD");

  const Parsed litre = parse_quantity("0.009 EUR/L", Dimension::price);
  REQUIRE(litre.si);
  CHECK(*litre.si == Approx(9.0).epsilon(1e-14));

  const Parsed cost = parse_quantity("12.50 CHF", Dimension::cost);
  REQUIRE(cost.si);
  CHECK(*cost.si == 12.5);
  CHECK(cost.currency == "CHF");
}

TEST_CASE("one size in two units is one number to the last bit", "[unit][units]") {
  const auto length = [](const std::string &text) {
    return parse_quantity(text, Dimension::length).si.value();
  };
  for (int thousandths = 1; thousandths <= 4000; ++thousandths) {
    const std::string inch = std::to_string(thousandths) + "e-3 in";
    const std::string mm = std::to_string(thousandths * 254) + "e-4 mm";
    INFO(inch << " and " << mm);
    REQUIRE(length(inch) == length(mm));
  }
  CHECK(length("1 1/4 in") == length("31.75 mm"));
  CHECK(length("35 thou") == length("0.889 mm"));
}

TEST_CASE("a price beyond every number is refused as one", "[unit][units]") {
  const auto parsed = parse_quantity("1e300 EUR/mm3", Dimension::price); // once infinite, and read
  CHECK_FALSE(parsed.si.has_value());
  CHECK(parsed.problem == "\"1e300 EUR/mm3\" is too large a number");
}

TEST_CASE("many threads may read units at once", "[unit][units]") {
  std::vector<double> results(8, 0.0);
  std::vector<std::thread> threads;
  for (double &result : results)
    threads.emplace_back([&result] {
      for (int i = 0; i < 200; ++i)
        result += parse_quantity("1 yard", Dimension::length).si.value_or(0.0);
    });
  for (std::thread &thread : threads)
    thread.join();
  for (const double result : results)
    CHECK(result == Approx(200 * 0.9144).epsilon(1e-12));
}

TEST_CASE("A difference of temperatures has no zero; other differences are quantities", "[unit][units]") {
  using purgewright::units::parse_difference;
  for (const auto &[text, kelvin] : std::vector<std::pair<std::string_view, double>>{
           {"50 degC", 50.0}, {"90 degF", 50.0}, {"50 K", 50.0}, {"-9 degF", -5.0}, {"9 degR", 5.0}}) {
    CAPTURE(text);
    const Parsed parsed = parse_difference(text, Dimension::temperature);
    REQUIRE(parsed.si);
    CHECK(*parsed.si == Approx(kelvin).epsilon(1e-12));
  }
  CHECK(*parse_difference("1.25 in", Dimension::length).si == 0.03175);
  CHECK(parse_difference("2 EUR/m3", Dimension::price).currency == "EUR");
  CHECK_FALSE(parse_difference("50 mm", Dimension::temperature).si);
  CHECK_FALSE(parse_difference("50 C", Dimension::temperature).si);
  CHECK_FALSE(parse_difference("50", Dimension::temperature).si);
}
