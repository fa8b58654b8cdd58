#include "purgewright/gas/purge.hpp"

#include "purgewright/gas/jets.hpp"
#include "purgewright/gas/mixing.hpp"
#include "purgewright/gas/properties.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::gas {
namespace {

using units::Length;
using units::VolumeFlow;

constexpr double laminar_jet = 1000.0;  // McNaughton & Sinclair 1966
constexpr double laminar_tube = 2000.0; // pipe transition, lower bound
constexpr units::Temperature shop = units::celsius(20.0);

Species species_of(const job::Job &job) {
  return job.gas.species == job::GasSpecies::helium ? Species::helium : Species::argon;
}

struct Bound {
  VolumeFlow flow{};
  std::string_view words;
};

Bound smallest(std::initializer_list<Bound> bounds) {
  return *std::min_element(bounds.begin(), bounds.end(),
                           [](const Bound &a, const Bound &b) { return a.flow < b.flow; });
}

// Flow through `count` equal round passages at a Reynolds number: Q = count pi d nu Re / 4.
VolumeFlow flow_at_reynolds(double reynolds_number, Length diameter, int count,
                            units::Diffusivity viscosity) {
  return (0.25 * units::pi * double(count) * reynolds_number) * diameter * viscosity;
}

CircuitPurge plan(const Bound &bound, units::Area inlet, units::Volume volume, double limit, double supply) {
  CircuitPurge plan;
  plan.flow = bound.flow;
  plan.bound = bound.words;
  plan.inlet_velocity = bound.flow / inlet;
  plan.displaced = displacement_time(volume, bound.flow);
  plan.mixed = mixed_time(volume, bound.flow, air_oxygen, limit, supply);
  plan.time = plan.mixed;
  plan.volume_changes = (bound.flow * plan.time / volume).value();
  return plan;
}

Bound bore_bound(const job::Job &job, const fixture::Layout &layout) {
  const auto viscosity = kinematic_viscosity(species_of(job), shop);
  const bool lance = layout.plug.has_exhaust;
  const Length jet = 2.0 * (lance ? layout.lance.inside_radius : layout.plug.side_hole_radius);
  const int jets = lance ? 1 : layout.plug.side_holes();
  return smallest({{flow_at_reynolds(laminar_jet, jet, jets, viscosity), "jets into the bore stay laminar"},
                   {flow_at_reynolds(laminar_tube, job.tube.inside_diameter, 1, viscosity),
                    "flow along the bore stays laminar"},
                   {bore_flow_ceiling, "usual ceiling of a bore purge"}});
}

Bound chamber_bound(const job::Job &job, const fixture::Layout &layout, const fixture::Areas &areas) {
  const auto air = density(Species::air, shop);
  const double gravity = std::abs(reduced_gravity(density(species_of(job), shop), air, air));
  const Length radius = layout.body.diffuser.hole_radius;
  const auto speed = units::metres_per_second(stirring_froude * std::sqrt(gravity * radius.value()));
  return smallest({{areas.diffuser * speed, "inflow from the diffuser stays too slow to stir the chamber"},
                   {chamber_flow_ceiling, "usual ceiling of a chamber purge"}});
}

} // namespace

Purge plan_purge(const job::Job &job, const fixture::Layout &layout, const fixture::Volumes &volumes,
                 const fixture::Areas &areas) {
  const double supply = job.gas.oxygen_in_supply;
  return {
      plan(bore_bound(job, layout), areas.bore_inlet, volumes.bore_gas, job.gas.oxygen_limit_bore, supply),
      plan(chamber_bound(job, layout, areas), areas.diffuser, volumes.chamber_gas,
           job.gas.oxygen_limit_chamber, supply)};
}

} // namespace purgewright::gas
