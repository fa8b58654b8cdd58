// Tables of published standards and of shop practice, each row with its source. Rows are found by name or by
// size; nothing here computes a design.
//
// Units: quantity types throughout. Lifetime: static, returned by reference or pointer, never null unless
// said. Errors: a lookup outside a table returns nullptr or nullopt and says so in its comment.
#pragma once

#include "purgewright/units/quantity.hpp"

#include <optional>
#include <span>
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

// ---- Socket head cap screws, ISO 4762 in ISO 273 medium holes
struct Screw {
  std::string_view name; // "M4"
  Length major, pitch, tap_drill, clearance, head_diameter, head_height, counterbore_diameter,
      counterbore_depth;
  std::string_view source;
};
std::span<const Screw> screws();           // M3 to M12
const Screw *screw(std::string_view name); // nullptr when unknown

// ---- Deep-groove ball bearings, ISO 15
struct Bearing {
  std::string_view number; // "626"
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

// ---- Metals
struct Metal {
  std::string_view name;  // "titanium-grade-2" "titanium-grade-9" "titanium-6al-4v" "aluminium-6082"
                          // "aluminium-6061" "stainless-304" "copper-c110"
  std::string_view title; // "titanium Grade 2"
  units::Density density;
  double conductivity;  // W/(m K), near room temperature (Ti-6Al-4V and Grade 9: near 400 degC is in heat)
  double specific_heat; // J/(kg K), near room temperature
  double expansion;     // 1/K
  units::Temperature melting_start;
  bool weldable_here;                                      // may be tube or cap: reactive metals of this tool
  std::optional<units::Temperature> shielding_temperature; // below it the gas may go; set for reactive metals
  std::string_view source;
};
std::span<const Metal> metals();
const Metal *metal(std::string_view name); // nullptr when unknown

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
