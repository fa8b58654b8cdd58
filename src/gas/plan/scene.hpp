// The zones of a design as a network, for given flows; private to the purge plan.
#pragma once

#include "purgewright/gas/network.hpp"
#include "purgewright/gas/purge.hpp"

#include <string_view>
#include <vector>

namespace purgewright::gas::plan {

struct Subject {
  const job::Job &job;
  const fixture::Layout &layout;
  const fixture::Volumes &volumes;
  const fixture::Areas &areas;
};

// Flows of one stage; the torch stands over the slot while it welds, the slot cover is closed for the
// prepurge.
struct Stage {
  units::VolumeFlow bore{}, chamber{}, torch{};
  bool arc = false, covered = false;
  double bore_tanks = 0.0, chamber_tanks = 0.0; // as measured; 0 where the model decides
};

// Both circuits at their prepurge flows under the closed cover.
inline Stage prepurge_stage(const Bounds &bounds, const MeasuredMixing &measured) {
  return {.bore = bounds.bore.flow,
          .chamber = bounds.chamber.flow,
          .covered = true,
          .bore_tanks = measured.bore_tanks,
          .chamber_tanks = measured.chamber_tanks};
}

// Ends of the bracket, for both spaces: stirred throughout, and as well displaced as gas can be; more tanks
// hardly sharpen the front.
inline constexpr double stirred_tanks = 1.0, displaced_tanks = 12.0;

struct Scene {
  Network network;
  std::vector<std::string_view> edge_words, ingress_words; // by edge and ingress: what each stands for
  std::size_t outlet_zone = 0;                             // its last tank is what leaves the bore
  Target bore_joint, chamber_joint; // the joint's inside and outside; limits of the job
  std::vector<std::size_t> line_zones, space_zones;
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

// What of the slot is left open: beside the torch's cup, by the closed cover's exits, all of it.
units::Area open_slot(const Subject &, bool arc, bool covered = false);

// Whether the vent lies in the chamber, so that the bore's gas leaves by the slot.
bool vent_in_cavity(const Subject &);

// Height of the gas under the slot's top face.
units::Length space_height(const fixture::ChamberBody &);

// g' of the purge gas in the room's air by the air's density, signed.
double gas_gravity(const job::Job &);

} // namespace purgewright::gas::plan
