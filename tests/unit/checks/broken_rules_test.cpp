// Every rule is broken by a job or, where it guards the program's own choices, by a design altered by hand.
#include "broken_rules.hpp"
#include "support/paths.hpp"

#include <catch2/catch.hpp>

#include <set>
#include <string_view>

using namespace purgewright;
using namespace purgewright::checks;
using namespace purgewright::checks::test;

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

namespace {

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
      {"heat.warm_holds_reached", "a fixture so warm fails heat.series"},
      {"heat.interpass", "a run waits until the joint is as cold as that"},
      {"heat.wiper", "the wiper's place follows the arc's energy"},
      {"heat.o_ring",
       "no tube found is short enough, with room for hand and stands, to warm its plug that far"},
  };
  return all;
}

} // namespace

TEST_CASE(
    "every rule is broken by a job, or guards a choice of the program's and is broken by an altered design") {
  // The first by the pair of files in the test below, those of the log in measured_log_test.cpp.
  std::set<std::string_view> by_job{
      "bench.family",       "log.bore_floor",  "log.bore_steady",   "log.bore_fit",      "log.chamber_floor",
      "log.chamber_steady", "log.chamber_fit", "log.bore_under",    "log.chamber_under", "log.bore_wait",
      "log.chamber_wait",   "log.bore_usable", "log.chamber_usable"},
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
