#include "purgewright/gas/bounds.hpp"

#include "purgewright/gas/hose.hpp"

#include <algorithm>

namespace purgewright::gas {
namespace {

using units::Length;

TubeRun hose_run(const job::Hose &hose, Length length) {
  return {.length = length, .diameter = hose.inside_diameter, .losses = loss::sharp_entrance + loss::exit};
}

TubeRun outlet_passage(const fixture::PortBlock &block) {
  return {.length = block.height - block.gallery_z,
          .diameter = 2.0 * block.passage_radius,
          .losses = loss::tee_branch + loss::exit};
}

} // namespace

Species species_of(const job::Job &job) {
  return job.gas.species == job::GasSpecies::helium ? Species::helium : Species::argon;
}

Stream stream_of(const job::Job &job) {
  const Species species = species_of(job);
  return {density(species, shop_temperature), viscosity(species, shop_temperature)};
}

// The shared supply hose is counted with each circuit's own flow; both flowing adds a little drop in it,
// which the valves, set by flowmeter, take up.
Line bore_line(const job::Job &job, const fixture::Layout &layout) {
  const auto &hose = job.gas.hose;
  const auto &plug = layout.plug;
  Line line;
  line.tubes = {hose_run(hose, hose.supply_length),
                outlet_passage(layout.block),
                hose_run(hose, hose.bore_length),
                {.length = plug.inlet.end_x - plug.rear_x(),
                 .diameter = 2.0 * plug.inlet.radius,
                 .losses = loss::sharp_entrance}};
  if (layout.lance.present) {
    line.tubes.push_back(
        {.length = layout.lance.length, .diameter = 2.0 * layout.lance.inside_radius, .losses = loss::exit});
  } else {
    line.plates = {{.diameter = 2.0 * plug.side_hole_radius,
                    .thickness = plug.nose_radius - plug.inlet.radius,
                    .count = plug.side_holes()}};
  }
  return line;
}

Line chamber_line(const job::Job &job, const fixture::Layout &layout) {
  const auto &hose = job.gas.hose;
  const auto &body = layout.body;
  Line line;
  line.tubes = {hose_run(hose, hose.supply_length), outlet_passage(layout.block),
                hose_run(hose, hose.chamber_length)};
  line.plates = {{.diameter = 2.0 * body.diffuser.hole_radius,
                  .thickness = -body.plenum.ceiling - body.cavity_radius,
                  .count = body.diffuser.holes()}};
  return line;
}

SealLeak plug_leak(const job::Job &job, const fixture::Layout &layout) {
  const auto &plug = layout.plug;
  const auto &seal = plug.seal;
  const bool ring = seal.ring != nullptr;
  const Length rubbed = plug.kind == fixture::PlugKind::cup ? plug.cup_radius : plug.spigot_radius;
  const Length across = ring ? seal.ring->section : plug.spigot_radius - seal.groove_radius;
  const Length through = ring ? seal.ring->section : seal.groove_width;
  const units::Area band = 2.0 * units::pi * rubbed * across;
  const double air = air_oxygen * 101325.0; // Pa of oxygen outside, none inside
  const double permeated = hose_material("silicone")->permeability * air * (band / through).value();
  const double open = std::max(0.0, -seal.squeeze_least); // of the section
  return {from_stp(units::cubic_metres_per_second(permeated), shop_temperature),
          diffusivity(species_of(job), Species::air, shop_temperature) * (open * band) / through};
}

Holes bore_outlet(const job::Job &job, const fixture::Layout &layout) {
  if (layout.plug.has_exhaust) {
    return {.diameter = 2.0 * layout.plug.exhaust.radius,
            .thickness = layout.plug.spigot_length - layout.plug.rear_x(),
            .count = 1};
  }
  return {.diameter = job.tube.vent.diameter, .thickness = job.tube.wall, .count = job.tube.vent.count};
}

} // namespace purgewright::gas
