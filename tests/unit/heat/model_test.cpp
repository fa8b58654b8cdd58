#include "heat_jobs.hpp"

#include "purgewright/heat/model.hpp"

#include <cmath>

using namespace purgewright;
using namespace purgewright::heat;
using heat::test::example;
using units::celsius;
using units::kelvins;
using units::millimetres;
using units::seconds;

namespace {

constexpr Mesh small{.tube = 10, .cap = 5, .angles = 16, .grading = 3.0};
constexpr Surroundings still{.ambient = celsius(20.0), .outside_coefficient = 7.0, .inside_coefficient = 3.0};

Arc arc_of(double watts) {
  return {.power = units::Power::from_value(watts),
          .radius = millimetres(1.5),
          .joint_radius = millimetres(12.7),
          .start = units::degrees(40.0),
          .speed = 0.15};
}

Region all(const Model &model) {
  return {0, model.chain().rings.size()};
}

Chain example_chain() {
  const auto [job, layout] = example("logger-25");
  return chain_of(job, layout, small, {});
}

} // namespace

TEST_CASE("Without an arc nothing changes", "[unit][heat]") {
  Model model(example_chain(), still, {});
  model.cool(seconds(100.0));
  CHECK(model.now().value() == Approx(100.0));
  CHECK(model.hottest(all(model)).value() == Approx(293.15).epsilon(1e-12));
  CHECK(model.energy().lost == Approx(0.0).margin(1e-9));
  CHECK(model.cool_until(all(model), celsius(30.0), seconds(100.0)).value() == 0.0);
}

TEST_CASE("Heat in is stored, taken or lost", "[unit][heat]") {
  for (const double error : {1e-3, 10.0}) { // however long the steps
    Accuracy accuracy;
    accuracy.relative_step_error = error;
    Model model(example_chain(), still, accuracy);
    model.weld(arc_of(300.0), seconds(8.0));
    const Energy hot = model.energy();
    CHECK(hot.in == Approx(2400.0).epsilon(1e-12));
    CHECK(hot.stored > 1800.0);
    model.cool(seconds(60.0));
    const Energy cold = model.energy();
    CHECK(cold.in == hot.in);
    CHECK(cold.stored + cold.bodies + cold.lost == Approx(cold.in).epsilon(1e-10));
    CHECK(cold.bodies > 100.0);
    CHECK(cold.lost > 100.0);
    CHECK(cold.stored < hot.stored);
  }
}

// A wall in still gas alone, too thin to differ in temperature: lumped capacitance, Incropera & DeWitt,
// eq. 5.6.
TEST_CASE("A cold work in warm gas warms as a lump and takes the heat it gains from it", "[unit][heat]") {
  const auto [job, layout] = example("logger-25");
  Metal metal = chain_of(job, layout, small, {}).metals[0];
  metal.emissivity = 0.0;
  const Chain wall = plain_wall(metal, millimetres(12.0), millimetres(0.9), millimetres(60.0), 12, 16);
  const Surroundings warm{.ambient = celsius(60.0), .start = celsius(20.0), .outside_coefficient = 12.0};
  Model model(wall, warm, {});
  CHECK(model.hottest(all(model)).value() == Approx(293.15));
  CHECK(model.energy().stored == Approx(0.0).margin(1e-9));
  double capacity = 0.0, loss = 0.0;
  for (const Ring &ring : wall.rings) {
    capacity += metal.density.value() * ring.volume *
                (metal.enthalpy_at(celsius(60.0)) - metal.enthalpy_at(celsius(20.0))) /
                40.0; // mean heat of the range
    loss += 12.0 * ring.outside;
  }
  model.cool(seconds(capacity / loss));
  CHECK(model.mean(3).value() ==
        Approx(333.15 - 40.0 * std::exp(-1.0)).margin(0.3)); // heat varies over the range
  const Energy energy = model.energy();
  CHECK(energy.stored > 0.0);
  CHECK(energy.lost == Approx(-energy.stored).epsilon(1e-9));
}

TEST_CASE("Stored heat is that of the temperatures", "[unit][heat]") {
  const Chain chain = example_chain();
  Model model(chain, still, {});
  model.weld(arc_of(200.0), seconds(5.0));
  double stored = 0.0;
  for (std::size_t i = 0; i < chain.rings.size(); ++i) {
    const Metal &metal = chain.metals[chain.rings[i].metal];
    const double mass = metal.density.value() * chain.rings[i].volume / chain.angles;
    for (int a = 0; a < chain.angles; ++a) {
      stored += mass * (metal.enthalpy_at(model.at(i, std::size_t(a))) - metal.enthalpy_at(still.ambient));
    }
  }
  CHECK(model.energy().stored == Approx(stored).epsilon(2e-3));
}

TEST_CASE("The arc heats where it is", "[unit][heat]") {
  const Chain chain = example_chain();
  Model model(chain, still, {});
  Arc arc = arc_of(200.0);
  arc.speed = 0.0;
  model.weld(arc, seconds(1.0));
  const std::size_t under = std::size_t(40.0 / 360.0 * chain.angles);
  for (std::size_t a = 0; a < std::size_t(chain.angles); ++a) {
    CHECK(model.at(chain.joint, under) >= model.at(chain.joint, a));
  }
  CHECK(model.at(chain.joint, under).value() > 600.0);
  CHECK(model.at(chain.joint, under + std::size_t(chain.angles / 2)).value() < 300.0);
  CHECK(model.mean(chain.rings.size() - 1).value() < 320.0);
}

TEST_CASE("Backward and forward arcs are mirror images", "[unit][heat]") {
  const Chain chain = example_chain();
  Model left(chain, still, {}), right(chain, still, {});
  Arc arc = arc_of(200.0);
  left.weld(arc, seconds(4.0));
  arc.start = -arc.start;
  arc.speed = -arc.speed;
  right.weld(arc, seconds(4.0));
  for (std::size_t a = 0; a < std::size_t(chain.angles); ++a) {
    const std::size_t mirrored = std::size_t(chain.angles) - 1 - a;
    CHECK(left.at(chain.joint, a).value() == Approx(right.at(chain.joint, mirrored).value()).epsilon(1e-6));
  }
}

TEST_CASE("A hold ends just below its limit", "[unit][heat]") {
  Accuracy accuracy;
  accuracy.crossing = units::TemperatureDifference::from_value(0.2);
  Model model(example_chain(), still, accuracy);
  model.weld(arc_of(300.0), seconds(8.0));
  const units::Time first = model.cool_until(all(model), celsius(500.0), seconds(600.0));
  CHECK(model.hottest(all(model)) <= celsius(500.0));
  CHECK(model.hottest(all(model)) >= celsius(499.7));
  CHECK(first.value() > 1.0);
  const units::Time second = model.cool_until(all(model), celsius(400.0), seconds(600.0));
  CHECK(second.value() > 0.0);
  CHECK(model.now().value() == Approx(8.0 + first.value() + second.value()));
  CHECK(model.cool_until(all(model), celsius(21.0), seconds(5.0)).value() == Approx(5.0));
}

TEST_CASE("An arc until a temperature goes out just above it", "[unit][heat]") {
  for (const double error : {1.0, 100.0}) { // K a step
    Accuracy accuracy;
    accuracy.step_error = units::TemperatureDifference::from_value(error);
    accuracy.crossing = units::TemperatureDifference::from_value(0.2);
    Model model(example_chain(), still, accuracy);
    Arc arc = arc_of(300.0);
    arc.speed = 0.0;
    const auto beyond = [&](const Model &m) { return (m.hottest(all(m)) - celsius(900.0)).value(); };
    const units::Time time = model.weld_until(arc, beyond, seconds(10.0));
    CHECK(model.hottest(all(model)) >= celsius(900.0));
    CHECK(model.hottest(all(model)) <= celsius(900.2));
    CHECK(model.now().value() == Approx(time.value()));
    CHECK(model.energy().in == Approx(300.0 * time.value()));
    CHECK(model.weld_until(arc, beyond, seconds(10.0)).value() == 0.0);
    arc.power = units::Power::from_value(1.0);
    CHECK(model
              .weld_until(
                  arc, [](const Model &) { return -1.0; }, seconds(0.5))
              .value() == Approx(0.5));
  }
}

TEST_CASE("Peaks are kept until they are reset", "[unit][heat]") {
  const Chain chain = example_chain();
  Model model(chain, still, {});
  model.weld(arc_of(300.0), seconds(5.0));
  const double hot = model.peak(chain.joint).value();
  model.cool(seconds(60.0));
  CHECK(model.peak(chain.joint).value() >= hot);
  CHECK(model.hottest(all(model)).value() < hot - 300.0);
  model.reset_peaks();
  CHECK(model.peak(chain.joint).value() < hot - 300.0);
}

TEST_CASE("Melting shows as a slower rise", "[unit][heat]") {
  const Metal &titanium = *thermal_metal("titanium-6al-4v");
  Metal plain = titanium;
  plain.latent_heat = 0.0;
  double peak[2];
  int i = 0;
  for (const Metal &metal : {titanium, plain}) {
    const Chain chain =
        plain_wall(metal, millimetres(12.0), millimetres(1.0), millimetres(60.0), 12, 32, 2.0);
    Model model(chain, still, {});
    Arc arc = arc_of(250.0);
    arc.speed = 0.0;
    model.weld(arc,
               seconds(0.35)); // as it begins to melt: a stirred pool that is wider is colder in the middle
    peak[i++] = model.peak(chain.joint).value();
  }
  CHECK(peak[0] < peak[1] - 50.0);
  CHECK(peak[0] > titanium.liquidus.value());
}

// The heat of the change of alpha into beta is a peak in the specific heat, that of melting a step in the
// enthalpy: a step that trusts what it finds in the peak takes far too much from a cell that leaves it.
TEST_CASE("Long steps under an arc leave no cell colder than the room", "[unit][heat]") {
  for (const char *name : {"titanium-grade-2", "titanium-grade-9", "titanium-6al-4v"}) {
    CAPTURE(name);
    const Accuracy careless{.step_error = units::TemperatureDifference::from_value(1e6),
                            .arc_step = 1.0,
                            .longest_step = seconds(0.5)};
    Model model(
        plain_wall(*thermal_metal(name), millimetres(4.0), millimetres(0.6), millimetres(60.0), 12, 16, 3.0),
        still, careless);
    double coldest_seen = 1e9;
    model.watch([&](const Model &m) {
      for (std::size_t ring = 0; ring < m.chain().rings.size(); ++ring) {
        for (std::size_t angle = 0; angle < 16; ++angle) {
          coldest_seen = std::min(coldest_seen, m.at(ring, angle).value());
        }
      }
    });
    Arc arc = arc_of(150.0);
    arc.joint_radius = millimetres(4.2);
    arc.speed = 1.0;
    model.weld(arc, seconds(20.0));
    model.cool(seconds(60.0));
    CHECK(model.peak(model.chain().joint) > celsius(1670.0));
    CHECK(model.refused_steps() == 0);
    CHECK(coldest_seen > 285.0);
  }
}

TEST_CASE("Heat beyond all numbers is an error, not a loop", "[unit][heat]") {
  Model model(example_chain(), still, {});
  CHECK_THROWS_AS(model.weld(arc_of(1e300), seconds(1.0)), std::runtime_error);
}

TEST_CASE("A body warms, and one of infinite capacity does not", "[unit][heat]") {
  for (const double capacity : {5.0, std::numeric_limits<double>::infinity()}) {
    const Metal metal = constant_metal(20.0, units::kilograms_per_cubic_metre(4500.0), 550.0, 0.0);
    Chain chain = plain_wall(metal, millimetres(10.0), millimetres(1.0), millimetres(40.0), 8, 8);
    chain.bodies[std::size_t(Body::pin)] = {.capacity = capacity, .loss = 0.0};
    chain.contacts.push_back({.ring = chain.joint, .body = Body::pin, .area = 1e-3, .coefficient = 2000.0});
    Model model(chain, {.ambient = celsius(20.0)}, {});
    for (std::size_t i = 0; i < chain.rings.size(); ++i) {
      model.set_ring(i, celsius(300.0));
    }
    model.cool(seconds(2000.0));
    if (std::isinf(capacity)) {
      CHECK(model.body(Body::pin).value() == Approx(293.15));
      CHECK(model.mean(0).value() == Approx(293.15).epsilon(1e-3));
    } else { // nothing else takes heat: both end at one temperature
      CHECK(model.body(Body::pin).value() == Approx(model.mean(0).value()).epsilon(1e-3));
      CHECK(model.body(Body::pin).value() > 400.0);
    }
    const Energy e = model.energy();
    CHECK(e.stored + e.bodies + e.lost == Approx(e.in).epsilon(1e-10));
    CHECK((std::isinf(capacity) ? e.stored : e.lost) == Approx(0.0).margin(2e-3 * e.in));
  }
}

TEST_CASE("The watcher sees every step and the same calls give the same bits", "[unit][heat]") {
  double hottest[2];
  for (double &value : hottest) {
    Model model(example_chain(), still, {});
    long seen = 0;
    double last = -1.0;
    model.watch([&](const Model &m) {
      ++seen;
      CHECK(m.now().value() > last);
      last = m.now().value();
    });
    model.weld(arc_of(300.0), seconds(3.0));
    model.cool(seconds(10.0));
    CHECK(seen == model.steps());
    CHECK(seen > 10);
    value = model.hottest(all(model)).value();
  }
  CHECK(hottest[0] == hottest[1]);
}

TEST_CASE("The model refuses senseless input", "[unit][heat]") {
  const Chain chain = example_chain();
  Surroundings s = still;
  s.outside_coefficient = -1.0;
  CHECK_THROWS_AS(Model(chain, s, {}), std::domain_error);
  s = still;
  s.ambient = kelvins(100.0);
  CHECK_THROWS_AS(Model(chain, s, {}), std::domain_error);
  Accuracy a;
  a.arc_step = 0.0;
  CHECK_THROWS_AS(Model(chain, still, a), std::domain_error);
  a = {};
  a.longest_step = seconds(0.0);
  CHECK_THROWS_AS(Model(chain, still, a), std::domain_error);
  Model model(chain, still, {});
  CHECK_THROWS_AS(model.cool(seconds(-1.0)), std::domain_error);
  CHECK_THROWS_AS(model.weld(arc_of(-5.0), seconds(1.0)), std::domain_error);
  Arc arc = arc_of(100.0);
  arc.radius = millimetres(0.0);
  CHECK_THROWS_AS(model.weld(arc, seconds(1.0)), std::domain_error);
}
