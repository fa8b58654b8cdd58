#include "broken_rules.hpp"
#include "support/examples.hpp"

#include <catch2/catch.hpp>

namespace purgewright::checks::test {

job::Job edited(const Edits &edits) {
  auto resolution = job::resolve(purgewright::test::example_draft("logger-25", edits));
  for (const auto &problem : resolution.problems) {
    INFO(job::to_text(problem));
  }
  REQUIRE(resolution.job);
  return std::move(*resolution.job);
}

Found not_passed(const Design &design) {
  Found found;
  for (const auto &result : judge(design)) {
    INFO(result.id);
    CHECK((result.status == Status::pass) ==
          (result.has_amount && keeps(result.value, result.limit, result.bound)));
    if (result.status != Status::pass) {
      found[result.id] = result.status;
      CHECK_FALSE(result.remedy.empty());
    }
  }
  return found;
}

Found not_passed(const Edits &edits) {
  return not_passed(evaluate(edited(edits)));
}

std::string names(const Found &found) {
  std::string text;
  for (const auto &[id, status] : found) {
    text += id + ":" + std::string(to_text(status)) + " ";
  }
  return text;
}

Edits large(Edits more) {
  Edits all{{Key::tube_outside_diameter, 70 * mm},
            {Key::cap_diameter, 70 * mm},
            {Key::tube_wall, 1 * mm},
            {Key::tube_length, 280 * mm},
            {Key::tube_vent_from_joint, 12 * mm},
            {Key::weld_current, 40},
            {Key::tube_outside_diameter_tolerance, 0.015 * mm},
            {Key::fixture_diffuser_hole, 3 * mm}};
  all.insert(all.end(), more.begin(), more.end());
  return all;
}

const std::vector<Bad> &bad_alone() {
  static const std::vector<Bad> jobs{
      {"access.slot_width", Status::fail, {{Key::fixture_slot_width, 27 * mm}}},
      {"access.slot_behind", Status::fail, {{Key::fixture_slot_length, 18.9 * mm}}},
      {"access.swing_clear", Status::caution, {{Key::rotation_swing_radius, 14 * mm}}},
      {"access.torch_clear",
       Status::fail,
       {{Key::torch_tilt, 30 * degree}, {Key::torch_cup_length, 10 * mm}, {Key::tube_length, 200 * mm}}},
      {"access.line_of_sight", Status::fail, {{Key::torch_stickout, 3 * mm}}},
      {"bench.axial_stop", Status::caution, {{Key::tube_length, 160 * mm}, {Key::weld_current, 29}}},
      {"machining.gallery_drill", Status::caution, {{Key::fixture_circuits, 3}}},
      {"machining.thinnest_wall", Status::caution, {{Key::fixture_diffuser_hole, 1.25 * mm}}},
      {"gas.chamber_limit",
       Status::fail,
       {{Key::gas_hose_inside_diameter, 1.05 * mm}, {Key::gas_supply_pressure, 20e3}}},
      {"gas.prepurge_time", Status::fail, {{Key::tube_vent_from_joint, 110 * mm}}},
      {"gas.bore_welding_floor", Status::fail, {{Key::gas_oxygen_limit_bore, 2.5 * ppm}}},
      {"gas.draught", Status::caution, {{Key::shop_draught, 0.48}}},
      {"gas.draught", Status::fail, {{Key::shop_draught, 2}}},
      {"gas.room_oxygen",
       Status::fail,
       {{Key::shop_room_volume, 5}, {Key::shop_room_air_changes_per_hour, 0}}},
      {"heat.run_order", Status::caution, {{Key::rotation_order, 0}}},
      {"gas.torch_laminar", Status::caution, {{Key::torch_gas_flow, 18e-3 / 60}}},
      {"gas.torch_core",
       Status::caution,
       {{Key::torch_cup_bore, 8 * mm}, {Key::torch_gas_flow, 6e-3 / 60}, {Key::torch_stickout, 16 * mm}}},
  };
  return jobs;
}

const std::vector<Bad> &bad_with_others() {
  static const std::vector<Bad> jobs{
      {"heat.pool_width", // on the warm fixture it heats the rollers too
       Status::caution,
       {{Key::weld_current, 65}, {Key::cap_thickness, 3 * mm}, {Key::rotation_runs, 8}}},
      {"access.slot_ahead",
       Status::fail,
       {{Key::cap_thickness, 8 * mm}, {Key::tube_length, 200 * mm}, {Key::fixture_slot_length, 20.48 * mm}}},
      {"heat.pin_contact",
       Status::fail,
       {{Key::rotation_runs, 1}, {Key::weld_current, 120}, {Key::weld_travel_speed, 2 * mm}}},
      {"bench.balance",
       Status::fail,
       {{Key::tube_length, 138 * mm},
        {Key::tube_wall, 0.5 * mm},
        {Key::weld_current, 20},
        {Key::fixture_cradle, 1}}},
      {"access.loading_path", Status::fail, {{Key::fixture_slot_width, 26.2 * mm}}},
      {"access.ports_reached",
       Status::fail,
       {{Key::gas_port_thread, 1}, {Key::fixture_slot_length, 11.3 * mm}}},
      {"machining.diffuser_drill",
       Status::caution,
       {{Key::fixture_wall, 17.2 * mm},
        {Key::tube_outside_diameter, 29.4 * mm},
        {Key::cap_diameter, 29.4 * mm}}},
      {"heat.series", // a thick wall's arc warms the rollers' bearings too
       Status::caution,
       {{Key::tube_outside_diameter, 51 * mm},
        {Key::cap_diameter, 51 * mm},
        {Key::tube_wall, 4 * mm},
        {Key::tube_length, 300 * mm},
        {Key::cap_thickness, 7 * mm},
        {Key::weld_current, 150},
        {Key::weld_travel_speed, 0.2 * mm},
        {Key::tube_outside_diameter_tolerance, 0.015 * mm}}},
      {"heat.joint_melts", Status::fail, {{Key::weld_travel_speed, 16 * mm}}},
      {"heat.hand_turns", Status::fail, {{Key::weld_travel_speed, 6.7 * mm}}},
      {"heat.cap_rim", Status::caution, {{Key::cap_thickness, 0.9 * mm}}},
      {"heat.pin_bonds", // as many short runs as keep the centre's middle under the transus
       Status::caution,
       {{Key::fixture_pin_material, 4}, {Key::rotation_runs, 1}, {Key::weld_current, 60}}},
      {"heat.spots_overlap", Status::fail, {{Key::rotation_seam, 1}, {Key::rotation_runs, 8}}},
      {"machining.drill_depth", // so is the port block's gallery
       Status::caution,
       large({{Key::tube_outside_diameter, 100 * mm},
              {Key::cap_diameter, 100 * mm},
              {Key::cap_thickness, 2 * mm},
              {Key::tube_length, 500 * mm},
              {Key::fixture_plug, 2},
              {Key::gas_port_thread, 4},
              {Key::fixture_diffuser_hole, 3.9 * mm}})},
      {"gas.torch_laminar", Status::fail, {{Key::torch_gas_flow, 35e-3 / 60}}},
      {"heat.tacks_melt", Status::fail, {{Key::weld_current, 10}}},
      {"gas.warm_chamber",
       Status::caution,
       {{Key::tube_outside_diameter, 51 * mm},
        {Key::cap_diameter, 51 * mm},
        {Key::tube_wall, 4 * mm},
        {Key::tube_length, 300 * mm},
        {Key::cap_thickness, 7 * mm},
        {Key::weld_current, 150},
        {Key::weld_travel_speed, 1 * mm},
        {Key::tube_outside_diameter_tolerance, 0.015 * mm}}},
      {"heat.rollers",
       Status::caution,
       {{Key::tube_outside_diameter, 51 * mm},
        {Key::cap_diameter, 51 * mm},
        {Key::tube_wall, 4 * mm},
        {Key::tube_length, 300 * mm},
        {Key::weld_current, 130}}},
      {"machining.thinnest_wall", Status::fail, {{Key::fixture_diffuser_hole, 1 * mm}}},
      {"machining.slot_corner", Status::caution, large({{Key::fixture_slot_length, 10 * mm}})},
      {"gas.chamber_welding_floor", Status::fail, {{Key::torch_gas_flow, 1e-3 / 60}}},
      {"gas.torch_back", Status::fail, {{Key::torch_gas_flow, 1e-3 / 60}}},
      {"gas.torch_preflow", Status::fail,
       large({{Key::tube_outside_diameter, 114.3 * mm},
              {Key::cap_diameter, 114.3 * mm},
              {Key::tube_wall, 3 * mm},
              {Key::tube_length, 400 * mm},
              {Key::weld_current, 110},
              {Key::torch_gas_flow, 2.2e-3 / 60}})},
      {"gas.stays_in_chamber", Status::fail, {{Key::gas_species, 1}}},
      {"gas.bore_pressure", // a thick wall's puddle falls in by its own weight
       Status::fail,
       {{Key::tube_material, 2}, {Key::tube_wall, 6 * mm}}},
      {"gas.bore_limit", Status::fail, {{Key::gas_oxygen_limit_bore, 2.01 * ppm}}},
      {"gas.chamber_limit", Status::fail, {{Key::gas_oxygen_limit_chamber, 2.2 * ppm}}},
      {"gas.chamber_welding_floor", Status::fail, {{Key::gas_oxygen_limit_chamber, 5 * ppm}}},
      {"heat.joint_boils", Status::fail, {{Key::weld_current, 320}}},
      {"heat.hot_zone",
       Status::fail,
       {{Key::rotation_runs, 1},
        {Key::weld_current, 200},
        {Key::weld_travel_speed, 0.5 * mm},
        {Key::weld_shielding_temperature, 430}}},
      {"heat.cap_centre",
       Status::caution,
       {{Key::rotation_runs, 1}, {Key::weld_current, 150}, {Key::weld_travel_speed, 0.5 * mm}}},
  };
  return jobs;
}

} // namespace purgewright::checks::test
