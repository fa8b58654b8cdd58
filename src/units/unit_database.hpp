// The udunits2 library behind one function: a number and a unit's text to SI.
//
// Units: si is in si_unit(dimension).
// Errors: none thrown; an unknown unit or a database that cannot be read is told apart by status.
// Guarantee: prints nothing. Thread use: safe, serialised by a lock; the database is read at the first call,
// which takes some milliseconds.
// Source: UCAR udunits2 database.
#pragma once

#include "purgewright/units/dimension.hpp"

#include <optional>
#include <string>

namespace purgewright::units {

struct DatabaseReading {
  enum class Status { read, unknown_unit, no_database };
  Status status{Status::unknown_unit};
  std::optional<Dimension> dimension; // nullopt when the unit is of none the program knows
  std::string base_units;             // as "m3.s-1"
  double si{};                        // set with dimension
};

// The unit is plain ASCII. Angles and ratios are told apart, though the database counts the radian as a
// number.
DatabaseReading read_by_database(double value, const std::string &unit);

} // namespace purgewright::units
