// Where a straight ray first meets a solid.
//
// Units: quantity types. Frame: that of the solid.
// Range and errors: SolidError for a zero direction, a reach below smallest_size, or if the kernel fails.
// Guarantee: the nearest face within reach is found, whichever way it faces; a ray that only grazes a face's
// edge may go either way. Source: OpenCASCADE 7.6.3, measured against hand-worked rays in the tests.
#pragma once

#include "purgewright/solids/kernel/located.hpp"
#include "purgewright/units/quantity.hpp"

#include <memory>
#include <optional>

class IntCurvesFace_ShapeIntersector;

namespace purgewright::solids::kernel {

struct Ray {
  Point from;
  Direction towards;
  units::Length reach;
};

// A solid made ready for many rays.
class Target {
 public:
  explicit Target(Solid const &solid);
  // For rays that stay in the region: faces beyond it are left out.
  Target(Located const &solid, Bounds const &region);
  ~Target();
  Target(Target &&) noexcept;
  Target &operator=(Target &&) noexcept;

  // Distance along the ray; nothing when it passes.
  std::optional<units::Length> first_hit(Ray const &ray) const;

 private:
  std::unique_ptr<IntCurvesFace_ShapeIntersector> faces_;
};

} // namespace purgewright::solids::kernel
