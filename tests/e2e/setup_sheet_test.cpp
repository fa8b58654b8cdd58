// The setup sheet and the plots as independent readers see them: poppler for the page, libxml for the SVG.
// What the sheet prints is worked out anew here from results.json.
#include "e2e/program.hpp"

#include "purgewright/pages/plots.hpp"
#include "purgewright/pages/setup_sheet.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <regex>
#include <sstream>

using namespace purgewright;
using namespace purgewright::test;
using nlohmann::json;

namespace {

constexpr std::string_view job_hash = "5f0e9c2a7b1d4e8f5f0e9c2a7b1d4e8f5f0e9c2a7b1d4e8f5f0e9c2a7b1d4e8f";

report::Findings findings_of(const std::string &path) {
  const auto resolution = job::read_job(path);
  REQUIRE(resolution.job);
  return report::find(checks::evaluate(*resolution.job));
}

std::string sheet_of(const report::Findings &findings) {
  return pages::setup_sheet_pdf(findings, {std::string(job_hash), "1.2.3"});
}

std::string read_by(const std::string &program, std::vector<std::string> arguments) {
  const auto done = run(program, arguments);
  INFO(done.err);
  REQUIRE(done.status == 0);
  return done.out;
}

std::map<std::string, double> quantities(const std::string &results) {
  std::map<std::string, double> values;
  const json parsed = json::parse(results);
  for (const auto &quantity : parsed["quantities"]) {
    values[quantity["id"].get<std::string>()] = quantity["value"].get<double>();
  }
  return values;
}

// Words of a page with runs of blanks made one.
std::string plain(const std::string &text) {
  return std::regex_replace(text, std::regex(R"(\s+)"), " ");
}

// m3/s as a flowmeter's two scales: one decimal, none from 10 L/min on.
std::string set_point(double flow) {
  const double litres = flow * 60e3, feet = flow * 3600.0 / 0.028316846592;
  std::ostringstream text;
  text.setf(std::ios::fixed);
  text.precision(litres < 9.95 ? 1 : 0);
  text << litres << " | ";
  text.precision(1);
  text << feet;
  return text.str();
}

// Never less than computed: whole seconds to 20 s, fives to 2 min, then quarter minutes.
std::string waiting(double seconds) {
  const double step = seconds < 20.0 ? 1.0 : seconds < 120.0 ? 5.0 : 15.0;
  return std::to_string(std::lround(std::ceil(seconds / step) * step)) + " s";
}

// The same as a pattern: the reader leaves out a blank as narrow as that before the unit.
std::string pattern_of(const std::string &waiting) {
  return std::regex_replace(waiting, std::regex(" "), " ?");
}

struct Word {
  double x_min, y_min, x_max, y_max;
  std::string text;
};

std::vector<Word> words_of(const std::filesystem::path &pdf, const std::string &of) {
  const std::string page = read_by("/usr/bin/pdftotext", {"-bbox", "-f", of, "-l", of, pdf.string(), "-"});
  const std::regex pattern(
      R"re(<word xMin="([-.\d]+)" yMin="([-.\d]+)" xMax="([-.\d]+)" yMax="([-.\d]+)">([^<]*)<)re");
  std::vector<Word> words;
  for (std::sregex_iterator at(page.begin(), page.end(), pattern), end; at != end; ++at) {
    const auto number = [&](std::size_t i) { return std::stod((*at)[i].str()); };
    words.push_back({number(1), number(2), number(3), number(4), (*at)[5].str()});
  }
  return words;
}

// No word leaves the margins, and no two words of one size of page lie on each other.
void check_page(const std::vector<Word> &words, double width, double height) {
  constexpr double edge = 20.0, touch = 1.0; // points; boxes are the font's, ink is smaller
  for (std::size_t i = 0; i < words.size(); ++i) {
    const Word &a = words[i];
    INFO(a.text);
    CHECK(a.x_min > edge);
    CHECK(a.y_min > edge);
    CHECK(a.x_max < width - edge);
    CHECK(a.y_max < height - edge);
    for (std::size_t j = i + 1; j < words.size(); ++j) {
      const Word &b = words[j];
      const double shared_x = std::min(a.x_max, b.x_max) - std::max(a.x_min, b.x_min);
      const double shared_y = std::min(a.y_max, b.y_max) - std::max(a.y_min, b.y_min);
      const double lower = std::min(a.y_max - a.y_min, b.y_max - b.y_min);
      INFO(b.text);
      CHECK_FALSE((shared_x > touch && shared_y > 0.5 * lower));
    }
  }
}

// The page for the bench is full of words; the second has the reasons and the plots.
void check_layout(const std::filesystem::path &pdf, double width, double height) {
  const auto bench = words_of(pdf, "1"), reasons = words_of(pdf, "2");
  CHECK(bench.size() > 300);
  CHECK(reasons.size() > 100);
  check_page(bench, width, height);
  check_page(reasons, width, height);
}

struct PageSize {
  double width, height; // points
};

PageSize page_of(const std::filesystem::path &pdf) {
  const std::string info = read_by("/usr/bin/pdfinfo", {pdf.string()});
  CHECK(std::regex_search(info, std::regex(R"(Pages:\s+2\n)")));
  std::smatch size;
  REQUIRE(std::regex_search(info, size, std::regex(R"(Page size:\s+([.\d]+) x ([.\d]+))")));
  return {std::stod(size[1].str()), std::stod(size[2].str())};
}

constexpr double point = 25.4 / 72.0; // mm

} // namespace

TEST_CASE("the setup sheet is a page of the job's paper with every set-point and hold of the results, and "
          "one of reasons") {
  const ScratchFolder folder;
  const std::map<std::string, std::pair<double, double>> papers{
      {"logger-25", {210.0, 297.0}}, {"logger-38", {215.9, 279.4}}, {"logger-51", {210.0, 297.0}}};
  for (const auto &[name, paper] : papers) {
    INFO(name);
    const auto findings = findings_of(example(name));
    const auto pdf = folder / (name + ".pdf");
    const std::string bytes = sheet_of(findings);
    write_bytes(pdf, bytes);
    CHECK(sheet_of(findings) == bytes);
    const PageSize size = page_of(pdf);
    CHECK(size.width * point == Approx(paper.first).margin(0.1));
    CHECK(size.height * point == Approx(paper.second).margin(0.1));
    check_layout(pdf, size.width, size.height);
    const std::string text = plain(read_by("/usr/bin/pdftotext", {"-layout", pdf.string(), "-"}));
    const std::string flowing =
        plain(read_by("/usr/bin/pdftotext", {pdf.string(), "-"})); // over ends of lines
    const auto values = quantities(report::results_json(findings));
    for (const std::string id : {"purge.bore.prepurge.flow", "purge.chamber.prepurge.flow",
                                 "purge.bore.welding.flow", "purge.chamber.welding.flow", "torch.gas_flow"}) {
      INFO(id << " " << set_point(values.at(id)));
      CHECK(text.find(" " + set_point(values.at(id)) + " ") != std::string::npos);
    }
    const double prepurge = values.at("purge.wait");
    CHECK(prepurge >= values.at("purge.bore.prepurge.time_high"));
    CHECK(prepurge >= values.at("purge.chamber.prepurge.time_high"));
    CHECK(std::regex_search(text, std::regex(" - \u2265 " + pattern_of(waiting(prepurge)) + " ")));
    const double postflow = std::max(values.at("purge.postflow.time"), values.at("heat.series.postflow"));
    CHECK(std::regex_search(text, std::regex("postflow to " + pattern_of(waiting(postflow)) + ";")));
    for (const std::string kind : {"tack", "run"}) {
      for (int n = 1; values.contains("heat." + kind + "." + std::to_string(n) + ".hold"); ++n) {
        const std::string label = kind + " " + std::to_string(n) + " ";
        // The longer hold, 5 s at least.
        const std::string hold =
            waiting(std::max({5.0, values.at("heat." + kind + "." + std::to_string(n) + ".hold"),
                              values.at("heat.series." + kind + "." + std::to_string(n) + ".hold")}));
        INFO(label << hold);
        // Name, angles, tapes, arc time, hold in one row.
        CHECK(std::regex_search(
            text, std::regex(label + R"(\d+( to \d+ (from T\d+ )?(over T\d+ )?to T\d+)? [.\d]+ ?s )" +
                             pattern_of(hold) + " ")));
      }
    }
    CHECK(text.find(job_hash) != std::string::npos);
    CHECK(text.find("revision " + findings.design.job.identity.revision) != std::string::npos);
    CHECK(text.find("local code") != std::string::npos);
    CHECK(text.find("NOT FOR USE") == std::string::npos);
    for (const std::string word :
         {"electrode NEGATIVE", "1/16 in", "gas lens", "high frequency", "NEVER chlorinated", "Work lead",
          "UNLOADING", "coupon", "shade", "SHOCK", "no wire: both edges turned square; gap",
          "FOOT OFF THE PEDAL", "EVERYONE OUT FIRST", "machine set to", "Tacks", "Pace"}) {
      INFO(word);
      CHECK(flowing.find(word) != std::string::npos);
    }
    CHECK(flowing.find("Heat-proof gloves") != std::string::npos);
    // What a bench reads: no pascals, bottle and puddle in its own units.
    CHECK_FALSE(std::regex_search(text, std::regex(R"(\d ?k?Pa\b)")));
    CHECK_FALSE(std::regex_search(text, std::regex("crayon or|by crayon")));
  }
}

TEST_CASE("the longest job still stands on its page, and a rule that fails stands on top of it") {
  const ScratchFolder folder;
  const std::string edited = with(
      with(bytes_of(example("logger-51")), "tacks: 6\n  runs: 6", "tacks: 24\n  runs: 24\n  overlap: 4 deg"),
      "weld:", "shop: {sheet: Letter}\nfixture: {slot: {width: 40 mm}}\nweld:");
  write_bytes(folder / "job.yaml", edited);
  const auto findings = findings_of((folder / "job.yaml").string());
  REQUIRE(checks::worst(findings.rules) == checks::Status::fail);
  const auto pdf = folder / "sheet.pdf";
  write_bytes(pdf, sheet_of(findings));
  const PageSize size = page_of(pdf);
  check_layout(pdf, size.width, size.height);
  const std::string text = plain(read_by("/usr/bin/pdftotext", {"-layout", pdf.string(), "-"}));
  CHECK(text.find("NOT FOR USE") != std::string::npos);
  CHECK(text.find("Slot is wide enough") != std::string::npos);
  CHECK(text.find("tack 24 ") != std::string::npos);
  CHECK(text.find("run 24 ") != std::string::npos);
}

TEST_CASE("plots are sound SVG and the same each time") {
  const ScratchFolder folder;
  const auto findings = findings_of(example("logger-25"));
  for (const auto plot : {pages::temperatures_svg, pages::oxygen_svg}) {
    const std::string bytes = plot(findings);
    CHECK(plot(findings) == bytes);
    write_bytes(folder / "plot.svg", bytes);
    const auto parsed = run("/usr/bin/python3", {"-c",
                                                 "import sys, xml.etree.ElementTree as t; "
                                                 "print(t.parse(sys.argv[1]).getroot().tag)",
                                                 (folder / "plot.svg").string()});
    CHECK(parsed.status == 0);
    CHECK(parsed.out == "{http://www.w3.org/2000/svg}svg\n");
  }
}
