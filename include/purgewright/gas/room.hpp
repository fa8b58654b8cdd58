// Oxygen in the shop's room while argon or helium is released, and what a gas bottle holds.
//
// Units: quantity types; air changes are per hour, as ventilation is stated; oxygen levels are volume
// fractions. Errors: std::domain_error with the function's name and the value; room volume above 0, flows not
// negative, unless said. Guarantee: pure functions. The room is taken as perfectly mixed: argon gathers low,
// so the floor is worse. A calculation is not a monitor.
#pragma once

#include "purgewright/gas/properties.hpp"
#include "purgewright/units/quantity.hpp"

namespace purgewright::gas {

// Oxygen level under which a space is oxygen-deficient, and over which it is enriched. Source: OSHA 29 CFR
// 1910.146(b) and 1910.134.
inline constexpr double deficient_oxygen = 0.195, enriched_oxygen = 0.235;

// Ventilation flow of a room, volume times air changes per hour.
units::VolumeFlow ventilation(units::Volume room, double air_changes_per_hour);

// Steady oxygen with an inert release R and total exhaust Q, c0 (1 - R/Q); R < Q. Source: University of
// Oxford safety policy, S4/03 appendix 1, with its 0.21 taken as the fresh air's level.
double room_steady(units::VolumeFlow ventilation, units::VolumeFlow release, double fresh = air_oxygen);

// Oxygen a time after the release starts in fresh air, c0 (Q - R (1 - exp(-Q t/V))) / Q; without ventilation
// the exhaust equals the release, c0 exp(-R t/V). R < Q or Q = 0. Source: Fermilab ES&H Manual, oxygen
// deficiency hazards, exhaust and no-fan cases.
double room_after(units::Volume room, units::VolumeFlow ventilation, units::VolumeFlow release,
                  units::Time time, double fresh = air_oxygen);

// Oxygen after a sudden release of `gas` into a closed room, c0 (V - Vg)/V; gas <= room. Source: University
// of Nottingham cryogen calculation; dilution by displacement.
double room_after_sudden(units::Volume room, units::Volume gas, double fresh = air_oxygen);

// Ventilation that keeps the steady level at `limit` under a release: R / (1 - limit/c0). 0 <= limit < c0.
units::VolumeFlow ventilation_for(units::VolumeFlow release, double limit = deficient_oxygen,
                                  double fresh = air_oxygen);

// Compressibility factor of the bottled gas, argon or helium, 263.15 K to 323.15 K, 0 to 30.2 MPa absolute.
// Argon: bilinear in a table computed from Tegeler, Span & Wagner, J. Phys. Chem. Ref. Data 28, 779 (1999);
// interpolation error under 0.0003. Helium: 1 + B p/(R T), B = 11.8 cm3/mol, ab initio second virial
// coefficient near room temperature (Hurly & Mehl, J. Res. NIST 112, 75, 2007); within 0.01.
double compressibility(Species species, units::Temperature temperature, units::Pressure absolute);

// Gas a bottle gives between its filling pressure and the pressure it is changed at, as volume at 20 degC and
// 1 atm. Pressures are gauge, as the regulator shows them; residual <= filling. Source: p V = Z n R T.
struct Bottle {
  Species species = Species::argon;
  units::Volume water_volume{};
  units::Pressure filling{};  // gauge
  units::Pressure residual{}; // gauge
  units::Temperature temperature = units::celsius(20.0);
};
units::Volume bottle_gas(const Bottle &bottle);

// Parts one bottle serves, whole number not rounded; gas per part above 0, at the same conditions as
// bottle_gas.
double parts_per_bottle(units::Volume bottle_gas, units::Volume gas_per_part);

} // namespace purgewright::gas
