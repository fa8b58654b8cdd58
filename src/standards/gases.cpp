#include "purgewright/standards/tables.hpp"

#include <array>

namespace purgewright::standards {
namespace {

constexpr std::string_view gri = "GRI-Mech 3.0 transport set (1999)";
constexpr std::string_view bsl = "Bird, Stewart, Lightfoot, Transport Phenomena, 2nd ed. (2002), table E.1";
constexpr std::string_view svehla =
    "Svehla, NASA TR R-132 (1962); Poling, Prausnitz, O'Connell, 5th ed. (2001), appendix B";
constexpr std::string_view argon_conduction =
    "CRC Handbook of Chemistry and Physics, section 6, Thermal Conductivity of Gases (300 K to 600 K); above "
    "that Eucken's 2.5 cv mu";
constexpr std::string_view helium_conduction =
    "CRC Handbook of Chemistry and Physics, section 6, Thermal Conductivity of Gases (300 K to 600 K); above "
    "that Incropera & DeWitt, table A.4, from memory";

constexpr std::array<PropertyRow, 8> argon_conductivity{{{300.0, 17.9e-3},
                                                         {400.0, 22.6e-3},
                                                         {500.0, 26.8e-3},
                                                         {600.0, 30.6e-3},
                                                         {700.0, 33.99e-3},
                                                         {800.0, 37.32e-3},
                                                         {900.0, 40.47e-3},
                                                         {1000.0, 43.46e-3}}};
constexpr std::array<PropertyRow, 6> helium_conductivity{{{300.0, 156.7e-3},
                                                          {400.0, 190.6e-3},
                                                          {500.0, 222.3e-3},
                                                          {600.0, 252.4e-3},
                                                          {700.0, 278.0e-3},
                                                          {1000.0, 354.0e-3}}};

// Of the published sets, the one that fits the CRC viscosity and diffusion tables best, gas by gas.
constexpr std::array<Gas, 5> rows{{
    {"argon", 39.948e-3, {3.330, 136.5, gri}, 1, {argon_conductivity, argon_conduction}},
    {"helium", 4.0026e-3, {2.551, 10.22, svehla}, 1, {helium_conductivity, helium_conduction}},
    {"oxygen", 31.998e-3, {3.458, 107.4, gri}, 2, {}},
    {"nitrogen", 28.014e-3, {3.621, 97.53, gri}, 2, {}},
    {"air", 28.964e-3, {3.617, 97.0, bsl}, 2, {}}, // as one gas
}};

} // namespace

double Gas::specific_heat() const {
  return (atoms == 1 ? 2.5 : 3.5) * molar_gas_constant / molar_mass;
}

std::span<const Gas> gases() {
  return rows;
}

} // namespace purgewright::standards
