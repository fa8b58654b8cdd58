#include "purgewright/heat/metal.hpp"

#include "heat/require.hpp"

#include <algorithm>
#include <array>

namespace purgewright::heat {

namespace {

using detail::require;
using units::celsius;
using units::kelvins;
using units::kilograms_per_cubic_metre;
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

// Liquid titanium alloy at rest 33 W/(m K) (Mills 2002); twice that for a stirred pool.
constexpr double stirred_pool = 67.0;

Metal grade_2() {
  return {.name = "titanium-grade-2",
          .density = kilograms_per_cubic_metre(4510.0),
          .conductivity = {{300.0, 16.4},
                           {400.0, 16.6},
                           {600.0, 16.9},
                           {800.0, 17.7},
                           {1000.0, 18.9},
                           {1200.0, 20.3},
                           {1500.0, 22.8},
                           {1900.0, 26.4}},
          .specific_heat = {{300.0, 522.0},
                            {400.0, 551.0},
                            {600.0, 591.0},
                            {800.0, 633.0},
                            {1000.0, 675.0},
                            {1200.0, 620.0},
                            {1500.0, 686.0}},
          .pool_conductivity = stirred_pool,
          .solidus = celsius(1660.0),
          .liquidus = celsius(1670.0),
          .latent_heat = 325.0e3,
          .emissivity = 0.30,
          .beta_transus = celsius(913.0),
          .source =
              "specific heat: Incropera & DeWitt, table A.1, titanium; conductivity: the same row, with "
              "the impurities' resistance that makes it 16.4 at 300 K falling as 1/T; latent heat and "
              "melting: ASM; emissivity 0.3 at 710 degC: data sheet of Grade 1; pool: twice the liquid "
              "at rest, common practice"};
}

Metal grade_9() {
  return {.name = "titanium-grade-9",
          .density = kilograms_per_cubic_metre(4480.0),
          .conductivity = {{298.0, 8.3},
                           {373.0, 11.7},
                           {473.0, 13.0},
                           {573.0, 13.4},
                           {673.0, 14.2},
                           {773.0, 14.7},
                           {873.0, 16.3},
                           {973.0, 17.6},
                           {1073.0, 19.3},
                           {1473.0, 22.9},
                           {1873.0, 27.0}},
          .specific_heat = {{298.0, 523.0},
                            {473.0, 559.0},
                            {673.0, 602.0},
                            {873.0, 645.0},
                            {1073.0, 684.0},
                            {1173.0, 703.0},
                            {1268.0, 614.0},
                            {1573.0, 667.0},
                            {1873.0, 718.0}},
          .pool_conductivity = stirred_pool,
          .solidus = celsius(1620.0),
          .liquidus = celsius(1700.0),
          .latent_heat = 300.0e3,
          .emissivity = 0.25,
          .beta_transus = celsius(935.0),
          .source =
              "conductivity 100 to 800 degC and density: public data sheets of Ti-3Al-2.5V, above that "
              "as Ti-6Al-4V; specific heat: Ti-6Al-4V (Mills 2002) scaled to 523 at 25 degC; latent heat "
              "taken between titanium and Ti-6Al-4V; emissivity: as Ti-6Al-4V"};
}

Metal ti_6al_4v() {
  return {.name = "titanium-6al-4v",
          .density = kilograms_per_cubic_metre(4430.0),
          .conductivity = {{298.0, 7.0},
                           {373.0, 7.45},
                           {473.0, 8.75},
                           {573.0, 10.15},
                           {673.0, 11.35},
                           {773.0, 12.6},
                           {873.0, 14.2},
                           {973.0, 15.5},
                           {1073.0, 17.8},
                           {1173.0, 20.2},
                           {1268.0, 19.3},
                           {1473.0, 22.9},
                           {1873.0, 27.0}},
          .specific_heat = {{298.0, 546.0},
                            {473.0, 584.0},
                            {673.0, 629.0},
                            {873.0, 673.0},
                            {1073.0, 714.0},
                            {1173.0, 734.0},
                            {1268.0, 641.0},
                            {1573.0, 696.0},
                            {1873.0, 750.0}},
          .pool_conductivity = stirred_pool,
          .solidus = celsius(1604.0),
          .liquidus = celsius(1650.0),
          .latent_heat = 286.0e3,
          .emissivity = 0.25,
          .beta_transus = celsius(999.0),
          .source =
              "Mills, Recommended Values of Thermophysical Properties for Selected Commercial Alloys "
              "(2002), from memory; emissivity: mean over the heat spectrum of the spectral values in J. "
              "Alloys Compd. 541 (2012) 144; pool: twice the liquid at rest, common practice"};
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
  static const std::array<Metal, 3> metals{grade_2(), grade_9(), ti_6al_4v()};
  const auto found =
      std::find_if(metals.begin(), metals.end(), [name](const Metal &m) { return m.name == name; });
  return found == metals.end() ? nullptr : found;
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
          .beta_transus = kelvins(3998.0),
          .source = "given"};
}

} // namespace purgewright::heat
