// Linear algebra of one implicit stage: conductances between cells, what flows through them, and the solution
// of the stage's system. Private to heat.
//
// Units: SI; a field has one column a ring and one row an angle, all numbers are of single cells.
// Method: approximate factorisation. With A the conductances along the chain and the leaks, R those round the
// axis and C the capacities, (C + s A) y = b and then (C + s R) z = C y are solved in place of
// (C + s (A + R)) z = b: two sets of short symmetric systems, each solved directly, their pivots kept for
// both stages of a step. Off by s^2 A R, which the two-stage method bears without losing an order.
// Guarantee: C z = b - s (A y + R z) to rounding: what leaves one cell enters another. A field that is turned
// or mirrored gives the same turned or mirrored, to rounding. Same input, same bits. Not thread-safe: one
// object a thread. Source: Verwer, Spee, Blom, Hundsdorfer, SIAM J. Sci. Comput. 20, 1456 (1999), sec. 3.
#pragma once

#include "purgewright/heat/chain.hpp"

#include <Eigen/Core>

namespace purgewright::heat::detail {

using Field = Eigen::ArrayXXd; // one column a ring, one row an angle

// Geometry factors, per cell: conductance = conductivity x factor.
struct Geometry {
  explicit Geometry(const Chain &);
  Eigen::Index angles, rings;
  Eigen::ArrayXd along_near, along_far; // distances over area, m-1: 1 / G = near / k + far / k'
  Eigen::ArrayXd round;                 // area over distance, m
};

class Conduction {
 public:
  explicit Conduction(const Chain &);

  const Geometry &geometry() const { return geometry_; }
  // Conductances between neighbours from the conductivity of every cell.
  void set_conductivity(const Field &conductivity);
  // out = sum of conductance x (own - neighbour's), W for a field in K.
  void outflow(const Field &field, Field &out) const;

  // Fixes the system with the conductances as they are now: capacity J/K, leak W/K (to gas and bodies), scale
  // s. Later conductances leave it alone.
  void set_system(const Field &capacity, const Field &leak, double scale);
  // Solves it; y is the field whose leaks are the stage's.
  void solve(const Field &b, Field &y, Field &z);

 private:
  void set_along(const Field &capacity, const Field &leak, double scale);
  void set_round(double scale);
  void solve_along(const Field &b, Field &y) const;
  void solve_round();

  Geometry geometry_;
  Field along_, round_; // W/K; along: ring j to j + 1; round: angle i to i + 1
  Field resistance_;    // work space: 1 / conductivity
  mutable Field flow_;
  // L D L^T of the systems. Round the axis fields are turned over, one column an angle, so that all rings go
  // side by side; the last angle is a neighbour of the first and so has an entry with every other.
  Field inverse_along_, lower_along_;                         // 1 / D, L
  Field capacity_, inverse_round_, lower_round_, last_round_; // the last: L of the last angle
  Field turned_;
  Eigen::ArrayXd fill_;
};

} // namespace purgewright::heat::detail
