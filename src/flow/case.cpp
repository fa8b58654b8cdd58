#include "purgewright/flow/case.hpp"

#include "foam_case.hpp"
#include "gas_space.hpp"
#include "scripts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace purgewright::flow {
namespace {

constexpr units::Time open_duration =
    units::seconds(5.0); // an open chamber rests within 3 s in what was solved
// Beyond the network's bracket, and how long a prepurge is followed at most: common practice, no source.
constexpr double past_bracket = 1.2;
constexpr units::Time longest_duration = units::seconds(120.0);

units::Time duration_of(const Subject &s, const Choice &choice) {
  if (choice.duration) {
    return *choice.duration;
  }
  const auto &bore = s.purge.bore;
  switch (choice.stage) {
  case Stage::bore:
    return std::min(past_bracket * bore.high_vent_above, longest_duration);
  case Stage::bore_outlet_below:
    return std::min(past_bracket * bore.high, longest_duration);
  case Stage::prepurge:
    return std::min(past_bracket * s.purge.chamber.high, longest_duration);
  default:
    return open_duration;
  }
}

std::vector<double> first_air(const Mesh &mesh, Stage stage) {
  std::vector<double> air(mesh.cells());
  for (std::size_t cell = 0; cell < air.size(); ++cell) {
    air[cell] = is_prepurge(stage) || mesh.matter(cell) == matter::room ? 1.0 : 0.0;
  }
  return air;
}

Boundary inlet_boundary(const Subject &s, const Inlet &inlet) {
  Boundary boundary{.patch = inlet.patch, .bounds = Bounds::inlet, .flow = 0.5 * inlet.flow};
  if (inlet.brings == Brings::air_of_stirred_bore) {
    boundary.air = 1.0;
    boundary.air_halves_in = std::numbers::ln2 * s.volumes.bore_gas.value() / inlet.flow;
  }
  return boundary;
}

std::vector<Boundary> boundaries(const Subject &s, const GasSpace &space, Stage stage,
                                 units::Temperature walls) {
  std::vector<Boundary> all;
  for (const Patch &patch : space.mesh.patches()) {
    const auto inlet = std::ranges::find(space.inlets, patch.name, &Inlet::patch);
    if (inlet != space.inlets.end()) {
      all.push_back(inlet_boundary(s, *inlet));
    } else if (patch.name == patch::middle) {
      all.push_back({.patch = patch.name, .bounds = Bounds::cut});
    } else if (patch.name == patch::room || patch.name == patch::outlet) {
      all.push_back({.patch = patch.name, .bounds = Bounds::open});
    } else {
      const bool joint = patch.name == patch::joint;
      const units::Temperature metal = joint ? s.purge.torch.metal : walls;
      all.push_back({.patch = patch.name, .temperature = is_hot(stage) ? metal.value() : 0.0});
    }
  }
  return all;
}

std::vector<MeshedOpening> meshed(const GasSpace &space) {
  std::vector<MeshedOpening> openings;
  for (const Inlet &inlet : space.inlets) {
    openings.push_back({inlet.patch, units::square_metres(inlet.area),
                        units::square_metres(2.0 * space.mesh.area(*space.mesh.patch_named(inlet.patch)))});
  }
  if (const auto outlet = space.mesh.patch_named(patch::outlet)) {
    openings.push_back({patch::outlet, units::square_metres(space.outlet_area),
                        units::square_metres(2.0 * space.mesh.area(*outlet))});
  }
  return openings;
}

std::vector<Tile> slice_of(const Mesh &mesh) {
  const auto middle = mesh.patch_named(patch::middle);
  std::vector<Tile> tiles;
  for (std::size_t i = 0; i < mesh.boundary().size(); ++i) {
    const BoundaryFace &face = mesh.boundary()[i];
    if (middle && face.patch == *middle) {
      const auto [least, most] = mesh.ends(i);
      tiles.push_back({least.x, most.x, least.z, most.z, face.cell});
    }
  }
  return tiles;
}

std::string about(const Subject &s, const Case &written) {
  std::string text = fmt::format(
      "Stage {} of {}, for OpenFOAM 1912 (Debian: {}).\n"
      "Run it: sh run.sh [PROCESSES]. On a cluster: sbatch cluster.sh.\n\n"
      "{} cells, {} of them in the fixture; {:.1f} cm3 of gas in the whole of it, of which half is solved.\n"
      "{:.4g} s are followed.\n\n"
      "Openings, as drilled and as meshed (mm2, whole):\n",
      to_text(written.choice.stage), s.job.identity.name, install_command, written.cells,
      written.cells_of_gas, 1e6 * written.gas.value(), written.duration.value());
  for (const MeshedOpening &opening : written.openings) {
    text += fmt::format("  {:<10} {:8.2f} {:8.2f}\n", opening.name, 1e6 * opening.drilled.value(),
                        1e6 * opening.meshed.value());
  }
  text += R"(
Laminar. Walls are steps. Plenum, diffuser holes, the wiper's leak and the torch's tilt are not in it, nor is what
hoses and seals let in. An inlet brings its flow whatever its meshed area, but its jet is as fast as that makes
it. An outlet is as wide as lets the gas out no faster than it comes in.

What comes out is computed, not measured, and on one mesh: solve it on a finer one before it is believed. It is no
leave to breathe the room's air or to weld without an oxygen meter at the outlet.
)";
  return text;
}

} // namespace

Case write_case(const job::Job &job, const fixture::Layout &layout, const fixture::Volumes &volumes,
                const gas::Purge &purge, const Choice &choice, units::Temperature walls) {
  const Subject s{job, layout, volumes, purge};
  const GasSpace space = gas_space(s, choice);
  const Mesh &mesh = space.mesh;
  Case written;
  written.choice = choice;
  written.duration = duration_of(s, choice);
  written.cells = mesh.cells();
  for (std::size_t cell = 0; cell < mesh.cells(); ++cell) {
    if (mesh.matter(cell) != matter::room) {
      ++written.cells_of_gas;
      written.gas += units::cubic_metres(2.0 * mesh.volume(cell));
    }
  }
  written.openings = meshed(space);
  for (const Probe &probe : space.probes) {
    written.places.push_back(probe.name);
  }
  written.slice = slice_of(mesh);
  written.files = foam_files({.mesh = &mesh,
                              .air = first_air(mesh, choice.stage),
                              .boundaries = boundaries(s, space, choice.stage, walls),
                              .probes = space.probes,
                              .gas = gas::species_of(job),
                              .hot = is_hot(choice.stage),
                              .duration = written.duration.value(),
                              .level = space.level});
  written.files.push_back({"about.txt", about(s, written)});
  written.files.push_back(
      {std::string(run_script), run_script_text(is_hot(choice.stage) ? hot_solver : cold_solver)});
  written.files.push_back({std::string(cluster_script), cluster_script_text(job.identity.name, written)});
  return written;
}

} // namespace purgewright::flow
