// Thermal properties of the three titanium metals over temperature, with the heat of melting.
//
// Units: conductivity W/(m K), specific heat J/(kg K), enthalpy and latent heat J/kg; tables in K.
// Valid range: 200 K to 4000 K; outside it every *_at function throws std::domain_error with its name and
// the value. Between rows properties run linearly, beyond the last row they stay.
// Guarantee: pure functions. enthalpy_at is the exact integral of apparent_heat_at. Density is that at room
// temperature, so that mass is kept. Specific heat holds the change of alpha into beta.
// Source: the table of standards/metals.
#pragma once

#include "purgewright/standards/tables.hpp"
#include "purgewright/units/quantity.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace purgewright::heat {

using standards::PropertyRow;

struct Metal {
  std::string name;
  units::Density density{};
  std::vector<PropertyRow> conductivity;  // solid; ascending
  std::vector<PropertyRow> specific_heat; // sensible; ascending
  double pool_conductivity = 0.0;         // above the liquidus, stirring included
  units::Temperature solidus{}, liquidus{};
  double latent_heat = 0.0; // released evenly between solidus and liquidus
  double emissivity = 0.0;  // total, bright metal
  units::Temperature beta_transus{};

  double conductivity_at(units::Temperature) const;
  double specific_heat_at(units::Temperature) const; // sensible
  double apparent_heat_at(units::Temperature) const; // latent heat included
  double enthalpy_at(units::Temperature) const;      // from 298.15 K
};

inline constexpr units::Temperature coldest = units::kelvins(200.0), hottest = units::kelvins(4000.0);

// The metal under its name in standards::metals(); nullptr when it is unknown or never melted here.
const Metal *thermal_metal(std::string_view name);

// A metal whose properties do not change and which does not melt: for closed forms and estimates. All above
// 0, emissivity from 0 to 1; otherwise std::domain_error.
Metal constant_metal(double conductivity, units::Density density, double specific_heat, double emissivity);

} // namespace purgewright::heat
