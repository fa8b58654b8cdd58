#include "purgewright/heat/series.hpp"

#include "heat/require.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::heat {

namespace {

using units::Temperature;
using units::Time;

// Free faces of chamber and end plate: sides, ends and top; the bottom stands on the base plate.
double chamber_surface(const fixture::ChamberBody &body, const fixture::EndPlate &plate) {
  const units::Length length = body.length() + plate.thickness;
  return (2.0 * length * body.height() + 2.0 * body.width * body.height() + length * body.width).value();
}

double base_plate_surface(const fixture::BasePlate &plate, const fixture::ChamberBody &body) {
  const units::Area faces = 2.0 * plate.length() * plate.width() - body.length() * body.width;
  return (faces + 2.0 * (plate.length() + plate.width()) * plate.thickness).value();
}

// From the chamber's foot to the base plate's farthest end.
units::Length base_plate_reach(const fixture::BasePlate &plate, const fixture::ChamberBody &body) {
  return std::max({body.x_min - plate.x_min, plate.x_max - body.x_max, plate.y_max - 0.5 * body.width,
                   -0.5 * body.width - plate.y_min});
}

} // namespace

double fin_efficiency(double coefficient, double conductivity, double side_over_section, double length) {
  const double m_length = std::sqrt(coefficient / conductivity * side_over_section) * length;
  return m_length < 1e-6 ? 1.0 : std::tanh(m_length) / m_length;
}

Temperature settled_temperature(Temperature room, double heat, double capacity, double loss, Time period) {
  constexpr std::string_view here = "settled_temperature";
  detail::require(heat > 0.0, here, "heat must be above 0", heat);
  detail::require(capacity > 0.0, here, "capacity must be above 0", capacity);
  detail::require(loss > 0.0, here, "loss must be above 0", loss);
  detail::require(period.value() > 0.0, here, "period must be above 0", period.value());
  const double lost_share = -std::expm1(-period.value() * loss / capacity);
  return units::kelvins(room.value() + heat / capacity / lost_share);
}

Series settle(const job::Job &job, const fixture::Layout &layout, const fixture::Volumes &volumes,
              const HeatPlan &plan, const ContactWishes &wishes, Time period) {
  const standards::Metal &metal = *job.fixture.material;
  const double by_volume = metal.density.value() * metal.specific_heat.room(), air = wishes.body_loss;
  const double chamber = by_volume * (volumes.chamber_walls + volumes.end_plate).value();
  const double chamber_loss = air * chamber_surface(layout.body, layout.end_plate);
  const double share =
      fin_efficiency(air, metal.conductivity.room(), 2.0 / layout.base.thickness.value(), // wide and thin
                     base_plate_reach(layout.base, layout.body).value());
  Series series;
  series.period = period;
  series.heat = plan.energy.in / job.weld.arc_efficiency - plan.energy.stored;
  series.capacity = chamber + by_volume * volumes.base_plate.value();
  series.loss = chamber_loss + air * share * base_plate_surface(layout.base, layout.body);
  series.settled = settled_temperature(plan.ambient, series.heat, series.capacity, series.loss, period);
  series.settled_on_plastic = settled_temperature(plan.ambient, series.heat, chamber, chamber_loss, period);
  return series;
}

std::optional<Time> period_for(const Series &series, Temperature room, Temperature limit) {
  const double share = series.heat / series.capacity / (limit - room).value();
  if (!(share > 0.0 && share < 1.0)) {
    return std::nullopt;
  }
  return units::seconds(-series.capacity / series.loss * std::log1p(-share));
}

void add_warm_plan(const job::Job &job, const fixture::Layout &layout, Options options, Series &series) {
  const Temperature shielding = options.shielding_temperature.value_or(job.weld.shielding_temperature);
  const Temperature coldest_wanted = std::min(shielding, job.weld.interpass_temperature.value_or(shielding));
  if (series.settled <= coldest_wanted - least_cooling) {
    options.history = false;
    options.fixture = series.settled;
    series.warm = plan_heat(job, layout, options);
  }
}

} // namespace purgewright::heat
