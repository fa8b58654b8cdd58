#include "scene.hpp"

#include "purgewright/gas/hose.hpp"
#include "purgewright/gas/jets.hpp"
#include "purgewright/gas/mixing.hpp"
#include "purgewright/gas/openings.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::gas::plan {
namespace {

using units::Area;
using units::Length;
using units::Volume;
using units::VolumeFlow;

constexpr double most_line_tanks = 10.0; // more tanks change a line's breakthrough by less than a second
constexpr double most_space_tanks = 12.0;
constexpr double pocket_tanks = 4.0;
constexpr double plume_heat_share = 0.1; // of the arc's power that heats gas at the joint: common practice

enum Reservoir : std::size_t { supply = 0, room = 1 };

// Tanks of a round line: Taylor-Aris when laminar, Taylor's turbulent law beyond.
double line_tanks(const job::Job &job, Length diameter, Length length, VolumeFlow flow, double most) {
  const Area section = 0.25 * units::pi * units::square(diameter);
  const units::Velocity speed = flow / section;
  const double re = reynolds(speed, diameter, kinematic_viscosity(species_of(job), shop_temperature));
  const units::Diffusivity axial = re > laminar_tube_reynolds
                                       ? taylor_turbulent(speed, 0.5 * diameter, friction_factor(re))
                                       : taylor_aris_tube(diffusion(job), speed, 0.5 * diameter);
  return std::clamp(equivalent_tanks((speed * length / axial).value()), 1.0, most);
}

enum class BoreRegime { turbulent, taylor, convective, layered };

// Taylor's dispersion holds in a tube long enough for diffusion to even out its section. In a shorter one the
// middle runs ahead, and where the gas is slower than its own weight spreads it, argon runs along the bottom.
BoreRegime bore_regime(const job::Job &job, VolumeFlow flow) {
  const Length diameter = job.tube.inside_diameter;
  const units::Velocity speed = flow / (0.25 * units::pi * units::square(diameter));
  if (layer_froude(job, flow) < 1.0) {
    return BoreRegime::layered;
  }
  if (reynolds(speed, diameter, kinematic_viscosity(species_of(job), shop_temperature)) >
      laminar_tube_reynolds) {
    return BoreRegime::turbulent;
  }
  return taylor_development(diffusion(job), speed, 0.5 * diameter, job.tube.length) > 1.0
             ? BoreRegime::taylor
             : BoreRegime::convective;
}

std::string_view to_text(BoreRegime regime) {
  switch (regime) {
  case BoreRegime::turbulent:
    return "turbulent along the bore";
  case BoreRegime::taylor:
    return "laminar, evened out by diffusion (Taylor-Aris)";
  case BoreRegime::convective:
    return "laminar and short: the middle runs ahead, the wall lags; taken as stirred";
  case BoreRegime::layered:
    return "slow: argon runs along the bottom and lifts the air; outlet uppermost, else air stays on top";
  }
  return {};
}

// From a lance's nose to the cap.
Length nose_before(const Subject &s) {
  return 0.5 * s.job.tube.inside_diameter;
}

// Length of bore that the incoming jets stir.
Length stirred_length(const Subject &s, VolumeFlow flow) {
  const auto &plug = s.layout.plug;
  const bool lance = s.layout.lance.present;
  const Length jet = 2.0 * (lance ? s.layout.lance.inside_radius : plug.side_hole_radius);
  const int count = lance ? 1 : plug.side_holes();
  const units::Velocity speed = flow / s.areas.bore_inlet;
  const double re = reynolds(speed, jet, kinematic_viscosity(species_of(s.job), shop_temperature));
  const Length stirred = jet_stirred_length({s.job.tube.inside_diameter, jet, count, re});
  const Length bore = s.job.tube.length - plug.spigot_length;
  const Length nose = lance ? nose_before(s) : plug.nose_length;
  return std::clamp(nose + stirred, 0.05 * bore, 0.9 * bore);
}

// Share of one stirred tank before `swept` tanks that gives the whole the variance of `tanks` tanks: the
// larger root of s^2 + (1 - s)^2 / swept = 1 / tanks, short of the swept part vanishing.
double share_for(double tanks, double swept) {
  const double b = 1.0 / swept;
  const double root = std::sqrt(std::max(0.0, b * b - (1.0 + b) * (b - 1.0 / tanks)));
  return std::min(0.99, (b + root) / (1.0 + b));
}

struct Hoses {
  VolumeFlow supply{}, bore{}, chamber{}; // oxygen through their walls
};

Hoses hose_oxygen(const job::Job &job) {
  const auto &hose = job.gas.hose;
  const auto *material = hose_material(hose.material);
  const double permeability = material != nullptr ? material->permeability : 0.0;
  const auto through = [&](Length length) {
    const Hose wall{length, hose.inside_diameter, hose.inside_diameter + 2.0 * hose.wall};
    return from_stp(hose_oxygen_at_stp(wall, permeability), shop_temperature);
  };
  return {through(hose.supply_length), through(hose.bore_length), through(hose.chamber_length)};
}

class Builder {
 public:
  Builder(const Subject &subject, const Stage &stage) : s_(subject), stage_(stage) {}

  Scene build() {
    scene_.network.reservoirs = {s_.job.gas.oxygen_in_supply, air_oxygen};
    add_zones();
    add_bore_edges();
    add_chamber_edges();
    const Hoses hoses = hose_oxygen(s_.job);
    seep(zone::supply_line, hoses.supply, Cause::hose_walls);
    seep(zone::bore_line, hoses.bore, Cause::hose_walls);
    seep(zone::chamber_line, hoses.chamber, Cause::hose_walls);
    add_plug_leak();
    return std::move(scene_);
  }

 private:
  void edge(Place from, Place to, VolumeFlow flow, VolumeFlow exchange, Cause cause) {
    scene_.network.edges.push_back({from, to, flow, exchange});
    scene_.edge_causes.push_back(cause);
  }
  void seep(std::size_t zone, VolumeFlow oxygen, Cause cause) {
    scene_.network.ingress.push_back({zone, oxygen});
    scene_.ingress_causes.push_back(cause);
  }

  void add_plug_leak() {
    const SealLeak leak = plug_leak(s_.job, s_.layout);
    seep(zone::bore_stirred, leak.oxygen, Cause::plug_rubber);
    if (leak.exchange > VolumeFlow{}) {
      edge(in_reservoir(room), in_zone(zone::bore_stirred), {}, leak.exchange, Cause::plug_seal);
    }
  }

  void add_zones() {
    const auto &job = s_.job;
    const auto &hose = job.gas.hose;
    const Volume bore_gas = s_.volumes.bore_gas;
    const Length bore = job.tube.length - s_.layout.plug.spigot_length;
    const Length still = pocket_length(job, stage_.swept_pocket);
    const Area section = 0.25 * units::pi * units::square(job.tube.inside_diameter);
    const Volume pocket_volume = still * section;
    const Length stirred = std::min(stirred_length(s_, stage_.bore), 0.9 * (bore - still));
    const Volume moving = bore_gas - pocket_volume;
    double stirred_share = units::ratio(stirred, bore - still);
    const Length swept = bore - still - stirred;
    auto &zones = scene_.network.zones;
    const auto lines = [&](Length length, VolumeFlow flow) {
      return line_tanks(job, hose.inside_diameter, length, flow, most_line_tanks);
    };
    const BoreRegime regime = bore_regime(job, stage_.bore);
    const bool dispersed = regime == BoreRegime::turbulent || regime == BoreRegime::taylor;
    double swept_tanks =
        dispersed ? line_tanks(job, job.tube.inside_diameter, swept, stage_.bore, most_space_tanks) : 1.0;
    if (stage_.bore_tanks > 0.0) {
      swept_tanks = std::max(1.0, stage_.bore_tanks - 1.0);
      stirred_share = share_for(stage_.bore_tanks, swept_tanks);
    }
    if (s_.layout.lance.present && stage_.least_stirred) {
      stirred_share = std::min(stirred_share, units::ratio(nose_before(s_), bore - still));
    }
    zones.resize(zone::pocket);
    zones[zone::supply_line] = {
        s_.volumes.lines_supply, lines(hose.supply_length, stage_.bore + stage_.chamber), {}};
    zones[zone::bore_line] = {s_.volumes.lines_bore, lines(hose.bore_length, stage_.bore), {}};
    zones[zone::bore_stirred] = {stirred_share * moving, 1.0, {}};
    zones[zone::bore_swept] = {(1.0 - stirred_share) * moving, swept_tanks, {}};
    zones[zone::chamber_line] = {s_.volumes.lines_chamber, lines(hose.chamber_length, stage_.chamber), {}};
    add_chamber_zones();
    // Residence-time variance of stirred and swept length together, as tanks.
    const double variance =
        stirred_share * stirred_share + (1.0 - stirred_share) * (1.0 - stirred_share) / swept_tanks;
    scene_.bore_tanks = 1.0 / variance;
    scene_.bore_regime = to_text(regime);
    scene_.bore_joint = {s_.layout.lance.present ? zone::bore_stirred : zone::bore_swept, 1.0,
                         job.gas.oxygen_limit_bore};
    if (still > Length{}) {
      const VolumeFlow between = diffusion(job) * section / (still / pocket_tanks);
      zones.push_back({pocket_volume, pocket_tanks, between});
      edge(in_zone(zone::bore_swept), in_zone(zone::pocket), {}, 2.0 * between, Cause::pocket);
      scene_.bore_joint.zone = zone::pocket;
      scene_.bore_regime = "gas between vent and cap stands still and only diffuses";
    }
  }

  // Share of stirring in the cavity: its diffuser's jets, the bore's jet from a vent inside it, a draught
  // that reaches in, and the torch's own jet each may stir alone.
  double chamber_stirring() const {
    if (stage_.torch > VolumeFlow{} || stage_.hot_exchange > VolumeFlow{}) {
      return 1.0;
    }
    const auto &body = s_.layout.body;
    const Length height = space_height(body);
    const double gravity = gas_gravity(s_.job);
    double still = 1.0 - stirring({.speed = stage_.chamber / s_.areas.diffuser,
                                   .radius = body.diffuser.hole_radius,
                                   .space_height = height,
                                   .reduced_gravity = gravity,
                                   .feed = Feed::low})
                             .weight;
    if (vent_in_cavity(s_)) { // at any angle round the tube: judged by its momentum
      still *= 1.0 - stirring({.speed = stage_.bore / s_.areas.vent,
                               .radius = 0.5 * s_.job.tube.vent.diameter,
                               .space_height = height,
                               .reduced_gravity = gravity,
                               .feed = Feed::low,
                               .along_gravity_axis = false})
                         .weight;
    }
    if (!stage_.covered) {
      still *= 1.0 - flushed_share(gravity, height, s_.job.shop.draught);
    }
    return 1.0 - still;
  }

  void add_chamber_zones() {
    const auto &body = s_.layout.body;
    const auto &job = s_.job;
    const Volume plenum_gas =
        body.plenum.length() * body.plenum.width * (body.plenum.ceiling - body.bottom + s_.layout.gasket);
    const Length height = space_height(body);
    const Volume cavity_gas = s_.volumes.chamber_gas - plenum_gas;
    const double weight = chamber_stirring();
    const units::Velocity rise = stage_.chamber * height / cavity_gas;
    const double lying = equivalent_tanks((rise * height / diffusion(job)).value());
    scene_.chamber_tanks = std::clamp(blended_tanks(weight, std::max(1.0, lying)), 1.0, most_space_tanks);
    if (stage_.chamber_tanks > 0.0) {
      scene_.chamber_tanks = stage_.chamber_tanks;
    }
    constexpr double lies = 0.3, stirs = 0.7;
    scene_.chamber_regime = weight < lies    ? "argon lies and fills from below"
                            : weight > stirs ? "inflow stirs the chamber: well mixed"
                                             : "partly stirred";
    scene_.network.zones[zone::plenum] = {plenum_gas, 1.0, {}};
    scene_.network.zones[zone::cavity] = {cavity_gas, scene_.chamber_tanks, {}};
    const double joint_height = units::ratio(0.5 * job.tube.outside_diameter + body.cavity_radius, height);
    scene_.chamber_joint = {zone::cavity, std::min(1.0, joint_height), job.gas.oxygen_limit_chamber};
  }

  void add_bore_edges() {
    edge(in_reservoir(supply), in_zone(zone::supply_line), stage_.bore + stage_.chamber, {}, Cause::supply);
    edge(in_zone(zone::supply_line), in_zone(zone::bore_line), stage_.bore, {}, Cause::supply);
    edge(in_zone(zone::bore_line), in_zone(zone::bore_stirred), stage_.bore, {}, Cause::supply);
    edge(in_zone(zone::bore_stirred), in_zone(zone::bore_swept), stage_.bore, {}, Cause::supply);
    const Holes outlet = bore_outlet(s_.job, s_.layout);
    const VolumeFlow still =
        double(outlet.count) * diffusive_conductance(diffusion(s_.job),
                                                     0.25 * units::pi * units::square(outlet.diameter),
                                                     outlet.thickness, circle_shape_length(outlet.diameter));
    const VolumeFlow exchange = opposed_conductance(still, stage_.bore);
    edge(in_zone(zone::bore_swept), vent_in_cavity(s_) ? in_zone(zone::cavity) : in_reservoir(room),
         stage_.bore, exchange, Cause::vent);
  }

  void add_chamber_edges() {
    edge(in_zone(zone::supply_line), in_zone(zone::chamber_line), stage_.chamber, {}, Cause::supply);
    edge(in_zone(zone::chamber_line), in_zone(zone::plenum), stage_.chamber, {}, Cause::supply);
    edge(in_zone(zone::plenum), in_zone(zone::cavity), stage_.chamber, {}, Cause::supply);
    const VolumeFlow out = slot_outflow(s_, stage_);
    if (stage_.torch > VolumeFlow{}) {
      edge(in_reservoir(supply), in_zone(zone::cavity), stage_.torch, {}, Cause::torch_gas);
    }
    edge(in_zone(zone::cavity), in_reservoir(room), out, slot_exchange(out), Cause::slot);
    edge(in_reservoir(room), in_zone(zone::cavity), {}, wiper_exchange(out), Cause::wiper);
  }

  struct Opening {
    Length depth{}, shape{}; // shape: diffusive shape length of its two ends
  };

  Opening slot_opening() const {
    const auto &slot = s_.layout.opening();
    return {slot_depth(s_.layout),
            slot_shape_length(std::max(slot.length(), slot.width), std::min(slot.length(), slot.width))};
  }

  // The closed cover's holes, side by side.
  Opening cover_exits() const {
    const auto &cover = s_.layout.cover;
    return {cover.thickness, double(cover.exits) * circle_shape_length(2.0 * cover.exit_radius)};
  }

  // Diffusion against the outflow, the room's draught, air that hot metal draws in, and air that the arc's
  // plume draws in when the outflow does not feed it.
  VolumeFlow slot_exchange(VolumeFlow out) const {
    const auto &body = s_.layout.body;
    const Area open = open_slot(s_, stage_.torch > VolumeFlow{}, stage_.covered);
    const double gravity = gas_gravity(s_.job);
    const Opening way = stage_.covered ? cover_exits() : slot_opening();
    const Length depth = way.depth;
    const VolumeFlow still = diffusive_conductance(diffusion(s_.job), open, depth, way.shape) +
                             draught_conductance({open, space_height(body), gravity}, s_.job.shop.draught);
    VolumeFlow exchange = opposed_conductance(still, out) + stage_.hot_exchange;
    if (gravity < 0.0) { // a gas lighter than air rises out through the open top as air falls in
      exchange += horizontal_exchange(units::sqrt(open * (4.0 / units::pi)), depth, -gravity);
    }
    if (stage_.arc) {
      const units::Power heat = plume_heat_share * (s_.job.weld.current * s_.job.weld.voltage);
      const Length rise = body.z_max - 0.5 * s_.job.tube.outside_diameter;
      const double flux = thermal_buoyancy_flux(heat, density(species_of(s_.job), shop_temperature),
                                                specific_heat(species_of(s_.job)), shop_temperature);
      exchange += std::max(VolumeFlow{}, plume_flow(flux, rise) - out);
    }
    return exchange;
  }

  // What the wiper leaves open; argon standing in the chamber presses out through it, and the closed cover's
  // exits press it the harder.
  VolumeFlow wiper_exchange(VolumeFlow out) const {
    if (!(s_.areas.tube_gap > Area{})) {
      return {};
    }
    const auto &body = s_.layout.body;
    const Length length = s_.layout.wiper.thickness;
    const Length width = fixture::wiper_leak;
    const Length perimeter = 2.0 * units::pi * s_.layout.wiper.sealed_radius;
    const auto stream = stream_of(s_.job);
    double head = std::max(0.0, gas_gravity(s_.job)) * density(Species::air, shop_temperature).value() *
                  body.z_max.value(); // Pa, at the axis
    if (stage_.covered) {
      const auto &cover = s_.layout.cover;
      head += holes_drop(
                  {.diameter = 2.0 * cover.exit_radius, .thickness = cover.thickness, .count = cover.exits},
                  out, stream)
                  .value();
    }
    const VolumeFlow one = units::litres_per_minute(1.0);
    const units::Pressure drop = gap_laminar_drop(stream.viscosity, length, perimeter, width, one);
    return opposed_conductance(diffusion(s_.job) * s_.areas.tube_gap / length, one * (head / drop.value()));
  }

  const Subject &s_;
  const Stage &stage_;
  Scene scene_;
};

} // namespace

Scene build_scene(const Subject &subject, const Stage &stage) {
  return Builder(subject, stage).build();
}

std::vector<double> between_parts(const Scene &scene) {
  std::vector<double> state = uniform_state(scene.network, air_oxygen);
  const TankMap map = tank_map(scene.network);
  const double clean = scene.network.reservoirs.front();
  for (const std::size_t zone : line_zones) {
    std::fill(state.begin() + static_cast<std::ptrdiff_t>(map.first[zone]),
              state.begin() + static_cast<std::ptrdiff_t>(map.first[zone + 1]), clean);
  }
  return state;
}

} // namespace purgewright::gas::plan
