// Oxygen that comes through a hose's wall, and the time to flush a hose that stood idle.
//
// Units: quantity types; permeability is m3(STP) m / (m2 s Pa), STP 273.15 K and 101.325 kPa.
// Errors: std::domain_error with the function's name and the value. Table lifetime: static.
// Guarantee: pure functions. Permeability of a compound is an order of magnitude: fillers and plasticisers
// move it.
#pragma once

#include "purgewright/gas/properties.hpp"
#include "purgewright/units/quantity.hpp"

#include <span>
#include <string_view>

namespace purgewright::gas {

// 1 barrer = 1e-10 cm3(STP) cm / (cm2 s cmHg) in SI, by its definition; conventional mercury 1333.22387
// Pa/cmHg.
inline constexpr double barrer = 1e-10 * 1e-6 * 1e-2 / (1e-4 * 1333.22387);

struct HoseMaterial {
  std::string_view name; // as the job file spells it
  double permeability;   // to oxygen at 25 to 35 degC
  std::string_view source;
};
std::span<const HoseMaterial> hose_materials();
const HoseMaterial *hose_material(std::string_view name); // nullptr when unknown

// Steady flow of oxygen through the wall, as volume at STP: P 2 pi L dp / ln(do/di). Length >= 0, 0 < di <
// do; partial pressure difference >= 0, by default that of air at 1 atm outside and none inside. Source:
// Fick's law in a cylindrical wall, Crank, The Mathematics of Diffusion, 2nd ed. (1975), eq. 5.5.
struct Hose {
  units::Length length{};
  units::Length inside_diameter{};
  units::Length outside_diameter{};
};
units::VolumeFlow hose_oxygen_at_stp(const Hose &hose, double permeability,
                                     units::Pressure difference = units::pascals(air_oxygen * 101325.0));

// A flow stated at STP, at other conditions, by the ideal gas law. Temperature and pressure above 0.
units::VolumeFlow from_stp(units::VolumeFlow at_stp, units::Temperature temperature,
                           units::Pressure pressure = standard_atmosphere);

// Rise of the oxygen fraction along the hose, oxygen flow over gas flow, both at the same conditions. Valid
// while small: throws above 0.01, where the oxygen inside no longer is negligible; gas flow above 0.
double hose_rise(units::VolumeFlow oxygen, units::VolumeFlow gas);

// Volume of the bore.
units::Volume hose_volume(const Hose &hose);

// Time to flush the bore of air left in it: tanks in series with the variance of Taylor-Aris flow (laminar,
// long hose). Flow, diffusivity above 0; levels as remaining_share. Moisture and oxygen desorbing from the
// wall come on top and are not computed. Source: mixing.hpp.
units::Time hose_flush_time(const Hose &hose, units::VolumeFlow flow, units::Diffusivity diffusivity,
                            double initial, double target, double supply = 0.0);

} // namespace purgewright::gas
