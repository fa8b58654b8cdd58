// Every key a job file may hold, once: the reader, the JSON Schema, the printed defaults, sweeps and `trace`
// all read this table. To add a key: add it to the enum and to the table in src/job/keys.cpp, give it a
// default in src/job/resolve.cpp, and regenerate the schema (DEVELOPERS.md).
//
// Units: limits are SI.
#pragma once

#include "purgewright/units/dimension.hpp"

#include <cstddef>
#include <span>
#include <string_view>

namespace purgewright::job {

enum class Key : unsigned char {
  job_name,
  job_title,
  job_revision,
  job_prepared_by,
  tube_material,
  tube_outside_diameter,
  tube_wall,
  tube_inside_diameter,
  tube_length,
  tube_outside_diameter_tolerance,
  tube_wall_tolerance,
  tube_vent_diameter,
  tube_vent_from_joint,
  tube_vent_count,
  cap_shape,
  cap_diameter,
  cap_thickness,
  cap_dome_height,
  cap_spigot_length,
  cap_spigot_clearance,
  cap_material,
  torch_cup_bore,
  torch_cup_outside_diameter,
  torch_cup_length,
  torch_stickout,
  torch_tilt,
  torch_gas_flow,
  rotation_tacks,
  rotation_runs,
  rotation_overlap,
  rotation_swing_radius,
  rotation_start_angle,
  rotation_direction,
  rotation_order,
  rotation_seam,
  weld_current,
  weld_voltage,
  weld_travel_speed,
  weld_arc_efficiency,
  weld_filler,
  weld_bead_height,
  weld_shielding_temperature,
  weld_interpass_temperature,
  gas_species,
  gas_oxygen_in_supply,
  gas_oxygen_limit_bore,
  gas_oxygen_limit_chamber,
  gas_supply_pressure,
  gas_hose_material,
  gas_hose_inside_diameter,
  gas_hose_wall,
  gas_hose_supply_length,
  gas_hose_bore_length,
  gas_hose_chamber_length,
  gas_log,
  gas_log_use,
  gas_log_response,
  gas_port_thread,
  fixture_radial_clearance,
  fixture_end_clearance,
  fixture_wall,
  fixture_slot_length,
  fixture_slot_width,
  fixture_diffuser_hole,
  fixture_material,
  fixture_pin_material,
  fixture_circuits,
  fixture_plug,
  fixture_cradle,
  fixture_chamber,
  fixture_family,
  shop_units,
  shop_sheet,
  shop_projection,
  shop_argon_price,
  shop_bottle_water_volume,
  shop_bottle_pressure,
  shop_room_volume,
  shop_room_air_changes_per_hour,
  shop_draught,
  shop_stock,
};
inline constexpr std::size_t key_count = static_cast<std::size_t>(Key::shop_stock) + 1;

enum class FieldKind { quantity, count, text, choice, text_list };

struct FieldInfo {
  Key key;
  std::string_view path; // "tube.vent.diameter"
  FieldKind kind;
  units::Dimension dimension;                // of a quantity; count or ratio otherwise
  double least, most;                        // SI, inclusive, for quantities and counts; characters of a text
  bool required;                             // wall / inside_diameter: one of the two, checked when resolved
  bool share_allowed;                        // a length that may also be a share of its parent ("10 %")
  std::span<const std::string_view> choices; // of a choice
  std::string_view meaning;                  // one sentence for the schema and the templates
};

std::span<const FieldInfo> fields(); // in file order, index = Key
const FieldInfo &field(Key);
const FieldInfo *field(std::string_view path); // null when there is no such key
bool names_metal(const FieldInfo &);           // takes a metal's usual names (standards::metal_called)

} // namespace purgewright::job
