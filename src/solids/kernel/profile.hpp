// A turned profile in plain millimetres, and the arcs in it.
//
// Units: millimetres, radians. Frame: (axial, radial) half plane.
// Range and errors: arc_through gives nothing for three points in line.
// Guarantee: pure functions of their arguments.
// Source: circumcircle of three points; volumes by Pappus' rule written as integrals.
#pragma once

#include "purgewright/solids/kernel/primitives.hpp"

#include <optional>
#include <vector>

namespace purgewright::solids::kernel {

struct ProfileArc {
  double axial, radial, radius; // centre and radius
  double start, sweep;          // angle of the first end, signed angle swept
};

struct ProfileSegment {
  double axial, radial;         // first end
  double axial_end, radial_end; // last end
  std::optional<ProfileArc> arc;
  bool bad_arc = false; // an arc was asked for through points in line
};

std::vector<ProfileSegment> segments(std::vector<ProfilePoint> const &profile);

// Signed volume a segment contributes: the integral of pi r^2 along the axis.
double swept_volume(ProfileSegment const &segment);

} // namespace purgewright::solids::kernel
