#include "scene.hpp"

#include "purgewright/gas/room.hpp"

#include <algorithm>

namespace purgewright::gas {
using units::Time;

void add_use(const job::Job &job, Time under_gas, Purge &purge) {
  Use &use = purge.use;
  const Time prepurge = purge.wait(), preflow = purge.torch.preflow;
  const units::VolumeFlow before = purge.bore.prepurge + purge.chamber.prepurge;
  const units::VolumeFlow welding = purge.bore.welding + purge.chamber.welding + job.torch.gas_flow;
  use.cycle = prepurge + preflow + under_gas + handling_time;
  use.per_part = before * prepurge + welding * (preflow + under_gas);
  use.preflow = double(purge.torch.arcs) * (welding * preflow);
  use.cost = job.shop.argon_price * use.per_part.value();
  const units::Pressure residual = std::min(bottle_change, 0.5 * job.shop.bottle_pressure);
  Bottle bottle{.species = species_of(job),
                .water_volume = job.shop.bottle_water_volume,
                .filling = job.shop.bottle_pressure,
                .residual = residual};
  use.parts_per_bottle = parts_per_bottle(bottle_gas(bottle), use.per_part);
  bottle.residual = {};
  use.room_after_bottle =
      room_after_sudden(job.shop.room_volume, std::min(bottle_gas(bottle), job.shop.room_volume));
  use.start_of_day = (before + job.torch.gas_flow) * start_of_day_flush;
  const units::VolumeFlow release = use.per_part / use.cycle + use.start_of_day / working_day;
  const units::VolumeFlow air = ventilation(job.shop.room_volume, job.shop.room_air_changes_per_hour);
  // The formula with an exhaust holds while the exhaust carries more than the release; a shut room is worse.
  use.room_oxygen =
      room_after(job.shop.room_volume, air > release ? air : units::VolumeFlow{}, release, working_day);
}

} // namespace purgewright::gas
