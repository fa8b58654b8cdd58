// A stage of a job as a case for OpenFOAM 1912, Debian's package: the same gas, openings and flows that the
// purge network works on, in three dimensions. Nothing here solves a flow.
//
// Cold stages: twoLiquidMixingFoam, two gases of constant density that mix by diffusion, air solved and the
// purge gas the rest. Hot stages: rhoReactingBuoyantFoam, two inert species; that solver takes the diffusion
// of a species to be as large as the viscosity of the mixture (argon in air: 0.7 of what it is). Laminar,
// half model, castellated: walls are steps, an opening is as many faces as come nearest to its area.
//
// Units: quantity types; oxygen is a volume fraction. Frame: the joint's.
// Range and errors: std::invalid_argument where an opening finds no face of so coarse a mesh; the layout must
// be buildable and the purge planned.
// Guarantee: same input, same bytes; no path of the machine in any file.
// Source: OpenFOAM user guide; properties of the gases as gas/properties.hpp.
#pragma once

#include "purgewright/fixture/volumes.hpp"
#include "purgewright/flow/stage.hpp"
#include "purgewright/gas/purge.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace purgewright::flow {

struct CaseFile {
  std::string path, text;
};

// How well the mesh takes an opening of the layout; both of the whole space.
struct MeshedOpening {
  std::string name;
  units::Area drilled{}, meshed{};
};

// A cell's face in the plane of symmetry, m.
struct Tile {
  double x_min = 0.0, x_max = 0.0, z_min = 0.0, z_max = 0.0;
  std::size_t cell = 0;
};

struct Case {
  Choice choice;
  units::Time duration{};
  std::size_t cells = 0, cells_of_gas = 0; // the room's with them, and without
  units::Volume gas{};                     // of the whole space, the room's not counted
  std::vector<MeshedOpening> openings{};
  std::vector<std::string> places{}; // of the probes, in their order; those named joint... are judged
  std::vector<Tile> slice{};         // all that is solved of the plane of symmetry
  std::vector<CaseFile> files{};
};

inline constexpr std::string_view cold_solver = "twoLiquidMixingFoam", hot_solver = "rhoReactingBuoyantFoam";
inline constexpr std::string_view run_script = "run.sh", cluster_script = "cluster.sh";
inline constexpr std::string_view install_command = "apt-get install --no-install-recommends openfoam";

// `walls`: temperature of chamber and end plate in a hot stage.
Case write_case(const job::Job &, const fixture::Layout &, const fixture::Volumes &, const gas::Purge &,
                const Choice &, units::Temperature walls);

} // namespace purgewright::flow
