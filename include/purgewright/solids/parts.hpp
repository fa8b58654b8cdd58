// The parts of a fixture as solids, each a pure function of the job and its layout, and the gas spaces
// between them by Boolean operations.
//
// Frame: each part is built in its own frame (fixture/layout.hpp says which); `place` moves it to the joint's
// frame. Threads are cosmetic: the solid has the tap drill's hole, the callout stands in `notes`.
// Range and errors: the layout must be buildable; kernel::SolidError names part and operation otherwise.
// Guarantee: every part is one closed valid solid; same job, same solids.
#pragma once

#include "purgewright/fixture/volumes.hpp"
#include "purgewright/solids/kernel/placed.hpp"
#include "purgewright/solids/kernel/solid.hpp"

#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::solids {

// A made part has files of its own; the others are shown in the assembly: tube and cap as they are, bought
// parts simplified, threads and small forms left out.
enum class PartKind { made, workpiece, bought };

struct Part {
  std::string name;               // "chamber-body"; also the file's name
  std::string title;              // for people: "Chamber body"
  kernel::Solid solid;            // own frame
  units::Volume volume;           // measured on the solid
  kernel::Placement place;        // to the joint's frame
  std::vector<std::string> notes; // threads and fits, as a drawing spells them
  PartKind kind = PartKind::made;
  std::vector<kernel::Placement> more_places{}; // of further pieces of the same part
  bool made() const { return kind == PartKind::made; }
};

kernel::Solid build_chamber_body(const fixture::Layout &);
kernel::Solid build_wiper_plate(const fixture::Layout &);
kernel::Solid build_wiper(const fixture::Layout &); // as it lies on the tube
kernel::Solid build_plenum_cover(const fixture::Layout &);
kernel::Solid build_end_gasket(const fixture::Layout &);  // origin on the axis in the body's face
kernel::Solid build_side_gasket(const fixture::Layout &); // of plates: x of the joint, its underside in z = 0
kernel::Solid build_rear_gasket(const fixture::Layout &);
kernel::Solid build_plenum_gasket(const fixture::Layout &); // origin under the joint on the cover
kernel::Solid build_end_plate(const fixture::Layout &);
kernel::Solid build_backing_pin(const fixture::Layout &);
kernel::Solid build_part(const fixture::Part &); // of any list of features
kernel::Solid build_cradle_stand(const fixture::Layout &);
kernel::Solid build_index_collar(const fixture::Layout &);
kernel::Solid build_axial_stop(const fixture::Layout &); // the layout has one
kernel::Solid build_base_plate(const fixture::Layout &);
kernel::Solid build_slot_cover(const fixture::Layout &);
kernel::Solid build_slot_mask(const fixture::Layout &); // in the joint's frame
kernel::Solid build_tube(const job::Job &);             // joint's frame
kernel::Solid build_cap(const job::Job &);              // joint's frame

inline constexpr std::string_view fitting = "fitting", valve = "needle-valve"; // names of bought parts

// Bought parts in place, one entry a kind, for the assembly.
std::vector<Part> bought_parts(const job::Job &, const fixture::Layout &);

// All parts: made ones, tube and cap, bought ones.
struct Assembly {
  std::vector<Part> parts;
};

// Told the name of each part before it is built.
using OnPart = std::function<void(std::string_view)>;

Assembly build_assembly(const job::Job &, const fixture::Layout &, const OnPart & = {});

// Gas spaces measured on solids: what the finished chamber leaves of its envelope and what the tube holds,
// less what stands in them. volumes.hpp says where each space ends.
struct GasSpaces {
  units::Volume chamber{}, bore{};
  std::vector<kernel::Solid> chamber_bodies, bore_bodies; // joint's frame, to look at: without gasket holes
};
GasSpaces measure_gas(const job::Job &, const fixture::Layout &, const Assembly &);

} // namespace purgewright::solids
