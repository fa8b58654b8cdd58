// Least distance between solids, or from a straight line to a solid.
//
// Units: quantity types. Frame: that of the arguments, which must be one.
// Range and errors: SolidError if the kernel fails; a line as long as smallest_size at least.
// Guarantee: zero where the two meet or one holds the other; exact to the kernel's confusion distance on
// plane and cylinder faces; nothing is meshed; measuring changes nothing. Source: OpenCASCADE 7.6.3, measured
// against hand-worked distances in the tests.
#pragma once

#include "purgewright/solids/kernel/located.hpp"

namespace purgewright::solids::kernel {

struct Line {
  Point from;
  Point to;
};

units::Length distance(Solid const &a, Solid const &b);
units::Length distance(Line const &line, Solid const &solid);
units::Length distance(Line const &a, Line const &b);

// The distance where it is below `known`, otherwise `known`: only faces nearer than that by their boxes are
// measured.
units::Length distance_below(units::Length known, Solid const &body, Located const &part);
units::Length distance_below(units::Length known, Line const &line, Located const &part);

} // namespace purgewright::solids::kernel
