#include "reference_values.hpp"

#include "purgewright/gas/properties.hpp"

#include <map>
#include <string>
#include <utility>

using namespace purgewright;
using namespace purgewright::gas;
using reference::entry;

namespace {

const std::map<std::string, Species> species{{"Ar", Species::argon},
                                             {"He", Species::helium},
                                             {"O2", Species::oxygen},
                                             {"N2", Species::nitrogen},
                                             {"air", Species::air}};

} // namespace

TEST_CASE("Densities match the published table", "[reference][gas]") {
  const auto table = entry("properties", "density_25C_100kPa");
  for (const auto &row : table.values()) {
    INFO(row.first.as<std::string>());
    const double found =
        density(species.at(row.first.as<std::string>()), units::kelvins(298.15), units::pascals(1e5)).value();
    CHECK(found == table.near(row.second.as<double>()));
  }
}

TEST_CASE("Viscosities match the CRC table", "[reference][gas]") {
  for (const char *name : {"Ar", "air", "O2", "N2", "He"}) {
    const auto table = entry("properties", std::string("viscosity_") + name);
    for (const auto &row : table.values()) {
      INFO(name << " at " << row[0].as<double>() << " K");
      CHECK(viscosity(species.at(name), units::kelvins(row[0].as<double>())).value() * 1e6 ==
            table.near(row[1].as<double>()));
    }
  }
}

TEST_CASE("Viscosities match the dilute-gas correlation up to 1000 K", "[reference][gas]") {
  for (const char *name : {"Ar", "air", "O2", "N2"}) {
    const auto table = entry("properties", std::string("viscosity_") + name + "_hot");
    for (const auto &row : table.values()) {
      INFO(name << " at " << row[0].as<double>() << " K");
      CHECK(viscosity(species.at(name), units::kelvins(row[0].as<double>())).value() * 1e6 ==
            table.near(row[1].as<double>()));
    }
  }
}

TEST_CASE("Diffusion coefficients match the CRC table", "[reference][gas]") {
  const std::pair<const char *, const char *> pairs[] = {
      {"Ar", "O2"}, {"Ar", "air"}, {"Ar", "N2"}, {"He", "air"}, {"Ar", "He"}};
  for (const auto &[a, b] : pairs) {
    const auto table = entry("properties", std::string("D_") + a + "_" + b);
    for (const auto &row : table.values()) {
      INFO(a << "-" << b << " at " << row[0].as<double>() << " K");
      CHECK(diffusivity(species.at(a), species.at(b), units::kelvins(row[0].as<double>())).value() * 1e4 ==
            table.near(row[1].as<double>()));
    }
  }
}

TEST_CASE("The diffusion integral matches its printed table", "[reference][gas]") {
  const auto table = entry("properties", "collision_integral_D");
  for (const auto &row : table.values())
    CHECK(diffusion_integral(row[0].as<double>()) == table.near(row[1].as<double>()));
}

TEST_CASE("Reduced gravity of argon in air", "[reference][gas]") {
  const auto table = entry("properties", "reduced_gravity");
  const auto argon = density(Species::argon, units::celsius(20.0));
  const auto air = density(Species::air, units::celsius(20.0));
  CHECK(reduced_gravity(argon, air, air) == table.near(table.values()["by_air"].as<double>()));
  CHECK(reduced_gravity(argon, air, 0.5 * (argon + air)) ==
        table.near(table.values()["by_mean"].as<double>()));
  CHECK(reduced_gravity(argon, air, argon) == table.near(table.values()["by_argon"].as<double>()));
}
