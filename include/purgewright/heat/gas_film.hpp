// What the gas round the work takes away: conductivity of argon and helium over temperature, natural
// convection round a lying tube, slow flow through its bore, and the gas film in a narrow gap.
//
// Units: conductivity W/(m K), coefficients W/(m2 K). Valid range: 250 K to 1500 K (linear between rows, kept
// beyond 1000 K), lengths above 0; otherwise std::domain_error with the function's name and the value.
// Guarantee: pure functions. Chamber and room count as still: the torch's gas and a draught cool more, so
// holds come out on the long side.
// Source: conductivity: the table of standards/gases. Viscosity and diffusivity follow from it for a
// monatomic gas: cp = 2.5 R / M, Pr = 2/3 (kinetic theory).
#pragma once

#include "purgewright/job/job.hpp"
#include "purgewright/units/quantity.hpp"

namespace purgewright::heat {

double gas_conductivity(job::GasSpecies, units::Temperature);

// Mean Nusselt number round a horizontal cylinder, Rayleigh number up to 1e12.
// Source: Churchill & Chu, Int. J. Heat Mass Transfer 18, 1049 (1975); Incropera & DeWitt, eq. 9.34.
double cylinder_nusselt(double rayleigh, double prandtl);

// Mean coefficient round a horizontal cylinder at `surface` in still gas at `ambient`; surface > ambient.
double natural_coefficient(job::GasSpecies, units::Length diameter, units::Temperature surface,
                           units::Temperature ambient);

// Slow laminar flow through a round bore, Nu = 3.66. Source: Incropera & DeWitt, eq. 8.55.
double bore_coefficient(job::GasSpecies, units::Length diameter, units::Temperature film);

} // namespace purgewright::heat
