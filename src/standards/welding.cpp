#include "purgewright/standards/welding.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace purgewright::standards {

namespace {

using units::amperes;
using units::inches;

constexpr std::array<Tungsten, 4> tungstens{{{inches(1.0 / 16.0), "1/16 in", amperes(100.0)},
                                             {inches(3.0 / 32.0), "3/32 in", amperes(165.0)},
                                             {inches(1.0 / 8.0), "1/8 in", amperes(200.0)},
                                             {inches(5.0 / 32.0), "5/32 in", amperes(400.0)}}};

} // namespace

const Tungsten &tungsten_for(units::Current current) {
  const auto *row = std::ranges::find_if(tungstens, [&](const Tungsten &t) { return current <= t.most; });
  return row == tungstens.end() ? tungstens.back() : *row;
}

Schedule titanium_schedule(units::Length thickness) {
  constexpr units::Length thin = inches(0.030), thick = inches(0.060);
  constexpr double thin_least = 20.0, thin_most = 35.0, thick_least = 85.0, thick_most = 100.0; // A
  constexpr double thick_growth = 30.0e3;                                                       // A/m
  constexpr units::Velocity speed = units::metres_per_second(10.0 * 25.4e-3 / 60.0);            // 10 in/min
  if (thickness < thin) {
    const double share = units::ratio(thickness, thin);
    return {amperes(share * thin_least), amperes(share * thin_most), speed};
  }
  if (thickness > thick) {
    const double more = thick_growth * (thickness - thick).value();
    return {amperes(thick_least + more), amperes(thick_most + more), speed * units::ratio(thick, thickness)};
  }
  const double beyond = units::ratio(thickness - thin, thick - thin);
  return {amperes(thin_least + beyond * (thick_least - thin_least)),
          amperes(thin_most + beyond * (thick_most - thin_most)), speed};
}

units::Length kept_pool(units::Length wall, units::Length outside_diameter,
                        std::optional<units::Length> rim) {
  constexpr double most_of_diameter = 0.29, least_walls = 2.6, most_rims = 2.0;
  const units::Length of_tube = most_of_diameter * outside_diameter;
  const units::Length most = rim ? std::min(of_tube, most_rims * *rim) : of_tube;
  return std::clamp(most, least_walls * wall, pool_walls * wall);
}

FitUp fit_up(units::Length wall, bool wire) {
  constexpr double gap = 0.20, gap_with_wire = 0.50, offset = 0.25;
  return {(wire ? gap_with_wire : gap) * wall, offset * wall};
}

units::Length transverse_shrinkage(units::Length width) {
  constexpr double of_section_over_thickness = 0.10;
  return of_section_over_thickness * width;
}

units::Velocity hand_speed(units::Length outside_diameter) {
  return units::metres_per_second(hand_turn.value() * 0.5 * outside_diameter.value());
}

units::Power pool_power(units::Length thickness, units::Length pool, units::Velocity speed) {
  // Titanium at some 1000 degC (standards/metals.cpp), from a room to its melting.
  constexpr double conductivity = 20.0, diffusivity = 6.8e-6, rise = 1650.0; // W/(m K), m2/s, K
  // Of a Gaussian with a standard deviation of 1.5 mm: Tsai & Eagar, Welding J. 64, 346-s (1985).
  constexpr double arc_width = 2.355 * 1.5e-3; // m
  const double width = std::hypot(pool.value(), arc_width);
  return units::Power::from_value(8.0 * conductivity * thickness.value() * rise *
                                  (0.2 + speed.value() * width / (4.0 * diffusivity)));
}

units::Temperature contact_melts(const Metal &cap, const Metal &pin) {
  constexpr auto with_iron = units::celsius(1085.0), with_copper = units::celsius(885.0);
  const auto own = std::min(cap.melting_start, pin.melting_start);
  return pin.name == "stainless-304" ? std::min(own, with_iron)
         : pin.name == "copper-c110" ? std::min(own, with_copper)
                                     : own;
}

std::optional<units::Temperature> contact_bonds(const Metal &cap, const Metal &pin) {
  constexpr auto together = units::celsius(850.0);
  return cap.weldable_here && pin.weldable_here ? std::optional(together) : std::nullopt;
}

} // namespace purgewright::standards
