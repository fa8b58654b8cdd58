// An oxygen meter's log laid over the purge's curve: reading the file, and fitting what the curve depends on.
//
// The file is UTF-8 or, with its byte order mark, UTF-16; cells stand between commas, semicolons or tabs,
// whichever the header has most of, and only commas ask for a decimal point: else a decimal comma is one as
// well. Lines that start with # and empty lines are left out; the first other line names the columns, each
// with its unit in brackets, such as
//   time [s],oxygen [ppm],circuit
// in any order. `time` counts from the moment the gas is turned on, lines flushed, spaces full of air and the
// slot cover closed; `oxygen` is what the meter shows; `circuit` is bore or chamber. An optional column `flow
// [L/min]` gives the circuit's flow, the same in all its rows; without it the prepurge flow of the design is
// taken. Other columns are not read and named in a caution. The bore's meter stands at the bore's outlet
// (vent or exhaust way), the chamber's at the joint's outside.
//
// Units: quantity types; oxygen is a volume fraction; log errors are decades.
// Errors: faults of the file are Diagnostics with line and column; fit_log throws std::domain_error for a
// circuit that the log does not hold.
// Guarantee: same text, same numbers; parse_log keeps at least `least_readings` of every circuit it returns.
// The lag of the meter and the mixing of the space draw nearly the same curve, so the lag is bounded by the
// response that the job states (gas.log_response: a step test, or the maker's word) and 0 without one: the
// space then comes out more mixed, and its purge longer, than it is.
// Source: least squares on log10 of the reading by BOBYQA (Powell 2009, in NLopt), standard errors from the
// linearised problem (Draper & Smith, Applied Regression Analysis), lag kept by the Bayesian information
// criterion (Schwarz 1978).
#pragma once

#include "purgewright/gas/purge.hpp"
#include "purgewright/job/diagnostic.hpp"
#include "purgewright/units/figure.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::gas {

enum class Circuit { bore, chamber };
std::string_view to_text(Circuit);

struct Readings {
  Circuit circuit{};
  std::vector<units::Time> times; // not falling
  std::vector<double> oxygen;     // above 0
  std::optional<units::VolumeFlow> flow;
};

struct Log {
  std::string file;
  std::vector<Readings> circuits; // bore before chamber; those that the file holds
};

struct LogReading {
  std::optional<Log> log; // absent when a problem is an error
  job::Diagnostics problems;
};

inline constexpr int least_readings = 8;
inline constexpr int most_readings = 20000; // of the file
inline constexpr double least_fall = 10.0;  // highest over lowest reading of a circuit; less holds no curve

LogReading parse_log(std::string_view text, std::string file);

// A fitted number and its standard error; infinite where the readings do not settle it.
struct Fitted {
  double value = 0.0, error = 0.0;
};

struct FitResult {
  Circuit circuit{};
  units::VolumeFlow flow{};         // during the log
  units::VolumeFlow prepurge{};     // of the design
  std::optional<units::Time> under; // from when the meter stayed under the job's limit; two readings in a row
                                    // tell
  int readings = 0;
  Fitted tanks;             // of the circuit's space: 1 mixed, many displaced
  double tanks_model = 0.0; // the model's own, at the log's flow
  Fitted delay;             // s, of the meter's line
  Fitted lag;               // s, first order, of the meter and its cell; 0 where the log shows none
  Fitted floor;             // oxygen the space settles at
  double floor_model = 0.0;
  double last = 0.0, lowest = 0.0; // what the meter showed at the end, and at its lowest: medians of a few
                                   // readings, so that a stray one does not count
  bool at_bound = false;           // the search ended where tanks, delay, lag or floor may go no further
  double rms = 0.0;                // of log10(curve / reading), decades
  double r_squared = 0.0;          // of log10
  std::vector<units::Time> times;  // of the readings
  std::vector<double> oxygen;      // the readings themselves
  std::vector<double> curve;       // what the meter would show by the fit
};

inline constexpr double most_fitted_tanks = 16.0; // more cannot be told apart by a meter
// Of the reading, one standard deviation, carried into every fitted number and into the wait that a log asks
// for: common practice for tube flowmeters of welding regulators, no source.
inline constexpr double flowmeter_error = 0.1;
// Between the log's flow and the prepurge's, as a ratio either way: jets and layers of another flow mix
// another way. Common practice, no source.
inline constexpr double most_flow_ratio = 1.5;
// Last reading over the lowest. Readings of a meter scatter by a few in a hundred; half as much again is no
// scatter. Common practice, no source.
inline constexpr double most_rise = 1.5;

// Fits one circuit of a log. The other circuit flows as the log says, else at its prepurge flow. Takes about
// a tenth of a second.
FitResult fit_log(const Log &, Circuit, const job::Job &, const fixture::Layout &, const fixture::Volumes &,
                  const fixture::Areas &, const Bounds &);

// Under it the curve is no picture of the log: what it leaves over scatters by more than a third of what the
// readings themselves do (sqrt(1 - 0.9) = 0.32), over a fall of at least a decade. Common practice, no
// source.
inline constexpr double least_r_squared = 0.9;

// Why nothing may be taken from a fit.
enum class FitFault { none, poor, at_bound, rising, other_flow };
FitFault fit_fault(const FitResult &);
std::string_view to_text(FitFault); // empty for none
bool usable(const FitResult &);

// What the log says that the prepurge must last at its own flow: the time the meter took to stay under the
// limit, by the ratio of flows and longer by the flowmeter's error. Nothing where the meter never came under.
std::optional<units::Time> measured_wait(const FitResult &);

// Whether the readings reach down to the fitted floor: the fit is usable and the floor's error less than it.
bool floor_settled(const FitResult &);

struct LogFits {
  std::vector<FitResult> fits;
  job::Diagnostics problems;
};

// The log that came with the job, read and fitted; empty when the job has none.
LogFits fit_job_log(const job::Job &, const fixture::Layout &, const fixture::Volumes &,
                    const fixture::Areas &, const Bounds &);

// What the purge is to take from the log when gas.log_use is `apply`: the fitted tanks of a usable fit, and
// with them the wait that was measured, under which no bracket then ends. Else nothing.
MeasuredMixing mixing_to_use(const job::Job &, const LogFits &);

// gas.log.bore.tanks and its neighbours, for results and trace; of a fit that is not usable only what the
// readings themselves show and how badly the curve lies.
units::Figures log_figures(const LogFits &);

} // namespace purgewright::gas
