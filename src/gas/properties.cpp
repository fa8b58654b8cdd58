#include "purgewright/gas/properties.hpp"

#include "gas/require.hpp"

#include <cmath>
#include <cstddef>

namespace purgewright::gas {

using detail::require;

namespace {

const standards::Gas &row(Species species) {
  return standards::gases()[static_cast<std::size_t>(species)];
}

double checked_temperature(units::Temperature temperature, std::string_view function) {
  const double kelvin = temperature.value();
  require(kelvin >= 200.0 && kelvin <= 1000.0, function, "temperature must lie in 200 K to 1000 K", kelvin);
  return kelvin;
}

double checked_pressure(units::Pressure pressure, std::string_view function) {
  const double pascal = pressure.value();
  require(pascal >= 1e3 && pascal <= 1e6, function, "pressure must lie in 1 kPa to 1 MPa", pascal);
  return pascal;
}

double checked_reduced(double reduced, std::string_view function) {
  require(reduced >= 0.3 && reduced <= 110.0, function, "reduced temperature must lie in 0.3 to 110",
          reduced);
  return reduced;
}

} // namespace

double molar_mass(Species species) {
  return row(species).molar_mass;
}

const LennardJones &lennard_jones(Species species) {
  return row(species).potential;
}

double specific_heat(Species species) {
  return row(species).specific_heat();
}

double viscosity_integral(double reduced_temperature) {
  const double t = checked_reduced(reduced_temperature, "viscosity_integral");
  return 1.16145 * std::pow(t, -0.14874) + 0.52487 * std::exp(-0.77320 * t) +
         2.16178 * std::exp(-2.43787 * t);
}

double diffusion_integral(double reduced_temperature) {
  const double t = checked_reduced(reduced_temperature, "diffusion_integral");
  return 1.06036 * std::pow(t, -0.15610) + 0.19300 * std::exp(-0.47635 * t) +
         1.03587 * std::exp(-1.52996 * t) + 1.76474 * std::exp(-3.89411 * t);
}

units::Density density(Species species, units::Temperature temperature, units::Pressure pressure) {
  const double kelvin = checked_temperature(temperature, "density");
  const double pascal = checked_pressure(pressure, "density");
  return units::kilograms_per_cubic_metre(pascal * molar_mass(species) / (molar_gas_constant * kelvin));
}

units::Density mixture_density(Species a, Species b, double fraction, units::Temperature temperature,
                               units::Pressure pressure) {
  require(fraction >= 0.0 && fraction <= 1.0, "mixture_density", "fraction must lie in 0 to 1", fraction);
  return fraction * density(a, temperature, pressure) + (1.0 - fraction) * density(b, temperature, pressure);
}

units::DynamicViscosity viscosity(Species species, units::Temperature temperature) {
  const double kelvin = checked_temperature(temperature, "viscosity");
  const LennardJones &potential = lennard_jones(species);
  const double grams = molar_mass(species) * 1e3; // the published constant takes g/mol
  return units::DynamicViscosity::from_value(
      2.6693e-6 * std::sqrt(grams * kelvin) /
      (potential.diameter * potential.diameter * viscosity_integral(kelvin / potential.well_depth)));
}

units::Diffusivity kinematic_viscosity(Species species, units::Temperature temperature,
                                       units::Pressure pressure) {
  return units::Diffusivity::from_value(viscosity(species, temperature).value() /
                                        density(species, temperature, pressure).value());
}

units::Diffusivity diffusivity(Species a, Species b, units::Temperature temperature,
                               units::Pressure pressure) {
  const double kelvin = checked_temperature(temperature, "diffusivity");
  const double atmospheres = checked_pressure(pressure, "diffusivity") / standard_atmosphere.value();
  const LennardJones &pa = lennard_jones(a), &pb = lennard_jones(b);
  const double diameter = 0.5 * (pa.diameter + pb.diameter);
  const double depth = std::sqrt(pa.well_depth * pb.well_depth);
  const double inverse_mass =
      1e-3 / molar_mass(a) + 1e-3 / molar_mass(b); // mol/g as in the published constant
  return units::Diffusivity::from_value(
      1e-4 * 0.0018583 * std::sqrt(kelvin * kelvin * kelvin * inverse_mass) /
      (atmospheres * diameter * diameter * diffusion_integral(kelvin / depth)));
}

double reduced_gravity(units::Density gas, units::Density ambient, units::Density reference) {
  require(gas.value() > 0.0, "reduced_gravity", "gas density must be above 0", gas.value());
  require(ambient.value() > 0.0, "reduced_gravity", "ambient density must be above 0", ambient.value());
  require(reference.value() > 0.0, "reduced_gravity", "reference density must be above 0", reference.value());
  return standard_gravity * (gas.value() - ambient.value()) / reference.value();
}

} // namespace purgewright::gas
