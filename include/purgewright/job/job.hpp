// The job: one immutable, validated, SI-typed description of tube, cap, torch, rotation, weld, gas, fixture
// overrides and shop. Everything downstream reads this and nothing else of the file.
//
// Frame: tube axis X, +X from plug to cap, Z up, origin at the joint on the axis. The tube fills x in
// [-length, 0]; the cap stands on x >= 0, its spigot (if any) on x < 0.
// Errors: resolve() reports every fault as a Diagnostic; a Job exists only when there is none.
#pragma once

#include "purgewright/job/draft.hpp"
#include "purgewright/standards/tables.hpp"
#include "purgewright/units/figure.hpp"
#include "purgewright/units/quantity.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace purgewright::job {

enum class CapShape { flat, domed, spigot };
enum class Direction { clockwise, counterclockwise }; // seen from +X, looking at the cap
enum class RunOrder { consecutive, alternating };     // alternating: each opposite the one before
enum class Seam { runs, spots }; // of an arc that travels, or of one that stands at each place
enum class WireUse { none, added };
enum class GasSpecies { argon, helium };
enum class LogUse { compare, apply }; // what a measured log is for
enum class CradleWish { automatic, stands, spindle };
enum class ChamberWish { automatic, block, plates };
enum class Sheet { a4, a3, letter, tabloid };
enum class PlugWish { automatic, bore_ring, expanding, cup };
enum class Projection { first, third };

struct Identity {
  std::string name, title, revision, prepared_by;
};

struct Vent {
  units::Length diameter{};
  units::Length from_joint{}; // joint to the hole's centre
  int count = 0;              // 0: the tube has no vent, the bore breathes through the plug
};

struct Tube {
  const standards::Metal *material = nullptr;
  units::Length outside_diameter{}, wall{}, inside_diameter{}, length{};
  units::Length outside_diameter_tolerance{}, wall_tolerance{}; // plus-minus
  Vent vent;
  units::Length outside_diameter_least() const { return outside_diameter - outside_diameter_tolerance; }
  units::Length outside_diameter_most() const { return outside_diameter + outside_diameter_tolerance; }
  units::Length inside_diameter_least() const {
    return outside_diameter_least() - 2.0 * (wall + wall_tolerance);
  }
  units::Length inside_diameter_most() const {
    return outside_diameter_most() - 2.0 * (wall - wall_tolerance);
  }
};

struct Cap {
  CapShape shape = CapShape::flat;
  const standards::Metal *material = nullptr;
  units::Length diameter{}, thickness{};
  units::Length dome_height{};      // rim plane to the outer apex; 0 unless domed
  units::Length spigot_length{};    // 0 unless a spigot cap
  units::Length spigot_diameter{};  // tube bore less twice the radial spigot clearance
  units::Length spigot_clearance{}; // radial
  // Width of the rim beside the joint, whose far corner stands free; a dome goes on behind its rim.
  std::optional<units::Length> rim() const {
    return shape == CapShape::domed ? std::nullopt : std::optional(thickness);
  }
  // How far the cap reaches beyond the joint along +X.
  units::Length reach() const { return shape == CapShape::domed ? dome_height : thickness; }
};

struct Torch {
  units::Length cup_bore{}, cup_outside_diameter{}, cup_length{};
  units::Length stickout{}; // electrode tip beyond the cup's mouth
  units::Angle tilt{};      // from vertical, in the plane of travel (Y-Z)
  units::VolumeFlow gas_flow{};
};

struct Rotation {
  int tacks = 0, runs = 0;
  units::Angle overlap{};
  units::Length swing_radius{}; // what the turning tube and its fittings sweep
  units::Angle start_angle{};
  Direction direction = Direction::counterclockwise;
  RunOrder order = RunOrder::consecutive;
  Seam seam = Seam::runs;
};

struct Weld {
  units::Current current{};
  units::Voltage voltage{};
  units::Velocity travel_speed{};
  double arc_efficiency = 0.0;
  WireUse filler{};
  bool with_wire() const { return filler == WireUse::added; }
  units::Length bead_height{};                // of the finished weld over the tube
  units::Temperature shielding_temperature{}; // below it gas may leave the metal
  std::optional<units::Temperature>
      interpass_temperature{}; // the joint is no hotter when a run starts; absent: no such limit
};

struct Hose {
  std::string_view material;
  units::Length inside_diameter{}, wall{}, supply_length{}, bore_length{}, chamber_length{};
};

struct Gas {
  GasSpecies species = GasSpecies::argon;
  double oxygen_in_supply = 0.0;                              // mole fraction
  double oxygen_limit_bore = 0.0, oxygen_limit_chamber = 0.0; // mole fraction
  units::Pressure supply_pressure{};                          // gauge
  Hose hose;
  std::string log; // path of a measured log, empty when none
  LogUse log_use = LogUse::compare;
  units::Time log_response{}; // meter and line to 90 % of a step; 0 where not stated
  const standards::PortThread *port_thread = nullptr;
};

struct FixtureWishes {
  units::Length radial_clearance{}; // tube (or cap, the larger) to cavity wall
  units::Length end_clearance{};    // cap's far face to the end plate
  units::Length wall{};             // least metal wall between drillings and to the outside
  std::optional<units::Length> slot_length, slot_width; // absent: the layout sizes them
  units::Length diffuser_hole{};
  const standards::Metal *material = nullptr;
  const standards::Metal *pin_material = nullptr;
  int circuits = 2;
  PlugWish plug = PlugWish::automatic;
  CradleWish cradle = CradleWish::automatic;
  ChamberWish chamber = ChamberWish::automatic;
};

// Bar or plate on the shop's rack.
struct StockItem {
  bool round = false;
  units::Length thickness{}; // or diameter
  units::Length width{};     // of a flat; 0: a plate, sawn to any width
};

struct Shop {
  units::UnitSystem unit_system = units::UnitSystem::metric;
  Sheet sheet = Sheet::a4;
  Projection projection = Projection::first;
  double argon_price = 0.0; // money per cubic metre of free gas
  std::string currency;
  units::Volume bottle_water_volume{};
  units::Pressure bottle_pressure{}; // gauge
  units::Volume room_volume{};
  double room_air_changes_per_hour = 0.0;
  units::Velocity draught{};
  std::vector<StockItem> stock;
};

// Where a job value comes from.
struct Origin {
  units::Basis basis = units::Basis::fallback;
  Mark mark{};
  std::string_view reason; // of a default: why this value; static text
  bool inches = false;     // a length that the job file gives in inches
};

struct Job {
  std::string file; // for messages
  Identity identity;
  Tube tube;
  Cap cap;
  Torch torch;
  Rotation rotation;
  Weld weld;
  Gas gas;
  FixtureWishes fixture;
  std::vector<std::shared_ptr<const Job>>
      family;                          // other tubes on the same bench; without families of their own
  std::shared_ptr<const Document> log; // the readings that gas.log names
  Shop shop;
  std::array<Origin, key_count> origins{};

  const Origin &origin(Key key) const { return origins[static_cast<std::size_t>(key)]; }
};

struct Sources; // sources.hpp

struct Resolution {
  std::optional<Job> job;
  Diagnostics problems;
};

// Fills defaults and checks what the values say together (wall against radius, cap against tube, ...).
Resolution resolve(const Draft &);

// read_draft and resolve in one; problems hold the faults of both.
Resolution read_job(const Sources &);
Resolution read_job(const std::string &path);

// Every job value as a figure whose id is its job-file key, for results and trace; text values are left out.
units::Figures figures(const Job &);

} // namespace purgewright::job
