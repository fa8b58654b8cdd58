#include "purgewright/gas/openings.hpp"

#include "purgewright/gas/mixing.hpp"

#include "gas/require.hpp"
#include "gas/smooth.hpp"

#include <boost/math/special_functions/ellint_1.hpp>
#include <boost/math/tools/toms748_solve.hpp>

#include <cmath>
#include <cstdint>
#include <numbers>

namespace purgewright::gas {

using detail::require;

namespace {

void check_fraction(double fraction, std::string_view function) {
  require(fraction >= 0.0 && fraction <= 1.0, function, "fraction must lie in 0 to 1", fraction);
}

void check_flow(units::VolumeFlow flow, std::string_view function) {
  require(flow.value() >= 0.0, function, "flow must not be negative", flow.value());
}

void check_opening(const VerticalOpening &opening, std::string_view function) {
  require(opening.width.value() > 0.0, function, "width must be above 0", opening.width.value());
  require(opening.height.value() > 0.0, function, "height must be above 0", opening.height.value());
  require(opening.reduced_gravity >= 0.0, function, "reduced gravity must not be negative",
          opening.reduced_gravity);
  require(opening.discharge > 0.0 && opening.discharge <= 1.0, function, "Cd must lie in 0 to 1",
          opening.discharge);
}

} // namespace

double counterflow_ratio(double peclet) {
  require(peclet >= 0.0, "counterflow_ratio", "Peclet number must not be negative", peclet);
  return std::exp(-peclet);
}

double channel_peclet(units::Velocity speed, units::Length length, units::Diffusivity diffusivity) {
  require(speed.value() >= 0.0, "channel_peclet", "speed must not be negative", speed.value());
  require(length.value() >= 0.0, "channel_peclet", "length must not be negative", length.value());
  require(diffusivity.value() > 0.0, "channel_peclet", "diffusivity must be above 0", diffusivity.value());
  return (speed * length).value() / diffusivity.value();
}

double counterflow_fraction(double peclet, double outside, double supply) {
  check_fraction(outside, "counterflow_fraction");
  check_fraction(supply, "counterflow_fraction");
  return supply + (outside - supply) * counterflow_ratio(peclet);
}

double counterflow_peclet(double limit, double outside, double supply) {
  return -std::log(remaining_share(outside, limit, supply));
}

units::Length circle_shape_length(units::Length diameter) {
  require(diameter.value() > 0.0, "circle_shape_length", "diameter must be above 0", diameter.value());
  return diameter;
}

units::Length slot_shape_length(units::Length length, units::Length width) {
  require(width.value() > 0.0, "slot_shape_length", "width must be above 0", width.value());
  require(length >= width, "slot_shape_length", "length must not be under the width", length.value());
  // Semi-axis of the ellipse with the slot's area and aspect.
  const double a = length.value() * std::numbers::inv_sqrtpi;
  const double aspect = units::ratio(width, length);
  return units::metres(units::pi * a / boost::math::ellint_1(std::sqrt(1.0 - aspect * aspect)));
}

units::VolumeFlow diffusive_conductance(units::Diffusivity diffusivity, units::Area area, units::Length depth,
                                        units::Length shape_length) {
  constexpr std::string_view here = "diffusive_conductance";
  require(diffusivity.value() > 0.0, here, "diffusivity must be above 0", diffusivity.value());
  require(area.value() > 0.0, here, "area must be above 0", area.value());
  require(depth.value() >= 0.0, here, "depth must not be negative", depth.value());
  require(shape_length.value() > 0.0, here, "shape length must be above 0", shape_length.value());
  const double resistance = depth.value() / area.value() + 1.0 / shape_length.value();
  return units::cubic_metres_per_second(diffusivity.value() / resistance);
}

units::VolumeFlow opposed_conductance(units::VolumeFlow conductance, units::VolumeFlow outflow) {
  check_flow(conductance, "opposed_conductance");
  check_flow(outflow, "opposed_conductance");
  if (conductance.value() == 0.0 || outflow.value() == 0.0)
    return conductance;
  return outflow / std::expm1(units::ratio(outflow, conductance)); // 0 when the exponential overflows
}

units::VolumeFlow outflow_for_limit(units::VolumeFlow conductance, double limit, double outside,
                                    double supply) {
  check_flow(conductance, "outflow_for_limit");
  return conductance * counterflow_peclet(limit, outside, supply);
}

units::VolumeFlow vertical_exchange(const VerticalOpening &opening) {
  check_opening(opening, "vertical_exchange");
  const double height = opening.height.value();
  return units::cubic_metres_per_second(opening.discharge / 3.0 * opening.width.value() * height *
                                        std::sqrt(height * opening.reduced_gravity));
}

double exchange_left(double net) {
  require(net >= 0.0, "exchange_left", "net flow must not be negative", net);
  const double full = 2.0 * std::numbers::sqrt2; // one-way flow over the whole opening, in exchange flows
  if (net >= full)
    return 0.0;
  const auto surplus = [&](double level) { // level: share of the opening that flows out
    return full * (std::pow(level, 1.5) - std::pow(1.0 - level, 1.5)) - net;
  };
  std::uintmax_t steps = 100;
  const auto [low, high] = boost::math::tools::toms748_solve(
      surplus, 0.5, 1.0, boost::math::tools::eps_tolerance<double>(50), steps);
  return full * std::pow(1.0 - 0.5 * (low + high), 1.5);
}

units::VolumeFlow vertical_inflow(const VerticalOpening &opening, units::VolumeFlow net_outflow) {
  check_flow(net_outflow, "vertical_inflow");
  const units::VolumeFlow exchange = vertical_exchange(opening);
  return exchange.value() == 0.0 ? exchange : exchange * exchange_left(units::ratio(net_outflow, exchange));
}

units::VolumeFlow horizontal_exchange(units::Length diameter, units::Length depth, double reduced_gravity) {
  constexpr std::string_view here = "horizontal_exchange";
  require(diameter.value() > 0.0, here, "diameter must be above 0", diameter.value());
  require(reduced_gravity >= 0.0, here, "reduced gravity must not be negative", reduced_gravity);
  const double slender = units::ratio(depth, diameter);
  require(slender >= 0.0 && slender <= 10.0, here, "depth over diameter must lie in 0 to 10", slender);
  const double short_tube = 1.0 + 400.0 * slender * slender * slender;
  const double long_tube = std::pow(std::pow(slender, 6.0) + 117.0 * slender * slender, 0.75);
  const double shape =
      0.055 * std::pow(short_tube, 1.0 / 6.0) / std::cbrt(1.0 + 0.00527 * std::sqrt(short_tube) * long_tube);
  const double d = diameter.value();
  return units::cubic_metres_per_second(shape * d * d * std::sqrt(d * reduced_gravity));
}

double bulk_richardson(double reduced_gravity, units::Length height, units::Velocity draught) {
  require(height.value() > 0.0, "bulk_richardson", "height must be above 0", height.value());
  require(draught.value() > 0.0, "bulk_richardson", "draught must be above 0", draught.value());
  return reduced_gravity * height.value() / (draught.value() * draught.value());
}

DraughtBand critical_draught(double reduced_gravity, units::Length height) {
  require(reduced_gravity > 0.0, "critical_draught", "reduced gravity must be above 0", reduced_gravity);
  require(height.value() > 0.0, "critical_draught", "height must be above 0", height.value());
  const double scale = std::sqrt(reduced_gravity * height.value());
  return {units::metres_per_second(scale / std::sqrt(lying_richardson)),
          units::metres_per_second(scale / std::sqrt(flushed_richardson))};
}

double flushed_share(double reduced_gravity, units::Length height, units::Velocity draught) {
  require(height.value() > 0.0, "flushed_share", "height must be above 0", height.value());
  require(draught.value() >= 0.0, "flushed_share", "draught must not be negative", draught.value());
  if (draught.value() == 0.0)
    return 0.0;
  if (reduced_gravity <= 0.0)
    return 1.0;
  return 1.0 - detail::smooth_step(std::log(bulk_richardson(reduced_gravity, height, draught)),
                                   std::log(flushed_richardson), std::log(lying_richardson));
}

units::VolumeFlow draught_conductance(const OpenSlot &slot, units::Velocity draught, double beta) {
  require(slot.area.value() > 0.0, "draught_conductance", "area must be above 0", slot.area.value());
  require(beta >= 0.0 && beta <= 1.0, "draught_conductance", "exchange share must lie in 0 to 1", beta);
  return slot.area * draught * (beta * flushed_share(slot.reduced_gravity, slot.space_height, draught));
}

} // namespace purgewright::gas
