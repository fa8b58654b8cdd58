#include "heat/enthalpy_table.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::heat::detail {

namespace {

constexpr std::size_t steps = 2048; // 2 kJ/kg or so each: under 4 K

// Enthalpy is a parabola between two knots; at one the apparent heat may jump.
struct Knot {
  double kelvin, enthalpy, heat, heat_slope; // heat just above the knot
};

std::vector<Knot> knots_of(const Metal &metal) {
  std::vector<double> places{coldest.value(), metal.solidus.value(), metal.liquidus.value(), hottest.value()};
  for (const PropertyRow &row : metal.specific_heat) {
    places.push_back(std::clamp(row.kelvin, coldest.value(), hottest.value()));
  }
  std::sort(places.begin(), places.end());
  places.erase(std::unique(places.begin(), places.end()), places.end());
  std::vector<Knot> knots;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const units::Temperature here = units::kelvins(places[i]);
    const double heat = metal.apparent_heat_at(here);
    double slope = 0.0;
    if (i + 1 < places.size()) {
      slope = (metal.specific_heat_at(units::kelvins(places[i + 1])) - metal.specific_heat_at(here)) /
              (places[i + 1] - places[i]);
    }
    knots.push_back({places[i], metal.enthalpy_at(here), heat, slope});
  }
  return knots;
}

// Runs straight between rows, so that its least lies at a row or at an end of the range.
double least_heat(const Metal &metal, double kelvin) {
  constexpr double reach = 100.0; // K
  const double from = std::max(coldest.value(), kelvin - reach),
               to = std::min(hottest.value(), kelvin + reach);
  double least =
      std::min(metal.specific_heat_at(units::kelvins(from)), metal.specific_heat_at(units::kelvins(to)));
  for (const PropertyRow &row : metal.specific_heat) {
    if (row.kelvin > from && row.kelvin < to) {
      least = std::min(least, row.value);
    }
  }
  return least;
}

} // namespace

EnthalpyTable::EnthalpyTable(const Metal &metal) {
  const std::vector<Knot> knots = knots_of(metal);
  first_ = knots.front().enthalpy;
  step_ = (knots.back().enthalpy - first_) / double(steps);
  per_step_ = 1.0 / step_;
  last_index_ = double(steps - 1);
  std::size_t below = 0;
  const auto row = [&](std::size_t i) {
    const double enthalpy = first_ + step_ * double(i);
    while (below + 2 < knots.size() && knots[below + 1].enthalpy <= enthalpy) {
      ++below;
    }
    const Knot &knot = knots[below];
    const double rise = enthalpy - knot.enthalpy;
    const double root = std::sqrt(knot.heat * knot.heat + 2.0 * knot.heat_slope * rise);
    const double kelvin = std::min(hottest.value(), knot.kelvin + 2.0 * rise / (knot.heat + root));
    const units::Temperature t = units::kelvins(kelvin);
    return Row{kelvin, metal.conductivity_at(t), least_heat(metal, kelvin)};
  };
  rows_.reserve(steps + 1);
  for (std::size_t i = 0; i <= steps; ++i) {
    rows_.push_back(row(i));
  }
}

double EnthalpyTable::enthalpy_at(double kelvin) const {
  const auto above = std::upper_bound(rows_.begin() + 1, rows_.end() - 1, kelvin,
                                      [](double t, const Row &row) { return t < row.temperature; });
  const Row &a = *(above - 1), &b = *above;
  return first_ + step_ * (double(above - 1 - rows_.begin()) +
                           (kelvin - a.temperature) / (b.temperature - a.temperature));
}

} // namespace purgewright::heat::detail
