// Dimensions known at run time: what the job reader, the results file and the printers need to know of a
// number's kind. Inside the program the compile-time types of quantity.hpp are used instead.
//
// Source of names: SI Brochure, 9th edition (BIPM 2019); trade names of units as commonly written.
#pragma once

#include <string>
#include <string_view>

namespace purgewright::units {

enum class Dimension {
  count, // whole number, no unit
  ratio, // number without unit, or %, ppm
  length,
  area,
  volume,
  mass,
  time,
  velocity,
  flow, // volume per time
  pressure,
  density,
  temperature, // absolute
  angle,
  current,
  voltage,
  power,
  frequency, // per time, as air changes per hour
  cost,      // money, currency kept beside the number
  price,     // money per volume
};

// Coherent SI unit of the dimension, as results.json prints it: "m", "m3/s", "K", "1" ...
// Money has no SI unit: a cost is "1" and a price "1/m3", the currency stands beside the number.
std::string_view si_unit(Dimension);

// The dimension's plain name for messages: "a length", "a flow" ...
std::string_view plain_name(Dimension);

// Two units a user may write, for messages: "mm or in".
std::string_view example_units(Dimension);

// Two quantities as a user may write them, for messages: "6 L/min or 12 ft3/h".
std::string_view example_text(Dimension);

enum class UnitSystem { metric, inch };

// SI value as shop text, with at most `digits` significant digits and the unit of the chosen system:
// length mm / in, flow L/min / ft3/h, volume mL or L / in3 or ft3, velocity mm/s / in/min or ft/min,
// pressure Pa .. kPa / psi, temperature degC / degF, time s, min or h, ratio plain or ppm (below one in a
// thousand). Never prints an exponent for
// magnitudes from 1e-6 up to 1e9; the text always uses a decimal point. Guarantee: parse_quantity reads the
// text back, to the printed digits, for every dimension but cost and price.
std::string shop_text(double si_value, Dimension, UnitSystem, int digits = 4);

// Which way the last printed digit goes: a limit is never printed laxer than it is.
enum class Rounding { nearest, down, up };

// The same in the unit in which `beside` would be printed: for the terms of a sum and for a value beside its
// limit, which are compared by eye.
std::string shop_text_beside(double si_value, double beside, Dimension, UnitSystem, int digits = 4,
                             Rounding = Rounding::nearest);

// SI value in the shop unit of the chosen system and that unit's name.
struct ShopValue {
  double value;
  std::string_view unit;
};
ShopValue shop_value(double si_value, Dimension, UnitSystem);

} // namespace purgewright::units
