#include "purgewright/job/keys.hpp"

#include "purgewright/standards/tables.hpp"

#include <algorithm>
#include <array>

namespace purgewright::job {
namespace {

using units::Dimension;
using Choices = std::span<const std::string_view>;

constexpr std::array<std::string_view, 3> reactive_metals{"titanium-grade-2", "titanium-grade-9",
                                                          "titanium-6al-4v"};
constexpr std::array<std::string_view, 3> cap_shapes{"flat", "domed", "spigot"};
constexpr std::array<std::string_view, 2> directions{"clockwise", "counterclockwise"};
constexpr std::array<std::string_view, 2> run_orders{"consecutive", "alternating"};
constexpr std::array<std::string_view, 2> seams{"runs", "spots"};
constexpr std::array<std::string_view, 2> fillers{"none", "wire"};
constexpr std::array<std::string_view, 2> species{"argon", "helium"};
constexpr std::array<std::string_view, 2> log_uses{"compare", "apply"};
constexpr std::array<std::string_view, 10> hose_materials{"pvc",    "polyurethane", "silicone", "rubber",
                                                          "nylon",  "polyethylene", "ptfe",     "fep",
                                                          "copper", "stainless"};
constexpr std::array<std::string_view, 6> port_threads{"G1/8",    "G1/4", "1/8 NPT",
                                                       "1/4 NPT", "M5",   "10-32 UNF"};
constexpr std::array<std::string_view, 4> fixture_metals{"aluminium-6082", "aluminium-6061", "stainless-304",
                                                         "copper-c110"};
constexpr std::array<std::string_view, 5> pin_metals{"aluminium-6082", "aluminium-6061", "stainless-304",
                                                     "copper-c110", "titanium-grade-2"};
constexpr std::array<std::string_view, 4> plugs{"auto", "bore-ring", "expanding", "cup"};
constexpr std::array<std::string_view, 3> cradles{"auto", "stands", "spindle"};
constexpr std::array<std::string_view, 3> chambers{"auto", "block", "plates"};
constexpr std::array<std::string_view, 2> unit_systems{"metric", "inch"};
constexpr std::array<std::string_view, 4> sheets{"A4", "A3", "Letter", "Tabloid"};
constexpr std::array<std::string_view, 2> projections{"first", "third"};

// Limits are those of the trade this tool serves: small thin tubes, hand welding. Beyond them the formulas
// and tables below have not been checked, so such a job is refused rather than guessed at.
constexpr FieldInfo quantity(Key key, std::string_view path, Dimension dimension, double least, double most,
                             std::string_view meaning, bool required = false, bool share = false) {
  return {key, path, FieldKind::quantity, dimension, least, most, required, share, {}, meaning};
}
constexpr FieldInfo count(Key key, std::string_view path, double least, double most,
                          std::string_view meaning) {
  return {key, path, FieldKind::count, Dimension::count, least, most, false, false, {}, meaning};
}
constexpr FieldInfo text(Key key, std::string_view path, double most, std::string_view meaning,
                         bool required = false) {
  return {key, path, FieldKind::text, Dimension::ratio, 0, most, required, false, {}, meaning};
}
constexpr FieldInfo text_list(Key key, std::string_view path, std::string_view meaning) {
  return {key, path, FieldKind::text_list, Dimension::ratio, 0, 0, false, false, {}, meaning};
}
constexpr FieldInfo choice(Key key, std::string_view path, Choices choices, std::string_view meaning,
                           bool required = false) {
  return {key, path, FieldKind::choice, Dimension::ratio, 0, 0, required, false, choices, meaning};
}

constexpr double mm = 1e-3;                          // m
constexpr double ppm = 1e-6;                         // 1
constexpr double lpm = 1e-3 / 60;                    // m3/s
constexpr double bar = 1e5;                          // Pa
constexpr double deg = 3.14159265358979323846 / 180; // rad

// Characters. Title, revision and person: what two lines of the smallest letters of ISO 3098 (1.8 mm) hold in
// their cells of a sheet's title block. Name and path: common practice, no source.
constexpr double name_length = 64, title_length = 80, revision_length = 16, person_length = 40,
                 path_length = 200;

using enum Key;
constexpr std::array<FieldInfo, key_count> table{{
    text(job_name, "job.name", name_length,
         "Name of the job, also of its output folder: letters, digits, - and _.", true),
    text(job_title, "job.title", title_length, "Title printed on the sheets."),
    text(job_revision, "job.revision", revision_length, "Revision letter or number."),
    text(job_prepared_by, "job.prepared_by", person_length, "Who answers for the job."),
    choice(tube_material, "tube.material", reactive_metals, "Metal of the tube.", true),
    quantity(tube_outside_diameter, "tube.outside_diameter", Dimension::length, 6 * mm, 170 * mm,
             "Outside diameter of the tube.", true),
    quantity(tube_wall, "tube.wall", Dimension::length, 0.3 * mm, 6 * mm,
             "Wall thickness of the tube; give this or inside_diameter."),
    quantity(tube_inside_diameter, "tube.inside_diameter", Dimension::length, 4 * mm, 169 * mm,
             "Inside diameter of the tube; give this or wall."),
    quantity(tube_length, "tube.length", Dimension::length, 20 * mm, 2000 * mm,
             "Length of the tube from the joint to its open end.", true),
    quantity(tube_outside_diameter_tolerance, "tube.outside_diameter_tolerance", Dimension::length, 0, 1 * mm,
             "Plus-minus tolerance of the outside diameter."),
    quantity(tube_wall_tolerance, "tube.wall_tolerance", Dimension::length, 0, 1 * mm,
             "Plus-minus tolerance of the wall, as a length or as a share of the wall (10 %).", false, true),
    quantity(tube_vent_diameter, "tube.vent.diameter", Dimension::length, 0.5 * mm, 20 * mm,
             "Diameter of each vent hole in the tube's wall."),
    quantity(tube_vent_from_joint, "tube.vent.from_joint", Dimension::length, 2 * mm, 1900 * mm,
             "Distance from the joint to the vent's centre."),
    count(tube_vent_count, "tube.vent.count", 1, 12, "Number of vent holes round the tube."),
    choice(cap_shape, "cap.shape", cap_shapes, "Shape of the cap.", true),
    quantity(cap_diameter, "cap.diameter", Dimension::length, 4 * mm, 181 * mm,
             "Outside diameter of the cap.", true),
    quantity(cap_thickness, "cap.thickness", Dimension::length, 0.3 * mm, 15 * mm,
             "Thickness of the cap (of the wall of a dome, of the disc of a spigot cap).", true),
    quantity(cap_dome_height, "cap.dome_height", Dimension::length, 0.5 * mm, 91 * mm,
             "Height of a domed cap from its rim plane to its outer apex."),
    quantity(cap_spigot_length, "cap.spigot_length", Dimension::length, 0.5 * mm, 30 * mm,
             "Length of the spigot that enters the tube."),
    quantity(cap_spigot_clearance, "cap.spigot_clearance", Dimension::length, 0.01 * mm, 2 * mm,
             "Radial clearance between spigot and tube bore."),
    choice(cap_material, "cap.material", reactive_metals, "Metal of the cap."),
    quantity(torch_cup_bore, "torch.cup_bore", Dimension::length, 4 * mm, 30 * mm, "Bore of the torch cup."),
    quantity(torch_cup_outside_diameter, "torch.cup_outside_diameter", Dimension::length, 6 * mm, 40 * mm,
             "Outside diameter of the torch cup at its mouth."),
    quantity(torch_cup_length, "torch.cup_length", Dimension::length, 10 * mm, 120 * mm,
             "Length of the torch cup."),
    quantity(torch_stickout, "torch.stickout", Dimension::length, 1 * mm, 30 * mm,
             "Electrode tip beyond the cup's mouth."),
    quantity(torch_tilt, "torch.tilt", Dimension::angle, 0, 45 * deg,
             "Tilt of the torch from vertical, in the plane of travel."),
    quantity(torch_gas_flow, "torch.gas_flow", Dimension::flow, 1 * lpm, 40 * lpm,
             "Shielding gas flow of the torch."),
    count(rotation_tacks, "rotation.tacks", 2, 24, "Number of tacks."),
    count(rotation_runs, "rotation.runs", 1, 24, "Number of runs, or of spots, that close the joint."),
    quantity(rotation_overlap, "rotation.overlap", Dimension::angle, 0, 90 * deg,
             "Overlap of each run over the end of the one before."),
    quantity(rotation_swing_radius, "rotation.swing_radius", Dimension::length, 3 * mm, 500 * mm,
             "Radius swept by the tube and whatever is fixed to it when it turns."),
    quantity(rotation_start_angle, "rotation.start_angle", Dimension::angle, -360 * deg, 360 * deg,
             "Angle on the index collar at which the first run starts."),
    choice(rotation_direction, "rotation.direction", directions,
           "Sense in which the weld runs round the joint, seen looking at the cap from outside."),
    choice(rotation_order, "rotation.order", run_orders,
           "Order of the runs: each where the one before ended, or each opposite the one before."),
    choice(rotation_seam, "rotation.seam", seams,
           "What closes the joint: runs of an arc that travels, or overlapping spots of one that stands."),
    quantity(weld_current, "weld.current", Dimension::current, 2, 400, "Arc current."),
    quantity(weld_voltage, "weld.voltage", Dimension::voltage, 5, 30, "Arc voltage."),
    quantity(weld_travel_speed, "weld.travel_speed", Dimension::velocity, 0.2 * mm, 20 * mm,
             "Travel speed along the joint."),
    quantity(weld_arc_efficiency, "weld.arc_efficiency", Dimension::ratio, 0.3, 0.95,
             "Share of the arc's power that enters the metal."),
    choice(weld_filler, "weld.filler", fillers, "Whether wire is added, of the tube's metal."),
    quantity(weld_bead_height, "weld.bead_height", Dimension::length, 0, 5 * mm,
             "Height of the finished bead over the tube: it must leave the chamber."),
    quantity(weld_shielding_temperature, "weld.shielding_temperature", Dimension::temperature, 423.15, 873.15,
             "Metal temperature below which gas may leave the weld."),
    quantity(weld_interpass_temperature, "weld.interpass_temperature", Dimension::temperature, 353.15, 873.15,
             "Temperature of the joint below which the next run may start."),
    choice(gas_species, "gas.species", species, "Purge gas."),
    quantity(gas_oxygen_in_supply, "gas.oxygen_in_supply", Dimension::ratio, 0, 1000 * ppm,
             "Oxygen in the supplied gas."),
    quantity(gas_oxygen_limit_bore, "gas.oxygen_limit.bore", Dimension::ratio, 1 * ppm, 10000 * ppm,
             "Oxygen at the joint's inside below which the arc may be struck."),
    quantity(gas_oxygen_limit_chamber, "gas.oxygen_limit.chamber", Dimension::ratio, 1 * ppm, 10000 * ppm,
             "Oxygen at the joint's outside below which the arc may be struck."),
    quantity(gas_supply_pressure, "gas.supply_pressure", Dimension::pressure, 0.05 * bar, 10 * bar,
             "Gauge pressure at the inlet of the supply hose."),
    choice(gas_hose_material, "gas.hose.material", hose_materials, "Material of the hoses."),
    quantity(gas_hose_inside_diameter, "gas.hose.inside_diameter", Dimension::length, 1 * mm, 15 * mm,
             "Inside diameter of the hoses."),
    quantity(gas_hose_wall, "gas.hose.wall", Dimension::length, 0.2 * mm, 5 * mm, "Wall of the hoses."),
    quantity(gas_hose_supply_length, "gas.hose.supply_length", Dimension::length, 100 * mm, 50000 * mm,
             "Hose from the regulator to the gas-port block."),
    quantity(gas_hose_bore_length, "gas.hose.bore_length", Dimension::length, 50 * mm, 10000 * mm,
             "Hose from the gas-port block to the end plug."),
    quantity(gas_hose_chamber_length, "gas.hose.chamber_length", Dimension::length, 50 * mm, 10000 * mm,
             "Hose from the gas-port block to the chamber."),
    text(gas_log, "gas.log", path_length, "CSV file with measured oxygen readings."),
    choice(gas_log_use, "gas.log_use", log_uses,
           "What the log is for: laid beside the curve, or its mixing applied."),
    quantity(gas_log_response, "gas.log_response", Dimension::time, 0, 120,
             "Time the oxygen meter with its line takes to show 90 % of a step: a step test, or its maker's "
             "word."),
    choice(gas_port_thread, "gas.port_thread", port_threads, "Thread of the gas ports."),
    quantity(fixture_radial_clearance, "fixture.radial_clearance", Dimension::length, 2 * mm, 40 * mm,
             "Gas space between the tube (or the cap, the larger) and the cavity wall."),
    quantity(fixture_end_clearance, "fixture.end_clearance", Dimension::length, 3 * mm, 60 * mm,
             "Gas space between the cap's far face and the end plate."),
    quantity(fixture_wall, "fixture.wall", Dimension::length, 1.5 * mm, 25 * mm,
             "Least metal wall between bores and to the outside."),
    quantity(fixture_slot_length, "fixture.slot.length", Dimension::length, 4 * mm, 250 * mm,
             "Length of the slot along the tube's axis."),
    quantity(fixture_slot_width, "fixture.slot.width", Dimension::length, 4 * mm, 250 * mm,
             "Width of the slot across the tube's axis."),
    quantity(fixture_diffuser_hole, "fixture.diffuser_hole", Dimension::length, 1 * mm, 4 * mm,
             "Diameter of each diffuser hole between plenum and cavity."),
    choice(fixture_material, "fixture.material", fixture_metals,
           "Metal of chamber, end plate, plug and block."),
    choice(fixture_pin_material, "fixture.pin_material", pin_metals, "Metal of the backing pin."),
    count(fixture_circuits, "fixture.circuits", 2, 4,
          "Outlets of the gas-port block: bore, chamber, spares."),
    choice(fixture_plug, "fixture.plug", plugs,
           "Kind of end plug: O-ring in the bore, rubber sleeve that a knob expands, cup over the tube."),
    choice(fixture_cradle, "fixture.cradle", cradles,
           "What rolls on the stands: the tube itself (stands), or a spindle on the plug that holds it "
           "(spindle)."),
    choice(fixture_chamber, "fixture.chamber", chambers,
           "What the chamber is made of: milled from a block, or plates screwed together over gaskets."),
    text_list(fixture_family, "fixture.family",
              "Job files of other tubes welded on the same base plate, gas-port block and cradle."),
    choice(shop_units, "shop.units", unit_systems, "Units of the sheets and of the threads chosen."),
    choice(shop_sheet, "shop.sheet", sheets, "Paper size of the sheets."),
    choice(shop_projection, "shop.projection", projections, "First or third angle projection."),
    quantity(shop_argon_price, "shop.argon_price", Dimension::price, 0, 1e6, "Price of the gas by volume."),
    quantity(shop_bottle_water_volume, "shop.bottle.water_volume", Dimension::volume, 1e-3, 1,
             "Water volume of the gas bottle."),
    quantity(shop_bottle_pressure, "shop.bottle.pressure", Dimension::pressure, 1 * bar, 300 * bar,
             "Gauge pressure of a full bottle."),
    quantity(shop_room_volume, "shop.room.volume", Dimension::volume, 5, 1e5, "Volume of the room."),
    quantity(shop_room_air_changes_per_hour, "shop.room.air_changes_per_hour", Dimension::ratio, 0, 100,
             "Air changes of the room an hour."),
    quantity(shop_draught, "shop.draught", Dimension::velocity, 0, 10, "Air speed over the bench."),
    text_list(shop_stock, "shop.stock",
              "Bar and plate at hand: plate 20 mm, flat 20 mm x 60 mm, bar 60 mm, round 1.5 in."),
}};

constexpr bool in_key_order() {
  for (std::size_t i = 0; i < table.size(); ++i) {
    if (table[i].key != static_cast<Key>(i)) {
      return false;
    }
  }
  return true;
}
static_assert(in_key_order(), "the field table follows the order of Key");

} // namespace

std::span<const FieldInfo> fields() {
  return table;
}

const FieldInfo &field(Key key) {
  return table[static_cast<std::size_t>(key)];
}

const FieldInfo *field(std::string_view path) {
  const auto found = std::ranges::find(table, path, &FieldInfo::path);
  return found == table.end() ? nullptr : &*found;
}

bool names_metal(const FieldInfo &info) {
  return info.kind == FieldKind::choice && !standards::metal_names(info.choices.front()).empty();
}

} // namespace purgewright::job
