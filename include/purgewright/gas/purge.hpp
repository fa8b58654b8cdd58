// The purge of a design, by the network of its zones: regulator and hose, block, plug, bore, vent; hose,
// block, plenum, diffuser, cavity, slot and tube gap, room. Flows by stage, time until the oxygen at the
// joint is low enough inside and outside, the floor it cannot go below and what keeps it there, what comes in
// while the torch is away and how long it takes to clear, pressure on the puddle, gas used, oxygen in the
// room. The slot cover is closed for the prepurge and off while welding and after.
//
// Units: quantity types; oxygen is a volume fraction. Errors: none; the layout must be buildable.
// Guarantee: same design, same numbers; one design takes a few milliseconds.
// Sources: the headers of gas/ that each step uses, named at the step; shares of judgement are constants
// below.
#pragma once

#include "purgewright/gas/bounds.hpp"

#include <string_view>

namespace purgewright::gas {

// By what way oxygen reaches the joint.
enum class Cause { supply, torch_gas, hose_walls, plug_rubber, plug_seal, vent, slot, wiper, pocket };
std::string_view to_text(Cause); // "hose walls"

// What keeps oxygen in: the floor at one place and its largest part.
struct Floor {
  double oxygen = 0.0;
  Cause dominant = Cause::supply;
  double dominant_share = 0.0; // of the floor
};

struct CircuitPlan {
  units::VolumeFlow prepurge{}, welding{}; // postflow runs at the welding flow
  std::string_view prepurge_reason, welding_reason;
  bool flow_found = true; // a welding flow satisfies every bound
  bool reached = false;   // the limit is reached at the prepurge flow
  units::Time time{};     // best value; to within a tenth of the floor when the limit is not reached
  units::Time low{},
      high{}; // bracket of `time`: both spaces displaced, both stirred; never less than measured
  double volume_changes = 0.0;                                 // of the space, in `time`
  double after_thumb_rule = 0.0, after_thumb_rule_mixed = 0.0; // oxygen after `thumb_rule_changes`
  Floor prepurge_floor, welding_floor;
  double highest_floor = 0.0;     // of the prepurge: with the spaces as the bracket's ends have them
  units::Pressure line_drop{};    // regulator to space, prepurge
  double tanks = 1.0;             // of the space: 1 mixed, many displaced
  bool tanks_measured = false;    // by a log, not by the model
  std::string_view regime;        // in plain words
  units::Time high_vent_above{};  // `high` when the outlet stands uppermost; as `high` where no layer forms
  double layer_froude = 0.0;      // speed along the bore over sqrt(g' D); layers below 1
  double dead_volume_share = 0.0; // lines over space
};

struct Bench {
  units::Time start_of_day{}; // to flush lines and block that stood idle, before the first part
  units::Velocity draught_lying{}, draught_flushed{}; // over the slot: argon lies still below, is swept above
  units::Velocity draught_warm{};                     // draught_lying once the fixture is warm
  double shield_ratio = 0.0;                          // slot outflow speed over the torch gas's, welding
  double torch_reynolds = 0.0;                        // of the torch's gas in its cup
  units::Length torch_core{}; // radius of its gas at the joint, into which less air has mixed than the limit
};

struct BorePressure {
  units::Pressure welding{}, prepurge{}; // above the room, at the joint's inside
  units::Pressure limit{};               // at welding: what the puddle holds, and a plain limit
  units::Pressure trapped{};             // rise if the outlet were shut during the last run
};

// A floor by the model, and the bracket it lies in.
struct OxygenRange {
  double best = 0.0, low = 0.0, high = 0.0;
};

// The chamber while its cover is open and the torch is not over the slot, at the welding flows.
//   cold: the argon lies and what leaves by the slot keeps the air off (low: a still channel, nothing from
//   the
//         rear), or all that comes in is stirred through the chamber (high)
//   hot:  a plume rises, air comes down beside it (high: argon as hot as the metal under the slot, Epstein
//         1988; low: a quarter of the way to it from the plume of the tube's top, Morton, Taylor & Turner
//         1956, in logarithms; best: their mean); half of a net outflow leaves exchange_left of it
// With the torch back over the joint its gas and the circuits' clear the chamber, stirred.
struct Torch {
  OxygenRange cover_open;     // before the first arc: cold joint
  OxygenRange away;           // lifted when a hold ends: joint at the shielding temperature
  units::Temperature metal{}; // of the joint then
  units::VolumeFlow drawn_low{}, drawn{}, drawn_high{}; // room air that comes in then
  double back_floor = 0.0;                              // at rest with the torch back, before the arc
  units::Time preflow_best{}, preflow{}; // from the torch over the joint until the joint is under the limit;
                                         // `preflow` from the high bracket and half of the torch's gas
  int arcs = 0;                          // of one part: tacks and runs
};

struct Use {
  units::Time cycle{};
  units::Volume per_part{}; // both circuits and torch, whole cycle, prepurge as long as told
  units::Volume preflow{};  // of that, what the torch's preflow before every arc takes
  double cost = 0.0;        // in the job's currency
  double parts_per_bottle = 0.0;
  units::Volume start_of_day{};   // to flush the lines after a night
  double room_oxygen = 0.0;       // at the end of a working day, well-mixed room
  double room_after_bottle = 0.0; // a full bottle let out at once into the closed room
};

struct Purge {
  CircuitPlan bore, chamber;
  Bench bench;
  BorePressure pressure;
  Torch torch;
  Use use;

  // A wide bore whose air nobody would wait out lets it go in good time by an outlet that stands uppermost,
  // and the wait told holds for that alone.
  bool needs_outlet_above() const;
  // What the welder is told to wait before the first part's arc: the longer bracket's upper end, and
  // `least_wait`.
  units::Time wait() const;
};

inline constexpr double thumb_rule_changes = 3.0; // "two to three volume changes": common practice, no source
inline constexpr double floor_margin = 0.5;       // welding flow aims at half the limit: common practice
inline constexpr units::Pressure plain_bore_limit = units::pascals(50.0); // 5 mm of water: common practice
inline constexpr double shield_ratio_most = 0.25; // slot outflow over torch gas speed: common practice
// The torch's gas in its cup: laminar up to laminar_tube_reynolds, surely turbulent beyond this, gas lens or
// not. Source: pipe flow is turbulent from about 4000 on, textbooks of fluid mechanics, from memory.
inline constexpr double turbulent_tube_reynolds = 4000.0;
inline constexpr units::VolumeFlow least_readable_flow = units::litres_per_minute(1.0); // common flowmeters
inline constexpr units::Time least_wait =
    units::seconds(15.0); // an oxygen meter's answer: common practice, no source
inline constexpr units::Time handling_time =
    units::seconds(90.0); // load, tack position, unload: common practice
inline constexpr units::Pressure bottle_change =
    units::pascals(6.895e6); // AWS G2.4: moisture rises below 6895 kPa
inline constexpr units::Time working_day = units::seconds(8.0 * 3600.0);

inline constexpr units::Time start_of_day_flush =
    units::seconds(300.0); // after a night, moisture clings to hose walls: common practice, no source
// Of the torch's gas, the least that goes down into the chamber: the rest turns back in the slot. Common
// practice, no source.
inline constexpr double least_torch_share = 0.5;
inline constexpr units::Time least_preflow =
    units::seconds(2.0); // clears the air out of cup and hose: common practice, no source
inline constexpr units::Time longest_preflow =
    units::seconds(30.0); // a welder waits no longer with the torch in hand: common practice, no source
inline constexpr units::Time longest_wait =
    units::seconds(900.0); // a prepurge that is still waited out; beyond it leaks and moisture of lines and
                           // seals, which no model here holds, decide: common practice, no source

// Mixing of the circuits' spaces as a meter has shown it, in equivalent tanks, and the prepurge that it took;
// 0 where the model decides.
struct MeasuredMixing {
  double bore_tanks = 0.0, chamber_tanks = 0.0;
  units::Time bore_wait{}, chamber_wait{};
};

// All but Use, which needs what the plan of heat says of the time under gas, and that plan the torch's
// preflow.
Purge plan_purge(const job::Job &, const fixture::Layout &, const fixture::Volumes &, const fixture::Areas &,
                 const Bounds &, const MeasuredMixing & = {});

// `under_gas`: first arc to the end of the last hold, preflow before every arc but the first included.
void add_use(const job::Job &, units::Time under_gas, Purge &);

// Draught limits over a chamber that parts one after another have warmed to `fixture`.
void add_warm_draught(const job::Job &, const fixture::Layout &, units::Temperature fixture, Purge &);

// Temperature at which the purge gas weighs what the room's air weighs; hotter, it rises out of the slot.
units::Temperature neutral_temperature(Species);

} // namespace purgewright::gas
