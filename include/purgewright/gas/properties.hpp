// Properties of the five gases of this tool at low pressure: density, viscosity, binary diffusion.
//
// Units: quantity types; molar mass is kg/mol, fractions are mole (= volume) fractions, acceleration is m/s2.
// Valid range: 200 K to 1000 K and 1 kPa to 1 MPa, fractions 0 to 1; outside it every function throws
// std::domain_error with its name and the value.
// Guarantee: pure functions without allocation. Against the CRC tables (300 K to 600 K) viscosity stays
// within 2 % (helium 2 %), diffusion of argon in air, oxygen and nitrogen within 3 % (273 K to 673 K), of
// helium in air within 2 % up to 300 K and within 7.5 % at 673 K.
#pragma once

#include "purgewright/standards/tables.hpp"
#include "purgewright/units/quantity.hpp"

#include <string_view>

namespace purgewright::gas {

enum class Species { argon, helium, oxygen, nitrogen, air };

using standards::air_oxygen;
using standards::LennardJones;
using standards::molar_gas_constant;
using standards::standard_atmosphere;
using standards::standard_gravity;

// The rows of the one table of gases, standards::gases().
double molar_mass(Species species); // kg/mol
const LennardJones &lennard_jones(Species species);
double specific_heat(Species species); // at constant pressure, J/(kg K)

// Reduced collision integrals of the Lennard-Jones 12-6 potential for viscosity (2,2) and diffusion (1,1) at
// the reduced temperature kT/epsilon. Valid 0.3 to 110: the fit is given for 0.3 to 100; helium at 1000 K
// stands at 98. Source: Neufeld, Janzen, Aziz, J. Chem. Phys. 57, 1100 (1972), table I, without its small
// sine terms.
double viscosity_integral(double reduced_temperature);
double diffusion_integral(double reduced_temperature);

// Density of the ideal gas, rho = p M / (R T).
units::Density density(Species species, units::Temperature temperature,
                       units::Pressure pressure = standard_atmosphere);

// Density of an ideal mixture of two gases; `fraction` is the mole fraction of `a`.
units::Density mixture_density(Species a, Species b, double fraction, units::Temperature temperature,
                               units::Pressure pressure = standard_atmosphere);

// Viscosity of the dilute gas. Source: Chapman-Enskog, Bird, Stewart, Lightfoot, Transport Phenomena, 2nd
// ed., eq. 1.4-14: mu = 2.6693e-6 sqrt(M T) / (sigma^2 Omega_mu) Pa s, M in g/mol.
units::DynamicViscosity viscosity(Species species, units::Temperature temperature);

// Kinematic viscosity mu / rho.
units::Diffusivity kinematic_viscosity(Species species, units::Temperature temperature,
                                       units::Pressure pressure = standard_atmosphere);

// Binary diffusion coefficient, symmetric in a and b; a == b gives self-diffusion. Source: Chapman-Enskog,
// Bird et al., 2nd ed., eq. 17.3-12: D = 0.0018583 sqrt(T^3 (1/Ma + 1/Mb)) / (p sigma_ab^2 Omega_D) cm2/s, p
// in atm; sigma_ab arithmetic, epsilon_ab geometric mean (eqs. 17.3-14, 17.3-15).
units::Diffusivity diffusivity(Species a, Species b, units::Temperature temperature,
                               units::Pressure pressure = standard_atmosphere);

// Reduced gravity g (rho - rho_ambient) / rho_reference, m/s2: positive where the gas is heavier than its
// surroundings. The reference is the ambient density in Boussinesq plumes, the mean in exchange flows; the
// caller names it. Densities must be above 0.
double reduced_gravity(units::Density gas, units::Density ambient, units::Density reference);

} // namespace purgewright::gas
