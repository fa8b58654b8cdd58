// What bounds a prepurge: the highest useful flow of each circuit and the two times between which the truth
// lies. Closed forms alone, so sweeps over thousands of designs use it; gas/purge.hpp builds the full model
// on it.
//
// The flow is the highest at which the jets into the space stay laminar and supply and hoses still deliver
// it, under a ceiling of practice. The time lies between a displaced space (lines and space delivered once)
// and a perfectly mixed one (the logarithm, after the lines).
//
// Units: quantity types. Errors: none; the layout must be buildable.
// Sources: gas/mixing.hpp, gas/jets.hpp, gas/pressure.hpp; ceilings: common practice, no source.
#pragma once

#include "purgewright/fixture/volumes.hpp"
#include "purgewright/gas/pressure.hpp"
#include "purgewright/gas/properties.hpp"

#include <string_view>

namespace purgewright::gas {

struct CircuitBounds {
  units::VolumeFlow flow{}; // prepurge
  std::string_view reason;  // what sets it, in plain words
  units::Velocity inlet_velocity{};
  units::Time displaced{}, mixed{};
};

struct Bounds {
  CircuitBounds bore, chamber;
};

// Ceilings of the prepurge flow: usual settings of hand welding; more wastes gas in spaces this small.
inline constexpr units::VolumeFlow bore_flow_ceiling = units::litres_per_minute(10.0);
inline constexpr units::VolumeFlow wide_bore_ceiling = units::litres_per_minute(20.0); // common practice
inline constexpr units::VolumeFlow chamber_flow_ceiling = units::litres_per_minute(10.0);
inline constexpr double laminar_jet_reynolds = 1000.0;  // McNaughton & Sinclair 1966
inline constexpr double laminar_tube_reynolds = 2000.0; // pipe transition, lower bound
inline constexpr units::Temperature shop_temperature = units::celsius(20.0);

Bounds bound_prepurge(const job::Job &, const fixture::Layout &, const fixture::Volumes &,
                      const fixture::Areas &);

// The purge gas of the job and its stream at shop temperature.
Species species_of(const job::Job &);
Stream stream_of(const job::Job &);

// Lines from the regulator to the space each circuit fills; hydraulics of hoses, passages and holes.
Line bore_line(const job::Job &, const fixture::Layout &);
Line chamber_line(const job::Job &, const fixture::Layout &);

// What the plug's seal lets in: oxygen through its rubber, and air's diffusion through the gap that a seal
// without squeeze leaves open. Rubber as a flat wall, Crank, The Mathematics of Diffusion, 2nd ed., 1.2.
struct SealLeak {
  units::VolumeFlow oxygen{}; // at shop temperature
  units::VolumeFlow exchange{};
};
SealLeak plug_leak(const job::Job &, const fixture::Layout &);

// Holes by which the bore's gas leaves: vents in the tube, or the plug's exhaust passage.
Holes bore_outlet(const job::Job &, const fixture::Layout &);

} // namespace purgewright::gas
