#include "unit/gas/design_of.hpp"

#include "purgewright/gas/curves.hpp"
#include "purgewright/gas/mixing.hpp"
#include "purgewright/gas/openings.hpp"

#include "gas/plan/torch.hpp"

#include <algorithm>
#include <array>
#include <cmath>

using namespace purgewright;
using namespace purgewright::gas;
using gas::test::edge_of;
using gas::test::example;
using gas::test::example_job;
using gas::test::PurgeDesign;
using units::litres_per_minute;
using units::millimetres;
using units::seconds;

namespace {

constexpr std::array examples{"logger-25", "logger-38", "logger-51"};

// Argon at 20 degC and 1 atm: M p / (R T) = 0.039948 x 101325 / (8.314463 x 293.15).
constexpr double argon_density = 1.66070;
// CRC Handbook, 300 K: 22.7 uPa s; by T^0.82 at 293.15 K.
constexpr double argon_viscosity = 22.28e-6;

} // namespace

TEST_CASE("Every purge figure of an example is told from figures that exist", "[unit][gas][plan]") {
  for (const auto *name : examples) {
    const auto figures = example(name).figures();
    for (const auto &figure : figures) {
      INFO(name << ": " << figure.id);
      CHECK(std::isfinite(figure.value));
      CHECK_FALSE(figure.title.empty());
      CHECK_FALSE(figure.source.empty());
      CHECK(std::ranges::count(figures, figure.id, &units::Figure::id) == 1);
      const bool purge = figure.id.starts_with("purge.") || figure.id.starts_with("gas.") ||
                         figure.id.starts_with("room.") || figure.id == "cycle.time";
      for (const auto &input : figure.inputs) {
        INFO("input " << input);
        CHECK((!purge || units::find(figures, input) != nullptr));
        CHECK(input != figure.id);
      }
    }
  }
}

TEST_CASE("logger-25: bore pressure through the 3 mm vent, on paper", "[unit][gas][plan]") {
  // 1 L/min through pi/4 (3 mm)^2 = 7.0686e-6 m2: u = 2.3579 m/s.
  // Orifice 1.6607 x 2.3579^2 / (2 x 0.60^2) = 12.82 Pa; creeping 6 pi mu u / d = 0.33 Pa; in the 0.9 mm wall
  // 32 mu t u / d^2 = 0.17 Pa. Sum 13.32 Pa.
  const auto purge = example("logger-25").purge();
  REQUIRE(units::to_litres_per_minute(purge.bore.welding) == Approx(1.0).epsilon(1e-6));
  const double u = 1e-3 / 60.0 / 7.0686e-6;
  const double paper = argon_density * u * u / (2.0 * 0.36) + 6.0 * units::pi * argon_viscosity * u / 3e-3 +
                       32.0 * argon_viscosity * 0.9e-3 * u / 9e-6;
  CHECK(paper == Approx(13.32).margin(0.01));
  CHECK(purge.pressure.welding.value() == Approx(paper).epsilon(0.002));
}

TEST_CASE("logger-25: what the molten joint holds, on paper", "[unit][gas][plan]") {
  // Gap of liquid 2 x 0.9 mm: 2 x 1.557 / 1.8e-3 = 1730 Pa; the pool weighs 4130 x 9.807 x 0.9e-3 = 36 Pa.
  // A quarter of the rest is 423 Pa, so the plain limit of 50 Pa rules.
  const double paper = (2.0 * 1.557 / 1.8e-3 - 4130.0 * 9.80665 * 0.9e-3) / 4.0;
  CHECK(paper == Approx(423.4).margin(0.1));
  CHECK(example("logger-25").purge().pressure.limit.value() == Approx(std::min(50.0, paper)));
}

TEST_CASE("logger-25: bracket of the bore's time, on paper", "[unit][gas][plan]") {
  const auto design = example("logger-25");
  const auto bore = design.purge().bore;
  // 10 L/min is 166.67 mL/s. Bore: pi/4 (23.6 mm)^2 x 180 mm is 78.7 mL less the nose; hose of 1 m x 4
  // mm 12.6 mL and ways. Displaced (lines + bore) / flow.
  const double flow = 1e-2 / 60.0;
  REQUIRE(bore.prepurge.value() == Approx(flow));
  CHECK(design.volumes.bore_gas.value() == Approx(78.0e-6).epsilon(0.03));
  const double lines = design.volumes.lines_bore.value(), space = design.volumes.bore_gas.value();
  CHECK(design.bounds.bore.displaced.value() == Approx((lines + space) / flow));
  // ln((0.2095 - supply) / (50e-6 - supply)) = 8.38 for a supply of 2 ppm.
  const double supply = design.job.gas.oxygen_in_supply;
  const double changes = std::log((0.2095 - supply) / (50e-6 - supply));
  CHECK(changes == Approx(8.38).margin(0.01));
  CHECK(design.bounds.bore.mixed.value() == Approx((lines + changes * space) / flow));
  // With the space as one stirred tank and hoses that hold gas the closed form lacks only what the hose still
  // brings. Then 11 mm between vent and cap: Ra = 3.719 x 0.0236^3 / (1.342e-5 x 1.89e-5) = 1.93e5;
  // convection equals diffusion at Ra = sqrt(362880) 11 / 23.6 = 281, 0.00146 of air, 305 ppm. 4 (0.011)^2 /
  // (pi^2 1.89e-5) x ln(305 / 50) = 4.7 s.
  CHECK(bore.high.value() == Approx(changes * space / flow + 4.7).epsilon(0.05));
  CHECK(bore.low < bore.time);
  CHECK(bore.time < bore.high);
  CHECK(bore.volume_changes == Approx(flow * bore.time.value() / space));
  CHECK(bore.after_thumb_rule_mixed == Approx(0.2095 * std::exp(-3.0)));
}

TEST_CASE("Prepurge curves cross the limits where the plan says", "[unit][gas][plan]") {
  for (const auto *name : examples) {
    INFO(name);
    const auto d = example(name);
    const auto purge = d.purge();
    const units::Time longest = 1.2 * std::max(purge.bore.high, purge.chamber.high);
    constexpr int intervals = 2000;
    const auto curves =
        prepurge_curves(d.job, d.layout, d.volumes, d.areas, d.bounds, {}, longest, intervals);
    REQUIRE(curves.times.size() == intervals + 1);
    const auto crossing = [&](const std::vector<double> &values, double limit) {
      const auto first = std::ranges::find_if(values, [&](double value) { return value <= limit; });
      REQUIRE(first != values.end());
      return curves.times[std::size_t(first - values.begin())].value();
    };
    const double step = longest.value() / intervals;
    const double inside = d.job.gas.oxygen_limit_bore, outside = d.job.gas.oxygen_limit_chamber;
    CHECK(crossing(curves.bore.best, inside) == Approx(purge.bore.time.value()).margin(1.5 * step));
    CHECK(crossing(curves.bore.stirred, inside) <= purge.bore.high.value() + 1.5 * step);
    CHECK(crossing(curves.bore.displaced, inside) >= purge.bore.low.value() - 1.5 * step);
    CHECK(crossing(curves.chamber.best, outside) == Approx(purge.chamber.time.value()).margin(1.5 * step));
    CHECK(crossing(curves.chamber.stirred, outside) <= purge.chamber.high.value() + 1.5 * step);
    CHECK(crossing(curves.chamber.displaced, outside) >= purge.chamber.low.value() - 1.5 * step);
  }
}

TEST_CASE("Gas and time of a part, on paper", "[unit][gas][plan]") {
  const auto purge = example("logger-25").purge();
  const double prepurge = std::max({purge.bore.high.value(), purge.chamber.high.value(), 15.0});
  CHECK(purge.wait().value() == prepurge); // the meter takes 15 s to answer
  const double under_gas = gas::test::under_gas.value(), preflow = purge.torch.preflow.value();
  CHECK(preflow > 0.0);
  const double welding = (purge.bore.welding + purge.chamber.welding).value() + 1e-2 / 60.0;
  CHECK(purge.use.cycle.value() == Approx(prepurge + preflow + under_gas + 90.0));
  CHECK(purge.use.per_part.value() ==
        Approx((purge.bore.prepurge + purge.chamber.prepurge).value() * prepurge +
               welding * (preflow + under_gas)));
  CHECK(purge.use.preflow.value() == Approx(8.0 * preflow * welding)); // four tacks and four runs
  // 5 min at both prepurge flows and the torch's 10 L/min; 50 L at 200 bar over 1 atm is about 10.5 m3 of
  // argon, in 50 m3 of room.
  CHECK(purge.use.start_of_day.value() ==
        Approx(300.0 * ((purge.bore.prepurge + purge.chamber.prepurge).value() + 1e-2 / 60.0)));
  CHECK(purge.use.room_after_bottle == Approx(0.2095 * (50.0 - 10.5) / 50.0).epsilon(0.01));
}

TEST_CASE("The torch's preflow clears what came in, on paper", "[unit][gas][plan]") {
  const auto d = example("logger-25");
  const auto torch = d.purge().torch;
  CHECK(torch.back_floor < d.job.gas.oxygen_limit_chamber);
  CHECK(torch.arcs == 8);
  CHECK(torch.metal == d.job.weld.shielding_temperature);
  // 1 L/min each of chamber and bore (its vent lies in the chamber) and half of the torch's 10.
  const double flow = 7e-3 / 60.0, volume = d.volumes.chamber_gas.value();
  CHECK(torch.preflow.value() ==
        Approx(volume / flow * std::log((torch.away.high - torch.back_floor) / (50e-6 - torch.back_floor)))
            .epsilon(1e-3));
  CHECK(torch.preflow_best < torch.preflow);
  // Colder metal draws less, and metal as cold as the shop nothing.
  const auto subject = d.subject();
  const auto warm = plan::drawn_in(subject, units::kelvins(500.0)),
             hot = plan::drawn_in(subject, units::kelvins(900.0));
  CHECK(warm.low < hot.low);
  CHECK(warm.high < hot.high);
  CHECK(plan::drawn_in(subject, units::celsius(20.0)).high == units::VolumeFlow{});
  // Under it argon still weighs more than air: 293.15 K x 39.95 / 28.96.
  CHECK(neutral_temperature(Species::argon).value() == Approx(404.3).epsilon(1e-3));
}

TEST_CASE("A weak torch over a large chamber takes longer, and a leaky hose never clears",
          "[unit][gas][plan]") {
  auto job = example_job("logger-25");
  const auto usual = PurgeDesign(job).purge().torch;
  job.torch.gas_flow = litres_per_minute(5.0);
  CHECK(PurgeDesign(job).purge().torch.preflow > usual.preflow);
  job = example_job("logger-25");
  job.fixture.radial_clearance = millimetres(9.0);
  CHECK(PurgeDesign(job).purge().torch.preflow > usual.preflow);
  job = example_job("logger-25");
  job.gas.oxygen_limit_chamber = 2.001e-6; // the supply brings 2 ppm
  CHECK(PurgeDesign(job).purge().torch.back_floor >= job.gas.oxygen_limit_chamber);
}

TEST_CASE("Beside a torch over a wide slot the chamber's flow keeps hot argon from rising",
          "[unit][gas][plan]") {
  auto job = example_job("logger-51");
  job.torch.gas_flow = litres_per_minute(3.0);
  const PurgeDesign d(job);
  const auto hot = plan::drawn_in(d.subject(), job.weld.shielding_temperature, true);
  const auto away = plan::drawn_in(d.subject(), job.weld.shielding_temperature);
  CHECK(hot.high < away.high); // a smaller opening, cooler gas
  const auto purge = d.purge();
  CHECK(purge.torch.back_floor < job.gas.oxygen_limit_chamber);
  const auto out = plan::slot_outflow(
      d.subject(),
      {.bore = purge.bore.welding, .chamber = purge.chamber.welding, .torch = job.torch.gas_flow});
  // Nothing comes in once the outflow is 2 sqrt(2) exchange flows.
  CHECK(units::ratio(out, hot.high) > 2.0 * std::sqrt(2.0) * 0.97);
  CHECK(purge.chamber.welding > example("logger-51").purge().chamber.welding);
}

TEST_CASE("Layers form where the gas is slower than its weight, and an outlet in the plug leaves above",
          "[unit][gas][plan]") {
  // 10 L/min through 23.6 mm: 0.381 m/s; sqrt(3.719 x 0.0236) = 0.296 m/s.
  const auto quick = example("logger-25").purge().bore;
  CHECK(quick.layer_froude == Approx(0.381 / 0.296).epsilon(0.01));
  CHECK(quick.high == quick.high_vent_above);
  auto job = example_job("logger-38");
  const auto slow = PurgeDesign(job).purge().bore;
  CHECK(slow.layer_froude < 1.0);
  CHECK(slow.high > slow.high_vent_above);
  const auto plug = example("logger-51").purge().bore;
  CHECK(plug.layer_froude < 1.0);
  CHECK(plug.high == plug.high_vent_above);
}

TEST_CASE("The pocket beyond the vent is swept by 0 to 1 bore diameter", "[unit][gas][plan]") {
  auto job = example_job("logger-25");
  job.tube.vent.from_joint = millimetres(30.0);
  const PurgeDesign design(job);
  const auto pocket = [&](double swept) {
    const auto scene = plan::build_scene(
        design.subject(),
        {.bore = litres_per_minute(2.0), .chamber = litres_per_minute(2.0), .swept_pocket = swept});
    return scene.network.zones.at(plan::zone::pocket).volume.value();
  };
  const double section = 0.25 * units::pi * 23.6e-3 * 23.6e-3;
  CHECK(pocket(plan::least_swept_pocket) == Approx(30e-3 * section));
  CHECK(pocket(plan::usual_swept_pocket) == Approx((30e-3 - 11.8e-3) * section));
  CHECK(pocket(plan::most_swept_pocket) == Approx((30e-3 - 23.6e-3) * section));
  // Farther vents, longer waits; the bracket's lower end sees the least pocket.
  auto near = example_job("logger-25");
  near.tube.vent.from_joint = millimetres(20.0);
  const auto far_bore = design.purge().bore, near_bore = PurgeDesign(near).purge().bore;
  CHECK(far_bore.high > near_bore.high);
  CHECK(far_bore.low < 0.5 * far_bore.time);
}

TEST_CASE("Each zone holds the gas of its own line, and the joint stands where it stands",
          "[unit][gas][plan]") {
  const auto d = example("logger-25");
  const auto scene = d.prepurge_scene();
  const auto &zones = scene.network.zones;
  // Bores of 4 mm: 2 m, 1 m and 0.6 m are 25.1, 12.6 and 7.5 mL; ways of block and plug come on top.
  const double section = 0.25 * units::pi * 4e-3 * 4e-3;
  for (const auto &[line, length] : {std::pair{plan::zone::supply_line, 2.0},
                                     {plan::zone::bore_line, 1.0},
                                     {plan::zone::chamber_line, 0.6}}) {
    INFO("line of " << length << " m");
    CHECK(zones[line].volume.value() > section * length);
    CHECK(zones[line].volume.value() < 1.15 * section * length);
  }
  // Outside: top of the tube at 12.7 mm over the axis, cavity from 19 mm under it to the slot's face at 24
  // mm.
  CHECK(scene.chamber_joint.zone == plan::zone::cavity);
  CHECK(scene.chamber_joint.position == Approx((12.7 + 19.0) / (24.0 + 19.0)).epsilon(1e-3));
  CHECK(scene.bore_joint.position == 1.0);
}

TEST_CASE("What the closed cover's exits press back the wiper does not let in", "[unit][gas][plan]") {
  const auto design = example("logger-25");
  const auto gap = [&](double litres, bool covered) {
    const auto scene = plan::build_scene(
        design.subject(),
        {.bore = litres_per_minute(1.0), .chamber = litres_per_minute(litres), .covered = covered});
    return edge_of(scene, Cause::wiper).exchange.value();
  };
  CHECK(gap(10.0, true) < 0.9 * gap(10.0, false));
  CHECK(gap(10.0, true) < gap(2.0, true));
  CHECK(gap(10.0, false) == Approx(gap(2.0, false)));
  auto sealed = design;
  sealed.areas.tube_gap = {};
  CHECK(edge_of(plan::build_scene(sealed.subject(),
                                  {.bore = litres_per_minute(1.0), .chamber = litres_per_minute(1.0)}),
                Cause::wiper)
            .exchange == units::VolumeFlow{});
}

TEST_CASE("Metal hotter than the gas table draws in no less than the table's end", "[unit][gas][plan]") {
  const auto design = example("logger-25");
  const auto end = plan::drawn_in(design.subject(), units::kelvins(1000.0), false);
  const auto beyond = plan::drawn_in(design.subject(), units::kelvins(1900.0), false);
  CHECK(beyond.low >= end.low);
  CHECK(beyond.high >= end.high);
}

TEST_CASE("logger-25: trapped gas and draught, on paper", "[unit][gas][plan]") {
  const auto design = example("logger-25");
  const auto purge = design.purge();
  // Half a cup of 12.7 mm and half a bore of 23.6 mm, 18.15 mm of a bore of 180 mm, from 293.15 K to 700.15
  // K.
  const double share = 18.15 / 180.0;
  CHECK(purge.pressure.trapped.value() ==
        Approx(101325.0 * (1.0 / (1.0 - share + share * 293.15 / 700.15) - 1.0)).epsilon(1e-3));
  // g' = 9.80665 (39.948 / 28.964 - 1) = 3.719 m/s2; sqrt(g' H / 0.8) and sqrt(g' H / 0.4).
  const double height = (design.layout.body.z_max + design.layout.body.cavity_radius).value();
  CHECK(purge.bench.draught_lying.value() == Approx(std::sqrt(3.719 * height / 0.8)).epsilon(1e-3));
  CHECK(purge.bench.draught_flushed.value() == Approx(std::sqrt(3.719 * height / 0.4)).epsilon(1e-3));
}

TEST_CASE("A long silicone hose decides the bore's floor, by Fick on paper", "[unit][gas][plan]") {
  auto job = example_job("logger-25");
  const double before = PurgeDesign(job).purge().bore.prepurge_floor.oxygen;
  job.gas.hose.material = "silicone";
  job.gas.hose.supply_length = units::metres(2.0);
  const PurgeDesign design(job);
  const auto bore = design.purge().bore;
  CHECK(bore.prepurge_floor.dominant == Cause::hose_walls);
  // 605 barrer = 4.54e-15 m3 m / (m2 s Pa); 2 pi L 21228 Pa / ln(do/di), as volume at 20 degC; the supply
  // hose's oxygen is shared by both circuits' flow, the bore hose's is the bore's own.
  const double ratio = std::log(1.0 + 2.0 * job.gas.hose.wall.value() / job.gas.hose.inside_diameter.value());
  const double per_metre = 605.0 * 7.5006e-18 * 2.0 * units::pi * 0.2095 * 101325.0 / ratio * 293.15 / 273.15;
  const double paper = per_metre * (2.0 / (bore.prepurge + design.bounds.chamber.flow).value() +
                                    job.gas.hose.bore_length.value() / bore.prepurge.value());
  CHECK(bore.prepurge_floor.oxygen - job.gas.oxygen_in_supply == Approx(paper).epsilon(0.01));
  CHECK(bore.prepurge_floor.oxygen > 5.0 * before);
  CHECK(bore.welding_floor.oxygen > job.gas.oxygen_limit_bore);
  CHECK_FALSE(bore.flow_found);
}

TEST_CASE("Flow that enters the bore must also leave it", "[unit][gas][plan]") {
  auto job = example_job("logger-25");
  job.tube.vent.diameter = millimetres(0.5);
  const auto purge = PurgeDesign(job).purge();
  // Half of the supply pressure is left to the valve.
  CHECK(purge.pressure.prepurge + purge.bore.line_drop <= 0.5001 * job.gas.supply_pressure);
  CHECK(purge.bore.welding_reason == "the most the molten joint's pressure limit allows");
}

TEST_CASE("Both circuits together leave the torch's gas undisturbed", "[unit][gas][plan]") {
  auto job = example_job("logger-25");
  job.gas.hose.material = "silicone"; // asks for all the flow there is
  const auto purge = PurgeDesign(job).purge();
  CHECK(purge.bench.shield_ratio <= shield_ratio_most * (1.0 + 1e-9));
}

TEST_CASE("Only a vent in the chamber adds to what leaves by the slot", "[unit][gas][plan]") {
  const auto design = example("logger-51");
  const auto purge = design.purge();
  const auto open = plan::open_slot(design.subject(), true);
  CHECK(purge.bench.shield_ratio ==
        Approx(units::ratio(purge.chamber.welding / open, plan::torch_speed(design.job))));
}

TEST_CASE("A wide slot is welded through its mask's window, and the chamber clears before a welder tires",
          "[unit][gas][plan]") {
  const auto design = example("well-114");
  CHECK(plan::open_slot(design.subject(), false) == design.areas.slot_welding);
  CHECK(plan::slot_depth(design.layout) == design.layout.mask.thickness);
  const auto purge = design.purge();
  CHECK(purge.torch.back_floor < design.job.gas.oxygen_limit_chamber);
  CHECK(purge.torch.preflow <= seconds(20.5)); // 20 s, and a bisection's last step
  CHECK(purge.chamber.welding_floor.oxygen <= design.job.gas.oxygen_limit_chamber);
  auto bare = design;
  bare.layout.mask = {};
  bare.areas = fixture::areas(bare.job, bare.layout);
  const auto metal = design.job.weld.shielding_temperature;
  CHECK(plan::drawn_in(design.subject(), metal).high < 0.5 * plan::drawn_in(bare.subject(), metal).high);
}

TEST_CASE("A wait that only an outlet uppermost makes bearable is told for that", "[unit][gas][plan]") {
  Purge purge;
  purge.chamber.high = seconds(100.0);
  purge.bore.high = seconds(1200.0);
  purge.bore.high_vent_above = seconds(200.0);
  CHECK(purge.needs_outlet_above());
  CHECK(purge.wait() == seconds(200.0));
  purge.bore.high_vent_above = seconds(1000.0);
  CHECK_FALSE(purge.needs_outlet_above());
  CHECK(purge.wait() == seconds(1200.0));
  purge.bore.high = seconds(600.0);
  purge.bore.high_vent_above = seconds(200.0);
  CHECK_FALSE(purge.needs_outlet_above()); // borne wherever it stands
  CHECK(purge.wait() == seconds(600.0));
}

// A flowmeter is read to a tenth of a litre a minute; what is set on it is what was judged.
TEST_CASE("Welding flows stand on a flowmeter's scale, under the puddle's pressure limit",
          "[unit][gas][plan]") {
  for (const char *name : {"logger-25", "logger-38", "logger-51", "pipe-33", "sensor-6", "well-114"}) {
    INFO(name);
    const auto purge = example(name).purge();
    for (const auto *circuit : {&purge.bore, &purge.chamber}) {
      const double tenths = 10.0 * units::to_litres_per_minute(circuit->welding);
      CHECK(tenths == Approx(std::round(tenths)).epsilon(0.0).margin(1e-6));
      CHECK(circuit->welding_floor.oxygen > 0.0);
    }
    CHECK(purge.pressure.welding <= purge.pressure.limit);
  }
}

TEST_CASE("A limit just above the supply's oxygen takes no more flow than it needs", "[unit][gas][plan]") {
  auto job = example_job("logger-25");
  job.gas.oxygen_in_supply = 45e-6;
  job.gas.hose.material = "nylon"; // else the hose decides
  const auto bore = PurgeDesign(job).purge().bore;
  CHECK(bore.reached);
  CHECK(bore.welding_floor.oxygen < job.gas.oxygen_limit_bore);
  CHECK(units::to_litres_per_minute(bore.welding) < 1.2);
}

TEST_CASE("At the prepurge time the joint is at its limit", "[unit][gas][plan]") {
  for (const auto *name : examples) {
    const auto design = example(name);
    const auto purge = design.purge();
    const auto scene = design.prepurge_scene();
    for (const auto &[plan, target] :
         {std::pair{purge.bore, scene.bore_joint}, {purge.chamber, scene.chamber_joint}}) {
      INFO(name);
      const auto course = solve(scene.network, plan::between_parts(scene), plan.time, 1);
      const double there = course.state(1)[tank_at(course.map, target.zone, target.position)];
      CHECK(there == Approx(target.limit).epsilon(0.01));
    }
  }
}

TEST_CASE("Helium finds no welding flow for the chamber", "[unit][gas][plan]") {
  auto job = example_job("logger-25");
  job.gas.species = job::GasSpecies::helium;
  const PurgeDesign design(job);
  const auto purge = design.purge();
  CHECK_FALSE(purge.chamber.reached);
  CHECK_FALSE(purge.chamber.flow_found);
  CHECK(purge.chamber.prepurge_floor.dominant == Cause::slot);
  CHECK(purge.bench.draught_lying == units::Velocity{});
  CHECK(plan::gas_gravity(design.job) < 0.0);
}
