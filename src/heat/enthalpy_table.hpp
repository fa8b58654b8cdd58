// Temperature and properties over enthalpy in even steps, for the solver's inner loop. Private to heat.
//
// Units: enthalpy J/kg from 298.15 K, temperature K, conductivity W/(m K), specific heat (sensible) J/(kg K).
// Range: 200 K to 4000 K of the metal; beyond it the end properties hold and temperature runs on straight.
// Guarantee: temperature rises strictly with enthalpy. Off the exact functions by less than 0.5 K at a corner
// of the melting range and 0.01 K elsewhere (tests/unit/heat).
#pragma once

#include "purgewright/heat/metal.hpp"

#include <vector>

namespace purgewright::heat::detail {

struct Properties {
  double temperature, conductivity, specific_heat;
};

class EnthalpyTable {
 public:
  explicit EnthalpyTable(const Metal &);
  Properties at(double enthalpy) const {
    double x = (enthalpy - first_) * per_step_;
    x = x > 0.0 ? x : 0.0;
    const double most = last_index_;
    const auto i = static_cast<std::size_t>(x < most ? x : most);
    const Row &a = rows_[i];
    const double beyond = enthalpy - a.enthalpy;
    const double inside = beyond < step_ ? (beyond > 0.0 ? beyond : 0.0) : step_;
    return {a.temperature + a.temperature_slope * beyond, a.conductivity + a.conductivity_slope * inside,
            a.specific_heat + a.specific_heat_slope * inside};
  }
  double enthalpy_at(double kelvin) const;

 private:
  struct Row {
    double enthalpy, temperature, temperature_slope, conductivity, conductivity_slope, specific_heat,
        specific_heat_slope;
  };
  std::vector<Row> rows_;
  double first_ = 0.0, step_ = 0.0, per_step_ = 0.0, last_index_ = 0.0;
};

} // namespace purgewright::heat::detail
