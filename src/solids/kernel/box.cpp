#include "purgewright/solids/kernel/primitives.hpp"
#include "purgewright/solids/kernel/scale.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"
#include "solids/kernel/guard.hpp"

#include <BRepPrimAPI_MakeBox.hxx>

namespace purgewright::solids::kernel {

Solid box(Point const &least, Point const &greatest) {
  Task const task{"box", text(least) + " to " + text(greatest)};
  require_finite(task, least);
  require_finite(task, greatest);
  require_size(task, "the side along X", greatest.x - least.x);
  require_size(task, "the side along Y", greatest.y - least.y);
  require_size(task, "the side along Z", greatest.z - least.z);
  return guarded(task, [&] {
    gp_Pnt const a = occt(least);
    gp_Pnt const b = occt(greatest);
    double const volume = (b.X() - a.X()) * (b.Y() - a.Y()) * (b.Z() - a.Z());
    return checked_primitive(task, BRepPrimAPI_MakeBox(a, b).Shape(), volume);
  });
}

} // namespace purgewright::solids::kernel
