#include "heat/arc_heat.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::heat::detail {

namespace {

constexpr double cut_off = 6.0; // standard deviations; 2e-9 of the heat lies beyond

double normal(double z) {
  return 0.5 * std::erfc(-z / std::sqrt(2.0));
}

// Integral of `normal` from minus infinity.
double normal_integral(double z) {
  return z * normal(z) + std::exp(-0.5 * z * z) / std::sqrt(2.0 * units::pi);
}

// Share left of `edge`, averaged while the centre moves from a to b.
double share_left(double edge, double a, double b, double deviation) {
  const double za = (edge - a) / deviation, zb = (edge - b) / deviation;
  if (std::abs(za - zb) < 1e-4) {
    return normal(0.5 * (za + zb));
  }
  return (normal_integral(za) - normal_integral(zb)) / (za - zb);
}

} // namespace

Eigen::ArrayXd shares_along(const Chain &chain, double offset, double deviation) {
  Eigen::ArrayXd shares(static_cast<Eigen::Index>(chain.rings.size()));
  for (std::size_t j = 0; j < chain.rings.size(); ++j) {
    const Ring &ring = chain.rings[j];
    const double low = ring.position - 0.5 * ring.length - offset;
    const double high = low + ring.length;
    shares(static_cast<Eigen::Index>(j)) = normal(high / deviation) - normal(low / deviation);
  }
  return shares / shares.sum();
}

void shares_round(double from, double to, double deviation, Eigen::ArrayXd &shares) {
  const auto n = shares.size();
  const double cell = 2.0 * units::pi / double(n);
  const double reach = cut_off * deviation;
  const auto first = static_cast<long>(std::floor((std::min(from, to) - reach) / cell));
  const auto last = static_cast<long>(std::ceil((std::max(from, to) + reach) / cell));
  shares.setZero();
  double before = 0.0;
  for (long i = first; i < last; ++i) {
    const double after = i + 1 == last ? 1.0 : share_left(double(i + 1) * cell, from, to, deviation);
    const long wrapped = ((i % n) + n) % n;
    shares(wrapped) += after - before;
    before = after;
  }
}

} // namespace purgewright::heat::detail
