// The network's bracket holds three-dimensional flow solutions of the same geometry (flow_solutions.yaml).
#include "reference_values.hpp"
#include "unit/gas/design_of.hpp"

#include "gas/plan/torch.hpp"

#include <algorithm>

using namespace purgewright;
using namespace purgewright::gas;
using gas::test::example_job;
using gas::test::PurgeDesign;
using reference::entry;
using units::litres_per_minute;

namespace {

// logger-25 with gas that holds no oxygen and hoses that let none through, so that what comes in is all there
// is.
job::Job clean_logger() {
  job::Job job = example_job("logger-25");
  job.gas.oxygen_in_supply = 0.0;
  job.gas.hose.material = "copper";
  job.fixture.slot_length = units::millimetres(20.5); // of the chamber that was solved
  return job;
}

// The flow of the solutions leaves by the slot alone: all of it as the chamber's.
plan::Stage open_stage(double litres) {
  return {.bore = litres_per_minute(1e-6), .chamber = litres_per_minute(litres)};
}

void holds(const OxygenRange &range, double solution) {
  INFO(range.low << " .. " << range.best << " .. " << range.high << " holds " << solution);
  CHECK(range.low <= solution);
  CHECK(solution <= range.high);
  CHECK(range.low <= range.best);
  CHECK(range.best <= range.high);
}

// A bore of the solutions' size: a flat cap on a tube of 45 x 1.5 mm, vent of 4 mm 12 mm from the joint.
PurgeDesign bore_of(const YAML::Node &values) {
  job::Job job = example_job("logger-25");
  job.tube.outside_diameter = job.cap.diameter = units::millimetres(45.0);
  job.tube.wall = job.cap.thickness = units::millimetres(1.5);
  job.tube.inside_diameter = job.tube.outside_diameter - 2.0 * job.tube.wall;
  job.tube.vent = {.diameter = units::millimetres(4.0), .from_joint = units::millimetres(12.0), .count = 1};
  job.rotation.swing_radius = units::millimetres(27.5);
  job.gas.oxygen_limit_bore = values["limit"].as<double>();
  const PurgeDesign first(job);
  job.tube.length = units::metres(values["length_m"].as<double>()) + first.layout.plug.spigot_length;
  const PurgeDesign d(job);
  CHECK(d.job.tube.inside_diameter.value() == Approx(values["bore_m"].as<double>()));
  CHECK(units::to_litres_per_minute(d.bounds.bore.flow) == Approx(values["flow_L_min"].as<double>()));
  return d;
}

} // namespace

TEST_CASE("The bore's bracket holds flow solutions with the outlet above and below", "[reference][gas]") {
  const double above = entry("flow_solutions", "bore_outlet_above").values()["time_s"].as<double>();
  const auto below = entry("flow_solutions", "bore_outlet_below");
  const auto purge = bore_of(below.values()).purge();
  INFO(purge.bore.low.value() << " .. " << purge.bore.time.value() << " .. " << purge.bore.high.value()
                              << ", vent above " << purge.bore.high_vent_above.value());
  CHECK(purge.bore.layer_froude < 1.0);
  CHECK(purge.bore.low.value() <= above);
  CHECK(above <= purge.bore.high_vent_above.value());
  CHECK(purge.bore.high_vent_above < purge.bore.high);
  const double time = below.values()["time_s"].as<double>();
  CHECK(purge.bore.low.value() <= time);
  CHECK(time <= purge.bore.high.value());
  // Not so wide that it would hold anything.
  CHECK(purge.bore.high.value() <= 3.0 * time);
  CHECK(purge.wait().value() >= time);
}

TEST_CASE("The open chamber's bracket holds flow solutions, cold, torch away", "[reference][gas]") {
  const PurgeDesign d(clean_logger());
  const auto table = entry("flow_solutions", "chamber_open_cold");
  for (const auto &row : table.values()["rows"]) {
    const auto range = plan::cold_floor(d.subject(), open_stage(row[0].as<double>()));
    holds(range, row[1].as<double>());
    for (const auto &level : table.values()["with_vent_jet"]) {
      holds(range, level.as<double>());
    }
  }
}

TEST_CASE("The open chamber's bracket holds flow solutions, hot, torch away", "[reference][gas]") {
  const PurgeDesign d(clean_logger());
  const auto table = entry("flow_solutions", "chamber_open_hot");
  const auto drawn = plan::drawn_in(d.subject(), units::kelvins(table.values()["joint_K"].as<double>()));
  for (const auto &row : table.values()["rows"]) {
    const auto range = plan::hot_floor(d.subject(), open_stage(row[0].as<double>()), drawn);
    const double solution = row[1].as<double>();
    holds(range, solution);
    CHECK(range.high <= 3.0 * solution); // the end that rules and sheet take
    CHECK(range.low >= solution / 4.0);
    CHECK(range.best == Approx(solution).epsilon(0.4));
  }
}

TEST_CASE("With the torch over the slot no hot metal draws air in", "[reference][gas]") {
  const PurgeDesign d(clean_logger());
  const auto values = entry("flow_solutions", "torch_over_slot").values();
  const auto drawn = plan::drawn_in(d.subject(), units::kelvins(values["joint_K"].as<double>()));
  plan::Stage stage = open_stage(1.0);
  const auto away = plan::against(drawn, plan::slot_outflow(d.subject(), stage));
  stage.torch = litres_per_minute(values["torch_L_min"].as<double>());
  const auto back = plan::against(drawn, plan::slot_outflow(d.subject(), stage));
  CHECK(away.high > units::VolumeFlow{});
  CHECK(back.high == units::VolumeFlow{});
  // What the network still holds against comes from the rear alone.
  const auto scene = plan::build_scene(d.subject(), stage);
  const auto floor = plan::floor_at(scene, scene.chamber_joint);
  CHECK(floor.dominant == Cause::wiper);
  CHECK(floor.oxygen * (1.0 - floor.dominant_share) <= values["most"].as<double>());
}
