// How hot each part can become, and which plastic bears that.
#include "purgewright/checks/printing.hpp"
#include "support/paths.hpp"

#include "purgewright/units/ids.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace purgewright;
using namespace purgewright::checks;

namespace {

Design example(const std::string &name) {
  auto read = job::read_job(purgewright::test::example_job(name));
  REQUIRE(read.job);
  return evaluate_purge(std::move(*read.job));
}

const PartHeat &of(const std::vector<PartHeat> &all, std::string_view part) {
  const auto found = std::ranges::find(all, part, &PartHeat::part);
  REQUIRE(found != all.end());
  return *found;
}

} // namespace

TEST_CASE("what faces the joint is of metal, and so is what holds gas, however cold") {
  const auto parts = part_heat(example("logger-25"));
  for (const auto part : {ids::chamber_body, ids::chamber_end_plate, ids::backing_pin, ids::slot_cover,
                          ids::end_plug, ids::gas_port_block, ids::index_collar, ids::cradle_stand}) {
    INFO(std::string(part));
    CHECK(of(parts, part).plastic.empty());
  }
  CHECK(of(parts, ids::chamber_body).hottest > units::celsius(1600)); // the joint melts
  CHECK_FALSE(of(parts, ids::end_plug).against.empty());
  CHECK(of(parts, ids::slot_cover).against.empty());         // heat alone decides
  CHECK_FALSE(of(parts, ids::index_collar).against.empty()); // it carries the current
}

TEST_CASE("a part near the rollers may be printed from the coldest plastic that keeps ten kelvins of room") {
  Design design = example("logger-25");
  const auto plastic_at = [&](double celsius) {
    design.heat.roller_peak = units::celsius(celsius);
    design.series.settled = units::celsius(30.0);
    return std::string(of(part_heat(design), ids::axial_stop).plastic);
  };
  // Deflection under 0.45 MPa (ISO 75-2 B) of data sheets: PLA 58.8, PETG 76.2 degC; ABS serves to 85 degC at
  // least.
  CHECK(plastic_at(48.7) == "PLA");
  CHECK(plastic_at(48.9) == "PETG");
  CHECK(plastic_at(66.1) == "PETG");
  CHECK(plastic_at(66.3) == "ABS");
  CHECK(plastic_at(75.1).empty());
}

TEST_CASE("what stands on the base plate gets as warm as it does part after part, and a plastic base plate "
          "warmer") {
  Design design = example("logger-25");
  // Warmer than the tube at the rollers, as hotter jobs settle.
  const auto over_rollers = [&](double kelvin) {
    return units::kelvins(design.heat.roller_peak.value() + kelvin);
  };
  design.series.settled = over_rollers(10.0);
  design.series.settled_on_plastic = over_rollers(20.0);
  auto parts = part_heat(design);
  for (const auto part : {ids::axial_stop, ids::gas_port_block}) {
    INFO(std::string(part));
    CHECK(of(parts, part).hottest == design.series.settled);
    CHECK(of(parts, part).input == "heat.series.settled");
  }
  CHECK(of(parts, ids::base_plate).hottest == design.series.settled_on_plastic);
  CHECK(of(parts, ids::base_plate).hottest > design.series.settled);
  CHECK(of(parts, ids::index_collar).hottest == design.heat.roller_peak); // on the tube, not on the base
  // A part a day leaves everything cold.
  design.series =
      heat::settle(design.job, design.layout, design.volumes, design.heat, {}, units::seconds(86400.0));
  parts = part_heat(design);
  CHECK(of(parts, ids::axial_stop).hottest == design.heat.roller_peak);
  CHECK_FALSE(of(parts, ids::base_plate).plastic.empty()); // chamber and end plate alone take one part's heat
}

TEST_CASE("a part is as hot as it becomes on the settled fixture, and says so by that figure") {
  Design design = evaluate(example("logger-25").job);
  REQUIRE(design.series.warm);
  design.heat.roller_peak = units::celsius(48.0);
  design.series.warm->roller_peak = units::celsius(70.0);
  const auto parts = part_heat(design);
  CHECK(of(parts, ids::index_collar).hottest == design.series.warm->roller_peak);
  CHECK(of(parts, ids::index_collar).input == "heat.series.rollers.peak");
  const auto all = figures(design);
  for (const auto *id : {"heat.series.rollers.peak", "heat.series.wiper.peak", "heat.series.o_ring.peak",
                         "heat.series.cap_centre.peak", "heat.series.pin_contact.peak"}) {
    INFO(id);
    CHECK(units::find(all, id) != nullptr);
  }
}

TEST_CASE("the estimates are figures that trace back to the heat plan, and there is none before it") {
  Design design = example("logger-38");
  const auto all = figures(design);
  const auto *stand = units::find(all, "temperature.index-collar");
  REQUIRE(stand != nullptr);
  REQUIRE(stand->inputs.size() == 1);
  const auto *rollers = units::find(all, stand->inputs[0]);
  REQUIRE(rollers != nullptr);
  CHECK(rollers->value == stand->value);
  double hottest = design.heat.ambient.value();
  for (const auto &run : design.heat.runs) {
    hottest = std::max(hottest, run.roller_peak.value_or(design.heat.ambient).value());
  }
  CHECK(rollers->value >= hottest);
  CHECK(part_heat(evaluate_closed_form(design.job)).empty());
}

TEST_CASE("on a spindle the welding current flows through spindle and bush: neither is of plastic") {
  Design design = example("sensor-6");
  REQUIRE(design.layout.cradle.kind == fixture::CradleKind::spindle);
  CHECK_FALSE(of(part_heat(design), ids::spindle).against.empty());
  design.layout.plug.kind = fixture::PlugKind::expanding;
  CHECK_FALSE(of(part_heat(design), ids::plug_bush).against.empty());
  const auto parts = part_heat(example("logger-25"));
  CHECK(std::ranges::find(parts, ids::spindle, &PartHeat::part) == parts.end());
}
