// Quantity types used by every floor: a length cannot be passed where a flow is wanted.
//
// Units: every quantity holds its SI value (.value()); the factories below are the only way in from
// shop units, so no conversion factor stands anywhere else in the code.
// Absolute temperature and temperature difference are different types; angles are radians of their own
// type, so that no bare number becomes an angle.
// Source of the unit factors: exact by definition (inch 25.4 mm, 1959 international yard and pound).
#pragma once

#include <boost/units/absolute.hpp>
#include <boost/units/pow.hpp>
#include <boost/units/quantity.hpp>
#include <boost/units/systems/si/area.hpp>
#include <boost/units/systems/si/current.hpp>
#include <boost/units/systems/si/dimensionless.hpp>
#include <boost/units/systems/si/dynamic_viscosity.hpp>
#include <boost/units/systems/si/electric_potential.hpp>
#include <boost/units/systems/si/length.hpp>
#include <boost/units/systems/si/mass.hpp>
#include <boost/units/systems/si/mass_density.hpp>
#include <boost/units/systems/si/plane_angle.hpp>
#include <boost/units/systems/si/power.hpp>
#include <boost/units/systems/si/pressure.hpp>
#include <boost/units/systems/si/temperature.hpp>
#include <boost/units/systems/si/time.hpp>
#include <boost/units/systems/si/velocity.hpp>
#include <boost/units/systems/si/volume.hpp>

#include <cmath>
#include <numbers>

namespace purgewright::units {

namespace bu = boost::units;

using Length = bu::quantity<bu::si::length>;
using Area = bu::quantity<bu::si::area>;
using Volume = bu::quantity<bu::si::volume>;
using Mass = bu::quantity<bu::si::mass>;
using Time = bu::quantity<bu::si::time>;
using Velocity = bu::quantity<bu::si::velocity>;
using VolumeFlow = decltype(Volume{} / Time{});
using Pressure = bu::quantity<bu::si::pressure>;
using Density = bu::quantity<bu::si::mass_density>;
using DynamicViscosity = bu::quantity<bu::si::dynamic_viscosity>;
using Diffusivity = decltype(Area{} / Time{}); // also kinematic viscosity and thermal diffusivity
using Power = bu::quantity<bu::si::power>;
using Current = bu::quantity<bu::si::current>;
using Voltage = bu::quantity<bu::si::electric_potential>;
using Angle = bu::quantity<bu::si::plane_angle>;
using Temperature = bu::quantity<bu::absolute<bu::si::temperature>>;
using TemperatureDifference = bu::quantity<bu::si::temperature>;

inline constexpr double pi = std::numbers::pi;

constexpr Length metres(double v) {
  return Length::from_value(v);
}
constexpr Length millimetres(double v) {
  return Length::from_value(v * 1e-3);
}
constexpr Length micrometres(double v) {
  return Length::from_value(v * 1e-6);
}
constexpr Length inches(double v) {
  return Length::from_value(v * 0.0254);
}
constexpr Area square_metres(double v) {
  return Area::from_value(v);
}
constexpr Volume cubic_metres(double v) {
  return Volume::from_value(v);
}
constexpr Volume litres(double v) {
  return Volume::from_value(v * 1e-3);
}
constexpr Mass kilograms(double v) {
  return Mass::from_value(v);
}
constexpr Time seconds(double v) {
  return Time::from_value(v);
}
constexpr Velocity metres_per_second(double v) {
  return Velocity::from_value(v);
}
constexpr VolumeFlow cubic_metres_per_second(double v) {
  return VolumeFlow::from_value(v);
}
constexpr VolumeFlow litres_per_minute(double v) {
  return VolumeFlow::from_value(v * 1e-3 / 60.0);
}
constexpr Pressure pascals(double v) {
  return Pressure::from_value(v);
}
constexpr Density kilograms_per_cubic_metre(double v) {
  return Density::from_value(v);
}
constexpr Current amperes(double v) {
  return Current::from_value(v);
}
constexpr Voltage volts(double v) {
  return Voltage::from_value(v);
}
constexpr Angle radians(double v) {
  return Angle::from_value(v);
}
constexpr Angle degrees(double v) {
  return Angle::from_value(v * pi / 180.0);
}
constexpr Temperature kelvins(double v) {
  return Temperature::from_value(v);
}
constexpr Temperature celsius(double v) {
  return Temperature::from_value(v + 273.15);
}

constexpr double to_millimetres(Length v) {
  return v.value() * 1e3;
}
constexpr double to_inches(Length v) {
  return v.value() / 0.0254;
}
constexpr double to_degrees(Angle v) {
  return v.value() * 180.0 / pi;
}
constexpr double to_litres_per_minute(VolumeFlow v) {
  return v.value() * 60.0e3;
}
constexpr double to_celsius(Temperature v) {
  return v.value() - 273.15;
}

// Ratio of two like quantities as a plain number.
template <class Q> constexpr double ratio(Q a, Q b) {
  return a.value() / b.value();
}

inline Length sqrt(Area a) {
  return metres(std::sqrt(a.value()));
}
constexpr Area square(Length a) {
  return a * a;
}
constexpr Volume cube(Length a) {
  return a * a * a;
}

} // namespace purgewright::units
