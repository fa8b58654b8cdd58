// The plan of heat: order of tacks and runs with angles, how long to hold each under gas, and how hot joint,
// O-ring, rollers, cap centre and the wall outside the chamber become.
//
// Frame: x of the joint's frame; angles on the index collar, counterclockwise seen from +X.
// Arc: a tack's stands still until the metal on both sides of the joint is tack_margin above its melting,
// least_tack at least and longest_tack at most. A run's strikes with the job's current, the most that the
// machine is set to, and dwells until the joint has melted to its bottom; then the tube turns and a pedal
// keeps the pool as wide as standards::kept_pool says, never above that current. At the run's end the current
// falls evenly to nothing in whole tenths of a second, as it is told, while the tube turns on. A spot's arc
// stands until the wall's bottom has melted so far to either side that spots overlap there by half,
// least_tack at least. The cap under the pin is hottest at the contact's outer edge, nearest to the weld.
// Hold: after a run the torch stays over it until the hottest metal of the joint zone (half the torch cup's
// bore to either side of the joint, all round, whatever the chamber's argon covers) is below the shielding
// temperature; after the last run until no metal of tube and cap is above it. The chamber's argon reaches to
// the wiper. The uncovered hold is the time until the tube outside it is below the shielding temperature: the
// hard limit. The arc then waits `torch_move` and `torch_preflow` before the next strikes. Before a run it
// also waits until the hottest metal of the joint zone is at the job's interpass temperature, where it has
// one: gas may go meanwhile. Errors: std::domain_error when an option makes no sense or a metal has no
// thermal properties. A hold longer than Options::longest_hold ends there with reached = false. Guarantee:
// deterministic; heat in = stored + lost to rounding; a weld that starts elsewhere on the mesh by whole
// cells, or goes the other way round, has the same holds to rounding. Measured over the three examples
// against a mesh of half the cells and a fifth of the step error: the fine mode's holds of runs are within 2
// %, the coarse mode's (for sweeps) within 5 % (tests/property/heat). Source: heat/model.hpp; limits in
// Options.
#pragma once

#include "purgewright/fixture/layout.hpp"
#include "purgewright/fixture/order.hpp"
#include "purgewright/heat/model.hpp"
#include "purgewright/job/job.hpp"

#include <optional>
#include <vector>

namespace purgewright::heat {

enum class Detail { fine, coarse };

// How much cooler than the shielding temperature the fixture must be for a hold to end at all: common
// practice, no source.
inline constexpr auto least_cooling = units::TemperatureDifference::from_value(5.0); // K

// Bare metal this hot burns the skin within a minute. Source: ISO 13732-1:2006, burn threshold for contact of
// 1 min; the value from memory.
inline constexpr units::Temperature burn_threshold = units::celsius(51.0);

struct Options {
  Detail detail = Detail::fine;
  std::optional<units::Temperature> shielding_temperature = {}; // absent: the job's
  units::Temperature ambient = units::celsius(20.0);
  // Of chamber, pin, plug and the gas round the work when the first arc strikes; absent: ambient, as for the
  // first part. The plug is taken to be as warm as the chamber, so that its O-ring comes out too hot.
  std::optional<units::Temperature> fixture = {};
  units::Temperature o_ring_limit = units::celsius(200.0); // silicone rubber in dry gas, continuous
  std::optional<units::Temperature> cap_centre_limit = {}; // absent: the cap metal's beta transus
  units::Length arc_radius = units::millimetres(1.5);      // standard deviation; Tsai & Eagar 1985
  units::Length tack_length = units::millimetres(3.0);     // common practice
  units::Time longest_tack = units::seconds(6.0);          // the arc is off then, melted or not
  // The shortest that a foot or a spot timer makes, and by how much both edges are then surely above their
  // melting: common practice, no source.
  units::Time least_tack = units::seconds(0.5);
  units::TemperatureDifference tack_margin = units::TemperatureDifference::from_value(30.0);
  units::Time longest_dwell = units::seconds(6.0); // the tube turns then, melted or not
  // How fast the current falls at a run's end, so that the crater does not crack, and the least and the most
  // that takes: common practice, no source.
  double taper_rate = 40.0; // A/s
  units::Time least_taper = units::seconds(0.5), longest_taper = units::seconds(3.0);
  units::Time torch_move =
      units::seconds(5.0);     // end of a hold until the torch is over the next: common practice
  units::Time torch_preflow{}; // its gas alone, before the arc
  units::Time longest_hold = units::seconds(3600.0);
  std::optional<double> outside_coefficient = {},
                        inside_coefficient = {}; // W/(m2 K); absent: from heat/gas_film.hpp
  ContactWishes contacts = {};
  std::optional<Mesh> mesh = {};         // absent: as detail says
  std::optional<Accuracy> accuracy = {}; // absent: as detail says
  bool history = false;                  // keep temperatures over time for plots
  // From the end of the last hold until a bare hand may touch tube and cap; absent: not asked for.
  std::optional<units::Temperature> hand_warm = {};
  units::Time longest_hand_warm = units::seconds(3600.0);
};

// What one tack or run does.
struct Weld {
  fixture::Pass pass;
  units::Time strikes{};              // since the first arc
  units::Time welding{};              // arc on: of a run dwell, travel and taper
  units::Time dwell{}, taper{};       // of a run: before the tube turns; while the current falls to nothing
  units::Angle run_out{};             // by which the tube turns past the run's end meanwhile
  units::Length start_pool{};         // of a tack its width; of a run when the tube begins to turn
  units::Temperature standing_peak{}; // of either edge under an arc that stands: tack, spot, start of a run
  units::Time hold{};                 // torch gas over it after the arc
  units::Time
      uncovered_hold{}; // until the tube outside the chamber's argon is below; 0 when it never was above
  units::Time interpass_wait{}; // before it strikes, until the joint is at the interpass temperature
  bool reached = true;          // the hold ended below the shielding temperature
  units::Temperature start_temperature{}; // where the arc strikes, when it strikes
  units::Temperature joint_before{};      // hottest of the joint zone when it strikes
  units::Temperature joint_peak{}, cap_centre_peak{}, o_ring_peak{}, wiper_peak{},
      uncovered_peak{};                                 // arc and hold
  units::Temperature tube_edge_peak{}, cap_edge_peak{}; // of the metal on either side of the joint
  units::Temperature pin_contact_peak{};                // of the cap under the pin's contact
  units::Length pool_width{}, pool_length{};            // the largest; along the metal, along the joint
  units::Length bottom_length{};                 // of a spot: melted along the joint at the wall's bottom
  double least_current = 1.0;                    // share of the job's current that the pedal came down to
  double end_current = 1.0;                      // the share when the taper begins
  units::Temperature end_peak{};                 // hottest of the joint in the second half of the travel
  std::optional<units::Temperature> roller_peak; // of the tube on the front stand's rollers
  units::Length hot_zone{}; // farthest wall above the shielding temperature, from the joint
};

// A sample for plots.
struct Moment {
  units::Time time{};
  units::Temperature joint{}, under_pin{}, o_ring{};
  bool arc = false;
};

struct HeatPlan {
  Detail detail = Detail::fine;
  units::Temperature shielding_temperature{}, ambient{}, o_ring_limit{}, cap_centre_limit{};
  std::optional<units::Temperature> interpass_temperature = {}; // of the joint before a run
  units::Temperature pin_contact_limit{};                       // where cap and pin melt into each other
  units::Length cavity{};     // depth of the chamber's cavity behind the joint
  units::Length covered{};    // depth of the chamber up to the wiper: what its argon reaches
  units::Length joint_zone{}; // to either side of the joint
  units::Length arc_radius{}, tack_length{};
  units::Current current{};                                   // the job's: the most the machine is set to
  units::Power power{};                                       // of it, into the metal
  double line_energy = 0.0;                                   // J/m
  double outside_coefficient = 0.0, inside_coefficient = 0.0; // W/(m2 K), used
  std::vector<Weld> tacks, runs;
  units::Time longest_hold{}, longest_hold_allowed{}; // of tacks and runs
  units::Time longest_interpass_wait{};
  units::Time torch_move{}, torch_preflow{}; // the move with the preflow after it; the preflow alone
  units::Time arc_time{}, cycle{};           // cycle: first arc to the end of the last hold
  units::Temperature o_ring_peak{}, wiper_peak{}, cap_centre_peak{}, joint_peak{};
  units::Temperature pin_contact_peak{};         // hottest of the cap under the pin's contact
  units::TemperatureDifference through_wall{};   // mean through the pool less its bottom, under the arc
  units::Length pool_width{}, pool_target{};     // widest of all runs; what the pedal keeps
  units::Length spot_pitch{};                    // along the joint from spot to spot; 0 for runs
  units::Temperature roller_peak{};              // of the tube on the front stand's rollers
  units::Temperature pin_peak{}, chamber_peak{}; // each one lump of metal, at the end of the last hold
  units::Length hot_zone{};
  std::optional<units::Time> hand_warm = {}; // from the end of the last hold, work left where it is; absent:
                                             // not asked for, or longer than longest_hand_warm
  std::string metal_source; // of conductivity and heat capacity of tube and cap, from memory or seen
  Energy energy;
  std::vector<Moment> history;
  long steps = 0; // of time, refused ones too

  // Of the pool as it travels.
  units::Temperature pool_bottom(const Weld &run) const {
    return run.end_peak - run.end_current * through_wall;
  }
  units::Time postflow() const { return longest_hold + torch_move; }
  // Where the pedal stands when the run ends in which it comes down the farthest, and the least far; whole
  // without runs.
  units::Current pedal_low() const;
  units::Current pedal_high() const;
  bool within_limits() const; // every hold reached, O-ring, cap and hot zone within theirs
};

HeatPlan plan_heat(const job::Job &, const fixture::Layout &, const Options & = {});

// Fewest runs that keep within the limits; none for spots.
struct RunAdvice {
  struct Row {
    int runs = 0;
    bool within_limits = false;
    units::Time cycle{}, longest_hold{};
  };
  std::vector<Row> rows;      // 1 .. most, coarse plans
  int fewest = 0;             // 0: none keeps within the limits
  units::Angle longest_run{}; // of `fewest` runs, overlap included; 0 when none
};
RunAdvice advise_runs(const job::Job &, const fixture::Layout &, Options, int most = 12);

} // namespace purgewright::heat
