#include "purgewright/heat/gas_film.hpp"

#include "heat/require.hpp"
#include "purgewright/standards/tables.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::heat {

namespace {

using detail::require;
using units::Temperature;

constexpr double monatomic_prandtl = 2.0 / 3.0;

const standards::Gas &gas_of(job::GasSpecies species) {
  return standards::gases()[species == job::GasSpecies::argon ? 0 : 1];
}

} // namespace

double gas_conductivity(job::GasSpecies species, Temperature temperature) {
  const double t = temperature.value();
  require(t >= 250.0 && t <= 1500.0, "gas_conductivity", "temperature must lie in 250 K to 1500 K", t);
  const auto rows = gas_of(species).conductivity.rows;
  const double at = std::min(t, rows.back().kelvin);
  std::size_t i = 1;
  while (i + 1 < rows.size() && rows[i].kelvin < at) {
    ++i;
  }
  const standards::PropertyRow &a = rows[i - 1], &b = rows[i];
  return a.value + (b.value - a.value) * (at - a.kelvin) / (b.kelvin - a.kelvin);
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
  const standards::Gas &gas = gas_of(species);
  const double density =
      standards::standard_atmosphere.value() * gas.molar_mass / (standards::molar_gas_constant * film);
  const double diffusivity = conductivity / (density * gas.specific_heat());
  const double rayleigh = standards::standard_gravity * (surface.value() - ambient.value()) / film * d * d *
                          d / (diffusivity * diffusivity * monatomic_prandtl);
  return cylinder_nusselt(rayleigh, monatomic_prandtl) * conductivity / d;
}

double bore_coefficient(job::GasSpecies species, units::Length diameter, Temperature film) {
  require(diameter.value() > 0.0, "bore_coefficient", "diameter must be above 0", diameter.value());
  return 3.66 * gas_conductivity(species, film) / diameter.value();
}

} // namespace purgewright::heat
