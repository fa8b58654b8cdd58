// The parts of a fixture as solids, each a pure function of the job and its layout, and the gas spaces between
// them by Boolean operations.
//
// Frame: each part is built in its own frame (fixture/layout.hpp says which); `place` moves it to the joint's
// frame. Threads are cosmetic: the solid has the tap drill's hole, the callout stands in `notes`.
// Range and errors: the layout must be buildable; kernel::SolidError names part and operation otherwise.
// Guarantee: every part is one closed valid solid; same job, same solids.
#pragma once

#include "purgewright/fixture/volumes.hpp"
#include "purgewright/solids/kernel/placed.hpp"
#include "purgewright/solids/kernel/solid.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace purgewright::solids {

struct Part {
  std::string name;               // "chamber-body"; also the file's name
  std::string title;              // for people: "Chamber body"
  kernel::Solid solid;            // own frame
  kernel::Placement place;        // to the joint's frame
  std::vector<std::string> notes; // threads and fits, as a drawing spells them
  bool made = true;               // false: shown for reference (tube, cap)
};

// What the chamber's broken slot edge took off, measured on the solids before and after.
struct ChamberBuild {
  kernel::Solid body;
  units::Volume edge_break;
};

ChamberBuild build_chamber_body(const fixture::Layout &);
kernel::Solid build_end_plate(const fixture::Layout &);
kernel::Solid build_backing_pin(const fixture::Layout &);
kernel::Solid build_end_plug(const fixture::Layout &);
kernel::Solid build_lance(const fixture::Layout &);
kernel::Solid build_port_block(const fixture::Layout &);
kernel::Solid build_tube(const job::Job &); // joint's frame
kernel::Solid build_cap(const job::Job &);  // joint's frame

// All parts, made ones first, tube and cap last.
struct Assembly {
  std::vector<Part> parts;
  units::Volume edge_break; // of the chamber's slot, see ChamberBuild
};
Assembly build_assembly(const job::Job &, const fixture::Layout &);

// Gas spaces measured on solids: the swept space less what stands in it.
struct GasSpaces {
  units::Volume chamber{}, bore{};
};
GasSpaces measure_gas(const job::Job &, const fixture::Layout &, const Assembly &);

} // namespace purgewright::solids
