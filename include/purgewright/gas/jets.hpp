// Jets, fountains and plumes: whether an inflow lies in layers or stirs the space it enters.
//
// Units: quantity types; gravity and reduced gravity are m/s2, buoyancy flux is m4/s3. Reduced gravity is
// taken as its magnitude here unless said. Frame: heights are above the source, against gravity for a dense
// fountain. Errors: std::domain_error with the function's name and the value outside the stated range.
// Guarantee: pure functions; fountain height and stir weight are continuous in every input.
#pragma once

#include "purgewright/gas/properties.hpp"
#include "purgewright/units/quantity.hpp"

namespace purgewright::gas {

// Re = u d / nu. Speed >= 0, size and viscosity above 0.
double reynolds(units::Velocity speed, units::Length size, units::Diffusivity kinematic_viscosity);

// Regime of a round free jet by its Reynolds number (>= 0): below 300 dissipated laminar, to 1000 laminar, to
// 3000 semi-turbulent, above turbulent. Source: McNaughton & Sinclair, J. Fluid Mech. 25, 367 (1966).
enum class JetRegime { dissipated_laminar, laminar, semi_turbulent, turbulent };
JetRegime jet_regime(double reynolds_number);

// Fr = u / sqrt(g' r), r the source radius. Speed >= 0, g' and radius above 0.
double densimetric_froude(units::Velocity speed, double reduced_gravity, units::Length radius);

// Steady height a jet of Froude number Fr rises against its own weight. Forced 2.46 Fr r, weak 0.90 Fr^2 r,
// very weak 0.94 Fr^(2/3) r; the classes meet where their formulas cross (Fr 2.73 and 1.03; published Fr 3
// and 1), so that the height has no step. Fr >= 0; small density difference, turbulent and miscible. Sources:
// Turner, J. Fluid Mech. 26, 779 (1966); Kaye & Hunt, J. Fluid Mech. 558, 319 (2006).
units::Length fountain_height(double froude, units::Length radius);

// Buoyancy flux Q g', m4/s3, of a gas source. Flow >= 0, g' >= 0.
double buoyancy_flux(units::VolumeFlow flow, double reduced_gravity);

// Buoyancy flux g P / (rho cp T) of a convective heat source in a gas at rest, m4/s3; cp in J/(kg K).
// Source: Morton, Taylor, Turner, Proc. R. Soc. A 234, 1 (1956). All inputs above 0, power >= 0.
double thermal_buoyancy_flux(units::Power convective, units::Density density, double specific_heat,
                             units::Temperature ambient);

// Volume flow of a turbulent round plume at a distance from its (virtual) source, C B^(1/3) z^(5/3). Buoyancy
// flux and distance >= 0. The coefficient is C = 0.153: Rouse, Yih & Humphreys, Tellus 4, 201 (1952).
inline constexpr double round_plume_coefficient = 0.153;
units::VolumeFlow plume_flow(double buoyancy_flux, units::Length distance,
                             double coefficient = round_plume_coefficient);

// Heat that a horizontal cylinder of the given surface gives to a gas at rest by free convection, laminar:
// Nu = 0.36 + 0.518 Ra^(1/4) / (1 + (0.559/Pr)^(9/16))^(4/9), Ra 1e-6 to 1e9, Pr 2/3 of a monatomic gas, its
// conductivity 2.5 cv mu (Eucken), properties at the mean temperature. Surface at least as hot as the gas;
// 200 K to 1000 K in the mean. Source: Churchill & Chu, Int. J. Heat Mass Transfer 18, 1049 (1975), from
// memory.
struct HotCylinder {
  units::Length diameter{}, length{};
  units::Temperature surface{};
};
units::Power free_convection(const HotCylinder &, Species gas, units::Temperature at_rest);

// Filling box: a plume from one end of a closed space of the given section and height spreads at the far end,
// and the first front returns towards the source. Distance of that front from the source after a time, and
// its inverse: zeta = (1 + tau)^(-3/2), tau = (2/3) C B^(1/3) H^(2/3) t / A. Source: Baines & Turner, J.
// Fluid Mech. 37, 51 (1969), section 2, without their coefficient. Section, height, buoyancy flux above 0;
// time >= 0; 0 < front <= height.
struct FillingBox {
  units::Area section{};
  units::Length height{};
  double buoyancy_flux = 0.0; // m4/s3
  double coefficient = round_plume_coefficient;
};
units::Length first_front(const FillingBox &box, units::Time time);
units::Time first_front_time(const FillingBox &box, units::Length front);

// Length over which jets entering along a duct stir it. `count` equal jets share the duct, each in a cell of
// diameter D/sqrt(count); the stirred length ends where a free jet spreading at 22 degrees included angle
// meets the cell's wall, and a laminar jet (Re below 1000) not beyond 0.088 Re step heights. Returns 0 where
// the jets fill the cell. Duct and jet diameter above 0, count >= 1, Re >= 0. Sources: included angle 20 to
// 24 degrees, Jones, Air Conditioning Engineering, air distribution chapter; backflow without coflow:
// Barchilon & Curtet, J. Basic Eng. 86, 777 (1964); laminar: Macagno & Hung, J. Fluid Mech. 28, 43 (1967).
// Sharing of the duct in cells: common practice, no source.
struct DuctJets {
  units::Length duct_diameter{};
  units::Length jet_diameter{};
  int count = 1;
  double jet_reynolds = 0.0;
};
units::Length jet_stirred_length(const DuctJets &jets);

// Where the inflow enters and which way its weight pulls decide whether buoyancy can layer it at all.
enum class Feed { low, high };

// Share of stirring in a space that fills with a lighter or heavier gas: 0 lies in layers, 1 is stirred. The
// weight is the product of two smooth steps: of the inlet's Froude number between 1 and 3, and of the jet's
// rise over the space's height between a quarter and the whole. A gas fed at the wrong end (dense from above,
// light from below) makes a plume and stirs: weight 1, wrong_end true. Equal densities stir. Band: stratified
// criterion of filling-box and displacement-ventilation practice, after Baines, Turner & Campbell, J. Fluid
// Mech. 212, 557 (1990); the band's ends are common practice, no source.
struct Inlet {
  units::Velocity speed{};
  units::Length radius{};       // of one hole
  units::Length space_height{}; // of the space above (low feed) or below (high feed) the hole
  double reduced_gravity = 0.0; // m/s2, signed: positive where the inflow is heavier than the gas it enters
  Feed feed = Feed::low;
  bool along_gravity_axis = true; // false: holes point sideways, and the jet does not rise
};
struct Stirring {
  double weight = 1.0; // w
  double froude = 0.0; // infinite at equal densities
  double reach = 1.0;  // rise over height, not capped
  bool wrong_end = false;
};
inline constexpr double lying_froude = 1.0, stirring_froude = 3.0;
inline constexpr double lying_reach = 0.25, stirring_reach = 1.0;
Stirring stirring(const Inlet &inlet);

// Number of tanks of a partly stirred space: variances add by weight, 1/n = w + (1 - w)/n_lying. Weight 0 to
// 1, n_lying >= 1. Derived here from the variance of tanks in series.
double blended_tanks(double weight, double lying_tanks);

} // namespace purgewright::gas
