// Nothing on a sheet stands on anything else: counted on the placed sheets, not by the placer's own book.
#include "drawn_job.hpp"

#include "purgewright/drawing/lettering.hpp"

using namespace purgewright;
using namespace purgewright::test;
using namespace purgewright::drawing;

namespace {

constexpr double chord = 0.05; // mm on paper

struct Lettering {
  std::string what;
  Box box;
  std::size_t owner; // dimension's index; texts of the sheet itself have none
};
constexpr std::size_t nobody = static_cast<std::size_t>(-1);

std::vector<Lettering> lettering_of(const Sheet &sheet) {
  std::vector<Lettering> out;
  for (const Text &text : sheet.texts) {
    out.push_back({text.content, text_box(text), nobody});
  }
  for (std::size_t i = 0; i < sheet.dimensions.size(); ++i) {
    for (const Text &text : sheet.dimensions[i].texts) {
      out.push_back({sheet.dimensions[i].feature + " " + text.content, text_box(text), i});
    }
  }
  return out;
}

struct Inked {
  Segment segment;
  std::size_t owner;
};

std::vector<Inked> ink_of(const Sheet &sheet) {
  std::vector<Inked> out;
  const auto add = [&](const std::vector<Stroke> &strokes, std::size_t owner) {
    for (const Stroke &stroke : strokes) {
      for (const Segment &s : chords(stroke.curve, chord)) {
        out.push_back({s, owner});
      }
    }
  };
  for (const View &view : sheet.views) {
    add(view.strokes, nobody);
  }
  for (std::size_t i = 0; i < sheet.dimensions.size(); ++i) {
    add(sheet.dimensions[i].strokes, i);
  }
  add(sheet.strokes, nobody);
  return out;
}

// Faults in words; empty on a good sheet.
std::vector<std::string> faults_of(const Sheet &sheet) {
  std::vector<std::string> faults = sheet.clashes;
  const auto texts = lettering_of(sheet);
  for (std::size_t i = 0; i < texts.size(); ++i) {
    if (!sheet.frame.contains(texts[i].box)) {
      faults.push_back(texts[i].what + " leaves the frame");
    }
    for (std::size_t j = i + 1; j < texts.size(); ++j) {
      const bool together = texts[i].owner != nobody && texts[i].owner == texts[j].owner; // lines of one callout
      if (!together && overlap(texts[i].box, texts[j].box)) {
        faults.push_back(texts[i].what + " on " + texts[j].what);
      }
    }
  }
  const auto ink = ink_of(sheet);
  for (const Lettering &text : texts) {
    for (const Inked &line : ink) {
      if ((text.owner == nobody || line.owner != text.owner) && crosses(line.segment, text.box)) {
        faults.push_back(text.what + " on a line");
        break;
      }
    }
  }
  return faults;
}

void check_sheets(const std::vector<Sheet> &sheets) {
  REQUIRE_FALSE(sheets.empty());
  for (const Sheet &sheet : sheets) {
    INFO(sheet.name);
    CHECK(faults_of(sheet) == std::vector<std::string>{});
  }
}

void check_random_jobs(std::uint64_t first_seed) {
  constexpr int jobs = 25;
  JobStream stream(first_seed);
  for (int i = 0; i < jobs; ++i) {
    const RandomJob random = stream.next();
    INFO("seed " << random.seed);
    check_sheets(drawn(random.job).sheets);
  }
}

} // namespace

TEST_CASE("no text of an example's sheets meets a line, another text or the frame") {
  for (const auto &name : example_names) {
    INFO(name);
    check_sheets(drawn(example_job(name)).sheets);
  }
}

TEST_CASE("the count of overlaps finds what it looks for") {
  Sheet sheet = drawn(example_job("logger-25")).sheets.front();
  REQUIRE(faults_of(sheet).empty());
  auto &texts = sheet.dimensions.front().texts;
  const Text first = texts.front();
  texts.front().at = sheet.dimensions.back().texts.front().at;
  CHECK_FALSE(faults_of(sheet).empty());
  texts.front().at = {0.0, 0.0};
  CHECK_FALSE(faults_of(sheet).empty());
  texts.front() = first;
  sheet.strokes.push_back({Line::visible, Segment{first.at, first.at + Point{2.0, 1.0}}});
  CHECK_FALSE(faults_of(sheet).empty());
}

// Minutes each: run by hand with the tag.
TEST_CASE("no text of 200 random jobs' sheets meets a line, another text or the frame: 1 of 8", "[.random]") { check_random_jobs(1000); }
TEST_CASE("no text of 200 random jobs' sheets meets a line, another text or the frame: 2 of 8", "[.random]") { check_random_jobs(2000); }
TEST_CASE("no text of 200 random jobs' sheets meets a line, another text or the frame: 3 of 8", "[.random]") { check_random_jobs(3000); }
TEST_CASE("no text of 200 random jobs' sheets meets a line, another text or the frame: 4 of 8", "[.random]") { check_random_jobs(4000); }
TEST_CASE("no text of 200 random jobs' sheets meets a line, another text or the frame: 5 of 8", "[.random]") { check_random_jobs(5000); }
TEST_CASE("no text of 200 random jobs' sheets meets a line, another text or the frame: 6 of 8", "[.random]") { check_random_jobs(6000); }
TEST_CASE("no text of 200 random jobs' sheets meets a line, another text or the frame: 7 of 8", "[.random]") { check_random_jobs(7000); }
TEST_CASE("no text of 200 random jobs' sheets meets a line, another text or the frame: 8 of 8", "[.random]") { check_random_jobs(8000); }
