// Boxes, cylinders, solids of revolution, rounded-rectangle prisms and sphere segments.
//
// Units: quantity types throughout; kernel millimetres inside.
// Frame: see frame.hpp; each function states its own local origin.
// Range and errors: every size at least smallest_size and finite, otherwise SolidError; SolidError also
// when the built solid is invalid or misses its closed-form volume by more than 1e-6 relative.
// Guarantee: one closed valid solid; deterministic; one kernel thread.
// Source: volumes of revolution by Pappus; the rest is plain geometry.
#pragma once

#include "purgewright/solids/kernel/frame.hpp"
#include "purgewright/solids/kernel/solid.hpp"
#include "purgewright/units/quantity.hpp"

#include <optional>
#include <vector>

namespace purgewright::solids::kernel {

// Ten thousand times the kernel's confusion distance (1e-7 mm): below it faces merge or vanish.
inline constexpr units::Length smallest_size = units::micrometres(1.0);

Solid box(Point const &least, Point const &greatest);

// Base at the frame's origin, rising along the axis.
Solid cylinder(Frame const &frame, units::Length radius, units::Length length);

// One corner of a turned profile. The segment from this corner to the next is straight, or the arc
// through `via` if that is given.
struct ProfilePoint {
  struct Via {
    units::Length axial;
    units::Length radial;
  };
  units::Length axial;
  units::Length radial;
  std::optional<Via> via{};
};

// Full turn of a closed profile about the frame's axis: axial along the axis from the origin, radial
// outwards (>= 0). The last corner joins the first; either sense of going round is accepted; the profile
// may run along the axis.
Solid revolve(Frame const &frame, std::vector<ProfilePoint> const &profile);

// Closed form of the same solid: positive for either sense of going round.
units::Volume volume_of_revolution(std::vector<ProfilePoint> const &profile);

// `length` lies along the frame's local X, `width` along its local Y, centred on the origin. A corner
// radius of zero gives sharp corners, half the smaller side an obround.
struct RoundedRectangle {
  units::Length length;
  units::Length width;
  units::Length corner_radius{};
};

// The obround of the given overall size.
RoundedRectangle stadium(units::Length length, units::Length width);

// Base in the frame's plane, rising along the axis.
Solid rounded_rectangle_prism(Frame const &frame, RoundedRectangle const &plan, units::Length height);

// The same less its inside, which is the outline moved inwards by `band`; corners stay concentric. The
// inside must keep smallest_size.
Solid rounded_rectangle_ring_prism(Frame const &frame, RoundedRectangle const &outer, units::Length band,
                                   units::Length height);

// Obround groove: overall length and width of the outer edge, groove width `band`, depth along the axis.
Solid stadium_ring_prism(Frame const &frame, units::Length length, units::Length width, units::Length band,
                         units::Length height);

// Cap of a sphere: flat base at the frame's origin, apex at `height` along the axis; the height stays below
// twice the radius by smallest_size at least.
Solid sphere_segment(Frame const &frame, units::Length radius, units::Length height);

Solid sphere(Frame const &frame, units::Length radius);

} // namespace purgewright::solids::kernel
