#include "use.hpp"

#include "purgewright/gas/room.hpp"

#include <algorithm>

namespace purgewright::gas::plan {
using units::Time;

Use gas_use(const Subject &s, const Purge &purge, Time under_gas) {
  const auto &job = s.job;
  Use use;
  const Time prepurge = purge.wait();
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
  use.room_oxygen =
      room_after(job.shop.room_volume, air > release ? air : units::VolumeFlow{}, release, working_day);
  return use;
}

} // namespace purgewright::gas::plan
