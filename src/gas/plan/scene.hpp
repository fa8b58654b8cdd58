// The zones of a design as a network, for given flows; private to the purge plan.
#pragma once

#include "purgewright/gas/network.hpp"
#include "purgewright/gas/purge.hpp"

#include <array>
#include <string_view>
#include <vector>

namespace purgewright::gas::plan {

// Of the pocket between vent and cap the vent's stream sweeps a length that nobody knows better than 0 to 1
// bore diameter; the bracket takes the ends, the best value the middle. Common practice, no source.
inline constexpr double least_swept_pocket = 0.0, usual_swept_pocket = 0.5, most_swept_pocket = 1.0;
inline constexpr double whole_pocket = 1e6; // all of it, however far the vent

struct Subject {
  const job::Job &job;
  const fixture::Layout &layout;
  const fixture::Volumes &volumes;
  const fixture::Areas &areas;
};

// Flows of one stage; a torch that gives gas stands over the slot, the slot cover is closed for the prepurge.
struct Stage {
  units::VolumeFlow bore{}, chamber{}, torch{};
  bool arc = false, covered = false;
  units::VolumeFlow hot_exchange{};             // room air that hot metal draws in through the open slot
  double bore_tanks = 0.0, chamber_tanks = 0.0; // as measured; 0 where the model decides
  double swept_pocket = usual_swept_pocket;     // bore diameters beyond the vent that its stream sweeps
  bool least_stirred = false;                   // a lance's jet turns over no more than the end before it
};

// Both circuits at their prepurge flows under the closed cover.
inline Stage prepurge_stage(const Bounds &bounds, const MeasuredMixing &measured) {
  return {.bore = bounds.bore.flow,
          .chamber = bounds.chamber.flow,
          .covered = true,
          .bore_tanks = measured.bore_tanks,
          .chamber_tanks = measured.chamber_tanks};
}

// Ends of the bracket, for both spaces: stirred throughout, and as well displaced as jets from a plug let gas
// be: 3 volume changes of a bore to 50 ppm, where its quickest flow solution takes 3.3, and 3.7 of a chamber,
// whose diffuser stirs it (tests/reference/gas/flow_solutions.yaml).
inline constexpr double stirred_tanks = 1.0, displaced_tanks = 7.0, displaced_chamber_tanks = 5.0;

// Zones of the network by name; the pocket is there when gas stands between vent and cap.
namespace zone {
enum Name : std::size_t {
  supply_line,
  bore_line,
  bore_stirred,
  bore_swept,
  chamber_line,
  plenum,
  cavity,
  pocket
};
} // namespace zone
inline constexpr std::array<std::size_t, 4> line_zones{zone::supply_line, zone::bore_line, zone::chamber_line,
                                                       zone::plenum};

struct Scene {
  Network network;
  std::vector<Cause> edge_causes, ingress_causes; // by edge and ingress: what each stands for
  Target bore_joint, chamber_joint;               // the joint's inside and outside; limits of the job
  double bore_tanks = 1.0, chamber_tanks = 1.0;
  std::string_view bore_regime, chamber_regime;
};

Scene build_scene(const Subject &, const Stage &);

// State before a part's prepurge: lines hold purge gas from the part before, spaces hold air.
std::vector<double> between_parts(const Scene &);

// Oxygen at rest at a joint's side and what dominates it.
Floor floor_at(const Scene &, const Target &);

// How fast a flow through the slot moves, and the torch's own gas at its cup.
units::Velocity torch_speed(const job::Job &);

// What of the slot, or of the window of the mask on it, is left open: beside the torch's cup, by the closed
// cover's exits, all of it.
units::Area open_slot(const Subject &, bool torch, bool covered = false);

// Standing gas between vent and cap, what the vent's stream does not sweep; 0 without one.
units::Length pocket_length(const job::Job &, double swept);

// From the slot's top face down to the cavity; of a mask, its sheet.
units::Length slot_depth(const fixture::Layout &);

// What leaves by the slot in a stage.
units::VolumeFlow slot_outflow(const Subject &, const Stage &);

// Of the purge gas in air at shop temperature.
units::Diffusivity diffusion(const job::Job &);

// Whether the vent lies in the chamber, so that the bore's gas leaves by the slot.
bool vent_in_cavity(const Subject &);

// Height of the gas under the slot's top face.
units::Length space_height(const fixture::ChamberBody &);

// Speed of a flow along the bore over sqrt(g' D) of the purge gas in air: below about 1 the gas runs as a
// layer under or over the air rather than push it along. Source: the front of a gravity current in a duct
// runs at about half of sqrt(g' D), Benjamin, J. Fluid Mech. 31, 209 (1968); Lowe, Rottman & Linden, J. Fluid
// Mech. 537, 101 (2005); that it layers below 1: common practice.
double layer_froude(const job::Job &, units::VolumeFlow flow);

// g' of the purge gas in the room's air by the air's density, signed.
double gas_gravity(const job::Job &);

} // namespace purgewright::gas::plan
