// Parts one after another: the settled fixture and its holds.
#include "heat_jobs.hpp"

#include "purgewright/fixture/volumes.hpp"
#include "purgewright/heat/series.hpp"

#include <array>
#include <cmath>
#include <vector>

using namespace purgewright;
using namespace purgewright::heat;
using heat::test::example;
using units::celsius;
using units::seconds;

namespace {

const Options coarse{.detail = Detail::coarse};

struct Case {
  heat::test::Subject subject;
  HeatPlan first;
  Series series;
};

Case case_of(const std::string &name, double period = 360.0, const Options &options = coarse) {
  Case c{.subject = example(name), .first = {}, .series = {}};
  c.first = plan_heat(c.subject.job, c.subject.layout, options);
  c.series = settle(c.subject.job, c.subject.layout, fixture::volumes(c.subject.job, c.subject.layout),
                    c.first, {}, seconds(period));
  return c;
}

} // namespace

TEST_CASE("The settled temperature is what part after part leads to", "[unit][heat]") {
  const double heat = 20e3, capacity = 1800.0, loss = 0.9, period = 300.0;
  double rise = 0.0;
  for (int part = 0; part < 400; ++part) {
    rise = rise * std::exp(-period * loss / capacity) + heat / capacity;
  }
  CHECK(settled_temperature(celsius(20.0), heat, capacity, loss, seconds(period)).value() ==
        Approx(293.15 + rise).epsilon(1e-12));
}

TEST_CASE("With long pauses one part's rise remains, with short periods the mean heat decides",
          "[unit][heat]") {
  CHECK(settled_temperature(celsius(20.0), 9e3, 1800.0, 0.9, seconds(1e6)).value() == Approx(293.15 + 5.0));
  // 0.9 W/K carries off 90 W at 100 K.
  CHECK(settled_temperature(celsius(20.0), 0.09, 1800.0, 0.9, seconds(1e-3)).value() ==
        Approx(393.15).epsilon(1e-6));
  CHECK_THROWS_AS(settled_temperature(celsius(20.0), 9e3, 1800.0, 0.9, seconds(0.0)), std::domain_error);
  CHECK_THROWS_AS(settled_temperature(celsius(20.0), 9e3, 0.0, 0.9, seconds(1.0)), std::domain_error);
}

TEST_CASE("The fixture takes the arc's electrical heat less what the part carries out", "[unit][heat]") {
  for (const std::string name : {"logger-25", "logger-38", "logger-51"}) {
    INFO(name);
    const Case c = case_of(name);
    const auto &weld = c.subject.job.weld;
    // What the pedal left of it: the metal took the arc's efficiency of that.
    const double arc = c.first.energy.in / weld.arc_efficiency;
    CHECK(arc <= weld.voltage.value() * weld.current.value() * c.first.arc_time.value() * (1.0 + 1e-12));
    CHECK(c.series.heat == Approx(arc - c.first.energy.stored));
    CHECK(c.series.heat < arc);
    CHECK(c.series.heat >
          c.first.energy.bodies + c.first.energy.lost); // those, and what the arc itself loses
    // Boxes with nothing cut out of them and with every face free: more metal and more surface than there is.
    const auto &layout = c.subject.layout;
    const auto &base = layout.base;
    const double x = (layout.body.length() + layout.end_plate.thickness).value(),
                 y = layout.body.width.value(), z = layout.body.height().value();
    const double a = base.length().value(), b = base.width().value(), t = base.thickness.value();
    const auto &metal = *c.subject.job.fixture.material;
    CHECK(c.series.capacity < (x * y * z + a * b * t) * metal.density.value() * metal.specific_heat.room());
    CHECK(c.series.loss < 20.0 * (x * y + y * z + z * x + a * b + (a + b) * t));
    CHECK(c.series.loss > 10.0 * (x * y + y * z + z * x)); // half the chamber alone
    CHECK(c.series.settled_on_plastic > c.series.settled);
    CHECK(c.series.settled > c.first.chamber_peak);
    CHECK(c.series.settling().value() == Approx(3.0 * c.series.capacity / c.series.loss));
  }
}

// Sizes and masses as the parts' own files have them: chamber 186.2 g, end plate 66.5 g and base plate 1303.4
// g at 897 J/(kg K); free faces of chamber and end plate, 51 x 48 x 64.01 mm together, 0.01512 m2; base
// plate 239.5 x 172.5 x 12 mm, 0.09064 m2 without the chamber's foot of 39 x 48 mm, 190.5 mm beyond it at 170
// W/(m K): m L = 0.5965, efficiency 0.8962; all at 10 W/(m2 K).
TEST_CASE("logger-25: capacity and loss of the fixture, on paper", "[unit][heat]") {
  const Case c = case_of("logger-25", 295.0);
  CHECK(c.series.capacity == Approx(1395.8).epsilon(1e-3));
  CHECK(c.series.loss == Approx(0.1512 + 0.8123).epsilon(1e-3));
  CHECK(c.series.time_constant().value() == Approx(1448.7).epsilon(2e-3));
}

// Chamber and end plate as one node on a strip of base plate in thirty cells, from the chamber's foot to the
// farthest end; heat comes in evenly from the first arc to the last hold's end; explicit steps over forty
// parts, with nothing of the modes in it. logger-25's numbers, as above.
TEST_CASE("logger-25: the settled fixture is what stepping through many parts leads to", "[unit][heat]") {
  const double period = 295.0;
  const Case c = case_of("logger-25", period);
  constexpr int cells = 30, parts = 40;
  constexpr double conductivity = 170.0, density = 2700.0, heat = 897.0, thickness = 12e-3, reach = 0.1905;
  const double chamber = (0.1862 + 0.0688) * heat, plate = c.series.capacity - chamber;
  const double chamber_loss = 0.1512, plate_loss = 10.0 * 0.09064;
  const double width = plate / (density * heat * thickness * reach);
  const double between = conductivity * thickness * width * cells / reach; // W/K
  const double warming = c.first.cycle.value(),
               dt = period / std::ceil(period * 10.0 * between * cells / plate);
  std::vector<double> rise(cells, 0.0); // over the room
  double body = 0.0, settled = 0.0;
  for (int part = 0; part < parts; ++part) {
    for (double t = 0.0; t < period - 0.5 * dt; t += dt) {
      const double in = t < warming ? c.series.heat / warming : 0.0;
      std::vector<double> flow(cells + 1, 0.0); // flow[i]: into cell i from the side of the chamber
      flow[0] = 2.0 * between * (body - rise[0]);
      for (std::size_t i = 1; i < cells; ++i) {
        flow[i] = between * (rise[i - 1] - rise[i]);
      }
      body += dt / chamber * (in - flow[0] - chamber_loss * body);
      for (std::size_t i = 0; i < cells; ++i) {
        rise[i] += dt * cells / plate * (flow[i] - flow[i + 1] - plate_loss / cells * rise[i]);
      }
      if (t < warming) {
        settled = body;
      }
    }
  }
  CHECK((c.series.settled - c.first.ambient).value() == Approx(settled).epsilon(5e-3));
}

TEST_CASE("A base plate that conducts without limit is one lump with the chamber", "[unit][heat]") {
  auto subject = example("logger-25");
  static constexpr std::array flat{standards::PropertyRow{.kelvin = 300.0, .value = 1e9}};
  standards::Metal ideal = *subject.job.fixture.material;
  ideal.conductivity.rows = flat;
  subject.job.fixture.material = &ideal;
  const HeatPlan plan = plan_heat(subject.job, subject.layout, coarse);
  const double period = 1.001 * plan.cycle.value();
  Series series = settle(subject.job, subject.layout, fixture::volumes(subject.job, subject.layout), plan, {},
                         seconds(period));
  series.warming = seconds(0.1); // all but at once, as the lump gets it
  CHECK(settled_rise(series, seconds(period)) ==
        Approx(series.heat / series.capacity / -std::expm1(-period * series.loss / series.capacity))
            .epsilon(1e-4));
}

TEST_CASE("A pause found for a limit settles at that limit", "[unit][heat]") {
  const Case c = case_of("logger-38");
  const units::Temperature room = c.first.ambient;
  const auto limit = units::kelvins(0.5 * (room.value() + c.series.settled.value()));
  const auto period = period_for(c.series, room, limit);
  REQUIRE(period);
  CHECK(period->value() > c.series.period.value());
  CHECK(room.value() + settled_rise(c.series, *period) == Approx(limit.value()).epsilon(1e-9));
  const double alone = settled_rise(c.series, seconds(1e9)); // of one part, nothing left of those before
  CHECK(period_for(c.series, room, units::kelvins(room.value() + 1.01 * alone)));
  CHECK_FALSE(period_for(c.series, room, units::kelvins(room.value() + 0.99 * alone)));
}

TEST_CASE("A warm fixture lengthens every hold, the more the warmer", "[unit][heat]") {
  for (const std::string name : {"logger-25", "logger-38", "logger-51"}) {
    INFO(name);
    // The pedal on the coarse plan's cells moves a hold by a hundredth, as much as the slow series does.
    Case slow = case_of(name, 1200.0, {}), quick = case_of(name, 240.0, {});
    add_warm_plan(slow.subject.job, slow.subject.layout, {}, slow.series);
    add_warm_plan(quick.subject.job, quick.subject.layout, {}, quick.series);
    REQUIRE(slow.series.warm);
    REQUIRE(quick.series.warm);
    REQUIRE(quick.series.warm->runs.size() == quick.first.runs.size());
    REQUIRE(quick.series.warm->tacks.size() == quick.first.tacks.size());
    for (std::size_t i = 0; i < quick.first.runs.size(); ++i) {
      CHECK(slow.series.warm->runs[i].hold > quick.first.runs[i].hold);
      CHECK(quick.series.warm->runs[i].hold > slow.series.warm->runs[i].hold);
      CHECK(quick.series.warm->runs[i].reached);
    }
    CHECK(quick.series.warm->postflow() > quick.first.postflow());
  }
}

TEST_CASE("A fixture as warm as the shielding temperature ends no hold", "[unit][heat]") {
  const auto subject = example("logger-25");
  Options options = coarse;
  options.shielding_temperature = celsius(70.0);
  const HeatPlan plan = plan_heat(subject.job, subject.layout, options);
  Series series = settle(subject.job, subject.layout, fixture::volumes(subject.job, subject.layout), plan, {},
                         seconds(100.0));
  REQUIRE(series.settled > celsius(66.0));
  add_warm_plan(subject.job, subject.layout, options, series);
  CHECK_FALSE(series.warm);
}

TEST_CASE("A warm fixture cools as it settled: what is left of it and one more part make it as warm again",
          "[unit][heat]") {
  const Case c = case_of("logger-25");
  const units::Time period = c.series.period, never = seconds(1e9);
  const double settled = settled_rise(c.series, period);
  CHECK(settled_rise(c.series, period, period) + settled_rise(c.series, never) == Approx(settled));
  const auto limit = celsius(20.0 + 0.4 * settled);
  const units::Time cooled = cooling_time(c.series, celsius(20.0), limit);
  CHECK(settled_rise(c.series, period, cooled) == Approx(0.4 * settled).epsilon(1e-3));
  CHECK(cooling_time(c.series, celsius(20.0), c.series.settled) == seconds(0.0));
  CHECK_THROWS_AS(cooling_time(c.series, celsius(20.0), celsius(20.0)), std::domain_error);
}

TEST_CASE("In a fixture hotter than a hand bears the work is hand-warm after the fixture", "[unit][heat]") {
  Case c = case_of("well-114", 1140.0);
  REQUIRE(c.series.settled > burn_threshold);
  Options options = coarse;
  options.hand_warm = burn_threshold;
  add_warm_plan(c.subject.job, c.subject.layout, options, c.series);
  REQUIRE(c.series.warm);
  REQUIRE(c.series.warm->hand_warm);
  CHECK(*c.series.warm->hand_warm > cooling_time(c.series, celsius(20.0), burn_threshold));
}
