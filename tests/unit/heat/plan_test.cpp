#include "heat_jobs.hpp"

#include "purgewright/fixture/volumes.hpp"
#include "purgewright/heat/figures.hpp"

#include <cmath>
#include <set>

using namespace purgewright;
using namespace purgewright::heat;
using heat::test::example;
using units::celsius;

namespace {

const Options coarse{.detail = Detail::coarse};

HeatPlan plan_of(const heat::test::Subject &subject, const Options &options = coarse) {
  return plan_heat(subject.job, subject.layout, options);
}

} // namespace

TEST_CASE("A plan holds tacks and runs in order with their times", "[unit][heat]") {
  const auto subject = example("logger-51");
  const HeatPlan plan = plan_of(subject);
  REQUIRE(plan.tacks.size() == 6);
  REQUIRE(plan.runs.size() == 6);
  CHECK(plan.shielding_temperature.value() == Approx((800.0 + 459.67) / 1.8)); // 800 degF
  CHECK(plan.power.value() == Approx(0.77 * 10.0 * 80.0));
  CHECK(plan.line_energy == Approx(0.77 * 10.0 * 80.0 / (10.0 * 25.4e-3 / 60.0)));
  for (const Weld &tack : plan.tacks) { // the arc goes out when both edges have surely melted
    CHECK(tack.tube_edge_peak >= celsius(1700.0));
    CHECK(tack.cap_edge_peak >= celsius(1700.0));
    CHECK(tack.welding < Options{}.longest_tack);
    CHECK(tack.welding.value() >= 0.5); // no foot makes a shorter one
  }
  const Weld &first = plan.runs[0];
  const double speed = 10.0 * 25.4e-3 / 60.0, travel = units::pi / 3.0 * 25.4e-3 / speed;
  CHECK(first.welding.value() == Approx(first.dwell.value() + travel + first.taper.value()));
  CHECK(first.run_out.value() == Approx(first.taper.value() * speed / 25.4e-3));
  double arcs = 0.0, holds = 0.0;
  for (const auto *list : {&plan.tacks, &plan.runs}) {
    for (const Weld &weld : *list) {
      CHECK(weld.reached);
      CHECK(weld.hold >= weld.uncovered_hold);
      CHECK(weld.hold <= plan.longest_hold);
      arcs += weld.welding.value();
      holds += weld.hold.value();
    }
  }
  CHECK(plan.arc_time.value() == Approx(arcs));
  CHECK(plan.cycle.value() == Approx(arcs + holds + 11.0 * plan.torch_move.value()));
  CHECK(plan.postflow().value() == Approx(plan.runs.back().hold.value() + 5.0));
  const Energy &e = plan.energy;
  CHECK(e.in <= plan.power.value() * arcs * (1.0 + 1e-12)); // the pedal eases the current
  CHECK(e.in > 0.5 * plan.power.value() * arcs);
  CHECK(e.stored + e.bodies + e.lost == Approx(e.in).epsilon(1e-6));
}

TEST_CASE("A run dwells until its pool is through, and its current falls evenly at the end", "[unit][heat]") {
  auto subject = example("logger-25");
  const HeatPlan usual = plan_of(subject, {});
  for (const Weld &run : usual.runs) {
    CHECK(run.dwell.value() > 0.0);
    CHECK(run.dwell < Options{}.longest_dwell);
    const double tenths = std::ceil(run.end_current * subject.job.weld.current.value() / 40.0 * 10.0 - 1e-6);
    CHECK(run.taper.value() == Approx(std::clamp(0.1 * tenths, 0.5, 3.0)));
    CHECK(run.start_pool > units::Length{});
    CHECK(run.start_pool <= run.pool_width);
    CHECK(usual.pool_bottom(run) >= celsius(1670.0));
  }
  subject.job.weld.current = 1.2 * subject.job.weld.current;
  CHECK(plan_of(subject, {}).runs.front().dwell < usual.runs.front().dwell);
  subject.job.weld.current = units::amperes(8.0);
  CHECK(plan_of(subject, {}).runs.front().dwell == Options{}.longest_dwell);
}

TEST_CASE("No moment of the plot is hotter than the peaks that are listed", "[unit][heat]") {
  for (const std::string name : {"logger-25", "sensor-6", "pipe-33"}) {
    INFO(name);
    const HeatPlan plan = plan_of(example(name), {.history = true});
    const auto check = [&](const std::vector<Weld> &welds) {
      for (const Weld &weld : welds) {
        units::Temperature joint{}, pin{};
        for (const Moment &moment : plan.history) {
          if (moment.time > weld.strikes && moment.time <= weld.strikes + weld.welding + weld.hold) {
            joint = std::max(joint, moment.joint);
            pin = std::max(pin, moment.under_pin);
          }
        }
        CHECK(weld.joint_peak.value() > joint.value() - 1e-6);
        CHECK(weld.joint_peak.value() < joint.value() + 20.0);
        CHECK(weld.pin_contact_peak.value() > pin.value() - 1e-6);
        CHECK(weld.pin_contact_peak.value() < pin.value() + 1.0);
      }
    };
    check(plan.tacks);
    check(plan.runs);
  }
}

TEST_CASE("The wait until a hand may touch the work is asked for, and longer than any hold", "[unit][heat]") {
  const auto subject = example("logger-25");
  CHECK_FALSE(plan_of(subject).hand_warm);
  Options options = coarse;
  options.hand_warm = burn_threshold;
  const HeatPlan plan = plan_of(subject, options);
  REQUIRE(plan.hand_warm);
  CHECK(*plan.hand_warm > plan.longest_hold);
  CHECK(plan.cycle == plan_of(subject).cycle); // it is no part of the cycle
  options.longest_hand_warm = units::seconds(10.0);
  CHECK_FALSE(plan_of(subject, options).hand_warm);
}

TEST_CASE("The chamber warms by no more heat than the arcs give", "[unit][heat]") {
  for (const std::string name : {"logger-25", "logger-38", "logger-51"}) {
    INFO(name);
    const auto subject = example(name);
    const HeatPlan plan = plan_of(subject);
    // First law on the metal of the finished body alone; the model's block holds a little more.
    const auto &metal = *subject.job.fixture.material;
    const double capacity = fixture::volumes(subject.job, subject.layout).chamber_body.value() *
                            metal.density.value() * metal.specific_heat.room();
    const double rise = plan.chamber_peak.value() - plan.ambient.value();
    CHECK(rise > 0.0);
    CHECK(rise * capacity <= plan.energy.in);
  }
}

TEST_CASE("A stricter shielding temperature holds longer", "[unit][heat]") {
  const auto subject = example("logger-25");
  units::Time before{};
  for (const double limit : {500.0, 427.0, 370.0, 260.0}) {
    Options options = coarse;
    options.shielding_temperature = celsius(limit);
    const HeatPlan plan = plan_of(subject, options);
    CHECK(plan.runs[0].hold > before);
    CHECK(plan.runs[1].joint_before < celsius(limit));
    before = plan.runs[0].hold;
  }
}

TEST_CASE("A run waits for the interpass temperature, and holds go by the shielding temperature as before",
          "[unit][heat]") {
  auto subject = example("logger-25");
  const HeatPlan without = plan_of(subject);
  CHECK_FALSE(without.interpass_temperature);
  CHECK(without.longest_interpass_wait.value() == 0.0);
  subject.job.weld.interpass_temperature = celsius(150.0);
  const HeatPlan plan = plan_of(subject);
  CHECK(plan.shielding_temperature == without.shielding_temperature);
  CHECK(plan.runs[0].hold.value() == Approx(without.runs[0].hold.value()).epsilon(0.05));
  for (std::size_t i = 0; i < plan.runs.size(); ++i) {
    CHECK(plan.runs[i].joint_before <= celsius(150.0));
    CHECK(without.runs[i].joint_before > celsius(150.0));
    CHECK(plan.runs[i].interpass_wait.value() > 0.0);
    CHECK(plan.runs[i].hold <= without.runs[i].hold); // each starts colder
  }
  double total = 0.0;
  for (const auto *list : {&plan.tacks, &plan.runs}) {
    for (const Weld &weld : *list) {
      total += weld.welding.value() + weld.hold.value() + weld.interpass_wait.value();
    }
  }
  CHECK(plan.cycle.value() == Approx(total + 7.0 * plan.torch_move.value()));
  // A limit above the shielding temperature never makes a run wait.
  subject.job.weld.interpass_temperature = celsius(500.0);
  CHECK(plan_of(subject).longest_interpass_wait.value() == 0.0);
}

TEST_CASE("More heat, less cooling: longer holds", "[unit][heat]") {
  const auto subject = example("logger-38");
  const units::Time usual = plan_of(subject).longest_hold;
  auto hotter = subject;
  hotter.job.weld.current = 1.2 * subject.job.weld.current;
  CHECK(plan_of(hotter).longest_hold > usual);
  auto faster = subject;
  faster.job.weld.travel_speed = 1.3 * subject.job.weld.travel_speed;
  CHECK(plan_of(faster).longest_hold < usual);
  Options options = coarse;
  options.contacts.pin_coefficient = 0.0;
  CHECK(plan_of(subject, options).longest_hold > usual);
  options = coarse;
  options.outside_coefficient = 40.0;
  CHECK(plan_of(subject, options).longest_hold < usual);
  options = coarse;
  options.inside_coefficient = 40.0;
  CHECK(plan_of(subject, options).longest_hold < usual);
  auto loose = subject;
  loose.layout.body.opening_radius += units::millimetres(1.0);
  CHECK(plan_of(loose).longest_hold > usual);
}

TEST_CASE("Metal outside the chamber is timed apart", "[unit][heat]") {
  auto subject = example("logger-25");
  CHECK(plan_of(subject).runs.back().uncovered_hold.value() == 0.0);
  // A chamber so shallow that the hot zone reaches out of it.
  subject.layout.body.cavity_start = units::millimetres(-4.0);
  subject.layout.body.x_min = units::millimetres(-5.0);
  const HeatPlan plan = plan_of(subject);
  CHECK(plan.hot_zone > plan.covered);
  CHECK(plan.runs.back().uncovered_hold.value() > 0.0);
  CHECK(plan.runs.back().uncovered_peak > plan.shielding_temperature);
  CHECK_FALSE(plan.within_limits());
}

TEST_CASE("A warm fixture starts from a cold part, and must be cooler than the shielding temperature",
          "[unit][heat]") {
  const auto subject = example("logger-25");
  Options options = coarse;
  options.fixture = celsius(90.0);
  const HeatPlan plan = plan_of(subject, options);
  CHECK(plan.tacks.front().joint_before == options.ambient);
  CHECK(plan.chamber_peak > celsius(90.0));
  CHECK(plan.longest_hold > plan_of(subject).longest_hold);
  CHECK(plan.energy.stored + plan.energy.bodies + plan.energy.lost == Approx(plan.energy.in).epsilon(1e-6));
  options.fixture = celsius(19.0);
  CHECK_THROWS_AS(plan_of(subject, options), std::domain_error);
  options.fixture = celsius(423.0); // 4 K under the job's shielding temperature
  CHECK_THROWS_AS(plan_of(subject, options), std::domain_error);
}

TEST_CASE("A hold that takes too long says so", "[unit][heat]") {
  Options options = coarse;
  options.longest_hold = units::seconds(3.0);
  const HeatPlan plan = plan_of(example("logger-25"), options);
  CHECK_FALSE(plan.runs.front().reached);
  CHECK(plan.runs.front().hold.value() == Approx(3.0));
  CHECK_FALSE(plan.within_limits());
}

TEST_CASE("Limits decide", "[unit][heat]") {
  const auto subject = example("logger-38");
  REQUIRE(plan_of(subject).within_limits());
  Options options = coarse;
  options.cap_centre_limit = celsius(100.0);
  CHECK_FALSE(plan_of(subject, options).within_limits());
  options = coarse;
  options.o_ring_limit = celsius(20.001);
  options.ambient = celsius(25.0);
  CHECK_FALSE(plan_of(subject, options).within_limits());
}

TEST_CASE("History follows the plan for plots", "[unit][heat]") {
  const auto subject = example("logger-25");
  CHECK(plan_of(subject).history.empty());
  Options options = coarse;
  options.history = true;
  const HeatPlan plan = plan_of(subject, options);
  REQUIRE(plan.history.size() > 50);
  CHECK(plan.history.back().time == plan.cycle);
  double peak = 0.0;
  int changes = 0;
  for (std::size_t i = 1; i < plan.history.size(); ++i) {
    CHECK(plan.history[i].time > plan.history[i - 1].time);
    changes += plan.history[i].arc != plan.history[i - 1].arc ? 1 : 0;
    peak = std::max(peak, plan.history[i].joint.value());
  }
  CHECK(changes == 15); // eight arcs, each with its hold
  CHECK(peak >= plan.joint_peak.value() * (1.0 - 1e-9));
  for (const Weld &tack : plan.tacks) { // as hot as its table says, not as its cells smear it
    double drawn = 0.0;
    for (const Moment &moment : plan.history) {
      const units::Time put_out = tack.strikes + tack.welding + units::seconds(1e-9); // rounding
      const bool burns = moment.time >= tack.strikes && moment.time <= put_out;
      drawn = burns ? std::max(drawn, moment.joint.value()) : drawn;
    }
    CHECK(drawn == Approx(tack.joint_peak.value()).epsilon(1e-6));
  }
}

TEST_CASE("The pedal keeps the pool: too much current comes down, too little stays and does not melt",
          "[unit][heat]") {
  auto subject = example("logger-25");
  const HeatPlan usual = plan_of(subject, {});
  const double wall = subject.job.tube.wall.value();
  for (const Weld &run : usual.runs) {
    CHECK(run.pool_width.value() > 2.0 * wall);
    CHECK(run.pool_width.value() < 5.0 * wall);
    CHECK(run.pool_length > run.pool_width); // drawn out by the travel
    CHECK(run.least_current < 1.0);
  }
  subject.job.weld.current = 1.5 * subject.job.weld.current;
  const HeatPlan more = plan_of(subject, {});
  CHECK(more.runs.back().least_current < usual.runs.back().least_current);
  CHECK(more.pool_width > usual.pool_width);
  CHECK(more.pool_width < 1.5 * usual.pool_width);
  subject.job.weld.current = units::amperes(8.0);
  const HeatPlan less = plan_of(subject, {});
  CHECK(less.runs.back().least_current == 1.0);
  CHECK(less.pool_width.value() == 0.0);
  CHECK(less.tacks.front().welding == Options{}.longest_tack);
  CHECK(less.tacks.front().cap_edge_peak < celsius(1670.0));
}

TEST_CASE("The cap under the pin is hottest where the contact is nearest to the weld", "[unit][heat]") {
  auto subject = example("logger-25");
  const HeatPlan usual = plan_of(subject);
  CHECK(usual.pin_contact_peak > usual.cap_centre_peak);
  CHECK(usual.pin_contact_peak < usual.joint_peak);
  CHECK(usual.pin_contact_limit == celsius(1085.0)); // stainless steel on titanium
  subject.layout.pin.contact_outer_radius = 0.5 * subject.layout.pin.contact_outer_radius;
  subject.layout.pin.contact_inner_radius = 0.5 * subject.layout.pin.contact_inner_radius;
  CHECK(plan_of(subject).pin_contact_peak < usual.pin_contact_peak);
}

TEST_CASE("Advice: fewer runs are quicker until a limit stops them", "[unit][heat]") {
  const auto subject = example("logger-25");
  const Options cooler{.cap_centre_limit = celsius(650.0)}; // one run warms the cap's centre further
  const RunAdvice advice = advise_runs(subject.job, subject.layout, cooler, 8);
  REQUIRE(advice.rows.size() == 8);
  REQUIRE(advice.fewest > 1); // one long run overheats the cap's centre
  CHECK_FALSE(advice.rows[std::size_t(advice.fewest - 2)].within_limits);
  CHECK(advice.rows[std::size_t(advice.fewest - 1)].within_limits);
  CHECK(units::to_degrees(advice.longest_run) == Approx(360.0 / advice.fewest + 15.0));
  for (std::size_t i = 1; i < advice.rows.size(); ++i) {
    CHECK(advice.rows[i].cycle > advice.rows[i - 1].cycle);
    CHECK(advice.rows[i].longest_hold < advice.rows[i - 1].longest_hold);
  }
  Options options;
  options.cap_centre_limit = celsius(50.0);
  const RunAdvice none = advise_runs(subject.job, subject.layout, options, 3);
  CHECK(none.fewest == 0);
  CHECK(none.longest_run.value() == 0.0);
}

TEST_CASE("Senseless options are refused", "[unit][heat]") {
  const auto subject = example("logger-25");
  Options options = coarse;
  options.shielding_temperature = celsius(22.0);
  CHECK_THROWS_AS(plan_of(subject, options), std::domain_error);
  options = coarse;
  options.torch_move = units::seconds(-1.0);
  CHECK_THROWS_AS(plan_of(subject, options), std::domain_error);
  options = coarse;
  options.ambient = celsius(-90.0);
  CHECK_THROWS_AS(plan_of(subject, options), std::domain_error);
  options = coarse;
  options.contacts.pin_coefficient = -1.0;
  CHECK_THROWS_AS(plan_of(subject, options), std::domain_error);
  auto wrong = subject;
  wrong.job.tube.material = standards::metal("copper-c110");
  CHECK_THROWS_AS(plan_of(wrong), std::domain_error);
}

TEST_CASE("Figures carry every run, their inputs exist, nothing stands twice", "[unit][heat]") {
  const auto subject = example("logger-25");
  const HeatPlan plan = plan_of(subject);
  units::Figures list = figures(plan);
  const units::Figures advice = figures(advise_runs(subject.job, subject.layout, {}, 2));
  list.insert(list.end(), advice.begin(), advice.end());
  const units::Figures given = job::figures(subject.job);
  std::set<std::string> ids;
  for (const auto &figure : list) {
    CHECK(ids.insert(figure.id).second);
    CHECK(std::isfinite(figure.value));
    CHECK_FALSE(figure.title.empty());
    CHECK_FALSE(figure.source.empty());
    for (const auto &input : figure.inputs) {
      CAPTURE(figure.id, input);
      const bool of_layout = input.starts_with("chamber.");
      CHECK((of_layout || units::find(list, input) != nullptr || units::find(given, input) != nullptr));
    }
  }
  REQUIRE(units::find(list, "heat.run.4.hold") != nullptr);
  CHECK(units::find(list, "heat.run.4.hold")->value == plan.runs[3].hold.value());
  CHECK(units::find(list, "heat.run.4.peak")->value == plan.runs[3].joint_peak.value());
  // The overlap: a pool of 3.5 x 0.9 mm on a radius of 12.7 mm takes 14.2 deg, in whole fives 15.
  CHECK(units::find(list, "heat.run.2.start_angle")->value == Approx(units::pi));
  CHECK(units::find(list, "heat.run.4.end_angle")->value == Approx(units::degrees(375.0).value()));
  CHECK(units::find(list, "heat.tack.2.angle")->value == Approx(units::pi));
  CHECK(units::find(list, "purge.postflow.time")->value == plan.postflow().value());
  CHECK(units::find(list, "heat.shielding_temperature")->value == Approx((800.0 + 459.67) / 1.8));
}

// A tube of 1/4 in: at the charts' 10 in/min it turns 76 degrees in a second.
TEST_CASE("Spots of a standing arc melt a small tube through and leave its cap colder than runs do",
          "[unit][heat]") {
  auto subject = example("sensor-6");
  REQUIRE(subject.job.rotation.seam == job::Seam::spots);
  const HeatPlan spots = plan_of(subject);
  const double pitch = units::pi * subject.job.tube.outside_diameter.value() / double(spots.runs.size());
  for (const Weld &spot : spots.runs) {
    CHECK(spot.welding == spot.dwell);
    CHECK(spot.welding >= Options{}.least_tack);
    CHECK(spot.welding < Options{}.longest_dwell);
    CHECK(spot.run_out.value() == 0.0);
    CHECK(spots.pool_bottom(spot) >= subject.job.tube.material->melting->liquidus);
    CHECK(spot.bottom_length.value() ==
          Approx(2.0 * pitch).epsilon(0.3)); // 0.5 s may be longer than that takes
    CHECK(spot.bottom_length.value() >= (2.0 - 1e-6) * pitch);
    CHECK(spot.pool_length > spot.bottom_length);
  }
  CHECK(advise_runs(subject.job, subject.layout, coarse, 4).fewest == 0);
  subject.job.rotation.seam = job::Seam::runs;
  subject.job.rotation.runs = 12;
  subject.job.rotation.overlap = units::degrees(10.0);
  const HeatPlan runs = plan_of(subject);
  CHECK((runs.cap_centre_peak - spots.cap_centre_peak).value() > 200.0);
}
