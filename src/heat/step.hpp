// One step of the heat model on plain fields. Private to heat.
//
// Units: SI, single cells. See model.hpp for the method.
#pragma once

#include "heat/conduction.hpp"
#include "heat/enthalpy_table.hpp"
#include "purgewright/heat/model.hpp"

#include <array>

namespace purgewright::heat::detail {

using Bodies = std::array<double, body_count>;

// What changes from step to step.
struct Content {
  Field enthalpy;    // J/kg
  Bodies bodies{};   // J over ambient
  double lost = 0.0; // J
};

// What one evaluation of a content gives.
struct Reading {
  Field temperature, conductivity, specific_heat;
  Bodies bodies{}; // K
};

class Stepper {
 public:
  Stepper(const Chain &, const Surroundings &, double residual);

  void read(const Content &, Reading &) const;
  // Advances from `start` (read as `now`) over `dt` with the given heat (W) per cell to `end`, read as
  // `after`.
  void step(const Content &start, const Reading &now, const Field &heat, double dt, Content &end,
            Reading &after);
  // Largest difference between the last step's second- and first-order temperatures, over the allowed one.
  double error(const Reading &after, double absolute, double relative) const;
  // Longest step in which what the bore's walls shine at each other, which is taken as it was at the step's
  // start, cannot swing.
  double steady_step(const Reading &) const;
  long iterations() const { return iterations_; }
  double enthalpy_at(std::size_t ring, double kelvin) const;
  double mass(Eigen::Index ring) const { return mass_(ring); }
  const Geometry &geometry() const { return conduction_.geometry(); }
  double body_energy(const Bodies &) const;

 private:
  struct Film { // contact of one ring
    Eigen::Index ring;
    std::size_t body;
    double area, gap, coefficient; // area of one cell
  };
  struct Rates { // of a content
    Field cells;
    Bodies bodies{};
    double lost = 0.0;
  };
  void leaks(const Reading &, double dt);
  // Rates of the content behind a reading, without implicit parts.
  void explicit_rates(const Reading &, const Field &heat, Rates &) const;
  // Turns explicit rates into a stage's.
  void stage(double dt, Rates &);
  double film_conductance(const Film &, const Reading &) const;
  // T^4 that the bore's walls see: their mean by area and emissivity.
  double bore_glow(const Reading &) const;

  std::vector<EnthalpyTable> tables_;
  std::vector<std::size_t> table_of_ring_;
  Conduction conduction_;
  Eigen::ArrayXd mass_, still_, emitting_,
      glowing_; // per ring: kg, W/K, W/K4 outside and in the bore, a cell
  std::vector<Film> films_;
  std::array<Lump, body_count> lumps_;
  double ambient_;
  job::GasSpecies gas_;
  double residual_;
  long iterations_ = 0;
  // Work space.
  std::vector<double> film_values_;
  Field leak_, capacity_, slope_, first_slope_, flow_;
  Rates first_, second_;
  Content middle_;
  Reading between_;
};

} // namespace purgewright::heat::detail
