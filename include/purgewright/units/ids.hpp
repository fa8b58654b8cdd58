// Ids of quantities that results files, `trace` and scripts rely on; each name stands here once.
#pragma once

#include <string_view>

namespace purgewright::ids {

using Id = std::string_view;

inline constexpr Id volume_chamber_gas = "volume.chamber_gas";
inline constexpr Id volume_bore_gas = "volume.bore_gas";
inline constexpr Id volume_lines_supply = "volume.lines.supply";
inline constexpr Id volume_lines_bore = "volume.lines.bore";
inline constexpr Id volume_lines_chamber = "volume.lines.chamber";
inline constexpr Id area_slot = "area.slot";
inline constexpr Id area_slot_welding = "area.slot_welding";
inline constexpr Id area_slot_covered = "area.slot_covered";
inline constexpr Id area_tube_gap = "area.tube_gap";
inline constexpr Id area_vent = "area.vent";
inline constexpr Id area_bore_inlet = "area.bore_inlet";
inline constexpr Id area_diffuser = "area.diffuser";

inline constexpr Id bore_prepurge_flow = "purge.bore.prepurge.flow";
inline constexpr Id bore_prepurge_time = "purge.bore.prepurge.time";
inline constexpr Id bore_prepurge_time_displaced = "purge.bore.prepurge.time_displaced";
inline constexpr Id bore_prepurge_time_mixed = "purge.bore.prepurge.time_mixed";
inline constexpr Id bore_prepurge_volume_changes = "purge.bore.prepurge.volume_changes";
inline constexpr Id bore_inlet_velocity = "purge.bore.prepurge.inlet_velocity";
inline constexpr Id chamber_prepurge_flow = "purge.chamber.prepurge.flow";
inline constexpr Id chamber_prepurge_time = "purge.chamber.prepurge.time";
inline constexpr Id chamber_prepurge_time_displaced = "purge.chamber.prepurge.time_displaced";
inline constexpr Id chamber_prepurge_time_mixed = "purge.chamber.prepurge.time_mixed";
inline constexpr Id chamber_prepurge_volume_changes = "purge.chamber.prepurge.volume_changes";
inline constexpr Id chamber_inlet_velocity = "purge.chamber.prepurge.inlet_velocity";

inline constexpr Id postflow_time = "purge.postflow.time";
inline constexpr Id heat_cycle = "heat.cycle";
inline constexpr Id prepurge_wait = "purge.wait";
inline constexpr Id wait_without_meter = "purge.wait_without_meter";
inline constexpr Id cycle_time = "cycle.time";

// Parts, as folders, files, drawings and `mass.PART` name them.
inline constexpr Id chamber_body = "chamber-body";
inline constexpr Id chamber_top = "chamber-top";
inline constexpr Id chamber_side = "chamber-side";
inline constexpr Id chamber_floor = "chamber-floor";
inline constexpr Id chamber_rear = "chamber-rear";
inline constexpr Id chamber_end_plate = "chamber-end-plate";
inline constexpr Id wiper_plate = "wiper-plate";
inline constexpr Id plenum_cover = "plenum-cover";
inline constexpr Id backing_pin = "backing-pin";
inline constexpr Id end_plug = "end-plug";
inline constexpr Id plug_bush = "plug-bush";
inline constexpr Id plug_knob = "plug-knob";
inline constexpr Id purge_lance = "purge-lance";
inline constexpr Id gas_port_block = "gas-port-block";
inline constexpr Id cradle_stand = "cradle-stand";
inline constexpr Id index_collar = "index-collar";
inline constexpr Id axial_stop = "axial-stop";
inline constexpr Id spindle = "spindle";
inline constexpr Id tail_foot = "tail-foot";
inline constexpr Id clamp_bar = "clamp-bar";
inline constexpr Id base_plate = "base-plate";
inline constexpr Id slot_cover = "slot-cover";
inline constexpr Id slot_mask = "slot-mask";

} // namespace purgewright::ids
