#include "purgewright/checks/rules.hpp"
#include "support/paths.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <future>
#include <limits>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

using namespace purgewright;
using namespace purgewright::checks;
using job::Key;

namespace {

using Edits = std::vector<std::pair<Key, double>>; // SI; index of a choice
using Found = std::map<std::string, Status>;       // rules that do not pass

constexpr double mm = 1e-3, ppm = 1e-6, degree = units::pi / 180.0;

job::Job edited(const Edits &edits) {
  auto reading = job::read_draft(purgewright::test::project_file("examples/logger-25.yaml"));
  REQUIRE(reading.problems.empty());
  for (const auto &[key, number] : edits) {
    auto &entry = reading.draft[key];
    entry.stated = true;
    entry.is_share = false;
    entry.number = number;
  }
  auto resolution = job::resolve(reading.draft);
  for (const auto &problem : resolution.problems) {
    INFO(job::to_text(problem));
  }
  REQUIRE(resolution.job);
  return std::move(*resolution.job);
}

Found not_passed(const Design &design) {
  Found found;
  for (const auto &result : judge(design)) {
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

// A large thin tube that passes every rule.
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

struct Bad {
  std::string rule;
  Status status;
  Edits edits;
};

// Jobs that break one rule and no other.
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
      {"machining.drill_depth", Status::caution,
       large({{Key::tube_outside_diameter, 100 * mm},
              {Key::cap_diameter, 100 * mm},
              {Key::tube_length, 500 * mm},
              {Key::fixture_diffuser_hole, 3.9 * mm}})},
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
      {"heat.pool_width", Status::caution, {{Key::weld_current, 55}}},
      {"heat.joint_melts", Status::fail, {{Key::weld_travel_speed, 16 * mm}}},
  };
  return jobs;
}

// Jobs that break a rule which does not break alone.
const std::vector<Bad> &bad_with_others() {
  static const std::vector<Bad> jobs{
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
        {Key::weld_current, 130},
        {Key::weld_travel_speed, 0.5 * mm},
        {Key::tube_outside_diameter_tolerance, 0.015 * mm}}},
      {"heat.tacks_melt", Status::fail, {{Key::weld_current, 10}}},
      {"gas.warm_chamber",
       Status::caution,
       {{Key::tube_outside_diameter, 51 * mm},
        {Key::cap_diameter, 51 * mm},
        {Key::tube_wall, 4 * mm},
        {Key::tube_length, 300 * mm},
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
      {"gas.torch_preflow", Status::fail, {{Key::torch_gas_flow, 1e-3 / 60}}},
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

struct Altered {
  std::string rule;
  Status status;
  void (*alter)(Design &);
};

// A sound design altered by hand, so that it breaks one rule and no other.
const std::vector<Altered> &altered() {
  static const std::vector<Altered> designs{
      {"heat.interpass", Status::fail, // a limit that the plan did not know of
       [](Design &d) { d.heat.interpass_temperature = units::celsius(100.0); }},
      {"access.pin_away_from_weld", Status::fail,
       [](Design &d) { d.layout.pin.contact_outer_radius = 0.4 * d.job.tube.inside_diameter; }},
      {"access.loading_path", Status::fail, // the cover does not slide far enough
       [](Design &d) {
         d.layout.cover.travel *= 0.5;
         d.clearances.loading = fixture::clearances(d.job, d.layout).loading;
       }},
      {"access.tube_slides_in", Status::fail,
       [](Design &d) {
         d.layout.stand.notch_floor = -0.5 * d.job.tube.outside_diameter;
         d.clearances = fixture::clearances(d.job, d.layout);
       }},
      {"access.plug_comes_out", Status::fail, [](Design &d) { d.clearances.withdrawing = {}; }},
      {"access.tube_turns_clear", Status::fail, // a base plate that reaches under what swings
       [](Design &d) {
         d.job.rotation.swing_radius = units::millimetres(60.0);
         d.clearances = fixture::clearances(d.job, d.layout);
       }},
      {"access.axle_screws", Status::caution, // as if the stands stood nearer to each other
       [](Design &d) {
         auto nearer = d.layout;
         auto &stands = nearer.stand.placements;
         stands[0].x = stands[1].x - units::millimetres(50.0);
         d.clearances.axles = fixture::clearances(d.job, nearer).axles;
       }},
      {"bench.units_said", Status::caution,
       [](Design &d) { d.job.origins[static_cast<std::size_t>(Key::tube_outside_diameter)].inches = true; }},
      {"bench.press_stroke", Status::fail,
       [](Design &d) { d.layout.stop.spring_solid = d.layout.stop.spring_free - d.layout.stop.preload; }},
      {"access.screws_reached", Status::fail, // the pin is as thick as the plate
       [](Design &d) {
         d.layout.pin.shank_radius = 0.5 * d.layout.end_plate.width;
         d.clearances.screws = fixture::clearances(d.job, d.layout).screws;
       }},
      {"access.ports_reached", Status::fail, // the base is in the fitting's way
       [](Design &d) {
         d.layout.body.inlet_z = d.layout.base.placement.z;
         d.clearances = fixture::clearances(d.job, d.layout);
       }},
      {"access.valves_reached", Status::fail, // the block stands against the chamber
       [](Design &d) {
         d.layout.block.placement.y = -0.5 * (d.layout.body.width + d.layout.block.width);
         d.layout.block.placement.x = d.layout.body.x_min;
         d.clearances.valves = fixture::clearances(d.job, d.layout).valves;
       }},
      {"assembly.no_interference", Status::fail,
       [](Design &d) {
         d.solids_known = true;
         d.clashes = {{"gas-port-block", "base-plate", units::cubic_metres(1e-9)}};
       }},
      {"fit.tube_turns", Status::fail,
       [](Design &d) { d.layout.body.opening_radius = 0.5 * d.job.tube.outside_diameter_most(); }},
      {"fit.wiper_presses", Status::fail,
       [](Design &d) { d.layout.wiper.hole_radius = 0.5 * d.job.tube.outside_diameter_least(); }},
      {"exit.clearance", Status::fail, // a cap that overhangs
       [](Design &d) {
         d.job.cap.diameter += 2.0 * units::millimetres(1.5);
         d.clearances.leaving = fixture::clearances(d.job, d.layout).leaving;
       }},
      {"fit.plug_enters", Status::fail,
       [](Design &d) { d.layout.plug.spigot_radius = 0.501 * d.job.tube.inside_diameter_least(); }},
      {"seal.plug_stretch", Status::fail, [](Design &d) { d.layout.plug.seal.stretch = 0.051; }},
      {"seal.plug_fill", Status::fail, [](Design &d) { d.layout.plug.seal.fill_most = 0.86; }},
      {"seal.plug_squeeze_most", Status::fail, [](Design &d) { d.layout.plug.seal.squeeze_most = 0.4; }},
      {"seal.plug_squeeze_least", Status::fail, [](Design &d) { d.layout.plug.seal.squeeze_least = -0.01; }},
      {"seal.plug_hand", Status::fail, [](Design &d) { d.layout.plug.seal.hand = 151.0; }},
      {"machining.plenum_mill", Status::caution,
       [](Design &d) { d.layout.body.plenum.corner_radius *= 0.2; }},
      {"machining.diffuser_drill", Status::caution,
       [](Design &d) { d.layout.body.plenum.ceiling -= units::millimetres(18.0); }},
      {"machining.drill_depth", Status::caution, [](Design &d) { d.layout.block.mount_radius *= 0.25; }},
      {"machining.groove_mill", Status::caution,
       [](Design &d) { d.layout.pin.groove_width = 0.19 * d.layout.pin.relief_depth; }},
      {"machining.screw_bottoms", Status::fail,
       [](Design &d) { d.layout.body.end_tapping.depth -= units::millimetres(1.0); }},
      {"machining.screw_bottoms", Status::fail, // a set screw across the exhaust
       [](Design &d) {
         auto &plug = d.layout.plug;
         plug.cross_screw = standards::screw("M5");
         plug.exhaust.radius = plug.shoulder_radius - units::millimetres(5.0);
       }},
      {"machining.thread_engagement", Status::caution,
       [](Design &d) { d.layout.stand.thickness = 1.4 * d.layout.stand.axle->thread; }},
      {"machining.setups", Status::caution, // two gas ways, a lance's seat and a nose on one plug
       [](Design &d) {
         d.layout.plug.ways = fixture::GasWays::beside;
         d.layout.plug.exhaust.z = units::millimetres(10.0);
         d.layout.plug.inlet.z = -d.layout.plug.exhaust.z;
         d.layout.plug.inlet.seat_depth = units::millimetres(10.0);
         d.layout.plug.seal.groove_radius += d.layout.plug.exhaust.z; // which leaves them metal
       }},
      {"gas.bore_limit", Status::fail, [](Design &d) { d.purge.bore.prepurge_floor.oxygen = 60 * ppm; }},
      {"gas.bore_limit", Status::caution, [](Design &d) { d.purge.bore.reached = false; }},
      {"gas.chamber_limit", Status::caution, [](Design &d) { d.purge.chamber.reached = false; }},
      {"gas.chamber_limit", Status::fail,
       [](Design &d) { d.purge.chamber.prepurge_floor.oxygen = 60 * ppm; }},
      {"gas.chamber_welding_floor", Status::fail,
       [](Design &d) { d.purge.chamber.welding_floor.oxygen = 60 * ppm; }},
      {"gas.bore_pressure", Status::fail,
       [](Design &d) { d.purge.pressure.welding = 2.0 * d.purge.pressure.limit; }},
      {"gas.bore_stays_open", Status::fail, [](Design &d) { d.areas.vent = {}; }},
      {"gas.torch_undisturbed", Status::fail, [](Design &d) { d.purge.bench.shield_ratio = 0.26; }},
      {"gas.supply_pressure", Status::fail,
       [](Design &d) { d.job.gas.supply_pressure = units::pascals(100.0); }},
      {"gas.torch_away", Status::fail, [](Design &d) { d.purge.torch.away.high = 0.21; }},
      {"gas.torch_preflow", Status::fail, [](Design &d) { d.purge.torch.cleared = false; }},
      {"gas.torch_preflow", Status::fail,
       [](Design &d) { d.purge.torch.preflow = 1.01 * gas::longest_preflow; }},
      {"gas.prepurge_time", Status::fail, [](Design &d) { d.purge.chamber.high = 1.01 * gas::longest_wait; }},
      {"gas.warm_chamber", Status::caution, [](Design &d) { d.series.settled = units::celsius(132.0); }},
      {"heat.holds_reached", Status::fail, // and no air comes in, which metal so hot would not stand
       [](Design &d) {
         d.heat.runs.back().reached = false;
         d.purge.torch.away = {};
       }},
      {"heat.hot_zone", Status::fail, [](Design &d) { d.heat.hot_zone = 1.01 * d.heat.covered; }},
      {"heat.o_ring", Status::caution, [](Design &d) { d.heat.o_ring_peak = units::celsius(201.0); }},
      {"heat.o_ring", Status::fail, [](Design &d) { d.heat.o_ring_peak = units::celsius(301.0); }},
      {"heat.wiper", Status::fail, [](Design &d) { d.heat.wiper_peak = units::celsius(301.0); }},
      {"heat.series", Status::fail, [](Design &d) { d.series.warm->runs.back().reached = false; }},
      {"heat.rollers", Status::caution, [](Design &d) { d.heat.roller_peak = units::celsius(111.0); }},
      {"heat.cap_centre", Status::fail, [](Design &d) { d.heat.cap_centre_peak = units::celsius(1661.0); }},
      {"heat.pin_contact", Status::fail, [](Design &d) { d.heat.pin_contact_peak = units::celsius(1086.0); }},
      {"heat.tacks_melt", Status::fail,
       [](Design &d) { d.heat.tacks.back().cap_edge_peak = units::celsius(1600.0); }},
      {"heat.joint_melts", Status::fail,
       [](Design &d) { d.heat.runs.back().joint_peak = units::celsius(1600.0); }},
      {"heat.joint_boils", Status::fail, [](Design &d) { d.heat.joint_peak = units::celsius(3290.0); }},
  };
  return designs;
}

} // namespace

TEST_CASE("every rule has an id of its own, a title, a source and a remedy") {
  std::set<std::string_view> ids, titles;
  for (const auto &rule : rules()) {
    INFO(rule.id);
    CHECK(ids.insert(rule.id).second);
    CHECK(titles.insert(rule.title).second);
    CHECK_FALSE(rule.source.empty());
    CHECK_FALSE(rule.remedy.empty());
    CHECK(rule.judge != nullptr);
    CHECK(std::ranges::all_of(rule.id,
                              [](unsigned char c) { return std::islower(c) || c == '.' || c == '_'; }));
    CHECK(std::ranges::count(rule.id, '.') == 1);
    CHECK_FALSE(rule.title.ends_with('.'));
  }
  CHECK(ids.size() > 20);
}

TEST_CASE("the examples fail no rule, and the small one passes them all") {
  for (const std::string name : {"logger-25", "logger-38", "logger-51"}) {
    const auto resolution = job::read_job(purgewright::test::example_job(name));
    REQUIRE(resolution.job);
    const Design design = evaluate(*resolution.job);
    const auto results = judge(design);
    INFO(name << ": " << names(not_passed(design)));
    constexpr std::size_t of_solids = 1, of_logs = 10,
                          of_families = 1; // these jobs have neither log nor family
    CHECK(results.size() == rules().size() - of_solids - of_logs - of_families);
    REQUIRE(not_judged(design).size() == of_solids);
    CHECK(not_judged(design).front().rule == "assembly.no_interference");
    CHECK(worst(results) != Status::fail);
    CHECK(tally(design).failing == 0);
  }
  CHECK(not_passed(Edits{}).empty());
  CHECK(not_passed(large({})).empty());
}

TEST_CASE("a bad job breaks the rule it should and no other") {
  for (const auto &bad : bad_alone()) {
    const Found found = not_passed(bad.edits);
    INFO(bad.rule << ", found: " << names(found));
    CHECK(found == Found{{bad.rule, bad.status}});
  }
}

TEST_CASE("a bad job breaks the rule it should among others") {
  for (const auto &bad : bad_with_others()) {
    const Found found = not_passed(bad.edits);
    INFO(bad.rule << ", found: " << names(found));
    const auto at = found.find(bad.rule);
    REQUIRE(at != found.end());
    CHECK(at->second == bad.status);
  }
}

TEST_CASE("a design altered by hand breaks the rule it should and no other") {
  const Design sound = evaluate(edited({}));
  for (const auto &bad : altered()) {
    Design design = sound;
    bad.alter(design);
    const Found found = not_passed(design);
    INFO(bad.rule << ", found: " << names(found));
    CHECK(found == Found{{bad.rule, bad.status}});
    const Tally counted = tally(design);
    CHECK(counted.failing == (bad.status == Status::fail ? 1 : 0));
    CHECK(counted.cautions == (bad.status == Status::caution ? 1 : 0));
    CHECK(counted.worst == (bad.status == Status::fail ? bad.rule : ""));
  }
}

TEST_CASE("a fixture that settles too warm breaks its rule, and its argon rises") {
  Design design = evaluate(edited({}));
  design.series.settled = design.heat.shielding_temperature;
  CHECK(not_passed(design) == Found{{"heat.series", Status::fail}, {"gas.warm_chamber", Status::caution}});
}

TEST_CASE("metal that a hold does not cool stands no more oxygen than welding does") {
  Design design = evaluate(edited({}));
  const auto away = [&] {
    const auto results = judge(design);
    return *std::ranges::find(results, "gas.torch_away", &RuleResult::id);
  };
  CHECK(away().status == Status::pass);
  CHECK(away().limit == gas::air_oxygen);
  CHECK(away().value == design.purge.torch.away.high);
  design.heat.tacks.front().reached = false;
  CHECK(away().status == Status::fail);
  CHECK(away().limit == design.job.gas.oxygen_limit_chamber);
}

TEST_CASE("the preflow of the torch is a part of the time between arcs") {
  const Design design = evaluate(edited({}));
  const auto preflow = design.purge.torch.preflow;
  CHECK(preflow > units::Time{});
  CHECK(design.heat.torch_preflow == preflow);
  CHECK(design.heat.torch_move.value() == Approx((heat::Options{}.torch_move + preflow).value()));
  CHECK(design.series.warm->torch_preflow == preflow);
}

TEST_CASE("a remedy names what dominates, and no hose that is no tighter") {
  Design design = evaluate(edited({}));
  design.purge.chamber.prepurge_floor = {
      .oxygen = 60 * ppm, .dominant = gas::Cause::hose_walls, .dominant_share = 0.9};
  const auto remedy = [&](std::string_view id) {
    const auto results = judge(design);
    return std::ranges::find(results, id, &RuleResult::id)->remedy;
  };
  CHECK_THAT(remedy("gas.chamber_limit"),
             Catch::Contains("hose walls brings 90 %") && Catch::Contains("nylon"));
  CHECK_THAT(remedy("gas.chamber_limit"), !Catch::Contains("PTFE") && !Catch::Contains("tolerance"));
  design.job.gas.hose.material = "nylon";
  CHECK_THAT(remedy("gas.chamber_limit"), Catch::Contains("shorter hoses") && !Catch::Contains("nylon"));
  design.purge.bore.high = 2.0 * gas::longest_wait;
  design.purge.bore.high_vent_above = gas::least_wait;
  CHECK_THAT(remedy("gas.prepurge_time"), Catch::Contains("vent uppermost"));
  design.purge.bore.high_vent_above = design.purge.bore.high;
  CHECK_THAT(remedy("gas.prepurge_time"),
             Catch::Contains("tube.vent.from_joint") && Catch::Contains("lance"));
}

// Rules that guard the program's own choices, and why no job breaks them. None of some two million drawn over
// all keys did in closed form, nor of twenty thousand with purge and heat.
const std::map<std::string_view, std::string_view> &guards() {
  static const std::map<std::string_view, std::string_view> all{
      {"access.pin_away_from_weld", "the pin's ring is a share of the bore"},
      {"access.tube_slides_in", "the notches follow the largest tube"},
      {"access.plug_comes_out", "the rear stand stands ahead of the plug, whatever the tube's length"},
      {"access.screws_reached", "screws are placed where their heads fit"},
      {"access.axle_screws", "a hand between the stands asks for more room than the axles' key"},
      {"access.tube_turns_clear", "what swings wide swings beyond the end of the base plate"},
      {"bench.press_stroke", "the stop's rods follow the cap's spigot"},
      {"bench.units_said", "a draft drawn in numbers has no units"},
      {"access.valves_reached", "outlets stand apart by fitting and fingers"},
      {"assembly.no_interference", "a fault of the program"},
      {"fit.tube_turns", "the rear opening follows the largest tube"},
      {"fit.wiper_presses", "the wiper's hole follows the smallest tube"},
      {"exit.clearance", "the rear opening follows tube, bead and cap"},
      {"fit.plug_enters", "the spigot follows the narrowest bore"},
      {"seal.plug_squeeze_least", "the kind of plug follows the tube's tolerances"},
      {"seal.plug_squeeze_most", "the kind of plug follows the tube's tolerances"},
      {"seal.plug_stretch", "only rings of little stretch are tried"},
      {"seal.plug_fill", "the groove is as wide as its ring asks for"},
      {"seal.plug_hand", "the kind of plug follows what a hand does"},
      {"machining.plenum_mill", "the plenum is as deep as its port wants it"},
      {"machining.groove_mill", "relief and grooves of the pin follow the same ring"},
      {"machining.thread_engagement", "plates and holes follow their screws"},
      {"machining.screw_bottoms", "holes follow their listed screws"},
      {"machining.setups", "the parts' features are always the same"},
      {"gas.bore_stays_open", "a tube without a vent gets an exhaust"},
      {"gas.torch_away", "a hold lasts until the metal stands air"},
      {"gas.torch_undisturbed", "flow while welding is turned down to this limit"},
      {"gas.supply_pressure", "flows follow what the lines pass"},
      {"heat.holds_reached", "no weld found is hot that long"},
      {"heat.interpass", "a run waits until the joint is as cold as that"},
      {"heat.wiper", "the wiper's place follows the arc's energy"},
      {"heat.o_ring",
       "no tube found is short enough, with room for hand and stands, to warm its plug that far"},
  };
  return all;
}

TEST_CASE(
    "every rule is broken by a job, or guards a choice of the program's and is broken by an altered design") {
  // The first by the pair of files in the test below, those of the log in measured_log_test.cpp.
  std::set<std::string_view> by_job{"bench.family",    "log.bore_floor",    "log.bore_steady",
                                    "log.bore_fit",    "log.chamber_floor", "log.chamber_steady",
                                    "log.chamber_fit", "log.bore_under",    "log.chamber_under",
                                    "log.bore_wait",   "log.chamber_wait"},
      by_hand;
  for (const auto *jobs : {&bad_alone(), &bad_with_others()}) {
    for (const auto &bad : *jobs) {
      by_job.insert(bad.rule);
    }
  }
  for (const auto &bad : altered()) {
    by_hand.insert(bad.rule);
  }
  for (const auto &rule : rules()) {
    INFO(rule.id);
    CHECK(by_job.contains(rule.id) != guards().contains(rule.id));
    CHECK((by_job.contains(rule.id) || by_hand.contains(rule.id)));
  }
}

TEST_CASE("a family with a tube too short for hand and stands fails its rule and no other") {
  auto read =
      job::read_job(purgewright::test::project_file("tests/unit/checks/jobs/family-with-short-tube.yaml"));
  REQUIRE(read.job);
  CHECK(not_passed(evaluate(std::move(*read.job))) == Found{{"bench.family", Status::fail}});
}

TEST_CASE("a rule that needs solids is judged once they are known, and names the parts that clash") {
  Design design = evaluate(edited({}));
  const auto judged = [&] {
    const auto results = judge(design);
    const auto at = std::ranges::find(results, "assembly.no_interference", &RuleResult::id);
    return at == results.end() ? std::optional<RuleResult>{} : *at;
  };
  CHECK_FALSE(judged());
  design.solids_known = true;
  REQUIRE(judged());
  CHECK(judged()->status == Status::pass);
  design.clashes = {{"end-plug", "cradle-stand", units::cubic_metres(2e-9)},
                    {"slot-cover", "chamber-body", units::cubic_metres(3e-9)}};
  CHECK(judged()->status == Status::fail);
  CHECK(judged()->value == Approx(5e-9));
  CHECK_THAT(judged()->remedy, Catch::Contains("end-plug and cradle-stand, slot-cover and chamber-body"));
}

TEST_CASE("a rule's limit is its edge") {
  // The slot's need, exactly met, passes; a micrometre less does not.
  const Design sound = evaluate(edited({}));
  const double need = sound.layout.body.slot_needs.width.value();
  CHECK(not_passed({{Key::fixture_slot_width, need}}).empty());
  CHECK(not_passed({{Key::fixture_slot_width, need - 1e-6}}) == Found{{"access.slot_width", Status::fail}});
}

TEST_CASE("dimensions that clash come as failed rules and nothing else is judged") {
  const Design design = evaluate(edited({{Key::tube_length, 60 * mm}, {Key::fixture_cradle, 1}}));
  REQUIRE_FALSE(design.layout.buildable());
  const auto results = judge(design);
  REQUIRE(results.size() == design.layout.conflicts.size());
  CHECK(results[0].id == "layout.tube_length");
  CHECK(results[0].status == Status::fail);
  CHECK(results[0].value == design.layout.conflicts[0].by.value());
  CHECK_FALSE(results[0].title.empty());
  CHECK_FALSE(results[0].remedy.empty());
  const Tally counted = tally(design);
  CHECK(counted.clashes);
  CHECK(counted.judged == 0);
  CHECK(counted.failing == static_cast<int>(results.size()));
  CHECK(std::ranges::find(results, counted.worst, &RuleResult::id) != results.end());
  CHECK(not_judged(design).size() == rules().size());
  CHECK(worst(results) == Status::fail);
}

TEST_CASE("the closed form judges what does not need the purge model, with the same verdicts") {
  for (const auto &bad : bad_alone()) {
    const Design full = evaluate(edited(bad.edits)), quick = evaluate_closed_form(edited(bad.edits));
    const auto all = judge(full), some = judge(quick);
    std::size_t compared = 0;
    for (const auto &result : some) {
      const auto same = std::ranges::find(all, result.id, &RuleResult::id);
      REQUIRE(same != all.end());
      INFO(result.id);
      CHECK(same->status == result.status);
      CHECK(same->value == result.value);
      ++compared;
    }
    CHECK(compared >= 15);
    CHECK(compared < all.size());
  }
}

TEST_CASE("designs evaluated at once are those evaluated alone", "[parallel]") {
  const auto figures_of = [](const Design &design) {
    std::vector<double> values;
    for (const auto &figure : figures(design)) {
      values.push_back(figure.value);
    }
    return values;
  };
  const job::Job first = edited({}), second = edited({{Key::tube_length, 190 * mm}});
  auto other = std::async(std::launch::async, [&] { return figures_of(evaluate(second)); });
  const auto one = figures_of(evaluate(first));
  CHECK(one == figures_of(evaluate(first)));
  CHECK(other.get() == figures_of(evaluate(second)));
}

TEST_CASE("no rules, nothing wrong; the worst of several is the worst") {
  CHECK(worst({}) == Status::pass);
  RuleResult pass, caution, fail;
  caution.status = Status::caution;
  fail.status = Status::fail;
  CHECK(worst({pass, caution}) == Status::caution);
  CHECK(worst({caution, fail, pass}) == Status::fail);
}

TEST_CASE("a row of a sweep judges all that check judges; the closed form says what it leaves out") {
  for (const auto &bad : bad_alone()) {
    const Design full = evaluate(edited(bad.edits)), row = evaluate_row(edited(bad.edits)),
                 quick = evaluate_closed_form(edited(bad.edits));
    const auto ids = [](const Design &design) {
      std::set<std::string> all;
      for (const auto &result : judge(design)) {
        all.insert(result.id);
      }
      return all;
    };
    INFO(bad.rule << ", row: " << names(not_passed(row)) << ", full: " << names(not_passed(full)));
    CHECK(ids(row) == ids(full));
    CHECK(row.series.warm.has_value());
    CHECK(tally(row).judged == static_cast<int>(ids(full).size()));
    CHECK(not_passed(row) == not_passed(full)); // coarse and fine plan agree on these
    const Tally counted = tally(quick);
    const auto names_left_out = not_judged(counted);
    const std::set<std::string> left_out(names_left_out.begin(), names_left_out.end());
    CHECK(left_out.size() == not_judged(quick).size());
    for (const auto &id : ids(full)) {
      INFO(id);
      CHECK(left_out.contains(id) != ids(quick).contains(id));
    }
  }
}

TEST_CASE("the worst failing rule is the one that misses its limit by the greatest share") {
  Design design = evaluate(edited({}));
  design.purge.bore.prepurge_floor.oxygen = 100 * ppm;    // twice the limit
  design.purge.chamber.prepurge_floor.oxygen = 500 * ppm; // ten times
  design.layout.plug.seal.stretch = 0.051;
  const Tally counted = tally(design);
  CHECK(counted.failing == 3);
  CHECK(counted.worst == "gas.chamber_limit");
}

TEST_CASE("a value that is not a number fails its rule, whichever way the rule looks") {
  const double none = std::numeric_limits<double>::quiet_NaN();
  Design design = evaluate(edited({}));
  design.heat.roller_peak = units::kelvins(none); // a caution at worst, by its own judge
  design.purge.bench.draught_flushed = units::metres_per_second(none);
  design.purge.bench.draught_warm = units::metres_per_second(none);
  const Found found = not_passed(design);
  CHECK(found == Found{{"heat.rollers", Status::fail}, {"gas.draught", Status::fail}});
}

TEST_CASE("every verdict says on which side of its limit the value must lie") {
  const Design sound = evaluate(edited({}));
  for (const auto &bad : altered()) {
    Design design = sound;
    bad.alter(design);
    for (const auto &result : judge(design)) {
      if (result.status != Status::pass && std::isfinite(result.value)) {
        INFO(result.id << " " << result.value << " " << to_text(result.bound) << " " << result.limit);
        const bool holds = result.bound == Bound::at_most    ? result.value <= result.limit
                           : result.bound == Bound::at_least ? result.value >= result.limit
                                                             : result.value > result.limit;
        // A hold that never ends and a chamber that is never cleared are told by their own flags.
        CHECK((!holds || result.id == "heat.holds_reached" || result.id == "heat.series" ||
               result.id == "gas.torch_preflow" ||
               (result.status == Status::caution && result.id.ends_with("_limit"))));
      }
    }
  }
}

TEST_CASE("rules of the plug's O-ring are judged where the plug has one") {
  for (const auto &[plug, has_ring] : {std::pair{1.0, true}, {2.0, false}, {3.0, true}}) {
    const Design design = evaluate_closed_form(edited({{Key::fixture_plug, plug}}));
    REQUIRE(design.layout.buildable());
    const auto results = judge(design);
    const auto left_out = not_judged(design);
    for (const std::string rule : {"seal.plug_stretch", "seal.plug_fill"}) {
      INFO(rule << " of plug " << plug);
      CHECK((std::ranges::find(results, rule, &RuleResult::id) != results.end()) == has_ring);
      CHECK(std::ranges::find(left_out, rule, &NotJudged::rule) == left_out.end());
    }
    CHECK(std::ranges::find(results, "seal.plug_squeeze_most", &RuleResult::id) != results.end());
  }
}
