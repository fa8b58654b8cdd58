#include "pages/setup_words.hpp"
#include "purgewright/report/bench_numbers.hpp"
#include "support/examples.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

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
  CHECK(setting(findings, "Start").find("stand still") != std::string::npos);
  CHECK(setting(findings, "Stop").find("deg past it") != std::string::npos);
  CHECK(setting(findings, "Tacks").find("s as a rule") != std::string::npos);
  CHECK(setting(findings, "Pace").find("one part every") != std::string::npos);
  CHECK(setting(findings, "Helmet").find("never below 8") != std::string::npos);
}
