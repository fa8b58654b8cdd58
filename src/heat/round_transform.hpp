// Discrete Fourier transform of every ring round the axis, real and orthonormal. Private to heat.
//
// Modes: cos 0, cos t, ..., cos(n t / 2), then sin t, ..., sin((n / 2 - 1) t); n even. A ring's second
// difference multiplies each mode by minus its curvature, 2 - 2 cos(2 pi m / n).
// Method: values at angles t and -t are added and subtracted, so that cosines and sines each take one matrix
// product of half the size; for some dozen angles and rings that is as fast as a fast transform.
#pragma once

#include <Eigen/Core>

namespace purgewright::heat::detail {

using Field = Eigen::ArrayXXd;        // one column a ring, one row an angle
using View = Eigen::Map<const Field>; // of a solver's vector
using Target = Eigen::Map<Field>;

class RoundTransform {
 public:
  RoundTransform(Eigen::Index angles, Eigen::Index rings);
  void forward(View field, Field &modes) const;
  void backward(const Field &modes, Target field) const;
  const Eigen::ArrayXd &curvature() const { return curvature_; }

 private:
  Eigen::Index angles_, half_;
  Eigen::MatrixXd cosines_, sines_;
  Eigen::ArrayXd curvature_;
  mutable Eigen::MatrixXd even_, odd_; // sums and differences
};

} // namespace purgewright::heat::detail
