#include "purgewright/heat/gas_film.hpp"

#include "heat/require.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace purgewright::heat {

namespace {

using detail::require;
using units::Temperature;

struct Row {
  double kelvin, conductivity;
};
constexpr std::array<Row, 8> argon{{{300.0, 17.9e-3},
                                    {400.0, 22.6e-3},
                                    {500.0, 26.8e-3},
                                    {600.0, 30.6e-3},
                                    {700.0, 33.99e-3},
                                    {800.0, 37.32e-3},
                                    {900.0, 40.47e-3},
                                    {1000.0, 43.46e-3}}};
constexpr std::array<Row, 6> helium{{{300.0, 156.7e-3},
                                     {400.0, 190.6e-3},
                                     {500.0, 222.3e-3},
                                     {600.0, 252.4e-3},
                                     {700.0, 278.0e-3},
                                     {1000.0, 354.0e-3}}};
constexpr double gas_constant = 8.314462618; // J/(mol K), CODATA 2018
constexpr double pressure = 101325.0;        // Pa, standard atmosphere
constexpr double gravity = 9.80665;          // m/s2, standard
constexpr double monatomic_prandtl = 2.0 / 3.0;

constexpr double molar_mass(job::GasSpecies species) { // kg/mol, IUPAC
  return species == job::GasSpecies::argon ? 39.948e-3 : 4.0026e-3;
}

} // namespace

double gas_conductivity(job::GasSpecies species, Temperature temperature) {
  const double t = temperature.value();
  require(t >= 250.0 && t <= 1500.0, "gas_conductivity", "temperature must lie in 250 K to 1500 K", t);
  const std::span<const Row> rows =
      species == job::GasSpecies::argon ? std::span<const Row>(argon) : std::span<const Row>(helium);
  const double at = std::min(t, rows.back().kelvin);
  std::size_t i = 1;
  while (i + 1 < rows.size() && rows[i].kelvin < at) {
    ++i;
  }
  const Row &a = rows[i - 1], &b = rows[i];
  return a.conductivity + (b.conductivity - a.conductivity) * (at - a.kelvin) / (b.kelvin - a.kelvin);
}

double cylinder_nusselt(double rayleigh, double prandtl) {
  require(rayleigh >= 0.0 && rayleigh <= 1e12, "cylinder_nusselt", "Rayleigh number must lie in 0 to 1e12",
          rayleigh);
  require(prandtl > 0.0, "cylinder_nusselt", "Prandtl number must be above 0", prandtl);
  const double prandtl_term = std::pow(1.0 + std::pow(0.559 / prandtl, 9.0 / 16.0), 8.0 / 27.0);
  const double root = 0.60 + 0.387 * std::pow(rayleigh, 1.0 / 6.0) / prandtl_term;
  return root * root;
}

double natural_coefficient(job::GasSpecies species, units::Length diameter, Temperature surface,
                           Temperature ambient) {
  constexpr std::string_view here = "natural_coefficient";
  const double d = diameter.value();
  require(d > 0.0, here, "diameter must be above 0", d);
  require(surface > ambient, here, "surface must be hotter than the ambient", surface.value());
  const double film = 0.5 * (surface.value() + ambient.value());
  const double conductivity = gas_conductivity(species, units::kelvins(film));
  const double specific_heat = 2.5 * gas_constant / molar_mass(species);
  const double density = pressure * molar_mass(species) / (gas_constant * film);
  const double diffusivity = conductivity / (density * specific_heat);
  const double rayleigh = gravity * (surface.value() - ambient.value()) / film * d * d * d /
                          (diffusivity * diffusivity * monatomic_prandtl);
  return cylinder_nusselt(rayleigh, monatomic_prandtl) * conductivity / d;
}

double bore_coefficient(job::GasSpecies species, units::Length diameter, Temperature film) {
  require(diameter.value() > 0.0, "bore_coefficient", "diameter must be above 0", diameter.value());
  return 3.66 * gas_conductivity(species, film) / diameter.value();
}

} // namespace purgewright::heat
