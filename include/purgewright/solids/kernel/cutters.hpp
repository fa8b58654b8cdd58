// Tools for cutting: each starts outside the metal by a fixed overshoot, so that no tool face lies on a
// face of the work and no skin is left.
//
// Units: quantity types. Frame: origin at the mouth, on the work's face; axis into the metal.
// Range and errors: as primitives.hpp.
// Guarantee: deterministic; the overshoot goes against the axis only, except through_cutter.
// Source: measured on OpenCASCADE 7.6.3, a hole that stops 1e-6 mm short leaves a skin that passes as
// valid.
#pragma once

#include "purgewright/solids/kernel/frame.hpp"
#include "purgewright/solids/kernel/solid.hpp"
#include "purgewright/units/quantity.hpp"

namespace purgewright::solids::kernel {

// A million times the skin seen at 1e-6 mm, yet far below any wall it could reach from outside.
inline constexpr units::Length cutter_overshoot = units::millimetres(1.0);

// Flat-bottomed hole, `depth` from the mouth.
Solid blind_cutter(Frame const &mouth, units::Length diameter, units::Length depth);

// Hole through `thickness`; overshoots at both ends.
Solid through_cutter(Frame const &mouth, units::Length diameter, units::Length thickness);

// Drilled hole: full diameter down to `depth`, then the drill's point with the given included angle.
Solid drill_cutter(Frame const &mouth, units::Length diameter, units::Length depth,
                   units::Angle point_angle = units::degrees(118.0));

// Box pocket from the given face plane: the box grown by the overshoot on the sides asked for.
struct Overshoot {
  bool least_x = false, greatest_x = false;
  bool least_y = false, greatest_y = false;
  bool least_z = false, greatest_z = false;
};
Solid box_cutter(Point const &least, Point const &greatest, Overshoot const &open);

} // namespace purgewright::solids::kernel
