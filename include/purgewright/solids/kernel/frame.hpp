// Points, directions and frames that place primitives, and the placement of a finished solid.
//
// Units: lengths and angles are quantity types; a direction is three plain numbers, normalised on use.
// Frame: global, tube axis X, +X from plug to cap, Z up, origin at the joint.
// Range and errors: a zero direction, or an `across` parallel to `axis`, makes the primitive throw
// SolidError.
// Guarantee: plain values; same input, same frame.
// Source: common practice, no source.
#pragma once

#include "purgewright/units/quantity.hpp"

#include <optional>

namespace purgewright::solids::kernel {

struct Point {
  units::Length x;
  units::Length y;
  units::Length z;
};

struct Direction {
  double x;
  double y;
  double z;
};

inline constexpr Direction along_x{1.0, 0.0, 0.0};
inline constexpr Direction along_y{0.0, 1.0, 0.0};
inline constexpr Direction along_z{0.0, 0.0, 1.0};
inline constexpr Direction against_x{-1.0, 0.0, 0.0};
inline constexpr Direction against_y{0.0, -1.0, 0.0};
inline constexpr Direction against_z{0.0, 0.0, -1.0};

// `axis` is the local Z (a cylinder's axis, a prism's extrusion); `across` the local X (a rounded
// rectangle's length, a round face's seam). Without `across`, the local X is global X, or global Y where
// the axis is within 26 degrees of X; the seam of a bore along X so lies at the side, clear of slot and
// inlet.
struct Frame {
  Point origin{};
  Direction axis = along_z;
  std::optional<Direction> across{};
};

// The frame moved along its own axis; used to start cutters outside the metal.
Frame advanced(Frame const &frame, units::Length distance);

// A turn about an axis through the global origin, then a shift.
struct Placement {
  Point offset{};
  Direction axis = along_z;
  units::Angle angle{};
};

} // namespace purgewright::solids::kernel
