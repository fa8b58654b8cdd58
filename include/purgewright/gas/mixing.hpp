// How fast a flow replaces the gas of a space: perfectly mixed, displaced, and everything between.
//
// Units: quantity types where a size enters; theta is time over V/Q (volume changes delivered), Pe is u L /
// Dax, n is a number of equal tanks in series (any real number from 1), "remaining" is the share 1-F of the
// first gas still at the outlet, "swept" is F. Oxygen levels are volume fractions. Errors: std::domain_error
// with the function's name and the value outside the range stated at each function. Guarantee: pure
// functions; "remaining" keeps 1e-9 relative accuracy down to 1e-12 (no 1 - F is taken).
#pragma once

#include "purgewright/units/quantity.hpp"

#include <vector>

namespace purgewright::gas {

// Share of the way from `initial` to `supply` that is still to go at `target`: (target - supply) / (initial -
// supply). Needs 0 <= supply < target <= initial <= 1: a target at or under the supply's own level is never
// reached.
double remaining_share(double initial, double target, double supply = 0.0);

// Volume changes that a perfectly mixed space needs from `initial` to `target`, ln((C1 - C0) / (C2 - C0)).
// Source: NFPA 69 annex; Crowl & Louvar, Chemical Process Safety, inerting chapter, sweep-through purging.
double mixed_volumes(double initial, double target, double supply = 0.0);

// Time of the same purge, V/(K Q) ln(...); `efficiency` is K in (0, 1], 1 = perfect mixing. Volume, flow
// above 0.
units::Time mixed_time(units::Volume volume, units::VolumeFlow flow, double initial, double target,
                       double supply = 0.0, double efficiency = 1.0);

// Time of an ideal displacement, one volume change. Volume and flow above 0.
units::Time displacement_time(units::Volume volume, units::VolumeFlow flow);

// Tanks in series: remaining and swept at theta >= 0 for n in 1 to 1e5. For whole n this is the tail sum
// exp(-n theta) sum (n theta)^i / i!, i < n; its continuation to real n is the incomplete gamma function
// Q(n, n theta). Source: Levenspiel, Chemical Reaction Engineering, 3rd ed. (1999), ch. 14; Buffham &
// Gibilaro, AIChE J. 14, 805 (1968) for real n.
double tanks_remaining(double n, double theta);
double tanks_swept(double n, double theta);

// Volume changes until the outlet of n tanks falls from `initial` to `target`; inverse of tanks_remaining.
double tanks_volumes(double n, double initial, double target, double supply = 0.0);

// Volume fractions of a chain of unequal stirred tanks whose residence-time variance is exactly 1/n: one
// larger tank and the rest equal, so that a real n can enter a network of whole tanks. n in 1 to 200; sum
// is 1.
std::vector<double> chain_fractions(double n);

// Axial dispersion after a step at the inlet, Pe in 1e-3 to 1e6, theta >= 0 (swept 0 at theta = 0). Source:
// Ogata & Banks, USGS Professional Paper 411-A (1961), eq. 13, written with the scaled complement exp(x^2)
// erfc(x) so that exp(Pe) never overflows.
double dispersion_remaining(double peclet, double theta);
double dispersion_swept(double peclet, double theta);

// The same for small dispersion, F = erfc((1 - theta) sqrt(Pe) / 2) / 2; meant for Pe > 100, valid input Pe >
// 0. Source: Levenspiel, 3rd ed., ch. 13.
double small_dispersion_swept(double peclet, double theta);

// Volume changes until the outlet of the dispersed line falls from `initial` to `target`; Pe in 1e-3 to 1e6.
double dispersion_volumes(double peclet, double initial, double target, double supply = 0.0);

// Effective axial dispersion in fully developed laminar flow. Sources: Taylor, Proc. R. Soc. A 219, 186
// (1953); Aris, Proc. R. Soc. A 235, 67 (1956): tube D (1 + Pe_R^2 / 48), Pe_R = u R / D; flat gap D (1 +
// Pe_h^2 / 210), Pe_h = u h / D with the full gap h. Diffusivity and size above 0, speed >= 0.
units::Diffusivity taylor_aris_tube(units::Diffusivity molecular, units::Velocity speed,
                                    units::Length radius);
units::Diffusivity taylor_aris_slot(units::Diffusivity molecular, units::Velocity speed, units::Length gap);

// How far Taylor's condition is met, (L / R) / (0.1 u R / D): well above 1 the tube is long enough for
// diffusion to even out the section, below 1 the flow is laminar convective. Infinite at speed 0.
double taylor_development(units::Diffusivity molecular, units::Velocity speed, units::Length radius,
                          units::Length length);

// Axial dispersion in turbulent pipe flow, 10.1 R u*, u* = u sqrt(f / 8) with Darcy's friction factor f.
// Source: Taylor, Proc. R. Soc. A 223, 446 (1954).
units::Diffusivity taylor_turbulent(units::Velocity speed, units::Length radius, double friction_factor);

// Laminar convective flow without radial diffusion (the upper bound of tailing): remaining 1/(4 theta^2) from
// theta = 1/2 on, 1 before. Source: Levenspiel, 3rd ed., ch. 15 (parabolic profile).
double convective_remaining(double theta);
double convective_volumes(double initial, double target, double supply = 0.0);

// How far a gas has spread into another that lies beside it, until so little of it is left: x of C / C0 =
// erfc(x / (2 sqrt(D t))) / 2. Share above 0 and below a half; diffusivity above 0, time >= 0. Source: Crank,
// The Mathematics of Diffusion, 2nd ed. (1975), eq. 2.14.
units::Length spread_depth(units::Diffusivity diffusivity, units::Time time, double share);

// Variance of the residence time over its mean squared in a closed vessel with dispersion, 2/Pe - 2/Pe^2 (1 -
// exp(-Pe)); open vessel 2/Pe + 8/Pe^2. Pe > 0 (closed: Pe >= 0, where it is 1). Source: Levenspiel, 3rd ed.,
// ch. 13 (van der Laan 1958).
double closed_vessel_variance(double peclet);
double open_vessel_variance(double peclet);

// Number of tanks with the closed vessel's variance, 1 at Pe = 0, about Pe/2 when large; and the inverse, n
// in 1 to 1e5. Common practice after Levenspiel, 3rd ed., ch. 14.
double equivalent_tanks(double peclet);
double equivalent_peclet(double n);

} // namespace purgewright::gas
