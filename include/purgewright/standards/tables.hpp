// Tables of published standards and of shop practice, each row with its source. Rows are found by name or by
// size; nothing here computes a design.
//
// Units: quantity types throughout. Lifetime: static, returned by reference or pointer, never null unless
// said. Errors: a lookup outside a table returns nullptr or nullopt and says so in its comment.
#pragma once

#include "purgewright/units/quantity.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace purgewright::standards {

using units::Length;

// Two limits of size or deviation, lower <= upper.
struct Limits {
  Length lower{};
  Length upper{};
};

// ---- Limits and fits: ISO 286-1 tables 1, 4, 5
// Limit deviations from nominal for holes D E F G H and shafts d e f g h k, grades 5 to 13,
// nominal over 3 up to 120 mm; nullopt outside.
std::optional<Limits> hole_deviation(Length nominal, char letter, int grade);
std::optional<Limits> shaft_deviation(Length nominal, char letter, int grade);
std::string_view fits_source();

// ---- O-rings: AS568 sizes, static radial gland (table a of the reference data)
struct ORing {
  std::string_view dash;                    // "-018"
  Length inside_diameter, inside_tolerance; // tolerance is plus-minus
  Length section, section_tolerance;
};
std::span<const ORing> o_rings();           // by section, then by inside diameter, ascending
const ORing *o_ring(std::string_view dash); // nullptr when unknown
std::string_view o_ring_source();

struct Gland {
  Length section;              // nominal O-ring section this row serves
  Length depth_min, depth_max; // bore wall to groove bottom
  Length width;                // groove width, no backup ring
  Length width_tolerance;      // plus-minus
  Length corner_radius_min, corner_radius_max;
  Length clearance_max;  // diametral, bore to land
  Length lead_in_length; // axial length of a 20 degree lead-in chamfer, minimum
  double squeeze_min,
      squeeze_max; // of the section, as the table prints them for its depth and section limits
};
const Gland *static_radial_gland(Length section); // nearest section within 0.1 mm, else nullptr
std::string_view gland_source();

// Published limits for a static radial seal, fractions.
struct SealRules {
  double squeeze_min, squeeze_max; // of the section, extremes of table a over the sections o_rings() lists
  double stretch_max;              // of the inside diameter
  double fill_max;                 // of the groove's section
  std::string_view source;
};
const SealRules &seal_rules();

// ---- Port threads
struct PortThread {
  std::string_view name;    // as the job file spells it: "G1/8" "G1/4" "1/8 NPT" "1/4 NPT" "M5" "10-32 UNF"
  std::string_view callout; // as a drawing spells it: "G 1/8 ISO 228-1", "M5x0.8-6H" ...
  Length drill;             // tap drill diameter
  Length major;             // nominal major diameter
  Length pitch;
  Length full_thread;   // least depth of full thread
  Length drill_depth;   // depth of the tap drill's full diameter in a blind hole
  Length spot_face;     // diameter of the sealing spot face; 0 when the thread seals itself (taper)
  Length fitting_width; // room one screwed-in fitting needs, across corners
  std::string_view source;
};
std::span<const PortThread> port_threads();           // small to large
const PortThread *port_thread(std::string_view name); // nullptr when unknown

// ---- Socket head cap screws: ISO 4762 in ISO 273 medium holes, and the inch series, ASME B18.3 in normal
// ones
struct Screw {
  std::string_view name; // "M4", "8-32"
  Length major, pitch, tap_drill, clearance, head_diameter, head_height, counterbore_diameter,
      counterbore_depth;
  std::string_view source;
  std::string_view callout; // as a drawing spells its tapped hole: "M4×0.7-6H", "8-32 UNC-2B"
  bool inch = false;
};
std::span<const Screw> screws();      // M3 to M12
std::span<const Screw> inch_screws(); // 4-40 to 1/2-13, each in the place of the metric one it stands for
const Screw *screw(std::string_view name);      // of either series; nullptr when unknown
const Screw *inch_screw(std::string_view name); // that stands for the metric one; nullptr when none does

// ---- Hexagon socket head shoulder screws, ISO 7379 and the inch series of ASME B18.3: axles and hinges
struct ShoulderScrew {
  std::string_view thread_name; // "M6", "5/16-18"
  std::string_view callout;     // as a drawing spells its tapped hole: "M6×1-6H", "5/16-18 UNC-2B"
  Length shoulder, length;
  Limits deviation; // of the ground shoulder from its nominal diameter
  Length thread, pitch, tap_drill, thread_length;
  Length head_diameter, head_height, key; // key: width across flats
  std::string_view source;
  bool inch = false;
};
std::span<const ShoulderScrew> shoulder_screws(); // of both series
// The shortest listed of this shoulder; nullptr when none is listed.
const ShoulderScrew *shoulder_screw(Length shoulder);

// ---- Deep-groove ball bearings, ISO 15 and the inch series
struct Bearing {
  std::string_view number; // "626", "R6"
  Length bore, outside_diameter, width;
  Length shaft_shoulder; // least diameter that bears on the inner ring
  std::string_view source;
};
std::span<const Bearing> bearings();             // small to large
const Bearing *bearing(std::string_view number); // nullptr when unknown

// ---- Plastics that parts are printed from
struct Plastic {
  std::string_view name;
  units::Temperature deflection; // under 0.45 MPa, ISO 75-2 method B
  std::string_view source;
};
std::span<const Plastic> plastics(); // coldest first

// ---- Metals: the one table of what heat, gas, rules and parts list know of a metal
struct PropertyRow {
  double kelvin = 0.0, value = 0.0;
};
// A property over temperature, ascending; a single row stands for every temperature.
struct Property {
  std::span<const PropertyRow> rows = {};
  std::string_view source = {};
  double room() const { return rows.front().value; } // near 20 degC
};

// Of a metal that is melted here.
struct Melting {
  units::Temperature liquidus{}, boiling{}, beta_transus{};
  double latent_heat = 0.0;       // J/kg, between solidus and liquidus
  double pool_conductivity = 0.0; // W/(m K), stirring included
  double emissivity = 0.0;        // total, bright metal
  std::string_view source;
};

struct Metal {
  std::string_view name;  // "titanium-grade-2" "titanium-grade-9" "titanium-6al-4v" "aluminium-6082"
                          // "aluminium-6061" "stainless-304" "copper-c110"
  std::string_view title; // "titanium Grade 2"
  units::Density density;
  std::string_view density_source;
  Property conductivity;  // solid, W/(m K)
  Property specific_heat; // sensible, J/(kg K)
  double expansion;       // 1/K, near room temperature
  std::string_view expansion_source;
  units::Temperature melting_start; // solidus
  std::string_view melting_source;
  bool weldable_here; // may be tube or cap: reactive metals of this tool
  std::optional<units::Temperature> shielding_temperature = {}; // below it the gas may go; of reactive metals
  std::string_view shielding_source = {};
  std::optional<Melting> melting = {}; // of reactive metals
};
std::span<const Metal> metals();
const Metal *metal(std::string_view name); // nullptr when unknown

// The table's name of the metal that a shop calls so, in whatever case, with whatever blanks and dashes:
// "Grade 5", "Ti-6Al-4V", "R56400" and "3.7165" are "titanium-6al-4v". Empty when the name is none of them.
// Source: ASTM B348/B348M section 1.1 (grades and UNS numbers), DIN 17850 and 17851, EN 573-3, EN 10088-1,
// EN 1412 (material numbers, from memory).
std::string_view metal_called(std::string_view name);
// A name in lower case without its blanks and dashes.
std::string plain_metal_name(std::string_view name);
// Every plain name of a metal of the table.
std::span<const std::string_view> metal_names(std::string_view metal); // empty when unknown

// ---- Gases: the one table of what heat and gas know of a gas
// Dry air's oxygen, a volume fraction: US Standard Atmosphere 1976 (0.20948).
inline constexpr double air_oxygen = 0.2095;
inline constexpr units::Pressure standard_atmosphere = units::pascals(101325.0); // exact by definition
inline constexpr double standard_gravity = 9.80665;       // m/s2, exact by definition (CGPM 1901)
inline constexpr double molar_gas_constant = 8.314462618; // J/(mol K), exact since 2019 (CODATA 2018)

// Lennard-Jones parameters of one gas and where they are published.
struct LennardJones {
  double diameter;   // collision diameter sigma, angstrom as published
  double well_depth; // epsilon/k, kelvin
  std::string_view source;
};
struct Gas {
  std::string_view name; // "argon" "helium" "oxygen" "nitrogen" "air"
  double molar_mass;     // kg/mol: IUPAC standard atomic weights; air: US Standard Atmosphere 1976
  LennardJones potential;
  int atoms;             // of a molecule
  Property conductivity; // W/(m K), for the gases that a shop purges with; without rows for the others
  // At constant pressure, J/(kg K): 5/2 R/M for one atom, 7/2 R/M for two, kinetic theory.
  double specific_heat() const;
};
std::span<const Gas> gases(); // in the order of the names above

// ---- Tube tolerances, ASTM B338
// Plus-minus tolerance on the
// outside diameter; nullopt unless over 0 and under 3.5 in. A diameter at the end of a row has the next row's
// tolerance.
std::optional<Length> tube_outside_tolerance(Length outside_diameter);
double tube_wall_tolerance(); // plus-minus, fraction of the wall
std::string_view tube_source();

// ---- Stock sizes
enum class StockForm { flat_thickness, flat_width, round };
enum class StockSystem { metric, inch };
// Smallest listed size not under the need (by more than 0.01 um); nullopt when the list ends below it.
std::optional<Length> stock_size(StockForm, StockSystem, Length least);
std::string_view stock_source();

// ---- Machining practice
struct MachiningRules {
  double pocket_depth_per_corner_radius_max; // internal corner: depth / edge radius
  double drill_depth_per_diameter_best, drill_depth_per_diameter_max;
  Length wall_min;                       // aluminium wall, preferred
  double edge_distance_per_diameter;     // hole centre to edge
  double thread_engagement_per_diameter; // screw in aluminium
  double end_mill_stickout_per_diameter_max;
  units::Angle drill_point; // included angle of a twist drill, 118 degrees
  std::string_view source;
};
const MachiningRules &machining_rules();

// ---- Welding torch practice
struct TorchCup {
  int number; // cup number n: bore n/16 in
  Length bore, outside_diameter;
};
std::span<const TorchCup> torch_cups();
std::string_view torch_cup_source();

} // namespace purgewright::standards
