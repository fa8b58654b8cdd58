// Linear algebra of one implicit stage: conductances between cells, their product with a field, and the
// solution of (capacity + scale x conductance) z = b. Private to heat.
//
// Units: SI; a field has one column a ring and one row an angle, all numbers are of single cells.
// Method: Eigen's conjugate gradients on the matrix-free operator. The preconditioner is the same operator
// with every ring's properties averaged round it: the discrete Fourier transform over the angle then splits
// it into one tridiagonal system a mode, which is solved directly, so that few iterations are left. The
// solver sees the system divided on both sides by the root of each ring's capacity, so that its residual
// means as much in the small cells at the cap's centre as elsewhere.
// Guarantee: the operator is symmetric and positive definite; same input, same bits. Not thread-safe: one
// object a thread.
#pragma once

#include "heat/round_transform.hpp"
#include "purgewright/heat/chain.hpp"

#include <Eigen/Core>

#include <vector>

namespace purgewright::heat::detail {

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
  // Conductances of the system between neighbours from the conductivity of every cell.
  void set_conductivity(const Field &conductivity);
  // out = sum of conductance x (own - neighbour's), W for a field in K.
  void outflow(const Field &field, Field &out) const;
  // The same with the conductances that this conductivity gives; the system stays as it is.
  void outflow_at(const Field &conductivity, const Field &field, Field &out) const;

  // Fixes the system: capacity J/K, leak W/K (to gas and bodies), scale s.
  void set_system(const Field &capacity, const Field &leak, double scale);
  // out = D (capacity + scale (conductance + leak)) D field, D = 1 / root of the ring's mean capacity.
  void apply_scaled(View field, Target out) const;
  // Solves (capacity + scale (conductance + leak)) x = b to a residual of `tolerance` x |b|, x coming in as
  // the guess; returns the iterations.
  int solve(const Field &b, double tolerance, Field &x) const;
  // The preconditioner: apply_scaled of rings averaged round the axis, solved for x.
  void solve_mean_scaled(View b, Target x) const;

 private:
  struct Links { // W/K; along: ring j to j + 1; round: angle i to i + 1
    Field along, round;
  };
  void set_links(const Field &conductivity, Links &) const;
  void outflow(const Links &, View field, Target out) const;

  Geometry geometry_;
  Links links_;
  mutable Links other_links_;
  Field capacity_, leak_;
  double scale_ = 0.0;
  RoundTransform transform_;
  Field pivot_, lower_; // L D L^T of the tridiagonal systems, one row a mode
  mutable Field modes_;
  Eigen::ArrayXd root_; // of each ring's mean capacity
  mutable Field flow_, scaled_;
};

} // namespace purgewright::heat::detail
