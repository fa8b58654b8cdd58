#include "broken_rules.hpp"

namespace purgewright::checks::test {

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
      {"access.axle_screws", Status::caution,
       [](Design &d) { d.clearances.axles = units::millimetres(0.4); }},
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
      {"gas.bore_limit", Status::caution, [](Design &d) { d.purge.bore.highest_floor = 60 * ppm; }},
      {"gas.chamber_limit", Status::caution, [](Design &d) { d.purge.chamber.highest_floor = 60 * ppm; }},
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
      {"gas.torch_back", Status::fail, [](Design &d) { d.purge.torch.back_floor = 1e-3; }},
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
      {"heat.o_ring", Status::caution, // on the settled fixture alone, as the three after it
       [](Design &d) { d.series.warm->o_ring_peak = units::celsius(201.0); }},
      {"heat.wiper", Status::caution, [](Design &d) { d.series.warm->wiper_peak = units::celsius(301.0); }},
      {"heat.cap_centre", Status::caution,
       [](Design &d) { d.series.warm->cap_centre_peak = units::celsius(914.0); }},
      {"heat.pin_contact", Status::fail,
       [](Design &d) { d.series.warm->pin_contact_peak = units::celsius(1086.0); }},
      {"heat.warm_holds_reached", Status::fail,
       [](Design &d) { d.series.warm->runs.back().reached = false; }},
      {"heat.rollers", Status::caution, [](Design &d) { d.heat.roller_peak = units::celsius(111.0); }},
      {"heat.cap_centre", Status::fail, [](Design &d) { d.heat.cap_centre_peak = units::celsius(1661.0); }},
      {"heat.pool_width", Status::fail, // on a rim, in an order and under a cup that bear it
       [](Design &d) {
         d.heat.pool_width = 10.1 * d.job.tube.wall;
         d.purge.bench.torch_core = d.heat.pool_width;
         d.job.cap.thickness = d.heat.pool_width;
         d.job.rotation.runs = 24;
       }},
      {"heat.hand_turns", Status::fail,
       [](Design &d) { d.job.weld.travel_speed = units::metres_per_second(6.66e-3); }},
      {"heat.spots_overlap", Status::fail, // places farther apart than the arc stood for
       [](Design &d) {
         d.job.rotation.seam = job::Seam::spots;
         d.heat.spot_pitch = units::millimetres(1.0);
         for (auto &run : d.heat.runs) {
           run.bottom_length = units::millimetres(1.99);
         }
       }},
      {"heat.cap_rim", Status::caution, [](Design &d) { d.job.cap.thickness = 0.33 * d.heat.pool_width; }},
      {"heat.pin_bonds", Status::caution,
       [](Design &d) {
         d.job.fixture.pin_material = d.job.cap.material;
         d.heat.pin_contact_peak = units::celsius(851.0);
       }},
      {"heat.run_order", Status::caution,
       [](Design &d) { d.job.rotation.order = job::RunOrder::consecutive; }},
      {"gas.torch_core", Status::fail, // a pool wider than the cup
       [](Design &d) { d.job.torch.cup_bore = 0.99 * d.heat.pool_width; }},
      {"gas.torch_core", Status::caution,
       [](Design &d) { d.purge.bench.torch_core = 0.499 * d.heat.pool_width; }},
      {"gas.torch_laminar", Status::fail, [](Design &d) { d.purge.bench.torch_reynolds = 4001.0; }},
      {"gas.torch_laminar", Status::caution, [](Design &d) { d.purge.bench.torch_reynolds = 2001.0; }},
      {"heat.pin_contact", Status::fail, [](Design &d) { d.heat.pin_contact_peak = units::celsius(1086.0); }},
      {"heat.tacks_melt", Status::fail,
       [](Design &d) { d.heat.tacks.back().cap_edge_peak = units::celsius(1600.0); }},
      {"heat.joint_melts", Status::fail,
       [](Design &d) { d.heat.runs.back().end_peak = units::celsius(1600.0); }},
      {"heat.joint_boils", Status::fail, [](Design &d) { d.heat.joint_peak = units::celsius(3290.0); }},
  };
  return designs;
}

} // namespace purgewright::checks::test
