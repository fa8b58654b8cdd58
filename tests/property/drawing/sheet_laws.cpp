// Laws of sheets: nothing stands on anything else, each printed number is the one measured on the solid, each
// feature is dimensioned once, no length of a part changes without its sheet, every made part has one.
#include "sheet_faults.hpp"

#include "property/fixture/run_length.hpp"
#include "support/stock_draw.hpp"

#include <algorithm>

using namespace purgewright;
using namespace purgewright::test;
using namespace purgewright::drawing;

namespace {

#ifdef PURGEWRIGHT_LONG_RUN
constexpr int jobs = 25, default_sheet_jobs = 60;
#else
constexpr int jobs = 4, default_sheet_jobs = 4;
#endif

using Faults = std::vector<std::string>;

void check_laws(const DrawnJob &drawn_job) {
  for (const Sheet &sheet : drawn_job.sheets) {
    INFO(sheet.name);
    CHECK(overlaps(sheet) == Faults{});
    CHECK(close_lines(sheet) == Faults{});
  }
  CHECK(missing_sheets(drawn_job) == Faults{});
  CHECK(repeated_features(drawn_job) == Faults{});
  const Measures measures = wrong_measures(drawn_job);
  CHECK(measures.faults == Faults{});
  CHECK(measures.count > 80);
  const Silence silence = silent_lengths(drawn_job);
  CHECK(silence.faults == Faults{});
  CHECK(silence.asked > 100);
}

// Placed by cost, so that a tip amid others' leaders may leave one crossing.
void check_leaders(const DrawnJob &drawn_job) {
  for (const Sheet &sheet : drawn_job.sheets) {
    const Faults faults = tangled_leaders(sheet);
    INFO((faults.empty() ? sheet.name : faults.front()));
    CHECK(faults.size() <= 1);
    CHECK(std::ranges::none_of(
        faults, [](const std::string &fault) { return fault.find("passes through") != std::string::npos; }));
  }
}

void check_example(const std::string &name) {
  const DrawnJob drawn_job = drawn(read_example(name));
  check_laws(drawn_job);
  check_leaders(drawn_job);
}

// Usual jobs: anywhere between the keys' limits an assembly may be too long for its sheet, and a cup's bore
// all cut away where its dimension points.
void check_random_jobs(std::uint64_t first_seed) {
  JobStream stream(first_seed, Reach::usual);
  for (int i = 0; i < jobs; ++i) {
    const RandomJob random = stream.next();
    INFO("seed " << random.seed);
    check_laws(drawn(random.job));
  }
}

} // namespace

TEST_CASE("laws of sheets: example logger-25") {
  check_example("logger-25");
}
TEST_CASE("laws of sheets: example logger-38") {
  check_example("logger-38");
}
TEST_CASE("laws of sheets: example logger-51") {
  check_example("logger-51");
}

TEST_CASE("a design whose rules fail says so in words on every sheet, and nothing stands on them") {
  job::Job job = read_example("logger-25");
  job.shop.sheet = job::Sheet::a4;
  const std::vector<std::string> failing{"Slot is wide enough for the cap and the tilted torch",
                                         "Fingers reach every valve of the gas-port block"};
  for (const Sheet &sheet : drawn(job, failing).sheets) {
    INFO(sheet.name);
    CHECK(overlaps(sheet) == Faults{});
    std::string words;
    for (const Text &text : sheet.texts) {
      words += text.content + " ";
    }
    CHECK_THAT(words,
               Catch::Contains("NOT FOR USE") && Catch::Contains(failing[0]) && Catch::Contains(failing[1]));
  }
}

// ISO 3098-1: 2.5 mm is the least of lettering that is to be copied and read at a bench; from memory.
TEST_CASE("no lettering is smaller than 2.5 mm, however long a title or a name") {
  job::Job job = read_example("logger-51");
  job.identity.title =
      "Housing of the tide-gauge logger for the outer harbour, second series, with long words";
  job.identity.prepared_by = "the workshop's second shift, on behalf of the first one";
  for (const job::Sheet paper : {job::Sheet::a4, job::Sheet::tabloid}) {
    job.shop.sheet = paper;
    for (const Sheet &sheet : drawn(job).sheets) {
      INFO(sheet.name);
      CHECK(overlaps(sheet) == Faults{});
      for (const Text &text : sheet.texts) {
        INFO(text.content);
        CHECK(text.height >= 2.5);
      }
    }
  }
}

// The wider general tolerance of an inch sheet, .01 in, is no wider than ISO 2768-1 medium over 30 mm alone.
TEST_CASE("two decimals of an inch stand on outer sizes over 30 mm, three on all that is closer") {
  job::Job job = read_example("logger-38");
  REQUIRE(job.shop.unit_system == units::UnitSystem::inch);
  int two = 0, three = 0;
  for (const Sheet &sheet : drawn(job).sheets) {
    for (const Dimension &d : sheet.dimensions) {
      INFO(sheet.name << ": " << d.feature << ": " << (d.lines.empty() ? "" : d.lines[0]));
      if (d.probe == Probe::axes || d.probe == Probe::offset || d.probe == Probe::diameter) {
        CHECK(d.last_digit < 0.0011);
      }
      three += d.last_digit > 0.0009 && d.last_digit < 0.0011 ? 1 : 0;
      if (d.last_digit > 0.009) {
        ++two;
        CHECK(units::to_millimetres(d.value) > 30.0);
        CHECK(std::abs(units::to_inches(d.value) - d.shown) < 0.00051);
      }
    }
  }
  CHECK(two > 0);
  CHECK(three > 50);
}

// Common practice, no source: holes of a base plate at a fifth of their size are read with a lens.
TEST_CASE("a part that small paper would show at less than half size stands on the next larger one") {
  job::Job job = read_example("logger-38");
  job.shop.sheet = job::Sheet::letter;
  int larger = 0;
  for (const Sheet &sheet : drawn(job).sheets) {
    INFO(sheet.name << " at " << sheet.scale);
    CHECK((sheet.scale >= 0.5 || sheet.width > 400.0));
    larger += sheet.part == "base-plate" && sheet.width > 400.0 ? 1 : 0;
  }
  CHECK(larger == 1);
}

TEST_CASE("laws of sheets: a short tube on its spindle, example sensor-6") {
  check_example("sensor-6");
}

TEST_CASE("laws of sheets: a wide tube with a masked slot, example well-114") {
  check_example("well-114");
}

TEST_CASE("laws of sheets: random jobs, 1 of 8") {
  check_random_jobs(1000);
}
TEST_CASE("laws of sheets: random jobs, 2 of 8") {
  check_random_jobs(2000);
}
TEST_CASE("laws of sheets: random jobs, 3 of 8") {
  check_random_jobs(3000);
}
TEST_CASE("laws of sheets: random jobs, 4 of 8") {
  check_random_jobs(4000);
}
TEST_CASE("laws of sheets: random jobs, 5 of 8") {
  check_random_jobs(5000);
}
TEST_CASE("laws of sheets: random jobs, 6 of 8") {
  check_random_jobs(6000);
}
TEST_CASE("laws of sheets: random jobs, 7 of 8") {
  check_random_jobs(7000);
}
TEST_CASE("laws of sheets: random jobs, 8 of 8") {
  check_random_jobs(8000);
}

TEST_CASE("sheets of tubes a shop can buy are drawn without overlap") {
  const auto first = static_cast<std::uint64_t>(from_environment("PURGEWRIGHT_FIRST_SEED", 1));
  const auto count =
      static_cast<std::uint64_t>(from_environment("PURGEWRIGHT_SHEET_JOBS", default_sheet_jobs));
  for (std::uint64_t seed = first; seed < first + count; ++seed) {
    const StockJob stock = stock_job(seed);
    INFO("seed " << seed << ", " << stock.in_words);
    auto resolution = job::resolve(job::read_draft_text(stock.yaml, "stock.yaml").draft);
    REQUIRE(resolution.job);
    check_laws(drawn(*resolution.job));
  }
}

TEST_CASE("the count of overlaps finds what it looks for") {
  Sheet sheet = drawn(read_example("logger-25")).sheets.front();
  REQUIRE(overlaps(sheet).empty());
  auto &texts = sheet.dimensions.front().texts;
  const Text first = texts.front();
  texts.front().at = sheet.dimensions.back().texts.front().at;
  CHECK_FALSE(overlaps(sheet).empty());
  texts.front().at = {0.0, 0.0};
  CHECK_FALSE(overlaps(sheet).empty());
  texts.front() = first;
  sheet.strokes.push_back({Line::visible, Segment{first.at, first.at + Point{2.0, 1.0}}});
  CHECK_FALSE(overlaps(sheet).empty());
}
