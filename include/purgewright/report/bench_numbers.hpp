// Numbers as the welder reads them: what the printed text and the setup sheet both show, so that they never
// differ.
//
// Units: quantity types in, text with its unit out, but for collar_degrees (whole degrees without a unit).
// Frame: collar angles are counterclockwise seen looking at the cap, 0 to 359. Range, errors: none.
// Guarantee: same number, same text, whatever the locale. Source: none.
#pragma once

#include "purgewright/report/results.hpp"

#include <cstddef>
#include <string>

namespace purgewright::report {

// "10" or "1.5": no more digits than a flowmeter shows.
std::string litres_per_minute(units::VolumeFlow);
std::string cubic_feet_per_hour(units::VolumeFlow);

// What the welder waits, in seconds: never less than the computed time; whole seconds under 20 s, then fives
// up to 2 min, then quarter minutes.
std::string bench_time(units::Time);

// The same as a time: the one that holds, wherever a number follows from what is told.
units::Time told(units::Time);

// The shortest hold that a hand with a torch in it can time: common practice, no source.
inline constexpr units::Time least_hold_said = units::seconds(5.0);
// The hold after a tack or run, least_hold_said at least; "too long" where it does not end.
std::string hold_text(const heat::Weld &);
// The same once the fixture is warm from many parts, of a tack or run counted from 0.
std::string warm_hold_text(const heat::Series &, bool tack, std::size_t number);

// The longer of the two, which holds for every part.
std::string longer_hold_text(const Findings &, bool tack, std::size_t number);

// "run", or "spot" where the joint is closed by spots.
std::string_view run_word(const Findings &);

// "1-3-2-4": runs, numbered round the joint, in welding order.
std::string run_order_text(int runs, job::RunOrder);

// "27 s, 32 s once the fixture is warm": torch postflow to set.
std::string postflow_text(const Findings &);
// The longer of the two.
std::string longer_postflow_text(const Findings &);

// "1.4 mm of water", or "0.05 in of water" in an inch job: what a bench reads small pressures in.
std::string water_column(const Findings &, units::Pressure, units::Rounding = units::Rounding::nearest);
// "20 bar", or "290 psi" in an inch job: what a regulator shows.
std::string bottle_pressure(const Findings &, units::Pressure);

// Speed of the room's air that a limit allows: "0.5 m/s", or "100 ft/min" in an inch job; never more than it
// is.
std::string air_speed(const Findings &, units::Velocity);

// Percent from one in a hundred on, ppm below.
std::string oxygen_text(double fraction);
// The same of a limit: to four digits, never more than it is.
std::string oxygen_limit_text(double fraction);

std::string collar_degrees(units::Angle);
// "80 to 180"; "0 round to 10" when it goes past its own start.
std::string collar_degrees(const fixture::Pass &);

// Which felt tapes pass under the thumb on a run counted from 0, T1 where run 1 ends: "over T4 to T1", "from
// T1 over T2 to T3" where a tape lies at its start.
std::string tapes_text(const Findings &, std::size_t run);

// Where the pedal comes to by the end of the runs: "28 A falling to 25 A".
std::string pedal_text(const Findings &);

// Computed temperatures no finer than the model, limits as they are set; in the job's units.
std::string temperature_text(const Findings &, units::Temperature);
std::string limit_text(const Findings &, units::Temperature);

} // namespace purgewright::report
