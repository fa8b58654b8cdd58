// Temperature and properties over enthalpy in even steps, for the solver's inner loop. Private to heat.
//
// Units: enthalpy J/kg from 298.15 K, temperature K, conductivity W/(m K), specific heat J/(kg K).
// Least heat: the smallest sensible heat within 100 K to either side. A linear system that counts on no more
// than that cools no cell too far whose metal changes from alpha to beta, in whose heat that change is a
// steep peak: what it takes for a little would be a lot once the peak is left.
// Range: 200 K to 4000 K of the metal; beyond it the end properties hold and temperature runs on straight.
// Guarantee: temperature rises strictly with enthalpy. Off the exact functions by less than 0.5 K at a corner
// of the melting range and 0.01 K elsewhere (tests/unit/heat).
#pragma once

#include "purgewright/heat/metal.hpp"

#include <vector>

namespace purgewright::heat::detail {

struct Properties {
  double temperature, conductivity, least_heat;
};

class EnthalpyTable {
 public:
  explicit EnthalpyTable(const Metal &);
  Properties at(double enthalpy) const {
    const double x = (enthalpy - first_) * per_step_;
    const double from = x > 0.0 ? (x < last_index_ ? x : last_index_) : 0.0;
    const auto i = static_cast<std::size_t>(from);
    const Row &a = rows_[i], &b = rows_[i + 1];
    const double beyond = x - double(i); // in steps; less than 0 or more than 1 outside the table
    const double inside = beyond < 1.0 ? (beyond > 0.0 ? beyond : 0.0) : 1.0;
    return {a.temperature + (b.temperature - a.temperature) * beyond,
            a.conductivity + (b.conductivity - a.conductivity) * inside,
            a.least_heat + (b.least_heat - a.least_heat) * inside};
  }
  double enthalpy_at(double kelvin) const;

 private:
  using Row = Properties; // at the start of a step
  std::vector<Row> rows_;
  double first_ = 0.0, step_ = 0.0, per_step_ = 0.0, last_index_ = 0.0;
};

} // namespace purgewright::heat::detail
