#include "purgewright/heat/metal.hpp"

#include "heat/require.hpp"

#include <algorithm>

namespace purgewright::heat {

namespace {

using detail::require;
using units::kelvins;
using units::Temperature;

constexpr double enthalpy_zero = 298.15; // K

double read(const std::vector<PropertyRow> &rows, double t) {
  const auto above = std::lower_bound(
      rows.begin(), rows.end(), t, [](const PropertyRow &row, double value) { return row.kelvin < value; });
  if (above == rows.begin()) {
    return rows.front().value;
  }
  if (above == rows.end()) {
    return rows.back().value;
  }
  const PropertyRow &a = *(above - 1), &b = *above;
  return a.value + (b.value - a.value) * (t - a.kelvin) / (b.kelvin - a.kelvin);
}

// Integral of the linear interpolation from 0 K to t.
double integral(const std::vector<PropertyRow> &rows, double t) {
  double sum = rows.front().value * std::min(t, rows.front().kelvin);
  for (std::size_t i = 1; i < rows.size() && rows[i - 1].kelvin < t; ++i) {
    const double end = std::min(t, rows[i].kelvin);
    sum += 0.5 * (rows[i - 1].value + read(rows, end)) * (end - rows[i - 1].kelvin);
  }
  return sum + rows.back().value * std::max(0.0, t - rows.back().kelvin);
}

double check(std::string_view function, Temperature t) {
  require(t >= coldest && t <= hottest, function, "temperature must lie in 200 K to 4000 K", t.value());
  return t.value();
}

// Share of the way from solidus to liquidus.
double melted(const Metal &metal, double t) {
  const double solidus = metal.solidus.value(), liquidus = metal.liquidus.value();
  return std::clamp((t - solidus) / (liquidus - solidus), 0.0, 1.0);
}

Metal from_table(const standards::Metal &row) {
  const standards::Melting &melting = *row.melting;
  const auto rows = [](const standards::Property &property) {
    return std::vector<PropertyRow>(property.rows.begin(), property.rows.end());
  };
  return {.name = std::string(row.name),
          .density = row.density,
          .conductivity = rows(row.conductivity),
          .specific_heat = rows(row.specific_heat),
          .pool_conductivity = melting.pool_conductivity,
          .solidus = row.melting_start,
          .liquidus = melting.liquidus,
          .latent_heat = melting.latent_heat,
          .emissivity = melting.emissivity,
          .beta_transus = melting.beta_transus};
}

std::vector<Metal> melted_metals() {
  std::vector<Metal> all;
  for (const standards::Metal &row : standards::metals()) {
    if (row.melting) {
      all.push_back(from_table(row));
    }
  }
  return all;
}

} // namespace

double Metal::conductivity_at(Temperature temperature) const {
  const double t = check("conductivity_at", temperature);
  const double share = melted(*this, t);
  return (1.0 - share) * read(conductivity, t) + share * pool_conductivity;
}

double Metal::specific_heat_at(Temperature t) const {
  return read(specific_heat, check("specific_heat_at", t));
}

double Metal::apparent_heat_at(Temperature temperature) const {
  const double t = check("apparent_heat_at", temperature);
  const double latent = temperature >= solidus && temperature < liquidus
                            ? latent_heat / (liquidus.value() - solidus.value())
                            : 0.0;
  return read(specific_heat, t) + latent;
}

double Metal::enthalpy_at(Temperature temperature) const {
  const double t = check("enthalpy_at", temperature);
  return integral(specific_heat, t) - integral(specific_heat, enthalpy_zero) + latent_heat * melted(*this, t);
}

const Metal *thermal_metal(std::string_view name) {
  static const std::vector<Metal> metals = melted_metals();
  const auto found =
      std::find_if(metals.begin(), metals.end(), [name](const Metal &m) { return m.name == name; });
  return found == metals.end() ? nullptr : &*found;
}

Metal constant_metal(double conductivity, units::Density density, double specific_heat, double emissivity) {
  constexpr std::string_view here = "constant_metal";
  require(conductivity > 0.0, here, "conductivity must be above 0", conductivity);
  require(density.value() > 0.0, here, "density must be above 0", density.value());
  require(specific_heat > 0.0, here, "specific heat must be above 0", specific_heat);
  require(emissivity >= 0.0 && emissivity <= 1.0, here, "emissivity must lie in 0 to 1", emissivity);
  return {.name = "constant",
          .density = density,
          .conductivity = {{300.0, conductivity}},
          .specific_heat = {{300.0, specific_heat}},
          .pool_conductivity = conductivity,
          .solidus = kelvins(3998.0),
          .liquidus = kelvins(3999.0),
          .latent_heat = 0.0,
          .emissivity = emissivity,
          .beta_transus = kelvins(3998.0)};
}

} // namespace purgewright::heat
