#include "heat/round_transform.hpp"

#include "purgewright/units/quantity.hpp"

#include <cmath>
#include <numbers>

namespace purgewright::heat::detail {

namespace {

using Eigen::Index;

constexpr double root_half = 1.0 / std::numbers::sqrt2;

} // namespace

RoundTransform::RoundTransform(Index angles, Index rings)
    : angles_(angles), half_(angles / 2), cosines_(half_ + 1, half_ + 1), sines_(half_ - 1, half_ - 1),
      curvature_(angles), even_(half_ + 1, rings), odd_(half_ - 1, rings) {
  const double step = 2.0 * units::pi / double(angles);
  const double scale = std::sqrt(4.0 / double(angles));
  for (Index mode = 0; mode <= half_; ++mode) {
    const double mode_scale = scale * (mode == 0 || mode == half_ ? root_half : 1.0);
    for (Index row = 0; row <= half_; ++row) {
      const double row_scale = row == 0 || row == half_ ? root_half : 1.0;
      cosines_(row, mode) = mode_scale * row_scale * std::cos(step * double(mode * row));
    }
    curvature_(mode) = 2.0 - 2.0 * std::cos(step * double(mode));
  }
  for (Index mode = 1; mode < half_; ++mode) {
    for (Index row = 1; row < half_; ++row) {
      sines_(row - 1, mode - 1) = scale * std::sin(step * double(mode * row));
    }
    curvature_(half_ + mode) = curvature_(mode);
  }
}

void RoundTransform::forward(View field, Field &modes) const {
  const Index inner = half_ - 1;
  const auto there = field.middleRows(1, inner);
  const auto back = field.bottomRows(inner).colwise().reverse();
  even_.row(0) = field.row(0);
  even_.row(half_) = field.row(half_);
  even_.middleRows(1, inner) = root_half * (there + back);
  odd_ = root_half * (there - back);
  modes.topRows(half_ + 1).matrix().noalias() = cosines_ * even_; // symmetric: its own inverse
  modes.bottomRows(inner).matrix().noalias() = sines_ * odd_;
}

void RoundTransform::backward(const Field &modes, Target field) const {
  const Index inner = half_ - 1;
  even_.noalias() = cosines_ * modes.topRows(half_ + 1).matrix();
  odd_.noalias() = sines_ * modes.bottomRows(inner).matrix();
  field.row(0) = even_.row(0);
  field.row(half_) = even_.row(half_);
  field.middleRows(1, inner) = root_half * (even_.middleRows(1, inner) + odd_);
  field.bottomRows(inner) = (root_half * (even_.middleRows(1, inner) - odd_)).colwise().reverse();
}

} // namespace purgewright::heat::detail
