// The purge of a design, by the network of its zones: regulator and hose, block, plug, bore, vent; hose,
// block, plenum, diffuser, cavity, slot and tube gap, room. Flows by stage, time until the oxygen at the
// joint is low enough inside and outside, the floor it cannot go below and what keeps it there, pressure on
// the puddle, gas used, oxygen in the room. The slot cover is closed for the prepurge and off while welding
// and after.
//
// Units: quantity types; oxygen is a volume fraction. Errors: none; the layout must be buildable.
// Guarantee: same design, same numbers; one design takes a few milliseconds.
// Sources: the headers of gas/ that each step uses, named at the step; shares of judgement are constants
// below.
#pragma once

#include "purgewright/gas/bounds.hpp"

#include <string_view>

namespace purgewright::gas {

// What keeps oxygen in: the floor at one place and its largest part.
struct Floor {
  double oxygen = 0.0;
  std::string_view dominant;   // "supply", "hose walls", "slot", "gap round the tube", "vent", ...
  double dominant_share = 0.0; // of the floor
};

struct CircuitPlan {
  units::VolumeFlow prepurge{}, welding{}; // postflow runs at the welding flow
  std::string_view prepurge_reason, welding_reason;
  bool flow_found = true;      // a welding flow satisfies every bound
  bool reached = false;        // the limit is reached at the prepurge flow
  units::Time time{};          // best value; to within a tenth of the floor when the limit is not reached
  units::Time low{}, high{};   // bracket of `time`: both spaces displaced, both stirred; never less than measured
  double volume_changes = 0.0; // of the space, in `time`
  double after_thumb_rule = 0.0, after_thumb_rule_mixed = 0.0; // oxygen after `thumb_rule_changes`
  Floor prepurge_floor, welding_floor;
  units::Pressure line_drop{};    // regulator to space, prepurge
  double tanks = 1.0;             // of the space: 1 mixed, many displaced
  bool tanks_measured = false;    // by a log, not by the model
  std::string_view regime;        // in plain words
  double dead_volume_share = 0.0; // lines over space
};

struct Bench {
  units::Time start_of_day{}; // to flush lines and block that stood idle, before the first part
  units::Velocity draught_lying{}, draught_flushed{}; // over the slot: argon lies still below, is swept above
  double shield_ratio = 0.0;                          // slot outflow speed over the torch gas's, welding
};

struct BorePressure {
  units::Pressure welding{}, prepurge{}; // above the room, at the joint's inside
  units::Pressure limit{};               // at welding: what the puddle holds, and a plain limit
  units::Pressure trapped{};             // rise if the outlet were shut during the last run
};

struct Use {
  units::Time cycle{};
  units::Volume per_part{}; // both circuits and torch, whole cycle, prepurge as long as told
  double cost = 0.0;        // in the job's currency
  double parts_per_bottle = 0.0;
  double room_oxygen = 0.0; // at the end of a working day, well-mixed room
};

struct Purge {
  CircuitPlan bore, chamber;
  Bench bench;
  BorePressure pressure;
  Use use;

  // What the welder is told to wait before the first part's arc: the longer bracket's upper end, and
  // `least_wait`.
  units::Time wait() const;
};

inline constexpr double thumb_rule_changes = 3.0; // "two to three volume changes": common practice, no source
inline constexpr double floor_margin = 0.5;       // welding flow aims at half the limit: common practice
inline constexpr units::Pressure plain_bore_limit = units::pascals(50.0); // 5 mm of water: common practice
inline constexpr double shield_ratio_most = 0.25; // slot outflow over torch gas speed: common practice
inline constexpr units::VolumeFlow least_readable_flow = units::litres_per_minute(1.0); // common flowmeters
inline constexpr units::Time least_wait =
    units::seconds(15.0); // an oxygen meter's answer: common practice, no source
inline constexpr units::Time handling_time =
    units::seconds(90.0); // load, tack position, unload: common practice
inline constexpr units::Pressure bottle_change =
    units::pascals(6.895e6); // AWS G2.4: moisture rises below 6895 kPa
inline constexpr units::Time working_day = units::seconds(8.0 * 3600.0);

// Mixing of the circuits' spaces as a meter has shown it, in equivalent tanks, and the prepurge that it took;
// 0 where the model decides.
struct MeasuredMixing {
  double bore_tanks = 0.0, chamber_tanks = 0.0;
  units::Time bore_wait{}, chamber_wait{};
};

// `under_gas`: first arc to the end of the last hold, as the plan of heat has it; gas runs all that time.
Purge plan_purge(const job::Job &, const fixture::Layout &, const fixture::Volumes &, const fixture::Areas &,
                 const Bounds &, units::Time under_gas, const MeasuredMixing & = {});

} // namespace purgewright::gas
