#include "purgewright/solids/kernel/placed.hpp"

#include "purgewright/solids/kernel/scale.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"
#include "solids/kernel/guard.hpp"

#include <TopLoc_Location.hxx>
#include <fmt/format.h>

namespace purgewright::solids::kernel {

Solid placed(Solid const &solid, Placement const &placement) {
  Task const task{"place",
                  fmt::format("offset {}, angle {} rad", text(placement.offset), rad(placement.angle))};
  require_finite(task, placement.offset);
  return guarded(task, [&] {
    TopoDS_Shape const moved = occt(solid).Moved(TopLoc_Location(occt(placement)));
    std::optional<double> const volume = solid.checked_volume_mm3(); // a move keeps it
    return volume ? Solid(moved, *volume) : Solid(moved);
  });
}

} // namespace purgewright::solids::kernel
