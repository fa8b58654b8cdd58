// Pressure drops of tubes and holes, the flow a pressure drives, and the pressure a molten joint holds.
//
// Units: quantity types; loss coefficients multiply rho u^2 / 2; surface tension is N/m.
// Errors: std::domain_error with the function's name and the value; sizes, density, viscosity above 0, flow
// and pressure not negative, unless said. Gas is taken incompressible: keep drops under a tenth of the
// absolute pressure. Guarantee: pure functions; every drop rises with flow, so the inverse has one answer,
// found to 1e-12 relative.
#pragma once

#include "purgewright/units/quantity.hpp"

#include <vector>

namespace purgewright::gas {

// The gas a line carries.
struct Stream {
  units::Density density{};
  units::DynamicViscosity viscosity{};
};

// Hagen-Poiseuille: 128 mu L Q / (pi d^4), and for a flat gap 12 mu L Q / (w h^3). Laminar flow, fully
// developed. Source: White, Fluid Mechanics, ch. 6.
units::Pressure tube_laminar_drop(units::DynamicViscosity viscosity, units::Length length,
                                  units::Length diameter, units::VolumeFlow flow);
units::Pressure gap_laminar_drop(units::DynamicViscosity viscosity, units::Length length, units::Length width,
                                 units::Length gap, units::VolumeFlow flow);

// Darcy friction factor of a round tube for any Reynolds number above 0, laminar through turbulent; roughness
// over diameter 0 to 0.05. Source: Churchill, Chem. Eng. 84 (24), 91 (1977).
double friction_factor(double reynolds, double relative_roughness = 0.0);

// Drop K rho u^2 / 2 of fittings. K >= 0.
units::Pressure minor_drop(double loss, units::Density density, units::Velocity speed);

// Loss coefficients for turbulent flow. Source: White, Fluid Mechanics, minor-loss tables.
namespace loss {
inline constexpr double sharp_entrance = 0.5, rounded_entrance = 0.05, reentrant_entrance = 0.8, exit = 1.0,
                        mitre_bend = 1.1, smooth_elbow = 0.3, threaded_elbow = 1.5, tee_line = 0.9,
                        tee_branch = 2.0;
} // namespace loss
double sudden_expansion_loss(units::Area upstream, units::Area downstream); // (1 - A1/A2)^2, A1 <= A2

// One length of tube: friction plus its fittings, K by the tube's own speed.
struct TubeRun {
  units::Length length{};
  units::Length diameter{};
  double losses = 0.0;
  double relative_roughness = 0.0;
};
units::Pressure tube_drop(const TubeRun &run, units::VolumeFlow flow, const Stream &stream);

// `count` equal round holes side by side, flow of all together: 6 pi mu u/d (Sampson) + 32 mu t u/d^2
// (Poiseuille in the thickness) + rho u^2 / (2 Cd^2), creeping through turbulent; u the mean speed in a hole.
// Sources: Sampson, Phil. Trans. R. Soc. A 182, 449 (1891); sum of the two laminar parts, Dagan, Weinbaum,
// Pfeffer, J. Fluid Mech. 115, 505 (1982); Cd 0.596, Rennels & Hudson, Pipe Flow (2012), ch. 12 (0.60 to 0.62
// measured).
struct Holes {
  units::Length diameter{};
  units::Length thickness{}; // may be 0
  int count = 1;
  double discharge = 0.60;
};
units::Pressure holes_drop(const Holes &holes, units::VolumeFlow flow, const Stream &stream);
units::VolumeFlow holes_flow(const Holes &holes, units::Pressure drop,
                             const Stream &stream); // its inverse, closed

// Tubes and plates one after another.
struct Line {
  std::vector<TubeRun> tubes;
  std::vector<Holes> plates;
};
units::Pressure line_drop(const Line &line, units::VolumeFlow flow, const Stream &stream);

// Flow that a drop >= 0 drives through the line; the line must hold at least one element.
units::VolumeFlow line_flow(const Line &line, units::Pressure drop, const Stream &stream);

// Surface tension of liquid titanium, 1650 K to 2300 K for the pure metal and 1650 K to 2200 K for Ti-6Al-4V,
// N/m. Sources: pure, 1.557 - 0.156e-3 (T - 1943 K), Paradis, Ishikawa, Yoda, Int. J. Thermophys. 23, 825
// (2002); alloy, 1.389 - 0.9017e-3 (T - 1660 degC), Schneider, Egry, Seyhan, Int. J. Thermophys. 23, 1241
// (2002).
double titanium_surface_tension(units::Temperature temperature);
double titanium_alloy_surface_tension(units::Temperature temperature);

// Pressure a liquid surface of the given width holds before it bulges through: 2 gamma / width for a long gap
// (a half cylinder of radius width/2), 4 gamma / width for a round pool (a half sphere). Source:
// Young-Laplace.
enum class LiquidShape { long_gap, round_pool };
units::Pressure capillary_hold(double surface_tension, units::Length width, LiquidShape shape);

// Bore overpressure allowed under it: the hold less the pool's own weight rho g depth, over a safety factor
// >= 1. The default factor 4 covers oxygen and impurities lowering the surface tension, arc force and pool
// motion: common practice, no source. Never negative: 0 where the pool's weight alone exceeds the hold.
inline constexpr double bore_pressure_safety = 4.0;
inline constexpr double liquid_titanium_density = 4130.0; // kg/m3 at melting, Iida & Guthrie (1988)
units::Pressure bore_pressure_limit(double surface_tension, units::Length width, LiquidShape shape,
                                    units::Length pool_depth, double safety = bore_pressure_safety);

} // namespace purgewright::gas
