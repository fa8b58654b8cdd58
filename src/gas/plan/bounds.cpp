#include "purgewright/gas/bounds.hpp"

#include "purgewright/gas/mixing.hpp"

#include <algorithm>

namespace purgewright::gas {
namespace {

using units::Length;
using units::VolumeFlow;

struct Limit {
  VolumeFlow flow{};
  std::string_view reason;
};

Limit smallest(std::initializer_list<Limit> limits) {
  return *std::min_element(limits.begin(), limits.end(),
                           [](const Limit &a, const Limit &b) { return a.flow < b.flow; });
}

// Flow of `count` equal round passages at a Reynolds number: Q = count pi d nu Re / 4.
VolumeFlow flow_at_reynolds(double reynolds_number, Length diameter, int count,
                            units::Diffusivity viscosity) {
  return (0.25 * units::pi * double(count) * reynolds_number) * diameter * viscosity;
}

Limit supply_limit(const job::Job &job, const Line &line) {
  // Half of the supply's pressure is left to the fine-adjust valve, so that it still regulates: common
  // practice.
  constexpr double line_share = 0.5;
  return {line_flow(line, line_share * job.gas.supply_pressure, stream_of(job)),
          "what supply and hoses deliver"};
}

// A space to sweep, and the most its line and practice let in.
struct Wide {
  Limit most;
  units::Volume space;
  double oxygen_limit, supply;
};

// Calm jets push the air out ahead of them; a bore so wide that they would take an age is stirred instead.
Limit waited_out(const Limit &calm, const Wide &wide) {
  constexpr auto patience = units::seconds(300.0); // common practice, no source
  const units::Time calm_time = mixed_time(wide.space, calm.flow, air_oxygen, wide.oxygen_limit, wide.supply);
  if (calm_time <= patience || wide.most.flow <= calm.flow) {
    return calm;
  }
  const VolumeFlow stirring = units::ratio(calm_time, patience) * calm.flow;
  return stirring < wide.most.flow
             ? Limit{stirring, "jets stir the bore: calm ones would take over five minutes"}
             : wide.most;
}

CircuitBounds bounds_of(const Limit &limit, units::Area inlet, units::Volume space, units::Volume lines,
                        double oxygen_limit, double supply) {
  CircuitBounds bounds{.flow = limit.flow, .reason = limit.reason, .inlet_velocity = limit.flow / inlet};
  const units::Time through_lines = lines / limit.flow;
  bounds.displaced = through_lines + displacement_time(space, limit.flow);
  bounds.mixed = through_lines + mixed_time(space, limit.flow, air_oxygen, oxygen_limit, supply);
  return bounds;
}

} // namespace

Bounds bound_prepurge(const job::Job &job, const fixture::Layout &layout, const fixture::Volumes &volumes,
                      const fixture::Areas &areas) {
  const auto viscosity = kinematic_viscosity(species_of(job), shop_temperature);
  const bool lance = layout.lance.present;
  Line bore_way = bore_line(job, layout);
  bore_way.plates.push_back(bore_outlet(job, layout)); // what goes in must also come out
  const Length jet = 2.0 * (lance ? layout.lance.inside_radius : layout.plug.side_hole_radius);
  const Limit ceiling{bore_flow_ceiling, "usual ceiling of a bore purge"};
  const Limit calm =
      smallest({{flow_at_reynolds(laminar_jet_reynolds, jet, lance ? 1 : layout.plug.side_holes(), viscosity),
                 "jets into the bore stay laminar"},
                {flow_at_reynolds(laminar_tube_reynolds, job.tube.inside_diameter, 1, viscosity),
                 "flow along the bore stays laminar"},
                supply_limit(job, bore_way),
                ceiling});
  const double supply = job.gas.oxygen_in_supply;
  const Limit wide{wide_bore_ceiling, "usual ceiling of a wide bore's purge"};
  const Limit bore = waited_out(calm, {smallest({supply_limit(job, bore_way), wide}), volumes.bore_gas,
                                       job.gas.oxygen_limit_bore, supply});
  const auto &diffuser = layout.body.diffuser;
  const Limit chamber = smallest(
      {{flow_at_reynolds(laminar_jet_reynolds, 2.0 * diffuser.hole_radius, diffuser.holes(), viscosity),
        "jets from the diffuser stay laminar"},
       supply_limit(job, chamber_line(job, layout)),
       {chamber_flow_ceiling, "usual ceiling of a chamber purge"}});
  return {bounds_of(bore, areas.bore_inlet, volumes.bore_gas, volumes.lines_bore, job.gas.oxygen_limit_bore,
                    supply),
          bounds_of(chamber, areas.diffuser, volumes.chamber_gas, volumes.lines_chamber,
                    job.gas.oxygen_limit_chamber, supply)};
}

} // namespace purgewright::gas
