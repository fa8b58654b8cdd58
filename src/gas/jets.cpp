#include "purgewright/gas/jets.hpp"

#include "gas/require.hpp"
#include "gas/smooth.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace purgewright::gas {

using detail::require;

namespace {

constexpr double forced_rise = 2.46, weak_rise = 0.90, very_weak_rise = 0.94;
const double spread_tangent = std::tan(units::degrees(11.0).value()); // half of the jet's included angle
constexpr double laminar_jet_limit = 1000.0;                          // Re, end of the laminar class
constexpr double laminar_steps_per_reynolds = 0.088;

void check_box(const FillingBox &box, std::string_view function) {
  require(box.section.value() > 0.0, function, "section must be above 0", box.section.value());
  require(box.height.value() > 0.0, function, "height must be above 0", box.height.value());
  require(box.buoyancy_flux > 0.0, function, "buoyancy flux must be above 0", box.buoyancy_flux);
  require(box.coefficient > 0.0, function, "plume coefficient must be above 0", box.coefficient);
}

// Rate at which the box's time scale runs, 1/s.
double front_rate(const FillingBox &box) {
  const double height = box.height.value();
  return 2.0 / 3.0 * box.coefficient * std::cbrt(box.buoyancy_flux) * std::cbrt(height * height) /
         box.section.value();
}

} // namespace

double reynolds(units::Velocity speed, units::Length size, units::Diffusivity kinematic_viscosity) {
  require(speed.value() >= 0.0, "reynolds", "speed must not be negative", speed.value());
  require(size.value() > 0.0, "reynolds", "size must be above 0", size.value());
  require(kinematic_viscosity.value() > 0.0, "reynolds", "viscosity must be above 0",
          kinematic_viscosity.value());
  return (speed * size).value() / kinematic_viscosity.value();
}

JetRegime jet_regime(double reynolds_number) {
  require(reynolds_number >= 0.0, "jet_regime", "Reynolds number must not be negative", reynolds_number);
  if (reynolds_number < 300.0)
    return JetRegime::dissipated_laminar;
  if (reynolds_number < 1000.0)
    return JetRegime::laminar;
  return reynolds_number < 3000.0 ? JetRegime::semi_turbulent : JetRegime::turbulent;
}

double densimetric_froude(units::Velocity speed, double reduced_gravity, units::Length radius) {
  require(speed.value() >= 0.0, "densimetric_froude", "speed must not be negative", speed.value());
  require(reduced_gravity > 0.0, "densimetric_froude", "reduced gravity must be above 0", reduced_gravity);
  require(radius.value() > 0.0, "densimetric_froude", "radius must be above 0", radius.value());
  return speed.value() / std::sqrt(reduced_gravity * radius.value());
}

units::Length fountain_height(double froude, units::Length radius) {
  require(froude >= 0.0, "fountain_height", "Froude number must not be negative", froude);
  require(radius.value() > 0.0, "fountain_height", "radius must be above 0", radius.value());
  static const double weak_from = std::pow(very_weak_rise / weak_rise, 0.75);
  constexpr double forced_from = forced_rise / weak_rise;
  if (froude < weak_from)
    return radius * (very_weak_rise * std::cbrt(froude * froude));
  return radius * (froude < forced_from ? weak_rise * froude * froude : forced_rise * froude);
}

double buoyancy_flux(units::VolumeFlow flow, double reduced_gravity) {
  require(flow.value() >= 0.0, "buoyancy_flux", "flow must not be negative", flow.value());
  require(reduced_gravity >= 0.0, "buoyancy_flux", "reduced gravity must not be negative", reduced_gravity);
  return flow.value() * reduced_gravity;
}

double thermal_buoyancy_flux(units::Power convective, units::Density density, double specific_heat,
                             units::Temperature ambient) {
  require(convective.value() >= 0.0, "thermal_buoyancy_flux", "power must not be negative",
          convective.value());
  require(density.value() > 0.0, "thermal_buoyancy_flux", "density must be above 0", density.value());
  require(specific_heat > 0.0, "thermal_buoyancy_flux", "specific heat must be above 0", specific_heat);
  require(ambient.value() > 0.0, "thermal_buoyancy_flux", "temperature must be above 0", ambient.value());
  return standard_gravity * convective.value() / (density.value() * specific_heat * ambient.value());
}

units::VolumeFlow plume_flow(double buoyancy_flux, units::Length distance, double coefficient) {
  require(buoyancy_flux >= 0.0, "plume_flow", "buoyancy flux must not be negative", buoyancy_flux);
  require(distance.value() >= 0.0, "plume_flow", "distance must not be negative", distance.value());
  require(coefficient > 0.0, "plume_flow", "plume coefficient must be above 0", coefficient);
  const double z = distance.value();
  return units::cubic_metres_per_second(coefficient * std::cbrt(buoyancy_flux) * z * std::cbrt(z * z));
}

units::Power free_convection(const HotCylinder &hot, Species gas, units::Temperature at_rest) {
  constexpr std::string_view here = "free_convection";
  require(hot.diameter.value() > 0.0, here, "diameter must be above 0", hot.diameter.value());
  require(hot.length.value() > 0.0, here, "length must be above 0", hot.length.value());
  const double rise = (hot.surface - at_rest).value();
  require(rise >= 0.0, here, "the surface must be as hot as the gas or hotter, difference", rise);
  const auto mean = units::kelvins(at_rest.value() + 0.5 * rise);
  constexpr double prandtl = 2.0 / 3.0; // monatomic: cp / (2.5 cv)
  const double mu = viscosity(gas, mean).value(), rho = density(gas, mean).value();
  const double d = hot.diameter.value(), slowness = mu / rho;
  const double rayleigh =
      standard_gravity * rise / mean.value() * d * d * d * prandtl / (slowness * slowness);
  const double spread = std::pow(1.0 + std::pow(0.559 / prandtl, 9.0 / 16.0), 4.0 / 9.0);
  const double nusselt = 0.36 + 0.518 * std::pow(rayleigh, 0.25) / spread;
  const double conductivity = specific_heat(gas) * mu / prandtl;
  return units::Power::from_value(nusselt * conductivity * units::pi * hot.length.value() * rise);
}

units::Length first_front(const FillingBox &box, units::Time time) {
  check_box(box, "first_front");
  require(time.value() >= 0.0, "first_front", "time must not be negative", time.value());
  return box.height * std::pow(1.0 + front_rate(box) * time.value(), -1.5);
}

units::Time first_front_time(const FillingBox &box, units::Length front) {
  check_box(box, "first_front_time");
  const double share = units::ratio(front, box.height);
  require(share > 0.0 && share <= 1.0, "first_front_time", "front must lie in 0 to the height",
          front.value());
  return units::seconds((std::pow(share, -2.0 / 3.0) - 1.0) / front_rate(box));
}

units::Length jet_stirred_length(const DuctJets &jets) {
  constexpr std::string_view here = "jet_stirred_length";
  require(jets.duct_diameter.value() > 0.0, here, "duct diameter must be above 0",
          jets.duct_diameter.value());
  require(jets.jet_diameter.value() > 0.0, here, "jet diameter must be above 0", jets.jet_diameter.value());
  require(jets.count >= 1, here, "count must be at least 1", jets.count);
  require(jets.jet_reynolds >= 0.0, here, "Reynolds number must not be negative", jets.jet_reynolds);
  const double cell = jets.duct_diameter.value() / std::sqrt(static_cast<double>(jets.count));
  const double step = std::max(0.0, 0.5 * (cell - jets.jet_diameter.value()));
  const double turbulent = step / spread_tangent;
  const double laminar = laminar_steps_per_reynolds * jets.jet_reynolds * step;
  return units::metres(jets.jet_reynolds < laminar_jet_limit ? std::min(laminar, turbulent) : turbulent);
}

Stirring stirring(const Inlet &inlet) {
  constexpr std::string_view here = "stirring";
  require(inlet.speed.value() >= 0.0, here, "speed must not be negative", inlet.speed.value());
  require(inlet.radius.value() > 0.0, here, "radius must be above 0", inlet.radius.value());
  require(inlet.space_height.value() > 0.0, here, "space height must be above 0", inlet.space_height.value());
  require(std::isfinite(inlet.reduced_gravity), here, "reduced gravity must be finite",
          inlet.reduced_gravity);
  Stirring result;
  const double settling = inlet.feed == Feed::low ? inlet.reduced_gravity : -inlet.reduced_gravity;
  result.wrong_end = settling < 0.0;
  if (settling <= 0.0) {
    result.froude = std::numeric_limits<double>::infinity();
    result.reach = std::numeric_limits<double>::infinity();
    return result;
  }
  result.froude = densimetric_froude(inlet.speed, settling, inlet.radius);
  // A sideways jet is judged by momentum alone: it mixes the depth it entrains, whatever its rise.
  result.reach = inlet.along_gravity_axis
                     ? units::ratio(fountain_height(result.froude, inlet.radius), inlet.space_height)
                     : stirring_reach;
  result.weight = detail::smooth_step(std::log(std::max(result.froude, 1e-9)), std::log(lying_froude),
                                      std::log(stirring_froude)) *
                  detail::smooth_step(result.reach, lying_reach, stirring_reach);
  return result;
}

double blended_tanks(double weight, double lying_tanks) {
  require(weight >= 0.0 && weight <= 1.0, "blended_tanks", "weight must lie in 0 to 1", weight);
  require(lying_tanks >= 1.0, "blended_tanks", "number of tanks must be at least 1", lying_tanks);
  return 1.0 / (weight + (1.0 - weight) / lying_tanks);
}

} // namespace purgewright::gas
