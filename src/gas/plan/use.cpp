#include "use.hpp"

#include "purgewright/gas/cooling_estimate.hpp"
#include "purgewright/gas/room.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::gas::plan {
namespace {

using units::Length;
using units::Time;

constexpr double full_turn = 2.0 * units::pi;
constexpr Length tack_length = units::millimetres(3.0);       // common practice
constexpr units::Pressure bottle_change = units::pascals(6.895e6); // AWS G2.4: change at 6895 kPa, moisture rises below

Time arc_time(const job::Job &job) {
  const Length radius = 0.5 * job.tube.outside_diameter;
  const Length runs = radius * (full_turn + double(job.rotation.runs) * job.rotation.overlap.value());
  return (runs + double(job.rotation.tacks) * tack_length) / job.weld.travel_speed;
}

Time hold_estimate(const job::Job &job) {
  const auto &metal = *job.tube.material;
  const WallMetal wall{metal.conductivity, metal.density, metal.specific_heat};
  const double energy =
      line_energy(job.weld.voltage, job.weld.current, job.weld.arc_efficiency, job.weld.travel_speed);
  return thin_plate_cooling_time(energy, job.tube.wall, wall, shop_temperature, metal.melting_start,
                                 metal.shielding_temperature.value_or(units::celsius(427.0)));
}

} // namespace

Use gas_use(const Subject &s, const Purge &purge) {
  const auto &job = s.job;
  Use use;
  use.hold = hold_estimate(job);
  use.welding = arc_time(job);
  const Time prepurge = std::max(purge.bore.time, purge.chamber.time);
  const Time under_gas = use.welding + double(job.rotation.runs) * use.hold;
  use.cycle = prepurge + under_gas + handling_time;
  use.per_part = (purge.bore.prepurge + purge.chamber.prepurge) * prepurge +
                 (purge.bore.welding + purge.chamber.welding + job.torch.gas_flow) * under_gas;
  use.cost = job.shop.argon_price * use.per_part.value();
  const units::Pressure residual = std::min(bottle_change, 0.5 * job.shop.bottle_pressure);
  use.parts_per_bottle = parts_per_bottle(bottle_gas({.species = species_of(job),
                                                      .water_volume = job.shop.bottle_water_volume,
                                                      .filling = job.shop.bottle_pressure,
                                                      .residual = residual}),
                                          use.per_part);
  const units::VolumeFlow release = use.per_part / use.cycle;
  const units::VolumeFlow air = ventilation(job.shop.room_volume, job.shop.room_air_changes_per_hour);
  // The formula with an exhaust holds while the exhaust carries more than the release; a shut room is worse.
  use.room_oxygen = room_after(job.shop.room_volume, air > release ? air : units::VolumeFlow{}, release, working_day);
  return use;
}

} // namespace purgewright::gas::plan
