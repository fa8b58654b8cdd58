#include "purgewright/solids/kernel/primitives.hpp"
#include "purgewright/solids/kernel/scale.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"
#include "solids/kernel/guard.hpp"

#include <BRepPrimAPI_MakeCylinder.hxx>
#include <fmt/format.h>

namespace purgewright::solids::kernel {

Solid cylinder(Frame const &frame, units::Length radius, units::Length length) {
  Task const task{"cylinder", fmt::format("{}, radius {}, length {}", text(frame), mm(radius), mm(length))};
  require_finite(task, frame.origin);
  require_size(task, "the radius", radius);
  require_size(task, "the length", length);
  return guarded(task, [&] {
    double const r = mm(radius);
    double const l = mm(length);
    return checked_primitive(task, BRepPrimAPI_MakeCylinder(occt(frame), r, l).Shape(),
                             units::pi * r * r * l);
  });
}

} // namespace purgewright::solids::kernel
