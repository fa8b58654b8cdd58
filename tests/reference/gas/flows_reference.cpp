#include "reference_values.hpp"

#include "purgewright/gas/jets.hpp"
#include "purgewright/gas/openings.hpp"
#include "purgewright/gas/properties.hpp"

using namespace purgewright;
using namespace purgewright::gas;
using reference::entry;

namespace {

const units::Diffusivity oxygen_in_argon = units::Diffusivity::from_value(1.87e-5); // as the table states

double argon_in_air_by_mean() {
  const auto argon = density(Species::argon, units::celsius(20.0)),
             air = density(Species::air, units::celsius(20.0));
  return reduced_gravity(argon, air, 0.5 * (argon + air));
}

} // namespace

TEST_CASE("Counter-flow diffusion in a channel", "[reference][gas]") {
  const auto table = entry("flows", "backdiff_1d_check");
  for (const auto &row : table.values()) {
    const double peclet = channel_peclet(units::metres_per_second(row[0].as<double>()),
                                         units::metres(row[1].as<double>()), oxygen_in_argon);
    CHECK(peclet == table.near(row[2].as<double>()));
    CHECK(counterflow_ratio(peclet) == table.near(row[3].as<double>()));
    CHECK(counterflow_fraction(peclet, 0.2095) * 1e6 == table.near(row[4].as<double>()));
  }
}

TEST_CASE("Peclet number needed for a limit", "[reference][gas]") {
  const auto table = entry("flows", "backdiff_required_pe");
  for (const auto &row : table.values())
    CHECK(counterflow_peclet(row[0].as<double>() * 1e-6, 0.2095) == table.near(row[1].as<double>()));
}

TEST_CASE("Counter-flow through a thin round hole", "[reference][gas]") {
  const auto table = entry("flows", "orifice_backdiff_form");
  for (const auto &row : table.values()["check"]) {
    const auto diameter = units::metres(2.0 * row["a_m"].as<double>());
    const auto outflow = units::litres_per_minute(row["Q_L_min"].as<double>());
    const auto conductance =
        diffusive_conductance(oxygen_in_argon, units::square(diameter) * (units::pi / 4.0),
                              units::metres(0.0), circle_shape_length(diameter));
    CHECK(units::ratio(outflow, conductance) == table.near(row["Pe_eff"].as<double>()));
    const auto opposed = opposed_conductance(conductance, outflow);
    CHECK(units::ratio(opposed, opposed + outflow) == table.near(row["factor"].as<double>()));
  }
}

TEST_CASE("Fountain heights and Froude numbers", "[reference][gas]") {
  const auto table = entry("flows", "fountain_height");
  const auto argon = density(Species::argon, units::celsius(20.0)),
             air = density(Species::air, units::celsius(20.0));
  for (const auto &row : table.node["check"]) {
    const auto radius = units::metres(row["r0_m"].as<double>());
    const auto speed =
        units::litres_per_minute(row["Q_L_min"].as<double>()) / (units::pi * units::square(radius));
    CHECK(speed.value() == table.near(row["u0"].as<double>()));
    const double froude = densimetric_froude(speed, reduced_gravity(argon, air, air), radius);
    CHECK(froude == table.near(row["Fr"].as<double>()));
    CHECK(fountain_height(froude, radius).value() ==
          table.near(2.46 * row["Fr"].as<double>() * radius.value()));
  }
  CHECK(fountain_height(2.0, units::metres(1.0)).value() == table.near(0.90 * 4.0));
  CHECK(fountain_height(0.5, units::metres(1.0)).value() == table.near(0.94 * 0.62996)); // 0.5^(2/3)
}

TEST_CASE("Buoyant exchange through vertical and horizontal openings", "[reference][gas]") {
  const auto vertical = entry("flows", "exchange_vertical");
  for (const auto &row : vertical.values()["check"]) {
    const VerticalOpening opening{.width = units::metres(row["W"].as<double>()),
                                  .height = units::metres(row["H"].as<double>()),
                                  .reduced_gravity = argon_in_air_by_mean(),
                                  .discharge = row["Cd"].as<double>()};
    CHECK(units::to_litres_per_minute(vertical_exchange(opening)) ==
          vertical.near(row["Q_L_min"].as<double>()));
  }
  const auto horizontal = entry("flows", "exchange_horizontal");
  const YAML::Node row = horizontal.values()["check"];
  CHECK(units::to_litres_per_minute(horizontal_exchange(units::metres(row["D"].as<double>()),
                                                        units::metres(0.0), argon_in_air_by_mean())) ==
        horizontal.near(row["Q_L_min"].as<double>()));
}

TEST_CASE("Draught that an argon-filled cavity lies still under", "[reference][gas]") {
  const auto table = entry("flows", "stratified_cavity_threshold");
  const YAML::Node row = table.values()["argon_slot_check"];
  const double gravity = standard_gravity * row["drho_over_rho"].as<double>();
  const DraughtBand band = critical_draught(gravity, units::metres(row["H_m"].as<double>()));
  CHECK(band.lying.value() == table.near(row["U_at_Rb_0p8_m_s"].as<double>()));
  CHECK(band.flushed.value() == table.near(row["U_at_Rb_0p4_m_s"].as<double>()));
  CHECK(lying_richardson == table.values()["Rb_threshold"][1].as<double>());
  CHECK(flushed_richardson == table.values()["Rb_threshold"][0].as<double>());
}
