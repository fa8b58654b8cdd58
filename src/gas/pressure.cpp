#include "purgewright/gas/pressure.hpp"

#include "purgewright/gas/properties.hpp"

#include "gas/require.hpp"

#include <boost/math/tools/roots.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace purgewright::gas {

using detail::require;

namespace {

void check_stream(const Stream &stream, units::VolumeFlow flow, std::string_view function) {
  require(stream.density.value() > 0.0, function, "density must be above 0", stream.density.value());
  require(stream.viscosity.value() > 0.0, function, "viscosity must be above 0", stream.viscosity.value());
  require(flow.value() >= 0.0, function, "flow must not be negative", flow.value());
}

void check_holes(const Holes &holes, std::string_view function) {
  require(holes.diameter.value() > 0.0, function, "diameter must be above 0", holes.diameter.value());
  require(holes.thickness.value() >= 0.0, function, "thickness must not be negative",
          holes.thickness.value());
  require(holes.count >= 1, function, "count must be at least 1", holes.count);
  require(holes.discharge > 0.0 && holes.discharge <= 1.0, function, "Cd must lie in 0 to 1",
          holes.discharge);
}

double holes_area(const Holes &holes) {
  return 0.25 * units::pi * holes.count * holes.diameter.value() * holes.diameter.value();
}

// Pressure of the holes as linear u + square u^2, u the speed in a hole.
struct HoleTerms {
  double linear, square;
};
HoleTerms hole_terms(const Holes &holes, const Stream &stream) {
  const double d = holes.diameter.value(), mu = stream.viscosity.value();
  return {6.0 * units::pi * mu / d + 32.0 * mu * holes.thickness.value() / (d * d),
          0.5 * stream.density.value() / (holes.discharge * holes.discharge)};
}

double checked_kelvin(units::Temperature temperature, double highest, std::string_view function) {
  const double kelvin = temperature.value();
  require(kelvin >= 1650.0 && kelvin <= highest, function, "temperature must lie in the measured range",
          kelvin);
  return kelvin;
}

} // namespace

units::Pressure tube_laminar_drop(units::DynamicViscosity viscosity, units::Length length,
                                  units::Length diameter, units::VolumeFlow flow) {
  require(viscosity.value() > 0.0, "tube_laminar_drop", "viscosity must be above 0", viscosity.value());
  require(length.value() >= 0.0, "tube_laminar_drop", "length must not be negative", length.value());
  require(diameter.value() > 0.0, "tube_laminar_drop", "diameter must be above 0", diameter.value());
  require(flow.value() >= 0.0, "tube_laminar_drop", "flow must not be negative", flow.value());
  return units::pascals(128.0 * viscosity.value() * length.value() * flow.value() /
                        (units::pi * std::pow(diameter.value(), 4)));
}

units::Pressure gap_laminar_drop(units::DynamicViscosity viscosity, units::Length length, units::Length width,
                                 units::Length gap, units::VolumeFlow flow) {
  require(viscosity.value() > 0.0, "gap_laminar_drop", "viscosity must be above 0", viscosity.value());
  require(length.value() >= 0.0, "gap_laminar_drop", "length must not be negative", length.value());
  require(width.value() > 0.0, "gap_laminar_drop", "width must be above 0", width.value());
  require(gap.value() > 0.0, "gap_laminar_drop", "gap must be above 0", gap.value());
  require(flow.value() >= 0.0, "gap_laminar_drop", "flow must not be negative", flow.value());
  return units::pascals(12.0 * viscosity.value() * length.value() * flow.value() /
                        (width.value() * std::pow(gap.value(), 3)));
}

double friction_factor(double reynolds, double relative_roughness) {
  require(reynolds > 0.0, "friction_factor", "Reynolds number must be above 0", reynolds);
  require(relative_roughness >= 0.0 && relative_roughness <= 0.05, "friction_factor",
          "relative roughness must lie in 0 to 0.05", relative_roughness);
  if (reynolds < 500.0)
    return 64.0 / reynolds; // the other terms are below rounding, and their powers overflow near 0
  const double a =
      std::pow(2.457 * std::log(1.0 / (std::pow(7.0 / reynolds, 0.9) + 0.27 * relative_roughness)), 16);
  const double b = std::pow(37530.0 / reynolds, 16);
  return 8.0 * std::pow(std::pow(8.0 / reynolds, 12) + std::pow(a + b, -1.5), 1.0 / 12.0);
}

units::Pressure minor_drop(double loss, units::Density density, units::Velocity speed) {
  require(loss >= 0.0, "minor_drop", "loss coefficient must not be negative", loss);
  require(density.value() > 0.0, "minor_drop", "density must be above 0", density.value());
  return units::pascals(0.5 * loss * density.value() * speed.value() * speed.value());
}

double sudden_expansion_loss(units::Area upstream, units::Area downstream) {
  require(upstream.value() > 0.0, "sudden_expansion_loss", "area must be above 0", upstream.value());
  const double share = units::ratio(upstream, downstream);
  require(share > 0.0 && share <= 1.0, "sudden_expansion_loss", "downstream area must not be smaller",
          downstream.value());
  return (1.0 - share) * (1.0 - share);
}

units::Pressure tube_drop(const TubeRun &run, units::VolumeFlow flow, const Stream &stream) {
  check_stream(stream, flow, "tube_drop");
  require(run.length.value() >= 0.0, "tube_drop", "length must not be negative", run.length.value());
  require(run.diameter.value() > 0.0, "tube_drop", "diameter must be above 0", run.diameter.value());
  require(run.losses >= 0.0, "tube_drop", "loss coefficient must not be negative", run.losses);
  if (flow.value() == 0.0)
    return units::pascals(0.0);
  const double d = run.diameter.value();
  const double speed = flow.value() / (0.25 * units::pi * d * d);
  const double reynolds = stream.density.value() * speed * d / stream.viscosity.value();
  const double total =
      friction_factor(reynolds, run.relative_roughness) * run.length.value() / d + run.losses;
  return minor_drop(total, stream.density, units::metres_per_second(speed));
}

units::Pressure holes_drop(const Holes &holes, units::VolumeFlow flow, const Stream &stream) {
  check_holes(holes, "holes_drop");
  check_stream(stream, flow, "holes_drop");
  const double speed = flow.value() / holes_area(holes);
  const auto [linear, square] = hole_terms(holes, stream);
  return units::pascals((linear + square * speed) * speed);
}

units::VolumeFlow holes_flow(const Holes &holes, units::Pressure drop, const Stream &stream) {
  check_holes(holes, "holes_flow");
  check_stream(stream, units::VolumeFlow{}, "holes_flow");
  require(drop.value() >= 0.0, "holes_flow", "pressure must not be negative", drop.value());
  const auto [linear, square] = hole_terms(holes, stream);
  // Root of the quadratic in the form that does not cancel when the creeping part rules.
  const double speed =
      2.0 * drop.value() / (linear + std::sqrt(linear * linear + 4.0 * square * drop.value()));
  return units::cubic_metres_per_second(speed * holes_area(holes));
}

units::Pressure line_drop(const Line &line, units::VolumeFlow flow, const Stream &stream) {
  units::Pressure sum{};
  for (const TubeRun &run : line.tubes)
    sum += tube_drop(run, flow, stream);
  for (const Holes &holes : line.plates)
    sum += holes_drop(holes, flow, stream);
  return sum;
}

units::VolumeFlow line_flow(const Line &line, units::Pressure drop, const Stream &stream) {
  require(drop.value() >= 0.0, "line_flow", "pressure must not be negative", drop.value());
  require(!line.tubes.empty() || !line.plates.empty(), "line_flow", "line must hold an element", 0.0);
  if (drop.value() == 0.0)
    return units::cubic_metres_per_second(0.0);
  const auto surplus = [&](double flow) {
    return line_drop(line, units::cubic_metres_per_second(flow), stream).value() / drop.value() - 1.0;
  };
  require(surplus(1.0) > 0.0, "line_flow", "flow must stay under 1 m3/s", drop.value());
  std::uintmax_t steps = 300;
  const auto [low, high] = boost::math::tools::bracket_and_solve_root(
      surplus, 1e-5, 8.0, true, boost::math::tools::eps_tolerance<double>(45), steps);
  return units::cubic_metres_per_second(0.5 * (low + high));
}

double titanium_surface_tension(units::Temperature temperature) {
  return 1.557 - 0.156e-3 * (checked_kelvin(temperature, 2300.0, "titanium_surface_tension") - 1943.0);
}

double titanium_alloy_surface_tension(units::Temperature temperature) {
  return 1.389 -
         0.9017e-3 * (checked_kelvin(temperature, 2200.0, "titanium_alloy_surface_tension") - 1933.15);
}

units::Pressure capillary_hold(double surface_tension, units::Length width, LiquidShape shape) {
  require(surface_tension > 0.0, "capillary_hold", "surface tension must be above 0", surface_tension);
  require(width.value() > 0.0, "capillary_hold", "width must be above 0", width.value());
  return units::pascals((shape == LiquidShape::long_gap ? 2.0 : 4.0) * surface_tension / width.value());
}

units::Pressure bore_pressure_limit(double surface_tension, units::Length width, LiquidShape shape,
                                    units::Length pool_depth, double safety) {
  require(safety >= 1.0, "bore_pressure_limit", "safety factor must be at least 1", safety);
  require(pool_depth.value() >= 0.0, "bore_pressure_limit", "depth must not be negative", pool_depth.value());
  const double weight = liquid_titanium_density * standard_gravity * pool_depth.value();
  const double hold = capillary_hold(surface_tension, width, shape).value() - weight;
  return units::pascals(std::max(0.0, hold) / safety);
}

} // namespace purgewright::gas
