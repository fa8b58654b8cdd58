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
  Field temperature, conductivity, least_heat;
  Bodies bodies{}; // K
};

class Stepper {
 public:
  Stepper(const Chain &, const Surroundings &);

  void read(const Content &, Reading &) const;
  // Advances from `start` (read as `now`) over `dt` with the given heat (W) per cell to `end`, read as
  // `after`; false when that led to temperatures that are none (the step was far too long).
  bool step(const Content &start, const Reading &now, const Field &heat, double dt, Content &end,
            Reading &after);
  // Largest difference between the last step's second- and first-order temperatures, over the allowed one.
  double error(const Reading &after, double absolute, double relative) const;
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
  void fix_system(const Reading &, double dt);
  // Rates of the content behind a reading, without implicit parts.
  void explicit_rates(const Reading &, const Field &heat, Rates &);
  void give_back(double shone, Field &cells) const;
  // Turns explicit rates into a stage's.
  void stage(double dt, Rates &);
  void implicit_bodies(double scale, Rates &) const;
  // end = start + dt x rates, read as `after`; false when it makes no sense.
  bool advance(const Content &start, const Rates &, double dt, Content &end, Reading &after) const;
  // second = share x first + own x second
  static void blend(double share, const Rates &first, double own, Rates &second);
  double film_conductance(const Film &, const Reading &) const;

  std::vector<EnthalpyTable> tables_;
  std::vector<std::size_t> table_of_ring_;
  Conduction conduction_;
  // Per ring, of one cell: kg, W/K, W/K4 outside and in the bore.
  Eigen::ArrayXd mass_, still_, emitting_, glowing_;
  std::vector<Film> films_;
  std::array<Lump, body_count> lumps_;
  double ambient_;
  job::GasSpecies gas_;
  // Work space.
  std::vector<double> film_values_;
  Field cubed_, leak_, capacity_, along_, slope_;
  Eigen::ArrayXd fourth_;
  Rates first_, second_;
  Content middle_;
  Reading between_;
};

} // namespace purgewright::heat::detail
