#include "heat/conduction.hpp"

#include "heat/conduction_operator.hpp"

#include <Eigen/IterativeLinearSolvers>

#include <cmath>

namespace purgewright::heat::detail {

namespace {

using Eigen::Index;

} // namespace

Geometry::Geometry(const Chain &chain)
    : angles(chain.angles), rings(static_cast<Index>(chain.rings.size())), along_near(rings),
      along_far(rings), round(rings) {
  const double n = double(angles);
  for (Index j = 0; j < rings; ++j) {
    const Ring &ring = chain.rings[std::size_t(j)];
    const bool linked = ring.face > 0.0;
    along_near(j) = linked ? n * ring.to_face / ring.face : 0.0;
    along_far(j) = linked ? n * ring.from_face / ring.far_face : 0.0;
    round(j) = ring.section * n / (2.0 * units::pi * ring.radius);
  }
}

Conduction::Conduction(const Chain &chain)
    : geometry_(chain), links_{Field(geometry_.angles, geometry_.rings - 1),
                               Field(geometry_.angles, geometry_.rings)},
      other_links_(links_), transform_(geometry_.angles, geometry_.rings),
      pivot_(geometry_.angles, geometry_.rings), lower_(geometry_.angles, geometry_.rings),
      modes_(geometry_.angles, geometry_.rings), root_(geometry_.rings),
      flow_(geometry_.angles, geometry_.rings), scaled_(geometry_.angles, geometry_.rings) {}

void Conduction::set_conductivity(const Field &k) {
  set_links(k, links_);
}

void Conduction::set_links(const Field &k, Links &links) const {
  const Index n = geometry_.angles, last = geometry_.rings - 1;
  for (Index j = 0; j < last; ++j) {
    links.along.col(j) = 1.0 / (geometry_.along_near(j) / k.col(j) + geometry_.along_far(j) / k.col(j + 1));
  }
  for (Index j = 0; j <= last; ++j) {
    const double half = 0.5 * geometry_.round(j);
    links.round.col(j).head(n - 1) = half * (k.col(j).head(n - 1) + k.col(j).tail(n - 1));
    links.round(n - 1, j) = half * (k(n - 1, j) + k(0, j));
  }
}

void Conduction::outflow(const Field &field, Field &out) const {
  out.resize(geometry_.angles, geometry_.rings);
  outflow(links_, View(field.data(), field.rows(), field.cols()), Target(out.data(), out.rows(), out.cols()));
}

void Conduction::outflow_at(const Field &conductivity, const Field &field, Field &out) const {
  out.resize(geometry_.angles, geometry_.rings);
  set_links(conductivity, other_links_);
  outflow(other_links_, View(field.data(), field.rows(), field.cols()),
          Target(out.data(), out.rows(), out.cols()));
}

void Conduction::outflow(const Links &links, View field, Target out) const {
  const Index n = geometry_.angles, last = geometry_.rings - 1;
  // flow_ row i: from angle i to angle i + 1.
  flow_.topRows(n - 1) = links.round.topRows(n - 1) * (field.topRows(n - 1) - field.bottomRows(n - 1));
  flow_.row(n - 1) = links.round.row(n - 1) * (field.row(n - 1) - field.row(0));
  out = flow_;
  out.bottomRows(n - 1) -= flow_.topRows(n - 1);
  out.row(0) -= flow_.row(n - 1);
  flow_.leftCols(last) = links.along * (field.leftCols(last) - field.rightCols(last));
  out.leftCols(last) += flow_.leftCols(last);
  out.rightCols(last) -= flow_.leftCols(last);
}

void Conduction::set_system(const Field &capacity, const Field &leak, double scale) {
  capacity_ = capacity + scale * leak;
  leak_ = leak;
  scale_ = scale;
  root_ = capacity.colwise().mean().transpose().sqrt();
  // Rings averaged round the axis: one row of tridiagonal systems a mode.
  const Index last = geometry_.rings - 1;
  double before = 0.0;
  for (Index j = 0; j <= last; ++j) {
    const double along = j < last ? scale * links_.along.col(j).mean() : 0.0;
    const double round = scale * links_.round.col(j).mean();
    pivot_.col(j) = capacity_.col(j).mean() + before + along + round * transform_.curvature();
    if (j > 0) {
      lower_.col(j) = -before / pivot_.col(j - 1);
      pivot_.col(j) += before * lower_.col(j);
    }
    before = along;
  }
}

void Conduction::apply_scaled(View field, Target out) const {
  const Index rings = geometry_.rings;
  for (Index j = 0; j < rings; ++j) {
    scaled_.col(j) = field.col(j) / root_(j);
  }
  outflow(links_, View(scaled_.data(), scaled_.rows(), rings), out);
  for (Index j = 0; j < rings; ++j) {
    out.col(j) = (capacity_.col(j) * scaled_.col(j) + scale_ * out.col(j)) / root_(j);
  }
}

void Conduction::solve_mean_scaled(View b, Target x) const {
  const Index last = geometry_.rings - 1;
  transform_.forward(b, modes_);
  Field &modes = modes_;
  modes.col(0) *= root_(0);
  for (Index j = 1; j <= last; ++j) {
    modes.col(j) = root_(j) * modes.col(j) - lower_.col(j) * modes.col(j - 1);
  }
  modes.col(last) /= pivot_.col(last);
  for (Index j = last - 1; j >= 0; --j) {
    modes.col(j) = modes.col(j) / pivot_.col(j) - lower_.col(j + 1) * modes.col(j + 1);
  }
  for (Index j = 0; j <= last; ++j) {
    modes.col(j) *= root_(j);
  }
  transform_.backward(modes_, x);
}

int Conduction::solve(const Field &b, double tolerance, Field &x) const {
  const ConductionOperator system(*this);
  Eigen::ConjugateGradient<ConductionOperator, Eigen::Lower | Eigen::Upper, MeanPreconditioner> solver;
  solver.preconditioner().use(*this);
  solver.setTolerance(tolerance);
  solver.setMaxIterations(200);
  solver.compute(system);
  const Index rings = geometry_.rings;
  Eigen::VectorXd right(b.size()), guess(b.size());
  Target right_view(right.data(), geometry_.angles, rings), guess_view(guess.data(), geometry_.angles, rings);
  for (Index j = 0; j < rings; ++j) {
    right_view.col(j) = b.col(j) / root_(j);
    guess_view.col(j) = x.col(j) * root_(j);
  }
  guess = solver.solveWithGuess(right, guess).eval();
  for (Index j = 0; j < rings; ++j) {
    x.col(j) = guess_view.col(j) / root_(j);
  }
  return static_cast<int>(solver.iterations());
}

} // namespace purgewright::heat::detail
