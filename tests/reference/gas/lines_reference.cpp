#include "reference_values.hpp"

#include "purgewright/gas/hose.hpp"
#include "purgewright/gas/pressure.hpp"

#include <cmath>
#include <map>
#include <string>

using namespace purgewright;
using namespace purgewright::gas;
using reference::entry;

TEST_CASE("Hagen-Poiseuille in a tube and a flat gap", "[reference][gas]") {
  const auto example = entry("lines", "hagen_poiseuille");
  const YAML::Node tube = example.values()["check"], slot = example.values()["check_slot"];
  const auto viscosity = units::DynamicViscosity::from_value(tube["mu"].as<double>());
  CHECK(tube_laminar_drop(viscosity, units::metres(tube["L"].as<double>()),
                          units::metres(tube["d"].as<double>()),
                          units::litres_per_minute(tube["Q_L_min"].as<double>()))
            .value() == example.near(tube["dp_Pa"].as<double>()));
  CHECK(gap_laminar_drop(viscosity, units::metres(slot["L"].as<double>()),
                         units::metres(slot["w"].as<double>()), units::metres(slot["h"].as<double>()),
                         units::litres_per_minute(slot["Q_L_min"].as<double>()))
            .value() == example.near(slot["dp_Pa"].as<double>()));
}

// Water through the 0.196 in2 orifice under the stated head: the measured discharge coefficient comes out.
TEST_CASE("Sharp orifice at high Reynolds number", "[reference][gas]") {
  const auto table = entry("lines", "orifice_cd");
  const Stream water{.density = units::kilograms_per_cubic_metre(998.2),
                     .viscosity = units::DynamicViscosity::from_value(1.0e-3)};
  const Holes hole{.diameter = units::inches(0.4996)};
  for (const auto &row : table.values()) {
    const auto drop = units::pascals(row[0].as<double>() * 0.3048 * 998.2 * 9.80665);
    const double ideal = 0.196 * 0.0254 * 0.0254 * std::sqrt(2.0 * drop.value() / 998.2);
    CHECK(holes_flow(hole, drop, water).value() / ideal == table.near(row[1].as<double>()));
  }
}

TEST_CASE("Creeping flow through a thin orifice", "[reference][gas]") {
  const auto table = entry("lines", "orifice_creeping");
  const Stream argon{.density = units::kilograms_per_cubic_metre(1.66),
                     .viscosity = units::DynamicViscosity::from_value(2.23e-5)};
  for (const auto &row : table.values()) {
    const double d = 1e-3, reynolds = 1e-6;
    const Holes hole{.diameter = units::metres(d), .thickness = units::metres(row[0].as<double>() * d)};
    const double speed = reynolds * 2.23e-5 / (1.66 * d);
    const auto flow = units::cubic_metres_per_second(speed * units::pi * d * d / 4.0);
    const double loss = holes_drop(hole, flow, argon).value() / (0.5 * 1.66 * speed * speed);
    CHECK(loss * reynolds == table.near(row[1].as<double>()));
  }
}

TEST_CASE("Oxygen through a hose wall", "[reference][gas]") {
  const auto example = entry("lines", "hose_permeation_form");
  const YAML::Node row = example.values()["check"];
  const Hose hose{.length = units::metres(row["L_m"].as<double>()),
                  .inside_diameter = units::millimetres(row["d_i_mm"].as<double>()),
                  .outside_diameter = units::millimetres(row["d_o_mm"].as<double>())};
  const auto difference = units::pascals(row["dp_cmHg"].as<double>() * 1333.22387);
  const auto oxygen = hose_oxygen_at_stp(hose, row["P_barrer"].as<double>() * barrer, difference);
  const auto gas = units::litres_per_minute(row["Q_gas_L_min"].as<double>());
  CHECK(units::to_litres_per_minute(oxygen) * 1e3 == example.near(row["Q_O2_mL_min_STP"].as<double>()));
  CHECK(hose_rise(oxygen, gas) * 1e6 == example.near(row["rise_ppm"].as<double>()));
  const auto pvc =
      hose_oxygen_at_stp(hose, example.values()["check_PVC"]["P_barrer"].as<double>() * barrer, difference);
  CHECK(hose_rise(pvc, gas) * 1e6 ==
        Approx(example.values()["check_PVC"]["rise_ppm"].as<double>()).margin(0.005));
}

TEST_CASE("Hose permeabilities are the published ones", "[reference][gas]") {
  const auto article = entry("lines", "permeability_O2_article"),
             quoted = entry("lines", "permeability_O2_memory");
  const std::map<std::string, std::string> of_article{{"rubber", "natural_rubber"},
                                                      {"polychloroprene", "polychloroprene"},
                                                      {"butyl", "butyl"},
                                                      {"ptfe", "PTFE"},
                                                      {"polypropylene", "polypropylene"},
                                                      {"polycarbonate", "polycarbonate"},
                                                      {"pet", "PET"}};
  const std::map<std::string, std::string> of_quoted{{"silicone", "silicone"},
                                                     {"pvc", "PVC_plasticised"},
                                                     {"polyethylene", "LDPE"},
                                                     {"fep", "FEP"},
                                                     {"nylon", "nylon_6"},
                                                     {"nitrile", "NBR"},
                                                     {"epdm", "EPDM"},
                                                     {"polyurethane", "polyurethane"},
                                                     {"fkm", "FKM"}};
  std::size_t metals = 0;
  for (const HoseMaterial &material : hose_materials()) {
    const std::string name(material.name);
    INFO(name);
    if (material.permeability == 0.0) {
      ++metals;
      continue;
    }
    const auto row = of_article.find(name);
    REQUIRE((row != of_article.end() || of_quoted.contains(name)));
    CHECK(material.source.ends_with("from memory"));
    const double expected = row != of_article.end() ? article.values()[row->second].as<double>()
                                                    : quoted.values()[of_quoted.at(name)].as<double>();
    CHECK(material.permeability / barrer == article.near(expected));
  }
  CHECK(metals == 3);
  CHECK(hose_materials().size() == of_article.size() + of_quoted.size() + metals);
}
