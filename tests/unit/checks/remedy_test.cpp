#include "broken_rules.hpp"
#include "support/examples.hpp"

#include "purgewright/checks/remedy.hpp"

#include "checks/knobs.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <set>
#include <string_view>
#include <vector>

using namespace purgewright;
using namespace purgewright::checks;
using job::Draft;
using job::Key;

namespace {

constexpr double mm = 1e-3, ppm = 1e-6;
using Edits = std::vector<std::pair<Key, double>>;

Draft draft_with(const Edits &edits, const std::string &example = "logger-25") {
  return purgewright::test::example_draft(example, edits);
}

Design design_of(const Draft &draft) {
  auto resolution = job::resolve(draft);
  REQUIRE(resolution.job);
  return evaluate_purge(std::move(*resolution.job));
}

Draft with(Draft draft, Key key, double value) {
  draft[key].stated = true;
  draft[key].is_share = false;
  draft[key].number = value;
  return draft;
}

Status status_of(const Design &design, std::string_view rule) {
  const auto results = judge(design);
  const auto found = std::ranges::find(results, rule, &RuleResult::id);
  return found == results.end() ? Status::pass : found->status;
}

struct Case {
  std::string rule;
  Edits edits;
};

// A rule or clash and a job that breaks it.
const std::vector<Case> cases{
    {"access.slot_width", {{Key::fixture_slot_width, 27 * mm}}},
    {"access.slot_ahead",
     {{Key::cap_thickness, 8 * mm}, {Key::tube_length, 200 * mm}, {Key::fixture_slot_length, 20.48 * mm}}},
    {"access.swing_clear", {{Key::rotation_swing_radius, 14 * mm}}},
    {"machining.gallery_drill", {{Key::fixture_circuits, 3}}},
    {"machining.thinnest_wall", {{Key::fixture_diffuser_hole, 1 * mm}}},
    {"bench.axial_stop", {{Key::tube_length, 160 * mm}}},
    {"gas.bore_welding_floor", {{Key::gas_oxygen_limit_bore, 2.05 * ppm}}},
    {"gas.draught", {{Key::shop_draught, 2}}},
    {"gas.room_oxygen", {{Key::shop_room_volume, 5}, {Key::shop_room_air_changes_per_hour, 0}}},
    {"layout.tube_length", {{Key::tube_length, 60 * mm}, {Key::fixture_cradle, 1}}},
    {"layout.vent_covered", {{Key::fixture_plug, 1}, {Key::tube_vent_from_joint, 170 * mm}}},
};

} // namespace

TEST_CASE("the change found cures its rule; half of it does not") {
  for (const auto &test : cases) {
    INFO(test.rule);
    const Draft draft = draft_with(test.edits);
    const Design design = design_of(draft);
    REQUIRE(status_of(design, test.rule) != Status::pass);
    const auto change = find_change(draft, design, test.rule);
    REQUIRE(change);
    INFO(to_text(*change, units::UnitSystem::metric));
    CHECK(status_of(design_of(with(draft, change->key, change->to)), test.rule) == Status::pass);
    const double half = 0.5 * (change->from + change->to);
    const bool whole = job::field(change->key).kind == job::FieldKind::count;
    const auto changed_half = job::resolve(with(draft, change->key, half));
    if (!whole && changed_half.job) {
      CHECK(status_of(evaluate_purge(*changed_half.job), test.rule) != Status::pass);
    }
  }
}

namespace {

// How far a rule is from its limit, positive where it fails; empty where it is not judged.
std::optional<double> missed_by(const Draft &draft, std::string_view rule) {
  auto resolution = job::resolve(draft);
  if (!resolution.job) {
    return std::nullopt;
  }
  const bool hot = rule == "gas.torch_back" || rule == "gas.torch_preflow";
  const auto results =
      judge(hot ? evaluate(std::move(*resolution.job)) : evaluate_purge(std::move(*resolution.job)));
  const auto found = std::ranges::find(results, rule, &RuleResult::id);
  if (found == results.end() || !found->has_amount) {
    return std::nullopt;
  }
  const double over = found->value - found->limit;
  return found->bound == Bound::at_most ? over : -over;
}

// Whether some step of the knob brings the rule nearer to its limit.
bool helps(const Knob &knob, const Draft &draft) {
  const auto before = missed_by(draft, knob.rule);
  const auto now = job::figures(*job::resolve(draft).job);
  const auto *figure = units::find(now, job::field(knob.key).path);
  if (!before || figure == nullptr) {
    return false;
  }
  const bool whole = job::field(knob.key).kind == job::FieldKind::count;
  return std::ranges::any_of(std::array{0.02, 0.1, 0.4}, [&](double share) {
    const double step =
        whole ? 1.0 : std::max(share * figure->value, 0.01 * share * job::field(knob.key).most);
    const auto after = missed_by(with(draft, knob.key, figure->value + knob.way * step), knob.rule);
    return after && *after < *before;
  });
}

} // namespace

// A value that something else outweighs in every job at hand helps neither way.
TEST_CASE("what may cure a rule is not moved away from its cure") {
  std::set<std::string_view> tried;
  int found_helpful = 0;
  for (const Knob &knob : knobs()) {
    std::vector<Edits> breaking;
    for (const auto *list : {&checks::test::bad_alone(), &checks::test::bad_with_others()}) {
      for (const auto &bad : *list) {
        if (bad.rule == knob.rule) {
          breaking.push_back(bad.edits);
        }
      }
    }
    if (!breaking.empty()) {
      INFO(knob.rule << ": " << job::field(knob.key).path << (knob.way > 0 ? " larger" : " smaller"));
      const auto some_job = [&](int way) {
        return std::ranges::any_of(breaking, [&](const Edits &edits) {
          return helps({knob.rule, knob.key, way}, draft_with(edits));
        });
      };
      const bool helpful = some_job(knob.way);
      const bool both_ways = std::ranges::count_if(knobs(), [&](const Knob &other) {
                               return other.rule == knob.rule && other.key == knob.key;
                             }) == 2;
      CHECK((helpful || both_ways || !some_job(-knob.way)));
      found_helpful += helpful ? 1 : 0;
      tried.insert(knob.rule);
    }
  }
  CHECK(tried.size() > 15);
  CHECK(found_helpful > 30);
}

TEST_CASE("a change leaves no other rule worse") {
  for (const auto &test : cases) {
    INFO(test.rule);
    const Draft draft = draft_with(test.edits);
    const Design before = design_of(draft);
    if (!before.layout.buildable()) {
      continue; // no rule is judged before
    }
    const auto change = find_change(draft, before, test.rule);
    REQUIRE(change);
    for (const auto &result : judge(design_of(with(draft, change->key, change->to)))) {
      INFO(result.id);
      CHECK(result.status <= status_of(before, result.id));
    }
  }
}

TEST_CASE("a change is as small as it can be, in three digits of the shop's unit") {
  const Draft draft = draft_with({{Key::fixture_slot_width, 27 * mm}});
  const Design design = design_of(draft);
  const auto change = find_change(draft, design, "access.slot_width");
  REQUIRE(change);
  CHECK(change->key == Key::fixture_slot_width);
  const double need = design.layout.body.slot_needs.width.value();
  CHECK(change->to >= need);
  CHECK(change->to < need + 0.11 * mm);
  CHECK(change->to / (0.1 * mm) ==
        Approx(std::round(change->to / (0.1 * mm))).epsilon(1e-12)); // as it is shown
  CHECK(to_text(*change, units::UnitSystem::metric) == "fixture.slot.width at least 28.4 mm (now 27 mm)");
}

TEST_CASE("keys may be limited, and a rule no value cures gets no change") {
  const Draft draft = draft_with({{Key::gas_oxygen_limit_bore, 2.05 * ppm}});
  const Design design = design_of(draft);
  const std::array only{Key::gas_oxygen_in_supply};
  const auto change = find_change(draft, design, "gas.bore_welding_floor", only);
  REQUIRE(change);
  CHECK(change->key == Key::gas_oxygen_in_supply);
  const std::array useless{Key::fixture_slot_width};
  CHECK_FALSE(find_change(draft, design, "gas.bore_welding_floor", useless));
  CHECK_FALSE(find_change(draft_with({}), design_of(draft_with({})), "no.such_rule"));
}

TEST_CASE("results say the change, and those that pass say nothing") {
  const Draft draft = draft_with({{Key::fixture_slot_width, 27 * mm}});
  const Design design = design_of(draft);
  auto results = judge(design);
  add_changes(draft, design, results);
  for (const auto &result : results) {
    CHECK((result.remedy.find("smallest change") != std::string::npos) == (result.id == "access.slot_width"));
  }
}

TEST_CASE("solving gives less gas, fails nothing and keeps what the job states") {
  for (const std::string name : {"logger-25", "logger-38", "logger-51"}) {
    INFO(name);
    const Draft draft = draft_with({}, name);
    const Design before = design_of(draft);
    const Solution solution = solve(draft);
    CHECK(solution.passes);
    const Design after = design_of(solution.draft);
    CHECK(tally(after).failing == 0);
    CHECK(after.volumes.chamber_gas <= before.volumes.chamber_gas);
    for (const auto &result : judge(after)) {
      CHECK(result.status <= status_of(before, result.id));
    }
    for (const auto &choice : solution.choices) {
      CHECK_FALSE(draft[choice.key].stated);
      CHECK(solution.draft[choice.key].number == choice.to);
    }
    CHECK(solve(draft).choices.size() == solution.choices.size());
  }
}

TEST_CASE("no grid value of the clearances holds less gas than the solution") {
  const Draft draft = draft_with({});
  const Solution solution = solve(draft);
  const auto least = design_of(solution.draft).volumes.chamber_gas;
  for (double radial = 2.0; radial <= 6.0; radial += 0.5) {
    for (double end = 3.0; end <= 8.0; end += 0.5) {
      const Design other = design_of(with(with(draft, Key::fixture_radial_clearance, radial * mm),
                                          Key::fixture_end_clearance, end * mm));
      const bool sound = other.layout.buildable() && worst(judge(other)) == Status::pass;
      CHECK((!sound || other.volumes.chamber_gas >= least * (1.0 - 1e-12)));
    }
  }
}

TEST_CASE("solving cures what is left open and never what is stated") {
  const Draft stated = draft_with({{Key::fixture_slot_width, 27 * mm}});
  const Solution stuck = solve(stated);
  CHECK_FALSE(stuck.passes);
  CHECK(stuck.draft[Key::fixture_slot_width].number == 27 * mm);
  const Draft closed =
      draft_with({{Key::fixture_radial_clearance, 6 * mm}, {Key::fixture_end_clearance, 8 * mm}});
  CHECK(solve(closed).choices.empty());
}

// What an O-ring in the bore of so short and thick a tube gets too hot for, one on its outside stands.
TEST_CASE("where no size helps, solving takes another kind of plug, unless the job states one") {
  const std::string yaml =
      "job: {name: short}\n"
      "tube: {material: titanium-grade-2, outside_diameter: 16 mm, wall: 2 mm, length: 24 mm}\n"
      "cap: {shape: spigot, diameter: 16 mm, thickness: 2 mm}\n";
  const auto draft = job::read_draft_text(yaml, "short.yaml").draft;
  REQUIRE(status_of(design_of(draft), "heat.o_ring") == Status::fail);
  const Solution solution = solve(draft);
  CHECK(solution.passes);
  CHECK(tally(evaluate(*job::resolve(solution.draft).job)).failing == 0);
  const auto plug = std::ranges::find(solution.choices, Key::fixture_plug, &Change::key);
  REQUIRE(plug != solution.choices.end());
  CHECK(value_text(plug->key, plug->from, units::UnitSystem::metric) == "bore-ring");
  CHECK(value_text(plug->key, plug->to, units::UnitSystem::metric) == "cup");
  const auto stated = job::read_draft_text(yaml + "fixture: {plug: bore-ring}\n", "short.yaml").draft;
  CHECK_FALSE(solve(stated).passes);
}
