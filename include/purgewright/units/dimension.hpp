// Dimensions known at run time: what the job reader, the results file and the printers need to know of a
// number's kind. Inside the program the compile-time types of quantity.hpp are used instead.
//
// Source of names: SI Brochure, 9th edition (BIPM 2019); trade names of units as commonly written.
#pragma once

#include <string>
#include <string_view>

namespace purgewright::units {

enum class Dimension {
  count,     // whole number, no unit
  ratio,     // number without unit, or %, ppm
  length,
  area,
  volume,
  mass,
  time,
  velocity,
  flow,        // volume per time
  pressure,
  density,
  temperature, // absolute
  angle,
  current,
  voltage,
  power,
  frequency,   // per time, as air changes per hour
  cost,        // money, currency kept beside the number
  price,       // money per volume
};

// Coherent SI unit of the dimension, as results.json prints it: "m", "m3/s", "K", "1" ...
std::string_view si_unit(Dimension);

// The dimension's plain name for messages: "a length", "a flow" ...
std::string_view plain_name(Dimension);

// Two units a user may write, for messages: "mm or in".
std::string_view example_units(Dimension);

enum class UnitSystem { metric, inch };

// SI value as shop text, with at most `digits` significant digits and the unit of the chosen system:
// length mm / in, flow L/min / ft3/h, volume mL or L / in3, pressure Pa .. kPa / psi, temperature degC / degF.
// Never prints an exponent for values of ordinary size; the text always uses a decimal point.
std::string shop_text(double si_value, Dimension, UnitSystem, int digits = 4);

// SI value in the shop unit of the chosen system and that unit's name.
struct ShopValue {
  double value;
  std::string_view unit;
};
ShopValue shop_value(double si_value, Dimension, UnitSystem);

} // namespace purgewright::units
