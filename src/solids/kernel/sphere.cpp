#include "purgewright/solids/kernel/primitives.hpp"
#include "purgewright/solids/kernel/scale.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"
#include "solids/kernel/guard.hpp"

#include <BRepPrimAPI_MakeSphere.hxx>
#include <fmt/format.h>

#include <cmath>

namespace purgewright::solids::kernel {

Solid sphere_segment(Frame const &frame, units::Length radius, units::Length height) {
  Task const task{"sphere segment",
                  fmt::format("{}, radius {}, height {}", text(frame), mm(radius), mm(height))};
  require_size(task, "the radius", radius);
  require_size(task, "the height", height);
  require_size(task, "what is left of the sphere", 2.0 * radius - height);
  auto const chord = [&](units::Length rise) { return units::sqrt(rise * (2.0 * radius - rise)); };
  units::Length const half = 0.5 * height;
  return revolve(frame, {{.axial = units::Length{}, .radial = units::Length{}},
                         {.axial = units::Length{},
                          .radial = chord(height),
                          .via = ProfilePoint::Via{.axial = half, .radial = chord(half)}},
                         {.axial = height, .radial = units::Length{}}});
}

Solid sphere(Frame const &frame, units::Length radius) {
  Task const task{"sphere", fmt::format("{}, radius {}", text(frame), mm(radius))};
  require_finite(task, frame.origin);
  require_size(task, "the radius", radius);
  return guarded(task, [&] {
    double const r = mm(radius);
    return checked_primitive(task, BRepPrimAPI_MakeSphere(occt(frame), r).Shape(),
                             4.0 / 3.0 * units::pi * r * r * r);
  });
}

} // namespace purgewright::solids::kernel
