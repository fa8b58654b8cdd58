#include "reference_values.hpp"

#include "purgewright/gas/room.hpp"

#include <cmath>

using namespace purgewright;
using namespace purgewright::gas;
using reference::entry;

TEST_CASE("Oxygen depletion of a ventilated store", "[reference][gas]") {
  const auto example = entry("room", "room_example_oxford");
  const YAML::Node row = example.values();
  const auto air = ventilation(units::cubic_metres(row["V_m3"].as<double>()), row["N_per_h"].as<double>());
  const auto release = units::cubic_metres_per_second(row["L_m3_h"].as<double>() / 3600.0);
  const double depletion = 0.21 - room_steady(air, release, 0.21);
  CHECK(depletion * 100.0 == example.near(row["depletion_formula_pct"].as<double>()));
  CHECK(depletion * 100.0 == Approx(row["depletion_pct_published"].as<double>()).margin(0.005)); // as printed
  CHECK(units::ratio(release, air) == example.near(row["Ct_formula"].as<double>()));
}

TEST_CASE("Sudden release into a closed room", "[reference][gas]") {
  const auto example = entry("room", "room_sudden_example");
  const YAML::Node row = example.values();
  double room = 1.0;
  for (const auto &side : row["room_ft"])
    room *= side.as<double>() * 0.3048;
  const auto gas = units::litres(row["liquid_N2_L"].as<double>() * 696.0);
  const double found = room_after_sudden(units::cubic_metres(room), gas);
  CHECK(found * 100.0 == example.near(row["formula_pct"].as<double>()));
  CHECK(found < deficient_oxygen); // the published statement
}

TEST_CASE("Steady oxygen of a shop that purges with argon", "[reference][gas]") {
  const auto table = entry("room", "room_argon_check");
  for (const auto &row : table.values()) {
    const auto room = units::cubic_metres(row["V_m3"].as<double>());
    const auto release = units::litres_per_minute(row["argon_L_min"].as<double>());
    CHECK(room_steady(ventilation(room, row["ach"].as<double>()), release) * 100.0 ==
          table.near(row["O2_steady_pct"].as<double>()));
  }
  const auto levels = entry("room", "osha_o2");
  CHECK(deficient_oxygen * 100.0 == levels.near(levels.values()["deficient_below"].as<double>()));
  CHECK(enriched_oxygen * 100.0 == levels.near(levels.values()["enriched_above"].as<double>()));
}

TEST_CASE("Contents of argon bottles", "[reference][gas]") {
  const auto table = entry("room", "cylinder_contents");
  const auto contents = [](double water_litres, double bar) {
    return bottle_gas({.water_volume = units::litres(water_litres), .filling = units::pascals(bar * 1e5)})
        .value();
  };
  for (const auto &row : table.values()) {
    if (row["p_bar"].as<double>() > 230.0)
      continue; // Z of the table no longer holds there, as it says
    CHECK(contents(row["water_L"].as<double>(), row["p_bar"].as<double>()) ==
          table.near(row["with_Z_m3"].as<double>()));
  }
  const double listed = entry("room", "cylinder_contents_found").values()["argon_m3"].as<double>();
  CHECK(contents(50.0, 200.0) < listed);
  CHECK(contents(50.0, 230.0) > listed);
}
