// Pieces of a sweep: written, read again and put together, they are the whole; what is no whole is refused.
#include "purgewright/report/shard.hpp"

#include "support/paths.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

using namespace purgewright;
using namespace purgewright::report;
using Catch::Matchers::Contains;

namespace {

// A sweep of the length of a slot too narrow for the torch, too long for the stands in the end.
Shard sweep_of(std::size_t rows) {
  const auto resolution = job::read_job(test::example_job("logger-25"));
  REQUIRE(resolution.job);
  Shard whole{.of = {},
              .version = "1",
              .job = {"logger-25", "abc", {{"log.csv", "def"}}},
              .sweeps = {fmt::format("fixture.slot.length=20 mm:{} mm:50 mm", 20 + 50 * (rows - 1))},
              .comparison = {}};
  whole.comparison.varied_keys = {"fixture.slot.length"};
  whole.comparison.varied_dimensions = {units::Dimension::length};
  whole.comparison.varied_currencies = {""};
  whole.comparison.ranked = {*rankable("mass.total")};
  whole.comparison.quick = true; // some rows are judged by every rule all the same
  const std::vector<std::string> ids{"chamber.length"};
  for (std::size_t n = 0; n < rows; ++n) {
    job::Job job = *resolution.job;
    job.fixture.cradle = job::CradleWish::stands;
    job.fixture.slot_width = units::millimetres(27.0);
    job.fixture.slot_length = units::millimetres(20.0 + 50.0 * static_cast<double>(n));
    const auto design = n % 2 == 0 ? checks::evaluate_row(job) : checks::evaluate_closed_form(job);
    whole.comparison.designs.push_back(compared(design, "row", ids));
    whole.comparison.designs.back().varied = {job.fixture.slot_length->value()};
    if (n == 0) {
      whole.comparison.asked = asked_of(design, ids);
    }
  }
  return whole;
}

std::vector<Shard> pieces(const Shard &whole, std::size_t count) {
  std::vector<Shard> all;
  for (std::size_t index = 1; index <= count; ++index) {
    Shard piece = whole;
    piece.of = {index, count};
    piece.comparison.designs.clear();
    for (std::size_t n = 0; n < piece.of.rows(whole.comparison.designs.size()); ++n) {
      piece.comparison.designs.push_back(whole.comparison.designs.at(piece.of.row(n)));
    }
    all.push_back(read_shard(shard_json(piece), "piece"));
  }
  return all;
}

std::string fault_of(std::vector<Shard> shards) {
  try {
    merged(std::move(shards));
  } catch (const BadShard &error) {
    return error.what();
  }
  return {};
}

std::string fault_of(const std::string &text) {
  try {
    read_shard(text, "a file");
  } catch (const BadShard &error) {
    return error.what();
  }
  return {};
}

} // namespace

TEST_CASE("pieces of a sweep, given in any order, are the whole again, to the byte") {
  const Shard whole = sweep_of(5);
  for (std::size_t count = 1; count <= 5; ++count) {
    auto all = pieces(whole, count);
    std::ranges::reverse(all);
    const Shard again = merged(std::move(all));
    INFO(count);
    CHECK(comparison_csv(again.comparison) == comparison_csv(whole.comparison));
    CHECK(comparison_json(again.comparison) == comparison_json(whole.comparison));
    CHECK(comparison_text(again.comparison) == comparison_text(whole.comparison));
    CHECK(again.job.inputs.front().sha256 == "def");
  }
}

TEST_CASE("a piece missing, twice, or of another sweep is named") {
  const Shard whole = sweep_of(4);
  auto missing = pieces(whole, 3);
  missing.erase(missing.begin() + 1);
  CHECK_THAT(fault_of(missing), Contains("2/3 is missing"));
  missing = pieces(whole, 3);
  missing.pop_back();
  CHECK_THAT(fault_of(missing), Contains("3/3 is missing"));
  auto twice = pieces(whole, 2);
  twice.push_back(twice.front());
  CHECK_THAT(fault_of(twice), Contains("1/2 is given twice"));
  auto other = pieces(whole, 2);
  other[1].job.sha256 = "another";
  CHECK_THAT(fault_of(other), Contains("different sweeps"));
  auto short_one = pieces(whole, 2);
  short_one[0].comparison.designs.pop_back();
  CHECK_THAT(fault_of(short_one), Contains("1/2 has 1 rows where the sweep's 3 leave it 2"));
  CHECK_THAT(fault_of(std::vector<Shard>{}), Contains("give the folders"));
}

TEST_CASE("a file that is no piece is refused, whatever it holds") {
  const std::string sound = shard_json(pieces(sweep_of(2), 1).front());
  CHECK(fault_of(sound).empty());
  for (std::size_t length = 0; length + 2 < sound.size(); length += 97) {
    CHECK_THAT(fault_of(sound.substr(0, length)), Contains("a file"));
  }
  const auto with = [&](const std::string &part, const std::string &other) {
    std::string text = sound;
    REQUIRE(text.find(part) != std::string::npos);
    return text.replace(text.find(part), part.size(), other);
  };
  CHECK_THAT(fault_of(with("\"piece\":[1,1]", "\"piece\":[3,2]")), Contains("there cannot be"));
  CHECK_THAT(fault_of(with("\"piece\":[1,1]", "\"piece\":[0,2]")), Contains("there cannot be"));
  CHECK_THAT(fault_of(with("\"ranked\":[", "\"ranked\":[999,")), Contains("another version"));
  CHECK_THAT(fault_of(with("\"unit_system\":0", "\"unit_system\":7")), Contains("another version"));
}

TEST_CASE("a piece whose rows contradict their own counts or their sweep is refused by name") {
  const Shard sound = sweep_of(5);
  REQUIRE(fault_of(shard_json(sound)).empty());
  REQUIRE(std::ranges::any_of(sound.comparison.designs, [](const ComparedDesign &d) {
    return !d.rules.clashes && d.rules.failing > 0 && !d.of_each_rule.empty();
  }));
  REQUIRE(
      std::ranges::any_of(sound.comparison.designs, [](const ComparedDesign &d) { return d.rules.clashes; }));
  const auto changed = [&](auto &&change) {
    Shard piece = sound;
    change(piece);
    return fault_of(shard_json(piece));
  };
  for (std::size_t n = 0; n < sound.comparison.designs.size(); ++n) {
    INFO(n);
    const ComparedDesign &row = sound.comparison.designs[n];
    const auto with = [&](auto &&change) {
      return changed([&](Shard &piece) { change(piece.comparison.designs[n]); });
    };
    CHECK_THAT(with([](ComparedDesign &d) { d.varied[0] += 1e-6; }),
               Contains("a file: row 'row'") && Contains("fixture.slot.length"));
    CHECK_THAT(with([](ComparedDesign &d) { d.rules.failing = -1; }), Contains("rules that fail"));
    CHECK_THAT(with([](ComparedDesign &d) { d.rules.worst = d.rules.worst.empty() ? "heat.cycle" : ""; }),
               Contains("the worst rule"));
    if (row.of_each_rule.empty()) { // counts alone
      CHECK_THAT(changed([](Shard &piece) { piece.comparison.quick = false; }), Contains("another version"));
      continue;
    }
    CHECK_THAT(with([](ComparedDesign &d) { ++d.rules.judged; }), Contains("rules judged"));
    CHECK_THAT(with([](ComparedDesign &d) { ++d.rules.cautions; }), Contains("cautions"));
    CHECK_THAT(with([](ComparedDesign &d) { d.of_each_rule.pop_back(); }), Contains("another version"));
    if (!row.rules.clashes) {
      CHECK_THAT(with([](ComparedDesign &d) {
                   d.rules.failing = d.rules.failing > 0 ? 0 : 1;
                   d.rules.worst = d.rules.failing > 0 ? "heat.cycle" : "";
                 }),
                 Contains("rules that fail"));
    }
  }
  CHECK_THAT(changed([](Shard &piece) { piece.sweeps = {"fixture.wall=2 mm:6 mm:1 mm"}; }),
             Contains("not its sweep's"));
  CHECK_THAT(changed([](Shard &piece) { piece.sweeps = {"nothing"}; }), Contains("a part is missing"));
  CHECK_THAT(changed([](Shard &piece) { piece.comparison.designs.pop_back(); }),
             Contains("4 rows, of its sweep 5"));
}

TEST_CASE("a piece is written as I/N") {
  CHECK(parse_shard("2/8").index == 2);
  CHECK(parse_shard("2/8").count == 8);
  for (const std::string bad : {"", "2", "0/8", "9/8", "2/", "/8", "2/8/9", "-1/8", "2.5/8", "1/999999999"}) {
    INFO(bad);
    CHECK_THROWS_AS(parse_shard(bad), BadShard);
  }
}
