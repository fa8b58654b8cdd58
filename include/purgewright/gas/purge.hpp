// Purge plan of a design: flow of each circuit before welding and the time until the oxygen limit is reached.
//
// The time lies between two bounds: a perfectly displaced space (one volume change) and a perfectly mixed one
// (the logarithm); the mixed bound is what the welder is told. The flow is limited by the speed at which the
// gas enters: laminar jets and a laminar tube in the bore, in the chamber a fountain too weak to stir the
// cavity.
//
// Units: quantity types. Errors: none; the layout must be buildable.
// Source: mixing laws and jet limits in gas/mixing.hpp and gas/jets.hpp; ceilings: common practice, no
// source.
#pragma once

#include "purgewright/fixture/volumes.hpp"

#include <string_view>

namespace purgewright::gas {

struct CircuitPurge {
  units::VolumeFlow flow{};
  std::string_view bound; // what sets the flow, in plain words
  units::Velocity inlet_velocity{};
  units::Time displaced{}, mixed{}; // bounds of the time to the oxygen limit
  units::Time time{};               // what the welder is told
  double volume_changes = 0.0;
};

struct Purge {
  CircuitPurge bore, chamber;
};

// Ceilings of the flow beyond which gas is wasted: backing and chamber flows of hand welding, common
// practice.
inline constexpr units::VolumeFlow bore_flow_ceiling = units::litres_per_minute(10.0);
inline constexpr units::VolumeFlow chamber_flow_ceiling = units::litres_per_minute(15.0);

Purge plan_purge(const job::Job &, const fixture::Layout &, const fixture::Volumes &, const fixture::Areas &);

} // namespace purgewright::gas
