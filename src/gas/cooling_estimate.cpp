#include "purgewright/gas/cooling_estimate.hpp"

#include "gas/require.hpp"

#include <cmath>

namespace purgewright::gas {

using detail::require;

namespace {

void check(double line_energy, units::Length thickness, const WallMetal &metal, std::string_view function) {
  require(line_energy > 0.0, function, "line energy must be above 0", line_energy);
  require(thickness.value() > 0.0, function, "thickness must be above 0", thickness.value());
  require(metal.conductivity > 0.0, function, "conductivity must be above 0", metal.conductivity);
  require(metal.density.value() > 0.0, function, "density must be above 0", metal.density.value());
  require(metal.specific_heat > 0.0, function, "specific heat must be above 0", metal.specific_heat);
}

// Rise times the root of time: (q/v) / (d sqrt(4 pi k rho c)), K s^(1/2).
double strength(double line_energy, units::Length thickness, const WallMetal &metal) {
  return line_energy / (thickness.value() * std::sqrt(4.0 * units::pi * metal.conductivity *
                                                      metal.density.value() * metal.specific_heat));
}

} // namespace

double line_energy(units::Voltage voltage, units::Current current, double arc_efficiency,
                   units::Velocity speed) {
  require(voltage.value() >= 0.0, "line_energy", "voltage must not be negative", voltage.value());
  require(current.value() >= 0.0, "line_energy", "current must not be negative", current.value());
  require(arc_efficiency > 0.0 && arc_efficiency <= 1.0, "line_energy", "efficiency must lie in 0 to 1",
          arc_efficiency);
  require(speed.value() > 0.0, "line_energy", "speed must be above 0", speed.value());
  return arc_efficiency * voltage.value() * current.value() / speed.value();
}

units::Time thin_plate_cooling_time(double line_energy, units::Length thickness, const WallMetal &metal,
                                    units::Temperature start, units::Temperature peak,
                                    units::Temperature shielding) {
  constexpr std::string_view here = "thin_plate_cooling_time";
  check(line_energy, thickness, metal, here);
  const double cold = shielding.value() - start.value(), hot = peak.value() - start.value();
  require(cold > 0.0, here, "shielding temperature must lie above the start", shielding.value());
  require(hot >= cold, here, "peak must not lie under the shielding temperature", peak.value());
  const double s = strength(line_energy, thickness, metal);
  return units::seconds(s * s * (1.0 / (cold * cold) - 1.0 / (hot * hot)));
}

units::TemperatureDifference thin_plate_rise(double line_energy, units::Length thickness,
                                             const WallMetal &metal, units::Time time) {
  check(line_energy, thickness, metal, "thin_plate_rise");
  require(time.value() > 0.0, "thin_plate_rise", "time must be above 0", time.value());
  return units::TemperatureDifference::from_value(strength(line_energy, thickness, metal) /
                                                  std::sqrt(time.value()));
}

double relative_plate_thickness(double line_energy, units::Length thickness, const WallMetal &metal,
                                units::TemperatureDifference rise) {
  check(line_energy, thickness, metal, "relative_plate_thickness");
  require(rise.value() > 0.0, "relative_plate_thickness", "rise must be above 0", rise.value());
  return thickness.value() *
         std::sqrt(metal.density.value() * metal.specific_heat * rise.value() / line_energy);
}

} // namespace purgewright::gas
