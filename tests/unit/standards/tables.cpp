// Invariants of the tables and the edges of their lookups.
#include "purgewright/standards/tables.hpp"
#include "purgewright/standards/screw_lengths.hpp"
#include "purgewright/standards/welding.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <set>
#include <string>

using namespace purgewright;
using namespace purgewright::standards;
using units::inches;
using units::millimetres;

// ISO 286-2: N7 over 3 to 6 mm -4/-16 um, over 6 to 10 mm -4/-19 um; hardened dowel pins of 5/32 in are .1563
// to .1565 in (ASME B18.8.2): both from memory.
TEST_CASE("holes that inch dowels are tapped into are tight on every pin, within a thousandth") {
  const auto inch = hole_deviation(units::inches(5.0 / 32.0), 'N', 7);
  REQUIRE(inch);
  CHECK(units::to_millimetres(inch->upper) == Approx(-0.004));
  CHECK(units::to_millimetres(inch->lower) == Approx(-0.016));
  CHECK(units::to_millimetres(hole_deviation(millimetres(8), 'N', 7)->lower) == Approx(-0.019));
  CHECK_FALSE(hole_deviation(millimetres(4), 'N', 8).has_value());
  const auto least_hole = units::inches(5.0 / 32.0) + inch->lower,
             most_hole = units::inches(5.0 / 32.0) + inch->upper;
  CHECK(most_hole < units::inches(0.1563));
  CHECK(units::inches(0.1565) - least_hole < units::inches(0.001));
}

TEST_CASE("fits are refused outside letters, grades and sizes", "[unit][standards]") {
  CHECK(hole_deviation(millimetres(25), 'H', 7).has_value());
  CHECK_FALSE(hole_deviation(millimetres(3), 'H', 7).has_value());
  CHECK(hole_deviation(millimetres(3.001), 'H', 7).has_value());
  CHECK(hole_deviation(millimetres(120), 'H', 7).has_value());
  CHECK_FALSE(hole_deviation(millimetres(120.001), 'H', 7).has_value());
  CHECK_FALSE(hole_deviation(millimetres(-25), 'H', 7).has_value());
  CHECK_FALSE(hole_deviation(millimetres(std::nan("")), 'H', 7).has_value());
  CHECK_FALSE(hole_deviation(millimetres(25), 'H', 4).has_value());
  CHECK_FALSE(hole_deviation(millimetres(25), 'H', 14).has_value());
  CHECK_FALSE(hole_deviation(millimetres(25), 'C', 11).has_value());
  CHECK_FALSE(hole_deviation(millimetres(25), 'K', 7).has_value());
  CHECK_FALSE(hole_deviation(millimetres(25), 'h', 7).has_value());
  CHECK_FALSE(shaft_deviation(millimetres(25), 'H', 7).has_value());
  CHECK_FALSE(shaft_deviation(millimetres(25), 'j', 6).has_value());
  CHECK_FALSE(shaft_deviation(millimetres(121), 'h', 7).has_value());
}

TEST_CASE("a step of nominal sizes ends at its upper size, included", "[unit][standards]") {
  const auto at_30 = shaft_deviation(millimetres(30), 'f', 7);
  const auto below = shaft_deviation(millimetres(29), 'f', 7);
  const auto above = shaft_deviation(millimetres(30.001), 'f', 7);
  REQUIRE((at_30 && below && above));
  CHECK(at_30->upper == below->upper);
  CHECK(above->upper < at_30->upper);
}

TEST_CASE("laws of fits hold in every step and grade", "[unit][standards]") {
  for (const double size : {4.0, 8.0, 15.0, 25.0, 40.0, 60.0, 100.0})
    for (int grade = 5; grade <= 13; ++grade) {
      const Length nominal = millimetres(size);
      INFO(size << " grade " << grade);
      const auto basic = hole_deviation(nominal, 'H', grade);
      REQUIRE(basic);
      const Length tolerance = basic->upper - basic->lower;
      CHECK(basic->lower.value() == 0.0);
      CHECK(tolerance.value() > 0.0);
      for (const char letter : {'D', 'E', 'F', 'G', 'H'}) {
        const auto hole = hole_deviation(nominal, letter, grade);
        const auto shaft = shaft_deviation(nominal, static_cast<char>(letter + 32), grade);
        REQUIRE((hole && shaft));
        CHECK(hole->lower.value() == Approx(-shaft->upper.value()).margin(1e-12));
        CHECK((hole->upper - hole->lower).value() == Approx(tolerance.value()).epsilon(1e-9));
        CHECK((shaft->upper - shaft->lower).value() == Approx(tolerance.value()).epsilon(1e-9));
      }
      const auto k = shaft_deviation(nominal, 'k', grade);
      REQUIRE(k);
      CHECK((k->lower.value() > 0.0) == (grade <= 7));
    }
}

TEST_CASE("tolerance grows with grade and with size", "[unit][standards]") {
  const auto tolerance = [](double size, int grade) {
    return hole_deviation(millimetres(size), 'H', grade)->upper;
  };
  for (const double size : {4.0, 8.0, 15.0, 25.0, 40.0, 60.0, 100.0})
    for (int grade = 6; grade <= 13; ++grade)
      CHECK(tolerance(size, grade) > tolerance(size, grade - 1));
  for (int grade = 5; grade <= 13; ++grade)
    CHECK(tolerance(100.0, grade) > tolerance(60.0, grade));
}

TEST_CASE("O-rings stand by section, then by inside diameter", "[unit][standards]") {
  const auto rings = o_rings();
  REQUIRE(rings.size() > 100);
  for (std::size_t i = 1; i < rings.size(); ++i) {
    INFO(rings[i].dash);
    const bool same_section = rings[i].section == rings[i - 1].section;
    CHECK((same_section ? rings[i].inside_diameter > rings[i - 1].inside_diameter
                        : rings[i].section > rings[i - 1].section));
    if (same_section) {
      CHECK(rings[i].inside_tolerance >= rings[i - 1].inside_tolerance);
      CHECK(std::stoi(std::string(rings[i].dash.substr(1))) ==
            std::stoi(std::string(rings[i - 1].dash.substr(1))) + 1);
    }
  }
}

TEST_CASE("O-rings are found by their whole dash number", "[unit][standards]") {
  for (const ORing &ring : o_rings())
    CHECK(o_ring(ring.dash) == &ring);
  CHECK(o_ring("018") == nullptr);
  CHECK(o_ring("-0180") == nullptr);
  CHECK(o_ring("") == nullptr);
}

TEST_CASE("glands are found near their section", "[unit][standards]") {
  const Gland *gland = static_radial_gland(inches(0.103));
  REQUIRE(gland != nullptr);
  CHECK(gland->section == inches(0.103));
  CHECK(static_radial_gland(millimetres(2.65)) == gland);
  CHECK(static_radial_gland(millimetres(2.62 + 0.09)) == gland);
  CHECK(static_radial_gland(millimetres(2.62 + 0.12)) == nullptr);
  CHECK(static_radial_gland(millimetres(1.0)) == nullptr);
  CHECK(static_radial_gland(millimetres(20.0)) == nullptr);
}

TEST_CASE("every O-ring has a gland that squeezes and holds it", "[unit][standards]") {
  const SealRules &rules = seal_rules();
  for (const ORing &ring : o_rings()) {
    INFO(ring.dash);
    const Gland *gland = static_radial_gland(ring.section);
    REQUIRE(gland != nullptr);
    CHECK(gland->depth_min < gland->depth_max);
    CHECK(gland->depth_max < ring.section - ring.section_tolerance);
    CHECK(gland->width > ring.section + ring.section_tolerance);
    CHECK(gland->corner_radius_min < gland->corner_radius_max);
    CHECK(gland->squeeze_min >= rules.squeeze_min);
    CHECK(gland->squeeze_max <= rules.squeeze_max);
    const double ring_area = units::pi / 4 * units::square(ring.section).value();
    const double groove_area = (gland->depth_min * (gland->width - gland->width_tolerance)).value();
    CHECK(ring_area < rules.fill_max * groove_area);
  }
}

TEST_CASE("port threads stand small to large and are found as the job spells them", "[unit][standards]") {
  for (const char *name : {"G1/8", "G1/4", "1/8 NPT", "1/4 NPT", "M5", "10-32 UNF"})
    CHECK(port_thread(name) != nullptr);
  CHECK(port_thread("G 1/8") == nullptr);
  const auto threads = port_threads();
  for (std::size_t i = 1; i < threads.size(); ++i)
    CHECK(threads[i].major > threads[i - 1].major);
}

TEST_CASE("a port thread can be cut and used", "[unit][standards]") {
  for (const PortThread &thread : port_threads()) {
    INFO(thread.name);
    CHECK(thread.drill < thread.major);
    CHECK(thread.drill > thread.major - 2.0 * thread.pitch);
    const double lead = units::ratio(thread.drill_depth - thread.full_thread, thread.pitch);
    CHECK(lead >= 3.0); // tap lead of three to five pitches
    CHECK(lead <= 5.0);
    CHECK(thread.full_thread > 3.0 * thread.pitch);
    CHECK(thread.fitting_width > thread.major);
    const bool taper = thread.name.ends_with("NPT");
    CHECK((thread.spot_face.value() == 0.0) == taper);
    CHECK((taper || thread.spot_face > thread.major));
    CHECK_FALSE(thread.callout.empty());
    CHECK_FALSE(thread.source.empty());
  }
  CHECK(units::to_millimetres(port_thread("G1/8")->fitting_width) == Approx(16.17).margin(0.01));
}

TEST_CASE("a cap screw fits its holes", "[unit][standards]") {
  const auto rows = screws();
  REQUIRE(rows.size() == 7);
  CHECK(rows.front().name == "M3");
  CHECK(rows.back().name == "M12");
  for (const Screw &row : rows) {
    INFO(row.name);
    CHECK(screw(row.name) == &row);
    CHECK(units::to_millimetres(row.tap_drill) ==
          Approx(units::to_millimetres(row.major - row.pitch)).margin(0.06));
    CHECK(row.clearance > row.major);
    CHECK(row.head_diameter > row.clearance);
    CHECK(row.counterbore_diameter > row.head_diameter);
    CHECK(row.counterbore_depth > row.head_height);
  }
  CHECK(screw("M7") == nullptr);
}

// Sizes by number are .060 + .013 N in (ASME B1.1); a usual tap drill leaves 65 to 80 % of the thread, depth
// .01299 / threads an inch for each percent (Machinery's Handbook's rule for unified threads, from memory).
TEST_CASE("an inch screw stands for each metric one and fits its holes", "[unit][standards]") {
  REQUIRE(inch_screws().size() == screws().size());
  for (std::size_t i = 0; i < screws().size(); ++i) {
    const Screw &row = inch_screws()[i];
    INFO(row.name);
    CHECK(row.inch);
    CHECK(screw(row.name) == &row);
    CHECK(inch_screw(screws()[i].name) == &row);
    CHECK(std::abs(units::ratio(row.major, screws()[i].major) - 1.0) < 0.07);
    const double major = units::to_inches(row.major), per_inch = 1.0 / units::to_inches(row.pitch);
    const double thread = per_inch * (major - units::to_inches(row.tap_drill)) / 0.01299;
    CHECK(thread > 65.0);
    CHECK(thread < 80.0);
    if (major < 0.25) {
      const double number = (major - 0.060) / 0.013;
      CHECK(number == Approx(std::round(number)).margin(1e-6));
      CHECK(row.name.starts_with(std::to_string(std::lround(number)) + "-"));
    }
    CHECK(row.clearance > row.major);
    CHECK(row.head_diameter > row.clearance);
    CHECK(row.counterbore_diameter > row.head_diameter);
    CHECK(row.counterbore_depth > row.head_height);
  }
  CHECK(inch_screw("M7") == nullptr);
  CHECK(listed_screw_length(inches(0.51), true) == inches(0.625));
  CHECK(listed_screw_length(inches(0.5), true) == inches(0.5));
  CHECK(listed_screw_length(millimetres(12.1)) == millimetres(16.0));
}

TEST_CASE("reactive metals and only they carry a shielding temperature", "[unit][standards]") {
  std::set<std::string_view> names;
  for (const Metal &row : metals()) {
    INFO(row.name);
    CHECK(names.insert(row.name).second);
    CHECK(metal(row.name) == &row);
    CHECK(row.weldable_here == row.name.starts_with("titanium"));
    CHECK(row.shielding_temperature.has_value() == row.weldable_here);
    if (row.shielding_temperature)
      CHECK(*row.shielding_temperature < row.melting_start);
    CHECK_FALSE(row.title.empty());
    for (const auto source : {row.density_source, row.conductivity.source, row.specific_heat.source,
                              row.expansion_source, row.melting_source})
      CHECK_FALSE(source.empty());
    CHECK(row.melting.has_value() == row.weldable_here);
    CHECK(row.shielding_source.empty() != row.weldable_here);
    for (const Property &property : {row.conductivity, row.specific_heat}) {
      REQUIRE_FALSE(property.rows.empty());
      for (std::size_t i = 1; i < property.rows.size(); ++i)
        CHECK(property.rows[i].kelvin > property.rows[i - 1].kelvin);
    }
    if (row.melting) {
      CHECK_FALSE(row.melting->source.empty());
      CHECK(row.melting->liquidus > row.melting_start);
      CHECK(row.melting->boiling > row.melting->liquidus);
    }
  }
  CHECK(names.size() == 7);
  CHECK(metal("titanium") == nullptr);
}

TEST_CASE("tube tolerance ends where its table does", "[unit][standards]") {
  CHECK_FALSE(tube_outside_tolerance(inches(0.0)).has_value());
  CHECK_FALSE(tube_outside_tolerance(inches(-1.0)).has_value());
  CHECK_FALSE(tube_outside_tolerance(inches(3.5)).has_value());
  CHECK_FALSE(tube_outside_tolerance(inches(std::nan(""))).has_value());
  CHECK(tube_outside_tolerance(inches(3.499)).has_value());
  CHECK(tube_outside_tolerance(millimetres(25.4)) == tube_outside_tolerance(inches(1.0)));
  CHECK(*tube_outside_tolerance(millimetres(25.39)) < *tube_outside_tolerance(millimetres(25.4)));
}

TEST_CASE("stock is the smallest listed size that holds the part", "[unit][standards]") {
  const auto metric_round = [](double mm) {
    return stock_size(StockForm::round, StockSystem::metric, millimetres(mm));
  };
  CHECK(units::to_millimetres(metric_round(32.0).value()) == Approx(32.0));
  CHECK(units::to_millimetres(metric_round(32.1).value()) == Approx(35.0));
  CHECK(units::to_millimetres(metric_round(0.0).value()) == Approx(8.0));
  CHECK_FALSE(metric_round(100.1).has_value());
  // A need that arithmetic lifted by a rounding error is still the size itself.
  CHECK(units::to_millimetres(metric_round(32.0 + 1e-9).value()) == Approx(32.0));
  const auto flat = stock_size(StockForm::flat_thickness, StockSystem::inch, inches(0.3));
  CHECK(units::to_inches(flat.value()) == Approx(0.375));
  const auto width = stock_size(StockForm::flat_width, StockSystem::metric, millimetres(61));
  CHECK(units::to_millimetres(width.value()) == Approx(80.0));
}

TEST_CASE("stock never shrinks as the need grows", "[unit][standards]") {
  for (const StockForm form : {StockForm::flat_thickness, StockForm::flat_width, StockForm::round})
    for (const StockSystem system : {StockSystem::metric, StockSystem::inch}) {
      Length previous{};
      for (double need = 0.5; need < 50.0; need += 0.5) {
        const auto size = stock_size(form, system, millimetres(need));
        REQUIRE(size.has_value());
        CHECK(*size >= previous);
        CHECK(units::to_millimetres(*size) >= need - 1e-4);
        previous = *size;
      }
    }
}

TEST_CASE("torch cups grow with their number", "[unit][standards]") {
  const auto cups = torch_cups();
  REQUIRE(cups.size() >= 5);
  for (std::size_t i = 1; i < cups.size(); ++i) {
    CHECK(cups[i].number > cups[i - 1].number);
    CHECK(cups[i].bore > cups[i - 1].bore);
    CHECK(cups[i].outside_diameter > cups[i - 1].outside_diameter);
  }
}

TEST_CASE("every table names its source", "[unit][standards]") {
  for (const std::string_view source :
       {fits_source(), o_ring_source(), gland_source(), seal_rules().source, tube_source(), stock_source(),
        machining_rules().source, torch_cup_source()})
    CHECK(source.size() > 10);
}

TEST_CASE("a pool is kept 3.5 walls wide, narrower on a tube hardly wider than that", "[unit][standards]") {
  CHECK(kept_pool(millimetres(0.9), millimetres(25.4)).value() == Approx(3.15e-3));
  CHECK(kept_pool(inches(0.028), inches(0.26)).value() == Approx(0.0754 * 0.0254)); // 0.29 x 0.26 in
  CHECK(kept_pool(millimetres(3.0), millimetres(25.0)).value() == Approx(7.8e-3));  // 2.6 walls
  for (double wall = 0.5; wall < 3.0; wall += 0.1) {
    CHECK(kept_pool(millimetres(wall), millimetres(25.0)) <=
          kept_pool(millimetres(wall + 0.1), millimetres(25.0)));
    CHECK(kept_pool(millimetres(wall), millimetres(25.0)) <= kept_pool(millimetres(wall), millimetres(30.0)));
  }
}

TEST_CASE("a cap's free rim takes half of the pool, as long as the wall melts through", "[unit][standards]") {
  CHECK(kept_pool(millimetres(1.0), millimetres(50.0), millimetres(1.5)).value() == Approx(3.0e-3));
  CHECK(kept_pool(millimetres(1.0), millimetres(50.0), millimetres(3.0)).value() == Approx(3.5e-3));
  CHECK(kept_pool(millimetres(1.0), millimetres(50.0), millimetres(1.0)).value() == Approx(2.6e-3));
}

// By hand: five turns a minute are 30 deg/s, on a radius of 12.7 mm 6.65 mm/s; a quarter and a fifth of 0.9
// mm.
TEST_CASE("what a hand does and what a weld without wire bridges", "[unit][standards]") {
  CHECK(hand_speed(inches(1.0)).value() == Approx(6.65e-3).epsilon(1e-3));
  CHECK(fit_up(millimetres(0.9)).gap.value() == Approx(0.18e-3));
  CHECK(fit_up(millimetres(0.9)).offset.value() == Approx(0.225e-3));
}

TEST_CASE("titanium bonds to titanium long before it melts, to steel or copper it melts",
          "[unit][standards]") {
  const Metal &cap = *metal("titanium-grade-2");
  REQUIRE(contact_bonds(cap, *metal("titanium-grade-2")));
  CHECK(*contact_bonds(cap, *metal("titanium-grade-2")) == units::celsius(850.0));
  CHECK_FALSE(contact_bonds(cap, *metal("stainless-304")));
  CHECK_FALSE(contact_bonds(cap, *metal("copper-c110")));
}
