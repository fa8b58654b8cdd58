#include "drawing/labels.hpp"

#include "purgewright/drawing/lettering.hpp"
#include "purgewright/drawing/sheets.hpp"

#include <catch2/catch.hpp>

using namespace purgewright;
using namespace purgewright::drawing;
using units::millimetres;

TEST_CASE("numbers are written as each unit's standard has them") {
  const Labels metric(Unit::millimetre), inch(Unit::inch);
  CHECK(metric.number(millimetres(25.40)) == "25.4");
  CHECK(metric.number(millimetres(12.0)) == "12");
  CHECK(metric.number(millimetres(0.5)) == "0.5");
  CHECK(inch.number(units::inches(0.5)) == ".500"); // no zero before the point, trailing zeros stay
  CHECK(inch.number(units::inches(1.25)) == "1.250");
  CHECK(metric.diameter(millimetres(6.0)).lines[0] == "⌀12");
  CHECK(metric.roughness(1.6) == "Ra 1.6");
  CHECK(inch.roughness(1.6) == "63 µin");
  CHECK(inch.roughness(3.2) == "125 µin");
}

// ISO 286-2: 25 f7 -20/-41, 25 H8 +33/0, 23.5 h7 0/-21 micrometres.
TEST_CASE("a fit is written with both limits of ISO 286-2") {
  const Labels metric(Unit::millimetre);
  CHECK(metric.fitted(millimetres(12.5), 'f', 7).lines[0] == "⌀25 f7 (-0.02/-0.041)");
  CHECK(metric.fitted(millimetres(12.5), 'H', 8).lines[0] == "⌀25 H8 (+0.033/0)");
  CHECK(metric.fitted(millimetres(11.75), 'h', 7).lines[0] == "⌀23.5 h7 (0/-0.021)");
}

// By hand from the same tables. 23.5 h7: .925197 0/-.000827 in, of which half thousandths leave .0005. 5/32
// H7 (over 3 to 6 mm: +12/0): .15625 +.000472/0, of which they leave nothing. 25.09 h8 (over 18 to 30 mm:
// 0/-33): .987795 0/-.001299, of which they leave .001.
TEST_CASE("a fit in inches has limits of size that lie within the fit, however they round") {
  const Labels inch(Unit::inch);
  CHECK(inch.fitted(millimetres(11.75), 'h', 7).lines[0] == "⌀.9245-.9250 (.9252 h7)");
  CHECK(inch.fitted(units::inches(5.0 / 64.0), 'H', 7).lines[0] == "⌀.1563-.1567 (.1563 H7)");
  CHECK(inch.fitted(millimetres(12.545), 'h', 8).lines[0] == "⌀.9865-.9875 (.9878 h8)");
}

// 0.03 mm is .00118 in, 0.05 mm .00197, 0.1 mm .00394, 0.2 mm .00787; 41/32 in printed 1.2813 is .00005 off.
TEST_CASE("a plus-minus in inches is what a shop would write, and lies within what is allowed") {
  const Labels inch(Unit::inch);
  CHECK(inch.plus_minus(units::inches(1.0), millimetres(0.03)).lines[0] == "1.000 ±.001");
  CHECK(inch.plus_minus(units::inches(41.0 / 32.0), millimetres(0.03)).lines[0] == "1.2813 ±.0010");
  CHECK(inch.plus_minus(units::inches(41.0 / 32.0), millimetres(0.05)).lines[0] == "1.2813 ±.0015");
  CHECK(inch.plus_minus(units::inches(1.25), millimetres(0.1)).lines[0] == "1.250 ±.003");
  CHECK(inch.plus_minus(units::inches(1.25), millimetres(0.2)).lines[0] == "1.250 ±.007");
}

// 0.05 mm is .00197 in, 0.1 mm .00394.
TEST_CASE("a tolerance zone is printed no wider than it is") {
  CHECK(Labels(Unit::inch).zone(millimetres(0.05)) == ".0015");
  CHECK(Labels(Unit::inch).zone(millimetres(0.1)) == ".003");
  CHECK(Labels(Unit::inch).zone(units::inches(0.002)) == ".002");
  CHECK(Labels(Unit::millimetre).zone(millimetres(0.05)) == "0.05");
  CHECK(Labels(Unit::millimetre).zone(millimetres(0.025)) == "0.025");
}

TEST_CASE("limits as printed lie within those asked for and leave most of them, at every size") {
  const Labels inch(Unit::inch);
  for (double size = 4.0; size < 120.0; size += 0.37) { // mm
    for (const double by : {0.012, 0.03, 0.05, 0.1, 0.2}) {
      const auto text = inch.plus_minus(millimetres(size), millimetres(by)).lines[0];
      INFO(text);
      const auto sign = text.find(" ±");
      const double nominal = 25.4 * std::stod(text.substr(0, sign)),
                   printed = 25.4 * std::stod(text.substr(sign + std::string(" ±").size()));
      CHECK(std::abs(nominal - size) + printed <= by + 1e-6);
      CHECK(printed >= 0.6 * by);
      const auto limits =
          inch.limited(millimetres(size), millimetres(size + by), millimetres(size), "").lines[0];
      INFO(limits);
      const double low = 25.4 * std::stod(limits),
                   high = 25.4 * std::stod(limits.substr(limits.find('-') + 1));
      CHECK(low >= size - 1e-6);
      CHECK(high <= size + by + 1e-6);
      CHECK(high - low >= (by < 0.02 ? 0.4 : 0.6) * by);
      CHECK(limits.find('-') - limits.find('.') <= 5); // ten-thousandths at the finest
    }
  }
}

TEST_CASE("a label knows where its number stands, for whoever measures anew") {
  const Labels metric(Unit::millimetre);
  for (const Label &label :
       {metric.diameter(millimetres(2.0), "4× ", " through"), metric.fitted(millimetres(12.5), 'f', 7),
        metric.plus_minus(millimetres(4.0), millimetres(0.1), "2× R")}) {
    INFO(label.lines[0]);
    const std::string number = label.lines[0].substr(label.number_at, label.number_size);
    CHECK(std::stod(number) == Approx(label.shown));
  }
}

TEST_CASE("a printed tolerance is never wider than the one asked for") {
  CHECK(Labels(Unit::millimetre).plus_minus(millimetres(3.0), millimetres(0.127)).lines[0] == "3 ±0.12");
  CHECK(Labels(Unit::inch).plus_minus(units::inches(0.1), millimetres(0.127)).lines[0] == ".100 ±.005");
}

TEST_CASE("a callout of a thread is that of its series, its depths in the sheet's unit") {
  const auto &m4 = *standards::screw("M4");
  const auto lines =
      Labels(Unit::millimetre).tapped(m4, 4, millimetres(8.0), {millimetres(1.65), millimetres(10.0)});
  CHECK(lines == std::vector<std::string>{"4× M4×0.7-6H ↧8", "drill ⌀3.3 ↧10"});
  const auto &unified = *standards::screw("8-32");
  const auto inches =
      Labels(Unit::inch)
          .tapped(unified, 4, units::inches(0.328), {0.5 * unified.tap_drill, units::inches(0.41)});
  CHECK(inches == std::vector<std::string>{"4× 8-32 UNC-2B ↧.328", "drill ⌀.136 ↧.410"});
}

TEST_CASE("the date of a sheet is the epoch's day or nothing") {
  CHECK(date_of_epoch("0") == "1970-01-01");
  CHECK(date_of_epoch("1764028800") == "2025-11-25");
  CHECK(date_of_epoch(nullptr).empty());
  CHECK(date_of_epoch("").empty());
  CHECK(date_of_epoch("12x").empty());
  CHECK(date_of_epoch("-5").empty());
}

TEST_CASE("widths of lettering add up and grow with the height") {
  const double one = text_width("8", 3.5), many = text_width("8888888888", 3.5);
  CHECK(one > 1.0);
  CHECK(many == Approx(10.0 * one).epsilon(0.02));
  CHECK(text_width("Purge", 5.0) == Approx(2.0 * text_width("Purge", 2.5)));
}
