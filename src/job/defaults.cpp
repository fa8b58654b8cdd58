#include "job/defaults.hpp"

#include "purgewright/units/quantity.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace purgewright::job {
namespace {

using units::Basis;
using enum Key;
using Table = std::array<Fallback, key_count>;

constexpr double mm = 1e-3;               // m
constexpr double ppm = 1e-6;              // 1
constexpr double lpm = 1e-3 / 60.0;       // m3/s
constexpr double deg = units::pi / 180.0; // rad

Fallback &at(Table &table, Key key) {
  return table[static_cast<std::size_t>(key)];
}

void practice(Table &table, Key key, double number, std::string_view reason) {
  at(table, key) = {true, number, Basis::common_practice, reason};
}
void simple(Table &table, Key key, double number, std::string_view reason) {
  at(table, key) = {true, number, Basis::fallback, reason};
}
void choice(Table &table, Key key, std::string_view name, std::string_view reason) {
  at(table, key) = {true, choice_index(key, name), Basis::fallback, reason};
}

void add_work(Table &t) {
  practice(t, tube_vent_count, 1, "one vent hole; common practice");
  practice(t, cap_spigot_length, 3 * mm, "3 mm locate a cap without a long inner gap; common practice");
  practice(t, torch_cup_bore, 12.7 * mm, "cup number 8, bore 8/16 in; common practice for thin titanium");
  practice(t, torch_cup_length, 30 * mm, "usual cup of a small torch; common practice, measure the real cup");
  practice(t, torch_stickout, 6 * mm, "about half the cup's bore; common practice");
  practice(t, torch_tilt, 15 * deg, "15 degrees from vertical, pushed; common practice");
  practice(t, torch_gas_flow, 10 * lpm, "10 L/min through a number 8 cup; common practice");
  practice(t, rotation_tacks, 4, "four tacks a quarter turn apart; common practice");
  simple(t, rotation_start_angle, 0, "the first run starts at the index collar's zero");
  choice(t, rotation_direction, "counterclockwise",
         "seen looking at the cap; suits a torch in the right hand, chosen by this program");
  practice(t, weld_voltage, 10, "10 V, a short arc in argon; common practice");
  practice(t, weld_arc_efficiency, 0.77, "0.77, gas tungsten arc on direct current; common practice");
  choice(t, weld_filler, "none", "none: the edges of cap and tube melt into the joint");
}

void add_gas(Table &t) {
  choice(t, gas_species, "argon", "argon is heavier than air and stays in the chamber");
  practice(t, gas_oxygen_in_supply, 2 * ppm, "2 ppm, welding argon 4.8 (99.998 %); common practice");
  practice(t, gas_oxygen_limit_bore, 50 * ppm, "50 ppm, silver to light straw on titanium; common practice");
  practice(t, gas_oxygen_limit_chamber, 50 * ppm,
           "50 ppm, silver to light straw on titanium; common practice");
  practice(t, gas_supply_pressure, 200e3, "2 bar after the regulator; common practice");
  choice(t, gas_log_use, "compare", "a log is laid beside the curve and changes no setting");
  simple(t, gas_log_response, 0.0, "not stated: what the meter lags counts as slow mixing, the safe side");
  choice(t, gas_hose_material, "pvc",
         "soft clear PVC hose, found on most benches: lets 8 barrer of oxygen through, and moisture");
  practice(t, gas_hose_inside_diameter, 4 * mm, "hose 4 mm bore by 6 mm; common practice");
  practice(t, gas_hose_wall, 1 * mm, "hose 4 mm bore by 6 mm; common practice");
  simple(t, gas_hose_supply_length, 2.0, "2 m from bottle to bench; measure the real hose");
  simple(t, gas_hose_bore_length, 1.0, "1 m lets the tube turn; measure the real hose");
  simple(t, gas_hose_chamber_length, 0.6, "0.6 m across the bench; measure the real hose");
}

void add_fixture(Table &t) {
  practice(t, fixture_radial_clearance, 6 * mm, "6 mm of gas round the joint; common practice");
  practice(t, fixture_end_clearance, 8 * mm, "8 mm before the end plate, room for the pin; common practice");
  practice(t, fixture_wall, 4 * mm, "4 mm between drillings in aluminium; common practice");
  practice(t, fixture_diffuser_hole, 2 * mm, "2 mm drill, as many holes as slow the gas; common practice");
  simple(t, fixture_circuits, 2, "one outlet for the bore, one for the chamber");
  choice(t, fixture_plug, "auto", "the first kind that seals this bore and that a hand can set");
  choice(t, fixture_cradle, "auto", "chosen by the tube's length");
  choice(t, fixture_chamber, "auto", "a block up to 5 kg that stock holds, plates beyond");
}

void add_shop(Table &t) {
  choice(t, shop_units, "metric", "metric unless the job says inch");
  simple(t, shop_argon_price, 12.0, "placeholder of 12 EUR/m3: replace it by the price on your invoice");
  simple(t, shop_bottle_water_volume, 0.050, "50 L bottle, a usual size; read it off the bottle's shoulder");
  simple(t, shop_bottle_pressure, 200e5, "200 bar full, a usual filling; read it off the bottle's shoulder");
  simple(t, shop_room_volume, 50.0, "50 m3, a small closed room; measure the real room");
  practice(t, shop_room_air_changes_per_hour, 1.0,
           "one air change an hour, doors closed and no fan; common practice");
  practice(t, shop_draught, 0.1, "0.1 m/s, still air of a room; common practice");
}

Table make_table() {
  Table table{};
  add_work(table);
  add_gas(table);
  add_fixture(table);
  add_shop(table);
  return table;
}

} // namespace

const Fallback &fallback(Key key) {
  static const Table table = make_table();
  return table[static_cast<std::size_t>(key)];
}

double choice_index(Key key, std::string_view name) {
  const auto choices = field(key).choices;
  const auto found = std::ranges::find(choices, name);
  if (found == choices.end()) {
    std::abort(); // a default that the key table does not know
  }
  return static_cast<double>(found - choices.begin());
}

} // namespace purgewright::job
