// How the network of zones and passages is wired from a design.
#include "unit/gas/design_of.hpp"

#include "purgewright/gas/mixing.hpp"
#include "purgewright/gas/openings.hpp"

#include <array>

using namespace purgewright;
using namespace purgewright::gas;
using gas::test::edge_of;
using gas::test::example;
using gas::test::example_job;
using gas::test::PurgeDesign;
using units::litres_per_minute;
using units::millimetres;

TEST_CASE("A vent inside the chamber stirs what the diffuser leaves lying", "[unit][gas][plan]") {
  auto job = example_job("logger-51");
  job.fixture.radial_clearance = millimetres(20.0); // so that the jets do not reach up to stir
  const auto lying = PurgeDesign(job).purge().chamber;
  job.tube.vent = {.diameter = millimetres(3.0), .from_joint = millimetres(14.0), .count = 1};
  const PurgeDesign design(job);
  REQUIRE(plan::vent_in_cavity(design.subject()));
  CHECK(design.purge().chamber.tanks < lying.tanks);
}

TEST_CASE("What stirs through a vent in the chamber is the bore's flow", "[unit][gas][plan]") {
  auto job = example_job("logger-51");
  job.fixture.radial_clearance = millimetres(20.0); // so that the jets do not reach up to stir
  const auto tanks_at = [](const PurgeDesign &design, double bore) {
    const plan::Stage stage{
        .bore = litres_per_minute(bore), .chamber = litres_per_minute(2.0), .covered = true};
    return plan::build_scene(design.subject(), stage).chamber_tanks;
  };
  job.tube.vent = {.diameter = millimetres(3.0), .from_joint = millimetres(14.0), .count = 1};
  const PurgeDesign within(job);
  REQUIRE(plan::vent_in_cavity(within.subject()));
  CHECK(tanks_at(within, 10.0) < tanks_at(within, 0.05));
  job.tube.vent.from_joint = millimetres(70.0);
  const PurgeDesign outside(job);
  REQUIRE_FALSE(plan::vent_in_cavity(outside.subject()));
  CHECK(tanks_at(outside, 10.0) == tanks_at(outside, 0.05));
}

TEST_CASE("Each side of the joint keeps to its own circuit's limit", "[unit][gas][plan]") {
  auto job = example_job("logger-25");
  job.gas.oxygen_limit_bore = 40e-6;
  job.gas.oxygen_limit_chamber = 90e-6;
  const PurgeDesign design(job);
  const auto scene = design.prepurge_scene();
  CHECK(scene.bore_joint.limit == 40e-6);
  CHECK(scene.chamber_joint.limit == 90e-6);
}

TEST_CASE("Standing gas beyond the vent is fed by diffusion into its first tank, by Fick on paper",
          "[unit][gas][plan]") {
  auto job = example_job("logger-25");
  job.tube.vent.from_joint = millimetres(110.0);
  const PurgeDesign design(job);
  const auto scene = plan::build_scene(design.subject(),
                                       {.bore = litres_per_minute(2.0), .chamber = litres_per_minute(2.0)});
  const auto &edge = edge_of(scene, Cause::pocket);
  const Zone &standing = scene.network.zones[edge.to.index];
  // Less half a bore of 23.6 mm that the vent's stream sweeps: 98.2 mm in four tanks. From the swept end to
  // the middle of the first is half a tank, D A / (L / 8); between neighbours it is a whole one, D A / (L /
  // 4).
  const double length = 110e-3 - 0.5 * 23.6e-3, section = 0.25 * units::pi * 23.6e-3 * 23.6e-3;
  const double in_air = diffusivity(Species::argon, Species::air, units::celsius(20.0)).value();
  CHECK(standing.volume.value() == Approx(length * section));
  CHECK(standing.tanks == 4.0);
  CHECK(edge.exchange.value() == Approx(8.0 * in_air * section / length));
  CHECK(standing.backmixing.value() == Approx(4.0 * in_air * section / length));
}

TEST_CASE("Each hose is a line of its own length and lets in oxygen along it", "[unit][gas][plan]") {
  auto job = example_job("logger-25");
  auto &hose = job.gas.hose;
  hose.supply_length = millimetres(120.0); // short: a long line counts as the most tanks, whatever its length
  hose.bore_length = millimetres(60.0);
  hose.chamber_length = millimetres(90.0);
  const plan::Stage stage{.bore = litres_per_minute(2.0), .chamber = litres_per_minute(3.0)};
  const PurgeDesign base(job);
  const auto before = plan::build_scene(base.subject(), stage);
  constexpr std::array lengths{&job::Hose::supply_length, &job::Hose::bore_length,
                               &job::Hose::chamber_length};
  constexpr std::array<std::size_t, 3> lines{plan::zone::supply_line, plan::zone::bore_line,
                                             plan::zone::chamber_line};
  for (std::size_t changed = 0; changed < lengths.size(); ++changed) {
    auto other = job;
    other.gas.hose.*lengths[changed] *= 1.5;
    const PurgeDesign design(other);
    const auto after = plan::build_scene(design.subject(), stage);
    for (std::size_t line = 0; line < lengths.size(); ++line) {
      INFO("hose " << changed << " longer, line " << line);
      const double grown = line == changed ? 1.5 : 1.0;
      CHECK(after.network.ingress[line].zone == lines[line]);
      CHECK(after.network.ingress[line].oxygen.value() ==
            Approx(grown * before.network.ingress[line].oxygen.value()));
      const double tanks = after.network.zones[lines[line]].tanks;
      const double tanks_before = before.network.zones[lines[line]].tanks;
      CHECK((tanks > tanks_before) == (line == changed));
      CHECK((tanks < tanks_before) == false);
    }
  }
}

TEST_CASE("The supply hose carries the gas of both circuits", "[unit][gas][plan]") {
  auto job = example_job("logger-25");
  job.gas.hose.supply_length = job.gas.hose.bore_length = millimetres(80.0);
  const PurgeDesign design(job);
  const auto shared = plan::build_scene(design.subject(),
                                        {.bore = litres_per_minute(2.0), .chamber = litres_per_minute(3.0)});
  const auto alone = plan::build_scene(design.subject(),
                                       {.bore = litres_per_minute(5.0), .chamber = litres_per_minute(3.0)});
  const double together = shared.network.zones[plan::zone::supply_line].tanks;
  CHECK(together == Approx(alone.network.zones[plan::zone::bore_line].tanks));
  CHECK(together > 1.0);
}

TEST_CASE("Air comes in against the outflow through every vent", "[unit][gas][plan]") {
  const auto flow = litres_per_minute(0.05); // slow enough that some comes in
  for (const int count : {1, 2, 3}) {
    auto job = example_job("logger-25");
    job.tube.vent.count = count;
    const PurgeDesign design(job);
    const auto scene = plan::build_scene(design.subject(), {.bore = flow, .chamber = litres_per_minute(2.0)});
    const auto in_air = diffusivity(Species::argon, Species::air, units::celsius(20.0));
    const auto one = diffusive_conductance(in_air, 0.25 * units::pi * units::square(job.tube.vent.diameter),
                                           job.tube.wall, circle_shape_length(job.tube.vent.diameter));
    CHECK(edge_of(scene, Cause::vent).exchange.value() ==
          Approx(opposed_conductance(double(count) * one, flow).value()));
    CHECK(edge_of(scene, Cause::vent).exchange > units::VolumeFlow{});
  }
}

TEST_CASE("Under the closed cover air comes in through the cover's exits, else through the slot",
          "[unit][gas][plan]") {
  const auto design = example("logger-25");
  auto thick = design, deep = design;
  thick.layout.cover.thickness *= 3.0;
  deep.layout.body.z_max *= 3.0;
  const auto exchange = [](const PurgeDesign &d, bool covered) {
    const auto scene = plan::build_scene(
        d.subject(),
        {.bore = litres_per_minute(0.05), .chamber = litres_per_minute(0.05), .covered = covered});
    return edge_of(scene, Cause::slot).exchange.value();
  };
  CHECK(exchange(thick, true) < exchange(design, true));
  CHECK(exchange(thick, false) == exchange(design, false));
  CHECK(exchange(design, true) < exchange(design, false));
  CHECK(exchange(deep, false) < exchange(design, false));
}

TEST_CASE("Measured tanks give the bore the same variance of residence", "[unit][gas][plan]") {
  const auto design = example("logger-25");
  for (const double tanks : {1.1, 1.5, 2.0, 3.7, 12.0}) {
    const auto scene = plan::build_scene(
        design.subject(),
        {.bore = litres_per_minute(2.0), .chamber = litres_per_minute(2.0), .bore_tanks = tanks});
    CHECK(scene.bore_tanks == Approx(tanks).epsilon(1e-9));
  }
}

TEST_CASE("One tank in the bore is the exponential of a mixed space", "[unit][gas][plan]") {
  auto job = example_job("logger-51"); // no vent: the bore leaves to the room and nothing comes back
  const PurgeDesign design(job);
  const auto flow = litres_per_minute(4.0);
  const auto scene = plan::build_scene(design.subject(), {.bore = flow, .chamber = flow, .bore_tanks = 1.0});
  const auto change = design.volumes.bore_gas / flow;
  const auto course = solve(scene.network, plan::between_parts(scene), 5.0 * change, 1);
  const double there = course.state(1)[tank_at(course.map, plan::zone::bore_swept, 1.0)];
  CHECK(there ==
        Approx(0.2095 * std::exp(-5.0)).epsilon(0.05)); // a hundredth of the space stays a second tank
}

TEST_CASE("The arc's plume draws air by the heat capacity of the gas that the job purges with",
          "[unit][gas][plan]") {
  // Heat capacities at constant pressure and densities of argon and helium at 25 and 20 degC, 1 atm: NIST
  // Chemistry WebBook, from memory: 520.3 and 5193 J/(kg K), 1.661 and 0.1664 kg/m3. Point-source plume with
  // the program's coefficient: flow = C B^(1/3) z^(5/3), so C z^(5/3) falls out of two currents of one gas,
  // and the ratio between gases is that of B^(1/3), B = g Q / (rho cp T).
  const auto slot_exchange = [](job::GasSpecies species, double current) {
    auto job = example_job("logger-25");
    job.gas.species = species;
    job.weld.current = units::amperes(current);
    const PurgeDesign d(job);
    const auto scene =
        plan::build_scene(d.subject(), {.bore = litres_per_minute(0.01), // less than the plume carries
                                        .chamber = litres_per_minute(0.01),
                                        .torch = litres_per_minute(0.01),
                                        .arc = true});
    return edge_of(scene, Cause::slot).exchange.value();
  };
  using enum job::GasSpecies;
  const double with_argon = slot_exchange(argon, 300.0) - slot_exchange(argon, 200.0);
  const double with_helium = slot_exchange(helium, 300.0) - slot_exchange(helium, 200.0);
  REQUIRE(with_argon > 0.0);
  CHECK(with_helium / with_argon == Approx(std::cbrt(1.661 * 520.3 / (0.1664 * 5193.0))).epsilon(2e-3));
}
