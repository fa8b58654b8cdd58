#include "pages/setup_words.hpp"

#include "pages/curves.hpp"
#include "purgewright/report/bench_numbers.hpp"
#include "purgewright/report/lines.hpp"
#include "purgewright/report/text.hpp"
#include "support/examples.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

using namespace purgewright;

TEST_CASE("a slot mask is taken off for the cap and laid on once it is in") {
  for (const std::string name : {"well-114", "logger-25"}) {
    INFO(name);
    const auto steps = pages::loading_steps(report::find(checks::evaluate(test::example(name))));
    const auto step = [&](std::string_view words) {
      return std::ranges::find_if(steps, [&](const std::string &text) { return text.starts_with(words); });
    };
    const bool masked = name == "well-114";
    CHECK((step("Cover and slot mask aside") != steps.end()) == masked);
    CHECK((step("Cover aside") != steps.end()) != masked);
    CHECK((step("Slot mask on") != steps.end()) == masked);
    CHECK((!masked || step("Cover and slot mask aside") < step("Slot mask on")));
  }
}

namespace {

report::Findings findings_of(const job::Draft &draft) {
  auto resolution = job::resolve(draft);
  REQUIRE(resolution.job);
  return report::find(checks::evaluate(std::move(*resolution.job)));
}

bool said(const std::vector<std::string> &lines, std::string_view words) {
  return std::ranges::any_of(lines, [&](const std::string &line) { return line.find(words) != line.npos; });
}

std::string setting(const report::Findings &findings, std::string_view name) {
  for (const auto &[of, value] : pages::weld_settings(findings)) {
    if (of == name) {
      return value;
    }
  }
  return {};
}

} // namespace

// Each of these a welder asked who read the sheet of a job: tests/unit/pages.
TEST_CASE("the torch's gas is on by its valve and the foot off the pedal while a hand is at the cover") {
  const auto findings = report::find(checks::evaluate(test::example("logger-25")));
  const auto steps = pages::loading_steps(findings);
  const auto open = std::ranges::find_if(
      steps, [](const std::string &step) { return step.find("cover aside under it") != step.npos; });
  REQUIRE(open != steps.end());
  CHECK(open->find("FOOT OFF THE PEDAL") < open->find("Torch gas by its own valve"));
  CHECK(open->find("hand out") < open->find("read the meter again"));
  CHECK(open->find("Hood down; only then the pedal") > open->find("read the meter again"));
  CHECK_FALSE(said(steps, "then strike"));
}

TEST_CASE("what must be done first stands first, and no bare hand goes to hot metal") {
  const auto findings = report::find(checks::evaluate(test::example("logger-25")));
  CHECK(said(pages::stop_conditions(findings), "EVERYONE OUT FIRST"));
  CHECK_FALSE(said(pages::stop_conditions(findings), "gas off, everyone out"));
  const auto out = pages::unloading_steps(findings);
  REQUIRE(out.size() > 2);
  CHECK((said({out[1]}, "Hands off for") || said({out[1]}, "Heat-proof gloves")));
  CHECK(said(pages::loading_steps(findings), "sealing screw out of the end plate's port"));
  CHECK(said(pages::loading_steps(findings), "Looking at the cap, the tube turns"));
}

TEST_CASE("an expanding plug is loosened before it is drawn out, the others are pulled with a twist") {
  const auto by = [](std::string_view kind) {
    auto draft = test::example_draft("logger-38", {});
    draft[job::Key::fixture_plug].stated = true;
    draft[job::Key::fixture_plug].number = kind == "expanding" ? 2.0 : 1.0;
    return pages::unloading_steps(findings_of(draft));
  };
  CHECK(said(by("expanding"), "Knob back until the rubber is loose"));
  CHECK_FALSE(said(by("expanding"), "twist"));
  CHECK(said(by("bore-ring"), "Pull the plug with a twist"));
}

TEST_CASE("no hold is shorter than a hand can time, and the longer of first and warm part is printed") {
  const auto findings = report::find(checks::evaluate(test::example("logger-25")));
  heat::Weld tack;
  tack.hold = units::seconds(1.2);
  CHECK(report::hold_text(tack) == "5 s");
  tack.hold = units::seconds(5.1);
  CHECK(report::hold_text(tack) == "6 s");
  const auto rows = pages::turn_rows(findings);
  const std::size_t tacks = findings.design.heat.tacks.size();
  REQUIRE(findings.design.series.warm);
  for (std::size_t run = 0; run < findings.design.heat.runs.size(); ++run) {
    const auto longer =
        std::max(findings.design.heat.runs[run].hold, findings.design.series.warm->runs[run].hold);
    CHECK(rows[tacks + run].hold == report::bench_time(std::max(longer, units::seconds(5.0))));
  }
}

TEST_CASE("the sheet says what to set the machine to, how long to stand and how to stop") {
  const auto findings = report::find(checks::evaluate(test::example("logger-25")));
  CHECK(setting(findings, "Current").find("machine set to") != std::string::npos);
  CHECK(setting(findings, "Start").find("tube at rest, until one pool joins both edges") !=
        std::string::npos);
  CHECK(setting(findings, "Stop").find("ease the pedal to nothing over") != std::string::npos);
  CHECK(setting(findings, "Tacks").find("s after the arc; foot off") != std::string::npos);
  CHECK(setting(findings, "Root").find("saw through the weld") != std::string::npos);
  CHECK(setting(findings, "Pace").find("one part every") != std::string::npos);
  CHECK(setting(findings, "Helmet").find("never below 8") != std::string::npos);
}

TEST_CASE("no stop is one that the plan itself comes to") {
  for (const std::string name : {"pipe-33", "well-114", "logger-25"}) {
    INFO(name);
    const auto findings = report::find(checks::evaluate(test::example(name)));
    for (const std::string &line : pages::stop_conditions(findings)) {
      const auto at = line.find("front rollers over ");
      if (at != line.npos) {
        const double limit = std::stod(line.substr(at + std::string_view("front rollers over ").size()));
        REQUIRE(findings.design.series.warm);
        CHECK(limit > units::to_celsius(findings.design.heat.roller_peak) + 15.0);
        CHECK(limit > units::to_celsius(findings.design.series.warm->roller_peak) + 15.0);
      }
    }
  }
}

TEST_CASE("temperatures are taken with a touch probe, never by a wired thermocouple on a part that turns") {
  const auto findings = report::find(checks::evaluate(test::example("logger-25")));
  CHECK(said(pages::stop_conditions(findings), "touch probe, tube at rest"));
  CHECK_FALSE(said(pages::stop_conditions(findings), "thermocouple"));
  CHECK(said(pages::reasons(findings), "No wired thermocouple on a part that turns"));
}

TEST_CASE("the prepurge lasts until the meter is under its limits, and no less than its time") {
  const auto findings = report::find(checks::evaluate(test::example("logger-25")));
  const auto rows = pages::gas_rows(findings);
  CHECK(rows[1].look_for.find("Until the meter is under 50 ppm") != std::string::npos);
  // 10 L/min for 15 s are 2.5 L: 32 times the bore's 78 mL, 68 times the chamber's 36.4 mL.
  CHECK(rows[1].look_for.find("32 volumes of the bore, 68 of the chamber") != std::string::npos);
  CHECK(rows[1].time == "\u2265 15 s");
  CHECK(said(pages::loading_steps(findings), "until the meter is under both limits, at least 15 s"));
}

TEST_CASE("the sheet says what covers the joint while a litre a minute runs into the chamber") {
  const auto findings = report::find(checks::evaluate(test::example("logger-25")));
  const std::string words = pages::gas_rows(findings)[3].look_for;
  CHECK(words.find("the torch's gas covers the joint") != std::string::npos);
  CHECK(words.find(report::oxygen_text(findings.design.purge.torch.away.best)) != std::string::npos);
}

TEST_CASE("the interpass limit stands among the weld's settings, the job's own where it has one") {
  CHECK(setting(report::find(checks::evaluate(test::example("logger-25"))), "Interpass").find("427 degC") !=
        std::string::npos);
  auto draft = test::example_draft("logger-25", {});
  draft[job::Key::weld_interpass_temperature].stated = true;
  draft[job::Key::weld_interpass_temperature].number = units::celsius(150.0).value();
  CHECK(setting(findings_of(draft), "Interpass").find("150 degC") != std::string::npos);
}

TEST_CASE("the sheet says what carries the welding current and that rubber and plastic do not") {
  const auto lying = report::find(checks::evaluate(test::example("logger-25")));
  const auto hung = report::find(checks::evaluate(test::example("sensor-6")));
  CHECK(setting(lying, "Work lead").find("lead, collar, tube") != std::string::npos);
  CHECK(setting(hung, "Work lead").find("collar, spindle, its set screws, plug, the tube's end") !=
        std::string::npos);
  for (const auto *findings : {&lying, &hung}) {
    CHECK(setting(*findings, "Work lead").find("Rubber and plastic carry none") != std::string::npos);
  }
}

TEST_CASE(
    "a small tube stands still under each spot, and nothing speaks of runs or of turning under the arc") {
  const auto findings = report::find(checks::evaluate(test::example("sensor-6")));
  CHECK(setting(findings, "Turn").find("stands still under the arc") != std::string::npos);
  CHECK(setting(findings, "Start").find("each spot") != std::string::npos);
  CHECK(setting(findings, "Current").find("as it warms") == std::string::npos);
  const auto rows = pages::turn_rows(findings);
  CHECK(rows.back().name.starts_with("spot "));
  CHECK(rows.back().collar.find("to") == std::string::npos);
  CHECK_FALSE(said(pages::loading_steps(findings), "felt tapes"));
  CHECK(rows.back().tapes.empty());
  CHECK(pages::work_line(findings).find("spots") != std::string::npos);
}

// Arc of the collar's rim, on paper: r pi / 2 to 90 degrees, r pi / 12 to 15.
TEST_CASE("felt tapes have their places on the collar's rim") {
  const auto findings = report::find(checks::evaluate(test::example("logger-25")));
  const double radius = units::to_millimetres(findings.design.layout.collar.outer_radius);
  const auto place = [&](int tape, int degrees) {
    return fmt::format("T{} {} deg, {:.3g} mm", tape, degrees, radius * degrees * units::pi / 180.0);
  };
  for (const auto &[tape, degrees] : {std::pair{1, 90}, {2, 270}, {3, 195}, {4, 15}}) {
    INFO(place(tape, degrees));
    CHECK(said(pages::reasons(findings), place(tape, degrees)));
  }
  const auto spots = report::find(checks::evaluate(test::example("sensor-6")));
  CHECK_FALSE(said(pages::reasons(spots), "Felt tapes"));
}

TEST_CASE("a loose cap has a gap and an offset that a bench can keep, and a way to centre it") {
  const std::string fit = setting(report::find(checks::evaluate(test::example("logger-25"))), "Fit");
  CHECK(fit.find("gap 0.18 mm") != std::string::npos); // a fifth of 0.9 mm
  CHECK(fit.find("straightedge") != std::string::npos);
  CHECK(fit.find("After the first tack and its hold turn to the next place") != std::string::npos);
  CHECK(setting(report::find(checks::evaluate(test::example("pipe-33"))), "Fit").find("spigot centres") !=
        std::string::npos);
}

TEST_CASE("a titanium pin that the cap would bond to gets stop-off, another pin none") {
  CHECK(said(pages::loading_steps(report::find(checks::evaluate(test::example("sensor-6")))), "stop-off"));
  CHECK_FALSE(
      said(pages::loading_steps(report::find(checks::evaluate(test::example("logger-25")))), "stop-off"));
}

TEST_CASE("the table says which felt tapes pass under the thumb and at which a run ends") {
  const auto rows = pages::turn_rows(report::find(checks::evaluate(test::example("logger-25"))));
  REQUIRE(rows.size() == 8);
  CHECK(rows[0].tapes.empty());
  // Tapes by hand: T1 at 90, T2 at 270, T3 at 195, T4 at 15.
  CHECK(rows[4].tapes == "over T4 to T1");
  CHECK(rows[5].tapes == "over T3 to T2");
  CHECK(rows[6].tapes == "over T1 to T3");
  CHECK(rows[7].tapes == "over T2 to T4");
}

TEST_CASE("easing time, angle and arc time on the sheet are of one rounding") {
  for (const std::string name : {"logger-25", "well-114", "logger-38"}) {
    INFO(name);
    const auto findings = report::find(checks::evaluate(test::example(name)));
    const auto &job = findings.design.job;
    const double rate =
        units::to_degrees(units::radians((2.0 * job.weld.travel_speed / job.tube.outside_diameter).value()));
    for (const auto &run : findings.design.heat.runs) {
      const double told = 0.1 * std::round(10.0 * run.taper.value());
      CHECK(run.taper.value() == Approx(told));
      CHECK(units::to_degrees(run.run_out) == Approx(rate * told));
      CHECK(run.welding.value() ==
            Approx(run.dwell.value() + units::to_degrees(run.pass.extent()) / rate + told));
      const std::string stop = setting(findings, "Stop");
      CHECK(stop.find(fmt::format("{:.1f} s", told)) != std::string::npos);
      CHECK(stop.find(fmt::format("{:.0f}", rate * told)) != std::string::npos);
    }
  }
}

TEST_CASE("the pedal's low amps are one number on the sheet, in check and in trace") {
  for (const std::string name : {"logger-25", "pipe-33"}) {
    INFO(name);
    const auto findings = report::find(checks::evaluate(test::example(name)));
    const std::string pedal = report::pedal_text(findings);
    CHECK(setting(findings, "Current").find(pedal) != std::string::npos);
    CHECK(report::check_text(findings, {}).find(pedal) != std::string::npos);
    const auto *low = units::find(findings.figures, "heat.pedal.low");
    REQUIRE(low != nullptr);
    CHECK(pedal.ends_with(fmt::format("{:.0f} A", low->value)));
  }
}

TEST_CASE("the pull on the rim is the rule's number wherever it is printed") {
  for (const std::string name : {"logger-25", "pipe-33", "logger-38"}) {
    INFO(name);
    const auto findings = report::find(checks::evaluate(test::example(name)));
    const auto rule = std::ranges::find(findings.rules, "heat.run_order", &checks::RuleResult::id);
    REQUIRE(rule != findings.rules.end());
    const bool alternating = findings.design.job.rotation.order == job::RunOrder::alternating;
    const auto *figure = units::find(findings.figures, alternating ? "heat.order.alternating.rim_shift"
                                                                   : "heat.order.consecutive.rim_shift");
    REQUIRE(figure != nullptr);
    CHECK(figure->value == Approx(rule->value).epsilon(1e-12));
    CHECK(said(pages::reasons(findings), report::value_text(findings, *figure)));
  }
}

TEST_CASE("nobody is told to unload with bare hands sooner than the part may be touched") {
  for (const std::string name : {"logger-25", "well-114", "sensor-6"}) {
    INFO(name);
    const auto findings = report::find(checks::evaluate(test::example(name)));
    const auto bare = checks::bare_hand_pace(findings.design);
    const auto warm = pages::hand_warm(findings);
    REQUIRE(warm); // a time, even where the fixture itself stays hot
    REQUIRE(bare);
    CHECK(*bare >= findings.design.heat.cycle + *warm);
    const std::string pace = setting(findings, "Pace");
    CHECK(pace.find("heat-proof gloves and tongs; by bare hands one every " + pages::minutes(*bare)) !=
          std::string::npos);
    CHECK(pages::gas_rows(findings).back().time == pages::minutes(*warm));
    CHECK(said(pages::unloading_steps(findings), "hands off for " + pages::minutes(*warm)));
  }
}

TEST_CASE("volumes of gas are those of the time that is told") {
  auto findings = report::find(checks::evaluate(test::example("pipe-33")));
  const auto &purge = findings.design.purge;
  const double told = report::told(purge.wait()).value();
  REQUIRE(told > purge.wait().value());
  const double bore =
      std::floor(purge.bore.prepurge.value() * told / findings.design.volumes.bore_gas.value());
  CHECK(pages::gas_rows(findings)[1].look_for.find(fmt::format("({:.0f} volumes of the bore", bore)) !=
        std::string::npos);
}

TEST_CASE("the plot names where the plug's rubber lies, and the point that the sheet gives a peak for") {
  const std::map<std::string, std::string> seals{{"logger-25", "tube over the plug's O-ring"},
                                                 {"well-114", "tube over the plug's sleeve"},
                                                 {"sensor-6", "tube in the plug's O-ring"}};
  for (const auto &[name, words] : seals) {
    INFO(name);
    const auto plot = pages::temperature_plot(report::find(checks::evaluate(test::example(name))));
    REQUIRE(plot.curves.size() == 3);
    CHECK(plot.curves[1].name == "cap under the pin");
    CHECK(plot.curves[2].name == words);
  }
}

TEST_CASE("a root that can be seen is looked at, one under a spigot is judged by the coupon alone") {
  CHECK(
      setting(report::find(checks::evaluate(test::example("logger-25"))), "Root").find("light in the bore") !=
      std::string::npos);
  CHECK(
      setting(report::find(checks::evaluate(test::example("pipe-33"))), "Root").find("the spigot hides it") !=
      std::string::npos);
}
