#include "purgewright/gas/room.hpp"

#include "gas/require.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace purgewright::gas {

using detail::require;

namespace {

constexpr double table_start = 263.15, table_step = 10.0; // K
constexpr double pressure_step = 2.5e6;                   // Pa
// The table ends at 30 MPa; a bottle of 300 bar on its gauge holds an atmosphere more, where the last slope
// still tells.
constexpr double pressure_end = 30.2e6;
constexpr std::size_t table_rows = 7, table_columns = 13;
// Rows by temperature, columns by pressure.
constexpr std::array<std::array<double, table_columns>, table_rows> argon_z{{
    {1.0000, 0.9737, 0.9496, 0.9285, 0.9112, 0.8983, 0.8904, 0.8878, 0.8904, 0.8978, 0.9096, 0.9249, 0.9434},
    {1.0000, 0.9776, 0.9574, 0.9399, 0.9258, 0.9156, 0.9096, 0.9081, 0.9109, 0.9179, 0.9286, 0.9426, 0.9593},
    {1.0000, 0.9810, 0.9640, 0.9497, 0.9383, 0.9304, 0.9260, 0.9255, 0.9287, 0.9355, 0.9456, 0.9585, 0.9740},
    {1.0000, 0.9839, 0.9698, 0.9581, 0.9491, 0.9430, 0.9402, 0.9406, 0.9443, 0.9510, 0.9606, 0.9728, 0.9873},
    {1.0000, 0.9864, 0.9748, 0.9653, 0.9583, 0.9540, 0.9524, 0.9537, 0.9578, 0.9646, 0.9739, 0.9856, 0.9992},
    {1.0000, 0.9887, 0.9791, 0.9717, 0.9664, 0.9635, 0.9631, 0.9651, 0.9697, 0.9766, 0.9857, 0.9969, 1.0100},
    {1.0000, 0.9906, 0.9830, 0.9772, 0.9734, 0.9718, 0.9723, 0.9751, 0.9801, 0.9871, 0.9962, 1.0071, 1.0196},
}};
constexpr double helium_virial = 11.8e-6; // m3/mol

double argon_compressibility(double kelvin, double pascal) {
  const double row = (kelvin - table_start) / table_step, column = pascal / pressure_step;
  const auto i = std::min(static_cast<std::size_t>(row), table_rows - 2);
  const auto j = std::min(static_cast<std::size_t>(column), table_columns - 2);
  const double u = row - static_cast<double>(i), v = column - static_cast<double>(j);
  return std::lerp(std::lerp(argon_z[i][j], argon_z[i][j + 1], v),
                   std::lerp(argon_z[i + 1][j], argon_z[i + 1][j + 1], v), u);
}

void check_flows(units::VolumeFlow ventilation, units::VolumeFlow release, double fresh,
                 std::string_view function) {
  require(ventilation.value() >= 0.0, function, "ventilation must not be negative", ventilation.value());
  require(release.value() >= 0.0, function, "release must not be negative", release.value());
  require(fresh > 0.0 && fresh <= 1.0, function, "fresh air's oxygen must lie in 0 to 1", fresh);
}

} // namespace

units::VolumeFlow ventilation(units::Volume room, double air_changes_per_hour) {
  require(room.value() > 0.0, "ventilation", "room volume must be above 0", room.value());
  require(air_changes_per_hour >= 0.0, "ventilation", "air changes must not be negative",
          air_changes_per_hour);
  return room * air_changes_per_hour / units::seconds(3600.0);
}

double room_steady(units::VolumeFlow ventilation, units::VolumeFlow release, double fresh) {
  check_flows(ventilation, release, fresh, "room_steady");
  require(release < ventilation, "room_steady", "release must be under the ventilation", release.value());
  return fresh * (1.0 - units::ratio(release, ventilation));
}

double room_after(units::Volume room, units::VolumeFlow ventilation, units::VolumeFlow release,
                  units::Time time, double fresh) {
  check_flows(ventilation, release, fresh, "room_after");
  require(room.value() > 0.0, "room_after", "room volume must be above 0", room.value());
  require(time.value() >= 0.0, "room_after", "time must not be negative", time.value());
  if (ventilation.value() == 0.0)
    return fresh * std::exp(-(release * time / room).value());
  require(release < ventilation, "room_after", "release must be under the ventilation", release.value());
  return fresh *
         (1.0 + units::ratio(release, ventilation) * std::expm1(-(ventilation * time / room).value()));
}

double room_after_sudden(units::Volume room, units::Volume gas, double fresh) {
  check_flows(units::VolumeFlow{}, units::VolumeFlow{}, fresh, "room_after_sudden");
  require(room.value() > 0.0, "room_after_sudden", "room volume must be above 0", room.value());
  require(gas.value() >= 0.0 && gas <= room, "room_after_sudden", "gas must not exceed the room",
          gas.value());
  return fresh * (1.0 - units::ratio(gas, room));
}

units::VolumeFlow ventilation_for(units::VolumeFlow release, double limit, double fresh) {
  check_flows(units::VolumeFlow{}, release, fresh, "ventilation_for");
  require(limit >= 0.0 && limit < fresh, "ventilation_for", "limit must lie under the fresh air's level",
          limit);
  return release / (1.0 - limit / fresh);
}

double compressibility(Species species, units::Temperature temperature, units::Pressure absolute) {
  const double kelvin = temperature.value(), pascal = absolute.value();
  require(kelvin >= table_start && kelvin <= 323.15, "compressibility",
          "temperature must lie in 263.15 K to 323.15 K", kelvin);
  require(pascal >= 0.0 && pascal <= pressure_end, "compressibility", "pressure must lie in 0 to 30.2 MPa",
          pascal);
  if (species == Species::argon)
    return argon_compressibility(kelvin, pascal);
  require(species == Species::helium, "compressibility", "species must be argon or helium",
          static_cast<double>(species));
  return 1.0 + helium_virial * pascal / (molar_gas_constant * kelvin);
}

units::Volume bottle_gas(const Bottle &bottle) {
  require(bottle.water_volume.value() > 0.0, "bottle_gas", "water volume must be above 0",
          bottle.water_volume.value());
  require(bottle.residual.value() >= 0.0, "bottle_gas", "residual pressure must not be negative",
          bottle.residual.value());
  require(bottle.filling >= bottle.residual, "bottle_gas", "filling pressure must not be under the residual",
          bottle.filling.value());
  const auto amount = [&](units::Pressure gauge) { // p/Z, proportional to the moles held
    const units::Pressure absolute = gauge + standard_atmosphere;
    return absolute.value() / compressibility(bottle.species, bottle.temperature, absolute);
  };
  const double expansion = (amount(bottle.filling) - amount(bottle.residual)) / standard_atmosphere.value();
  return bottle.water_volume * (expansion * units::celsius(20.0).value() / bottle.temperature.value());
}

double parts_per_bottle(units::Volume bottle_gas, units::Volume gas_per_part) {
  require(bottle_gas.value() >= 0.0, "parts_per_bottle", "gas must not be negative", bottle_gas.value());
  require(gas_per_part.value() > 0.0, "parts_per_bottle", "gas per part must be above 0",
          gas_per_part.value());
  return units::ratio(bottle_gas, gas_per_part);
}

} // namespace purgewright::gas
