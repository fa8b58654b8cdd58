// Closed-form estimate of how long a thin wall cools after the arc has passed, until a full thermal model
// takes over.
//
// Units: quantity types; conductivity W/(m K), specific heat J/(kg K), line energy J/m, diffusivity of heat
// m2/s. Errors: std::domain_error with the function's name and the value. Guarantee: pure functions. Infinite
// sheet, constant properties, conduction only: gas, radiation and the fixture shorten the true time, a short
// tube end lengthens it. An estimate, to be named as one.
#pragma once

#include "purgewright/units/quantity.hpp"

namespace purgewright::gas {

struct WallMetal {
  double conductivity = 0.0; // W/(m K), mean over the range, above 0
  units::Density density{};
  double specific_heat = 0.0; // J/(kg K), above 0
};

// Energy per length eta U I / v. Speed above 0, efficiency in 0 to 1, voltage and current >= 0.
double line_energy(units::Voltage voltage, units::Current current, double arc_efficiency,
                   units::Velocity speed);

// Time from `peak` to `shielding` temperature at the weld's centre in a sheet of the given thickness that
// started at `start`: (q/v)^2 / (4 pi k rho c d^2) (1/(Ts - T0)^2 - 1/(Tp - T0)^2). start < shielding <=
// peak. A closed ring that was welded all round cools along the tube by the same law, since the instantaneous
// plane source of q/(v d) per area is the same function. Source: Rosenthal, Trans. ASME 68, 849 (1946), thin
// plate; Easterling, Introduction to the Physical Metallurgy of Welding, 2nd ed. (1992), ch. 1.
units::Time thin_plate_cooling_time(double line_energy, units::Length thickness, const WallMetal &metal,
                                    units::Temperature start, units::Temperature peak,
                                    units::Temperature shielding);

// Temperature rise a time after the arc passed, (q/v)/(d sqrt(4 pi k rho c t)); time above 0. The inverse of
// the same law.
units::TemperatureDifference thin_plate_rise(double line_energy, units::Length thickness,
                                             const WallMetal &metal, units::Time time);

// Relative plate thickness d sqrt(rho c (Tc - T0) / (q/v)): the thin formula holds under 0.6, thick above
// 0.9. Source: AWS Welding Handbook, vol. 1, heat flow chapter.
inline constexpr double thin_plate_limit = 0.6;
double relative_plate_thickness(double line_energy, units::Length thickness, const WallMetal &metal,
                                units::TemperatureDifference rise);

} // namespace purgewright::gas
