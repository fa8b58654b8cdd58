#include "job_text.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <ctime>
#include <filesystem>
#include <random>

using namespace purgewright::job;
using namespace purgewright::job::test;
using Catch::Contains;

namespace {

std::string problems_of(std::string_view text) {
  return all_text(read_draft_text(text, "job.yaml").problems);
}

double seconds_to_refuse(std::string_view text) {
  const std::clock_t start = std::clock();
  CHECK(has_errors(read_draft_text(text, "job.yaml").problems));
  return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

std::string repeated(std::string_view part, std::size_t times) {
  std::string text;
  for (std::size_t i = 0; i < times; ++i) {
    text += part;
  }
  return text;
}

} // namespace

TEST_CASE("a tab that indents and text in UTF-16 are told as what they are", "[unit]") {
  CHECK(problems_of("job:\n\tname: x\n").find("2:6: error: a tab indents this line") != std::string::npos);
  CHECK(problems_of("job:\n \tname: x\n").find("a tab indents this line") != std::string::npos);
  CHECK(problems_of("job:\tx: y\n").find("tab indents") == std::string::npos);
  using namespace std::string_view_literals;
  for (const std::string_view text : {"\xFF\xFEj\0o\0"sv, "\xFE\xFF\0j\0o"sv}) {
    CHECK(problems_of(text).find("UTF-16 text; save it as UTF-8") != std::string::npos);
  }
  CHECK(problems_of("\xFFx").find("not UTF-8") != std::string::npos);
}

TEST_CASE("all faults of a file are reported in one go, in the order of their lines", "[unit]") {
  const std::string path = path_in_tests("e2e/jobs/many-faults.yaml");
  const Resolution resolution = read_job(path);
  CHECK_FALSE(resolution.job.has_value());
  std::vector<int> lines;
  for (const auto &problem : resolution.problems) {
    CHECK(problem.file == path);
    lines.push_back(problem.mark.line);
  }
  CAPTURE(all_text(resolution.problems));
  CHECK(std::ranges::is_sorted(lines));
  CHECK(lines == std::vector<int>{3, 5, 7, 8, 13, 16, 17, 18, 20});
}

TEST_CASE("a fault between values is found beside a fault of another value", "[unit]") {
  const std::string text = with(with(flat_job, "diameter: 25.4 mm\n  thick", "diameter: 40 mm\n  thick"),
                                "length: 160 mm", "length: long");
  const auto path = (std::filesystem::temp_directory_path() / "purgewright-two-faults.yaml").string();
  std::ofstream(path) << text;
  const auto problems = read_job(path).problems;
  std::filesystem::remove(path);
  REQUIRE(problems.size() == 2);
  CHECK(problems[0].key == "tube.length");
  CHECK(problems[1].key == "cap.diameter");
}

TEST_CASE("a wrong value gives no second fault in what depends on it", "[unit]") {
  CHECK(read_draft_text(with(flat_job, "wall: 0.9 mm", "wal: 0.9 mm"), "job.yaml").problems.size() == 1);
  CHECK(read_draft_text(with(flat_job, "cap:\n", "cup:\n"), "job.yaml").problems.size() == 1);
}

TEST_CASE("values come out in SI with their places", "[unit]") {
  const DraftReading reading = read_draft_text(flat_job, "job.yaml");
  REQUIRE(reading.problems.empty());
  const Entry &wall = reading.draft[Key::tube_wall];
  CHECK(wall.stated);
  CHECK(wall.number == Approx(0.9e-3).epsilon(1e-15));
  CHECK(wall.mark.line == 6);
  CHECK(wall.mark.column == 9);
  CHECK(reading.draft[Key::cap_shape].number == 0.0);
  CHECK_FALSE(reading.draft[Key::weld_current].stated);
}

TEST_CASE("a share is kept as a share of its parent", "[unit]") {
  const DraftReading reading =
      read_draft_text(with(flat_job, "  length", "  wall_tolerance: 5 %\n  length"), "job.yaml");
  REQUIRE(reading.problems.empty());
  CHECK(reading.draft[Key::tube_wall_tolerance].is_share);
  CHECK(reading.draft[Key::tube_wall_tolerance].number == Approx(0.05));
}

TEST_CASE("oxygen without a unit is a share, and that is said", "[unit]") {
  const auto limit = [](const std::string &value) {
    return read_draft_text(
        "job: {name: a}\ntube: {material: titanium-grade-2, outside_diameter: 25 mm, wall: 1 mm, "
        "length: 90 mm}\ncap: {shape: flat, diameter: 25 mm, thickness: 2 mm}\n"
        "gas: {oxygen_limit: {bore: " +
            value + "}}\n",
        "a.yaml");
  };
  const auto bare = limit("0.005");
  REQUIRE(bare.problems.size() == 1);
  CHECK_FALSE(has_errors(bare.problems));
  CHECK(to_text(bare.problems.front()).find("0.005 without a unit is a share: 5000 ppm is taken") !=
        std::string::npos);
  CHECK(bare.draft[Key::gas_oxygen_limit_bore].number == Approx(0.005));
  CHECK(limit("0.005 %").problems.empty());
  CHECK(limit("50 ppm").problems.empty());
}

TEST_CASE("line ends, byte order mark and accents do not move the places", "[unit]") {
  std::string windows = "\xEF\xBB\xBF" + with(flat_job, "wall: 0.9 mm", "wall: 0.9");
  for (auto at = windows.find('\n'); at != std::string::npos; at = windows.find('\n', at + 2)) {
    windows.insert(at, "\r");
  }
  CHECK_THAT(problems_of(windows), Contains("job.yaml:6:9: error: tube.wall"));
  CHECK_THAT(problems_of("job: {title: \"\u00e9\u00e9\u00e9\", nam: x}\n"),
             Contains("job.yaml:1:21: error: job.nam"));
}

TEST_CASE("limits stand in the unit the user wrote, and are themselves allowed", "[unit]") {
  CHECK_THAT(problems_of(with(flat_job, "0.9 mm", "0.001 in")), Contains("from 0.01182 in to 0.2362 in"));
  CHECK_THAT(problems_of(with(flat_job, "0.9 mm", "20 mm")), Contains("from 0.3 mm to 6 mm"));
  CHECK(problems_of(with(flat_job, "0.9 mm", "0.01182 in")).empty());
  CHECK(problems_of(with(flat_job, "0.9 mm", "0.2362 in")).empty());
  CHECK_THAT(problems_of(std::string(flat_job) + "torch: {gas_flow: 200 cfh}\n"),
             Contains("cfh to 84.75 cfh"));
}

TEST_CASE("the nearest key is named, in its own section or in another", "[unit]") {
  const auto nearest = [](std::string_view section, std::string_view key) {
    const std::string text = std::string(section) + ":\n  " + std::string(key) + ": 1\n";
    for (const auto &problem : read_draft_text(text, "job.yaml").problems) {
      if (problem.key == std::string(section) + "." + std::string(key)) {
        return problem.nearest;
      }
    }
    return std::string("no fault");
  };
  CHECK(nearest("tube", "lenght") == "tube.length");
  CHECK(nearest("tube", "out_diameter") == "tube.outside_diameter");
  CHECK(nearest("cap", "dome_hight") == "cap.dome_height");
  CHECK(nearest("tube", "dome_height") == "cap.dome_height");
  CHECK(nearest("torch", "travel_speed") == "weld.travel_speed");
  CHECK(nearest("tube", "Wall") == "tube.wall");
  CHECK(nearest("tube", "colour").empty());
  CHECK(read_draft_text("tube: {" + std::string(300, 'w') + ": 1}\n", "").problems.back().nearest.empty());
}

TEST_CASE("an empty vent section means one vent with every default", "[unit]") {
  const auto job = good_job(with(flat_job, "  length", "  vent: {}\n  length"));
  CHECK(job.tube.vent.count == 1);
  CHECK(job.tube.vent.diameter.value() == Approx(3e-3));
  CHECK(good_job(flat_job).tube.vent.count == 0);
}

TEST_CASE("files that are no job files are refused with a reason", "[unit]") {
  CHECK_THAT(all_text(read_draft(path_in_tests("e2e/jobs/none.yaml")).problems),
             Contains("there is no such file"));
  CHECK_THAT(all_text(read_draft(path_in_tests("e2e")).problems), Contains("this is a folder"));
  CHECK_THAT(all_text(read_draft("").problems), Contains("there is no such file"));
  CHECK_THAT(problems_of(""), Contains("the file is empty"));
  CHECK_THAT(problems_of("# nothing\n"), Contains("the file is empty"));
  CHECK_THAT(problems_of(std::string(flat_job) + "#" + std::string(1024 * 1024, 'x')),
             Contains("larger than 1 MiB"));
}

TEST_CASE("of too many brackets the first beyond is shown", "[unit]") {
  CHECK_THAT(problems_of("a:\n  " + repeated("[", 2001)),
             Contains(":2:2003: error: the file holds more than"));
}

TEST_CASE("bombs are refused fast", "[unit]") {
  constexpr double patience = 2.0; // s, of the processor, under sanitizers; milliseconds otherwise
  constexpr std::size_t most = 1024 * 1024 - 64;
  std::string aliases = "a: &a [x, x, x, x, x, x, x, x, x]\n";
  for (char c = 'b'; c <= 'z'; ++c) {
    const std::string before = std::string("*") + static_cast<char>(c - 1) + ", ";
    aliases += std::string(1, c) + ": &" + c + " [" + repeated(before, 9) + "]\n";
  }
  CHECK(seconds_to_refuse(aliases) < patience);
  CHECK(seconds_to_refuse(repeated("[", most)) < patience);
  CHECK(seconds_to_refuse(repeated("{", most)) < patience);
  CHECK(seconds_to_refuse("a: " + repeated("{a: ", most / 4)) < patience);
  CHECK(seconds_to_refuse(repeated("- ", most / 2)) < patience);
  CHECK(seconds_to_refuse(repeated("? ", most / 2)) < patience);
  CHECK(seconds_to_refuse(repeated("a: 1\n", most / 5)) < patience);
  CHECK(seconds_to_refuse(repeated("---\n", most / 4)) < patience);
  CHECK(seconds_to_refuse("a: [" + repeated("x, ", most / 3)) < patience);
  CHECK(seconds_to_refuse("a: '" + repeated("''", most / 2)) < patience);
  CHECK(seconds_to_refuse(std::string(most, 'a')) < patience);
  CHECK(seconds_to_refuse(std::string(most, '!')) < patience);
  CHECK(seconds_to_refuse(std::string(most, '%')) < patience);
}

TEST_CASE("messages stay one plain line whatever the file holds", "[unit]") {
  const std::string text = with(flat_job, "0.9 mm", R"("9 \e[31m\n\a mm")");
  const std::string message = all_text(read_draft_text(text, "job.yaml").problems);
  CHECK(std::ranges::count(message, '\n') == 1);
  CHECK(message.find('\x1b') == std::string::npos);
  CHECK_THAT(problems_of(with(flat_job, "name: flat", R"(name: "a\u0085b")")), Contains("job.name"));
}

TEST_CASE("damaged job files never throw", "[unit]") {
  std::mt19937 random(20251125);
  const std::string sound = file_text(path_in_tests("../examples/logger-38.yaml"));
  REQUIRE(sound.size() > 100);
  for (int i = 0; i < 1500; ++i) {
    std::string text = sound;
    const auto damages = 1 + random() % 4;
    for (unsigned d = 0; d < damages; ++d) {
      const auto at = random() % text.size();
      switch (random() % 4) {
      case 0:
        text[at] = static_cast<char>(random() % 256);
        break;
      case 1:
        text.erase(at, random() % 20);
        break;
      case 2:
        text.insert(at, std::string_view("&*!|>{}[]:-?'\"%@`#,\n\t ").substr(random() % 22, 2));
        break;
      default:
        text.insert(at, text.substr(random() % text.size(), random() % 40));
      }
    }
    CAPTURE(i);
    REQUIRE_NOTHROW(resolve_text(text));
  }
}

namespace {

Resolution with_metal(const std::string &name) {
  return resolve_text(with(flat_job, "material: titanium-grade-2", "material: " + name));
}

std::string offered(const std::string &metal) {
  const auto read = with_metal(metal);
  REQUIRE(read.problems.size() == 1);
  CHECK(read.problems.front().key == "tube.material");
  return read.problems.front().nearest;
}

} // namespace

TEST_CASE("a job takes a metal's usual names", "[unit]") {
  for (const std::string name : {"Grade 5", "Ti-6Al-4V", "6-4", "R56400", "3.7165", "\"ti 6al 4v\""}) {
    CAPTURE(name);
    const auto read = with_metal(name);
    REQUIRE(read.job);
    CHECK(read.job->tube.material->name == "titanium-6al-4v");
    CHECK(read.job->cap.material->name == "titanium-6al-4v");
  }
  CHECK(with_metal("Grade 9").job->tube.material->name == "titanium-grade-9");
  const auto bar =
      resolve_text(std::string(flat_job) + "fixture: {material: EN AW-6082, pin_material: AISI 304}\n");
  REQUIRE(bar.job);
  CHECK(bar.job->fixture.material->name == "aluminium-6082");
  CHECK(bar.job->fixture.pin_material->name == "stainless-304");
}

TEST_CASE("a name that may be another metal is offered no other grade; a slip in a word is", "[unit]") {
  for (const std::string other :
       {"titanium-grade-3", "titanium-grade-4", "titanium-grade-7", "titanium-grade-23", "Grade 1",
        "Grade 12", "Ti-6Al-4V ELI", "Ti-6Al-7Nb", "Ti-6Al-4Zr", "CP4", "R56401", "3.7235",
        "zirconium-grade-2", "tantalum", "titanium", "aluminium-6082"}) {
    CAPTURE(other);
    CHECK(offered(other).empty());
  }
  CHECK(offered("titanum-grade-2") == "titanium-grade-2");
  CHECK(offered("titanium-garde-9") == "titanium-grade-9");
  CHECK(offered("Titanum Grade 5") == "titanium-6al-4v");
}

TEST_CASE("other digits are another choice, not a slip", "[unit]") {
  const auto wrong = [](const std::string &line) {
    const auto read = resolve_text(std::string(flat_job) + line);
    REQUIRE(read.problems.size() == 1);
    return read.problems.front().nearest;
  };
  CHECK(wrong("gas: {port_thread: G1/2}\n").empty());
  CHECK(wrong("shop: {sheet: A5}\n").empty());
  CHECK(wrong("gas: {port_thread: 1/8 NTP}\n") == "1/8 NPT");
  CHECK(wrong("shop: {sheet: Leter}\n") == "Letter");
  CHECK(wrong("fixture: {material: aluminium-6083}\n").empty());
}

TEST_CASE(
    "the same key twice is one error that names both lines, in a section, in flow form and between both",
    "[unit]") {
  const auto only = [](const std::string &text) {
    const auto read = resolve_text(text);
    REQUIRE(read.problems.size() == 1);
    CHECK_FALSE(read.job);
    return to_text(read.problems.front());
  };
  const std::string job(flat_job);
  CHECK_THAT(only(with(job, "  wall: 0.9 mm\n", "  wall: 0.9 mm\n  wall: 1.2 mm\n")),
             Catch::Matchers::Contains("job.yaml:7:3") && Catch::Matchers::Contains("tube.wall") &&
                 Catch::Matchers::Contains("line 6"));
  CHECK_THAT(only(job + "gas: {species: argon, species: helium}\n"),
             Catch::Matchers::Contains("gas.species") && Catch::Matchers::Contains("line 12"));
  CHECK_THAT(only(job + "tube: {wall: 2 mm}\n"),
             Catch::Matchers::Contains("tube") && Catch::Matchers::Contains("first at line 3"));
  CHECK_THAT(only(job + "gas:\n  oxygen_limit: {bore: 50 ppm, \"bore\": 500 ppm}\n"),
             Catch::Matchers::Contains("gas.oxygen_limit.bore") && Catch::Matchers::Contains("line 13"));
}
