#include "purgewright/gas/mixing.hpp"

#include "gas/require.hpp"

#include <boost/math/special_functions/erf.hpp>
#include <boost/math/special_functions/gamma.hpp>
#include <boost/math/tools/roots.hpp>

#include <cmath>
#include <cstdint>
#include <limits>
#include <numbers>

namespace purgewright::gas {

using detail::require;

namespace {

// exp(x^2) erfc(x) for x >= 0. Above 20 the asymptotic series, Abramowitz & Stegun 7.1.23: its first dropped
// term is 162/x^12, under 1e-13; below, the product loses at most x^2 roundings.
double scaled_erfc(double x) {
  if (x < 20.0)
    return std::exp(x * x) * std::erfc(x);
  const double q = 1.0 / (2.0 * x * x);
  return (1.0 + q * (-1.0 + q * (3.0 + q * (-15.0 + q * (105.0 - 945.0 * q))))) * std::numbers::inv_sqrtpi /
         x;
}

void check_tanks(double n, std::string_view function) {
  require(n >= 1.0 && n <= 1e5, function, "number of tanks must lie in 1 to 1e5", n);
}

void check_dispersion(double peclet, double theta, std::string_view function) {
  require(peclet >= 1e-3 && peclet <= 1e6, function, "Peclet number must lie in 1e-3 to 1e6", peclet);
  require(theta >= 0.0, function, "theta must not be negative", theta);
}

void check_purge(units::Volume volume, units::VolumeFlow flow, std::string_view function) {
  require(volume.value() > 0.0, function, "volume must be above 0", volume.value());
  require(flow.value() > 0.0, function, "flow must be above 0", flow.value());
}

void check_channel(units::Diffusivity molecular, units::Velocity speed, units::Length size,
                   std::string_view function) {
  require(molecular.value() > 0.0, function, "diffusivity must be above 0", molecular.value());
  require(speed.value() >= 0.0, function, "speed must not be negative", speed.value());
  require(size.value() > 0.0, function, "channel size must be above 0", size.value());
}

} // namespace

double remaining_share(double initial, double target, double supply) {
  require(supply >= 0.0, "remaining_share", "supply level must not be negative", supply);
  require(initial <= 1.0, "remaining_share", "initial level must not exceed 1", initial);
  require(target > supply, "remaining_share", "target must lie above the supply's level", target);
  require(target <= initial, "remaining_share", "target must not exceed the initial level", target);
  return (target - supply) / (initial - supply);
}

double mixed_volumes(double initial, double target, double supply) {
  return -std::log(remaining_share(initial, target, supply));
}

units::Time mixed_time(units::Volume volume, units::VolumeFlow flow, double initial, double target,
                       double supply, double efficiency) {
  check_purge(volume, flow, "mixed_time");
  require(efficiency > 0.0 && efficiency <= 1.0, "mixed_time", "efficiency must lie in 0 to 1", efficiency);
  return volume / flow * mixed_volumes(initial, target, supply) / efficiency;
}

units::Time displacement_time(units::Volume volume, units::VolumeFlow flow) {
  check_purge(volume, flow, "displacement_time");
  return volume / flow;
}

double tanks_remaining(double n, double theta) {
  check_tanks(n, "tanks_remaining");
  require(theta >= 0.0, "tanks_remaining", "theta must not be negative", theta);
  return boost::math::gamma_q(n, n * theta);
}

double tanks_swept(double n, double theta) {
  check_tanks(n, "tanks_swept");
  require(theta >= 0.0, "tanks_swept", "theta must not be negative", theta);
  return boost::math::gamma_p(n, n * theta);
}

double tanks_volumes(double n, double initial, double target, double supply) {
  check_tanks(n, "tanks_volumes");
  return boost::math::gamma_q_inv(n, remaining_share(initial, target, supply)) / n;
}

std::vector<double> chain_fractions(double n) {
  require(n >= 1.0 && n <= 200.0, "chain_fractions", "number of tanks must lie in 1 to 200", n);
  const double count = std::ceil(n);
  if (count == 1.0)
    return {1.0};
  // One tank of fraction f and count-1 of (1-f)/(count-1): f^2 + (1-f)^2/(count-1) = 1/n, larger root.
  const double rest = count - 1.0;
  const double f = (1.0 + std::sqrt(rest * (count - n) / n)) / count;
  std::vector<double> fractions(static_cast<std::size_t>(count), (1.0 - f) / rest);
  fractions.front() = f;
  return fractions;
}

double dispersion_remaining(double peclet, double theta) {
  check_dispersion(peclet, theta, "dispersion_remaining");
  if (theta == 0.0)
    return 1.0;
  const double spread = 2.0 * std::sqrt(theta / peclet);
  const double a = (theta - 1.0) / spread, b = (theta + 1.0) / spread; // b^2 - a^2 = Pe
  if (a < 0.0)
    return 1.0 - dispersion_swept(peclet, theta);
  return 0.5 * std::exp(-a * a) * (scaled_erfc(a) - scaled_erfc(b));
}

double dispersion_swept(double peclet, double theta) {
  check_dispersion(peclet, theta, "dispersion_swept");
  if (theta == 0.0)
    return 0.0;
  const double spread = 2.0 * std::sqrt(theta / peclet);
  const double a = (theta - 1.0) / spread, b = (theta + 1.0) / spread;
  if (a >= 0.0)
    return 1.0 - dispersion_remaining(peclet, theta);
  return 0.5 * std::exp(-a * a) * (scaled_erfc(-a) + scaled_erfc(b));
}

double small_dispersion_swept(double peclet, double theta) {
  require(peclet > 0.0, "small_dispersion_swept", "Peclet number must be above 0", peclet);
  require(theta >= 0.0, "small_dispersion_swept", "theta must not be negative", theta);
  return 0.5 * std::erfc(0.5 * (1.0 - theta) * std::sqrt(peclet));
}

double dispersion_volumes(double peclet, double initial, double target, double supply) {
  check_dispersion(peclet, 0.0, "dispersion_volumes");
  const double share = remaining_share(initial, target, supply);
  if (share >= 1.0)
    return 0.0;
  // The logarithm makes the tail nearly straight, so few steps reach any level.
  const auto gap = [&](double theta) {
    return std::log(std::max(dispersion_remaining(peclet, theta), std::numeric_limits<double>::min())) -
           std::log(share);
  };
  std::uintmax_t steps = 200;
  const auto [low, high] = boost::math::tools::bracket_and_solve_root(
      gap, 1.0, 2.0, false, boost::math::tools::eps_tolerance<double>(45), steps);
  return 0.5 * (low + high);
}

units::Diffusivity taylor_aris_tube(units::Diffusivity molecular, units::Velocity speed,
                                    units::Length radius) {
  check_channel(molecular, speed, radius, "taylor_aris_tube");
  const double local = (speed * radius).value() / molecular.value();
  return molecular * (1.0 + local * local / 48.0);
}

units::Diffusivity taylor_aris_slot(units::Diffusivity molecular, units::Velocity speed, units::Length gap) {
  check_channel(molecular, speed, gap, "taylor_aris_slot");
  const double local = (speed * gap).value() / molecular.value();
  return molecular * (1.0 + local * local / 210.0);
}

double taylor_development(units::Diffusivity molecular, units::Velocity speed, units::Length radius,
                          units::Length length) {
  check_channel(molecular, speed, radius, "taylor_development");
  require(length.value() > 0.0, "taylor_development", "length must be above 0", length.value());
  if (speed.value() == 0.0)
    return std::numeric_limits<double>::infinity();
  return units::ratio(length, radius) / (0.1 * (speed * radius).value() / molecular.value());
}

units::Diffusivity taylor_turbulent(units::Velocity speed, units::Length radius, double friction_factor) {
  require(speed.value() >= 0.0, "taylor_turbulent", "speed must not be negative", speed.value());
  require(radius.value() > 0.0, "taylor_turbulent", "radius must be above 0", radius.value());
  require(friction_factor > 0.0 && friction_factor < 1.0, "taylor_turbulent",
          "friction factor must lie in 0 to 1", friction_factor);
  return units::Diffusivity::from_value(10.1 * radius.value() * speed.value() *
                                        std::sqrt(friction_factor / 8.0));
}

double convective_remaining(double theta) {
  require(theta >= 0.0, "convective_remaining", "theta must not be negative", theta);
  return theta <= 0.5 ? 1.0 : 0.25 / (theta * theta);
}

double convective_volumes(double initial, double target, double supply) {
  return 0.5 / std::sqrt(remaining_share(initial, target, supply));
}

units::Length spread_depth(units::Diffusivity diffusivity, units::Time time, double share) {
  require(diffusivity.value() > 0.0, "spread_depth", "diffusivity must be above 0", diffusivity.value());
  require(time.value() >= 0.0, "spread_depth", "time must not be negative", time.value());
  require(share > 0.0 && share < 0.5, "spread_depth", "share must lie in 0 to a half", share);
  return 2.0 * boost::math::erfc_inv(2.0 * share) * units::sqrt(diffusivity * time);
}

double closed_vessel_variance(double peclet) {
  require(peclet >= 0.0, "closed_vessel_variance", "Peclet number must not be negative", peclet);
  // Near 0 the two terms cancel; the series' next term is Pe^3/60.
  if (peclet < 1e-3)
    return 1.0 - peclet / 3.0 + peclet * peclet / 12.0;
  return 2.0 / (peclet * peclet) * (peclet + std::expm1(-peclet));
}

double open_vessel_variance(double peclet) {
  require(peclet > 0.0, "open_vessel_variance", "Peclet number must be above 0", peclet);
  return 2.0 / peclet + 8.0 / (peclet * peclet);
}

double equivalent_tanks(double peclet) {
  return 1.0 / closed_vessel_variance(peclet);
}

double equivalent_peclet(double n) {
  check_tanks(n, "equivalent_peclet");
  if (n == 1.0)
    return 0.0;
  std::uintmax_t steps = 200;
  const auto [low, high] = boost::math::tools::toms748_solve(
      [n](double peclet) { return n * closed_vessel_variance(peclet) - 1.0; }, 0.0, 2.0 * n + 2.0,
      boost::math::tools::eps_tolerance<double>(45), steps);
  return 0.5 * (low + high);
}

} // namespace purgewright::gas
