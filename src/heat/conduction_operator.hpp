// The conduction system and its preconditioner in the shape Eigen's iterative solvers take. Private to heat.
//
// Lifetime: both refer to a Conduction that must outlive them.
#pragma once

#include "heat/conduction.hpp"

#include <Eigen/SparseCore>

namespace purgewright::heat::detail {
class ConductionOperator;
}

namespace Eigen::internal {
template <> struct traits<purgewright::heat::detail::ConductionOperator> : traits<SparseMatrix<double>> {};
} // namespace Eigen::internal

namespace purgewright::heat::detail {

// Names Scalar, Options_ and the like are what Eigen looks for.
class ConductionOperator : public Eigen::EigenBase<ConductionOperator> {
 public:
  using Scalar = double;
  using RealScalar = double;
  using StorageIndex = int;
  enum { ColsAtCompileTime = Eigen::Dynamic, MaxColsAtCompileTime = Eigen::Dynamic, IsRowMajor = false };

  explicit ConductionOperator(const Conduction &conduction) : conduction_(&conduction) {}
  Eigen::Index rows() const { return conduction_->geometry().angles * conduction_->geometry().rings; }
  Eigen::Index cols() const { return rows(); }
  const Conduction &conduction() const { return *conduction_; }
  template <class Right>
  Eigen::Product<ConductionOperator, Right, Eigen::AliasFreeProduct>
  operator*(const Eigen::MatrixBase<Right> &x) const {
    return {*this, x.derived()};
  }

 private:
  const Conduction *conduction_;
};

class MeanPreconditioner {
 public:
  using StorageIndex = int;
  void use(const Conduction &conduction) { conduction_ = &conduction; }
  template <class Matrix> MeanPreconditioner &analyzePattern(const Matrix &) { return *this; }
  template <class Matrix> MeanPreconditioner &factorize(const Matrix &) { return *this; }
  template <class Matrix> MeanPreconditioner &compute(const Matrix &) { return *this; }
  Eigen::VectorXd solve(const Eigen::VectorXd &b) const {
    const auto &g = conduction_->geometry();
    Eigen::VectorXd x(b.size());
    conduction_->solve_mean_scaled(View(b.data(), g.angles, g.rings), Target(x.data(), g.angles, g.rings));
    return x;
  }
  Eigen::ComputationInfo info() const { return Eigen::Success; }

 private:
  const Conduction *conduction_ = nullptr;
};

} // namespace purgewright::heat::detail

namespace Eigen::internal {
template <class Right>
struct generic_product_impl<purgewright::heat::detail::ConductionOperator, Right, SparseShape, DenseShape,
                            GemvProduct>
    : generic_product_impl_base<purgewright::heat::detail::ConductionOperator, Right,
                                generic_product_impl<purgewright::heat::detail::ConductionOperator, Right>> {
  template <class Out>
  static void scaleAndAddTo(Out &target, const purgewright::heat::detail::ConductionOperator &left,
                            const Right &right, double factor) {
    using namespace purgewright::heat::detail;
    const auto &g = left.conduction().geometry();
    const Ref<const VectorXd> held(right);
    VectorXd out(held.size());
    left.conduction().apply_scaled(View(held.data(), g.angles, g.rings),
                                   Target(out.data(), g.angles, g.rings));
    target += factor * out;
  }
};
} // namespace Eigen::internal
