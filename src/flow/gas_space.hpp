// The gas of a stage as a mesh with its inlets, outlets and probes, from the layout's closed forms: the same
// numbers that volumes.hpp integrates and that the solids are held against. The tube's plane of symmetry, y =
// 0, halves it. Private to the flow floor.
//
// Not in it: plenum and diffuser holes (their mouths are the inlet), the wiper's leak, the torch's tilt,
// broken edges, screw holes, and of the pin the relief and grooves of its tip. An outlet is a hole
// without depth and as wide as lets the gas out no faster than it comes in.
//
// Units: metres, m3/s of the whole space. Frame: the joint's.
// Errors: std::invalid_argument where an opening finds no face, so that more cells are needed.
#pragma once

#include "purgewright/fixture/volumes.hpp"
#include "purgewright/flow/mesh.hpp"
#include "purgewright/flow/stage.hpp"
#include "purgewright/gas/purge.hpp"

#include "shapes.hpp"

#include <string>
#include <vector>

namespace purgewright::flow {

struct Subject {
  const job::Job &job;
  const fixture::Layout &layout;
  const fixture::Volumes &volumes;
  const gas::Purge &purge;
};

enum class Brings { purge_gas, air_of_stirred_bore }; // the latter thins as a stirred bore's does

struct Inlet {
  std::string patch;
  double flow = 0.0, area = 0.0; // of the whole space: m3/s, and m2 as drilled
  Brings brings = Brings::purge_gas;
};

struct Probe {
  std::string name;
  Point place; // middle of a cell
};

struct GasSpace {
  Mesh mesh;
  std::vector<Inlet> inlets{};
  std::vector<Probe> probes{}; // those named joint... are judged
  double outlet_area = 0.0;    // m2, as drilled; 0 where the room is meshed
  double level = 0.0;          // z where the room's pressure is that of the surroundings
};

GasSpace gas_space(const Subject &, const Choice &);

// Patches that every stage has, those of stages with a hot joint and with a piece of the room, and the outlet
// of the others.
namespace patch {
inline constexpr const char *walls = "walls", *middle = "middle", *joint = "joint", *room = "room",
                            *outlet = "outlet";
}

} // namespace purgewright::flow
