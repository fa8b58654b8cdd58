// What hand welding of thin titanium goes by: tungsten by current, current and speed by thickness.
//
// Units: quantity types. Lifetime: static. Errors: none; beyond a table's end its last row serves.
// Source: beside each table; `trace` says which values come from memory.
#pragma once

#include "purgewright/standards/tables.hpp"
#include "purgewright/units/quantity.hpp"

#include <optional>
#include <string_view>

namespace purgewright::standards {

struct Tungsten {
  units::Length diameter;
  std::string_view trade; // as it is sold in inches
  units::Current most;    // direct current, electrode negative
};
// The thinnest that carries the current. Source: 1/16 in from 20 to 100 A in titanium fabrication handbooks'
// charts for 0.030 and 0.060 in sheet, from memory; beyond: tables of welding power source manuals.
const Tungsten &tungsten_for(units::Current);

struct Schedule {
  units::Current least, most;
  units::Velocity speed;
};
// Hand welding of titanium sheet: straight between 0.030 and 0.060 in, in proportion to the thickness
// below; above, 30 A more for each mm and slower in proportion, since a hotter arc boils the surface: common
// practice, no source. Source: titanium fabrication handbooks' charts of the 1960s to 1990s, 0.030 in at 20
// to 35 A and 0.060 in at 85 to 100 A, both at 10 in/min and 10 V, from memory.
Schedule titanium_schedule(units::Length thickness);

// Pool's width that a welder keeps, in walls: common practice, no source.
inline constexpr double pool_walls = 3.5;
// The same on a tube: 0.29 of its diameter at most, or a cap so small melts with it, but wide enough
// to reach the joint's bottom. Fitted to the heat model on tubes that stockists list, no source. A cap whose
// rim stands free takes half of it: twice the rim at most, or its corner melts off.
units::Length kept_pool(units::Length wall, units::Length outside_diameter,
                        std::optional<units::Length> rim = {});

// What a weld bridges. Gap: a fifth of the wall without wire, half of it with wire (common practice, no
// source). Source: fit-up of thin sheet welded without filler, AWS Welding Handbook, plasma arc welding: gap
// 0.2, offset 0.4 of the thickness, from memory. Offset: a quarter of the wall, well within it, since a cap
// that stands out pulls the pool to one side: common practice, no source.
struct FitUp {
  units::Length gap, offset;
};
FitUp fit_up(units::Length wall, bool wire = false);

// By which a weld draws its two sides together: 0.10 of its mean width. Source: 0.10 A / t of a butt weld of
// section A in plate of thickness t, Blodgett, Design of Welded Structures, sec. 7.7, from memory; for steel,
// of which expansion over heat per volume is titanium's within a sixth.
units::Length transverse_shrinkage(units::Length width);

// How quickly a hand can roll a collar evenly while the eyes are on the pool: five turns in a minute. Common
// practice, no source: bench positioners for welding by hand are turned no quicker.
inline constexpr units::Angle hand_turn = units::radians(units::pi / 6.0); // in a second
// Along the joint of a tube that a hand turns so.
units::Velocity hand_speed(units::Length outside_diameter);

// Share of a spot that the next one may leave to it: half. Common practice, no source.
inline constexpr double spot_pitch_most = 0.5;

// Heat per second that keeps a pool this wide in a butt joint of cold titanium of this thickness, melted
// through, under an arc that travels so fast. A pool narrower than the arc's own heat (full width at half
// height, `arc_width`) takes what one as wide as both takes. Source: q = 8 k t (T - T0) (1/5 + v w / 4 a):
// Wells, Welding Journal 31 (1952) 263-s, from memory; the term for the arc's width: common practice, no
// source.
units::Power pool_power(units::Length thickness, units::Length pool, units::Velocity speed);

// Where a cap begins to melt against a pin: the lowest melting mixture of the two metals, or the lower of
// their own. Source: binary phase diagrams, titanium-iron 1085 degC, titanium-copper 885 degC, from memory.
units::Temperature contact_melts(const Metal &cap, const Metal &pin);

// From where on a cap begins to bond to a pin that presses on it, without melting; absent of pairs that do
// not. Titanium on titanium in argon: 850 degC, the coldest of the 850 to 950 degC at which sheets grow
// together under 3 MPa. Source: Lee, Yoon and Yi, Thermochimica Acta 455 (2007) 105-108, abstract; there it
// takes an hour or more, so that a weld's seconds make the two stick rather than one piece: common practice,
// no source.
std::optional<units::Temperature> contact_bonds(const Metal &cap, const Metal &pin);

} // namespace purgewright::standards
