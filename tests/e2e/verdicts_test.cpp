// Nothing is green by silence: sweeps judge purge, heat and log or say that they do not; limits, sums, steps
// and currencies are printed as they are.
#include "e2e/program.hpp"
#include "support/paths.hpp"

#include <algorithm>
#include <regex>
#include <set>
#include <sstream>

using namespace purgewright::test;
using Catch::Matchers::Contains;
using nlohmann::json;

namespace {

// The comparison of a sweep of logger-25 or of a job file, as JSON; its status says whether any row fails.
json swept(const ScratchFolder &folder, std::vector<std::string> arguments, const std::string &job) {
  arguments.insert(arguments.begin(), {"compare", job, "--json", "-o", "sweep"});
  const auto done = run_tool(arguments, {.folder = folder.path()});
  INFO(done.err);
  const json all = json::parse(done.out);
  const bool fails = std::ranges::any_of(
      all["designs"], [](const json &row) { return row["rules"]["failing_of_judged"].get<int>() > 0; });
  REQUIRE(done.status == (fails ? 1 : 0));
  return all;
}

std::set<std::string> with_status(const std::string &status, const std::string &job) {
  std::set<std::string> ids;
  const json results = json::parse(run_tool({"check", "--json", job}).out);
  for (const auto &rule : results["rules"]) {
    if (rule["status"] == status) {
      ids.insert(rule["id"].get<std::string>());
    }
  }
  return ids;
}

std::set<std::string> failing(const std::string &job) {
  return with_status("fail", job);
}

// A chamber so wide that no listed ring goes round it.
const std::string too_short = "job:  {name: short}\n"
                              "tube: {material: titanium-grade-2, outside_diameter: 25.4 mm, wall: 0.9 mm, "
                              "length: 90 mm}\n"
                              "cap:  {shape: flat, diameter: 25.4 mm, thickness: 1.2 mm}\n"
                              "fixture: {cradle: stands}\n";

// For a job without a section `fixture`.
const std::string on_stands = "\nfixture: {cradle: stands}\n";

std::vector<std::string> lines_of(const std::string &text) {
  std::vector<std::string> all;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) {
    all.push_back(line);
  }
  return all;
}

} // namespace

TEST_CASE("a sweep's row fails the rules of heat that check fails") {
  const ScratchFolder folder;
  const json rows =
      swept(folder, {"--vary", "weld.current=36 A:320 A:284 A"}, example("logger-25"))["designs"];
  REQUIRE(rows.size() == 2);
  for (const auto &[row, current] : {std::pair{rows[0], "36 A"}, std::pair{rows[1], "320 A"}}) {
    const auto ids = failing(job_in(folder, "current: 33 A", "current: " + std::string(current)));
    INFO(row.dump());
    CHECK(row["rules"]["failing"] == ids.size());
    CHECK((ids.empty() ? !row["rules"].contains("worst") : ids.contains(row["rules"]["worst"])));
    CHECK(row["rules"]["not_judged"] == json::array({"assembly.no_interference"}));
  }
  CHECK(rows[1]["rules"]["failing"] > 0);
  const auto text = run_tool({"compare", example("logger-25"), "--vary", "weld.current=36 A:320 A:284 A"},
                             {.folder = folder.path()});
  CHECK_THAT(text.out, Contains(rows[1]["rules"]["worst"].get<std::string>()) &&
                           Contains("not judged: assembly.no_interference"));
}

TEST_CASE("a quick sweep never counts rules it has not judged") {
  const ScratchFolder folder;
  const std::vector<std::string> sweep{"--vary", "weld.current=36 A:320 A:284 A", "--quick"};
  const json all = swept(folder, sweep, example("logger-25"));
  for (const auto &row : all["designs"]) {
    CHECK_FALSE(row["rules"].contains("failing"));
    const std::set<std::string> left_out = row["rules"]["not_judged"];
    CHECK(left_out.contains("heat.joint_boils"));
    CHECK(left_out.contains("gas.bore_limit"));
    CHECK(left_out.contains("assembly.no_interference"));
  }
  CHECK_THAT(all["judged"].get<std::string>(), Contains("closed form only"));
  const auto table = lines_of(bytes_of(folder / "sweep/comparison.csv"));
  REQUIRE(table.size() == 3);
  CHECK_THAT(table[0],
             Contains("rules.failing [1],rules.failing_of_judged [1]") && Contains("rules.not_judged"));
  CHECK_THAT(table[1], Contains(",,0,") && Contains("heat.joint_boils"));
  std::vector<std::string> arguments{"compare", example("logger-25"), "-o", "text"};
  arguments.insert(arguments.end(), sweep.begin(), sweep.end());
  const auto text = run_tool(arguments, {.folder = folder.path()});
  CHECK_THAT(text.out, Contains("? (0 of the ") && Contains("not judged (--quick leaves out purge, heat") &&
                           Contains("heat.joint_boils"));
}

TEST_CASE("a sweep has the same bytes on one processor as on all") {
  const ScratchFolder folder;
  const std::vector<std::string> sweep{"compare", example("logger-25"), "--json", "--vary",
                                       "weld.current=36 A:44 A:2 A"};
  const auto all = run_tool(sweep, {.folder = folder.path()});
  std::vector<std::string> alone{"-c", "0", PURGEWRIGHT_PROGRAM};
  alone.insert(alone.end(), sweep.begin(), sweep.end());
  const auto one = run("/usr/bin/taskset", alone, {.folder = folder.path()});
  REQUIRE(all.status == 0);
  CHECK(one.status == 0);
  CHECK(one.out == all.out);
}

TEST_CASE("a clash is no row with few failing rules") {
  const ScratchFolder folder;
  const std::string job = (folder / "job.yaml").string(); // its tube is to lie on the stands, however short
  write_bytes(job, bytes_of(example("logger-25")) + on_stands);
  const json rows = swept(folder, {"--vary", "tube.length=60 mm:160 mm:100 mm"}, job)["designs"];
  CHECK(rows[0]["rules"]["not_judged"] == json::array({"all"}));
  CHECK(rows[0]["rules"]["judged"] == 0);
  CHECK(rows[0]["rules"]["worst"] == "layout.tube_length");
  CHECK(rows[0]["rules"]["failing"] > 0);
  CHECK(rows[1]["rules"]["failing"] == 0);
}

TEST_CASE("a temperature's step is a difference, in whatever unit") {
  const ScratchFolder folder;
  for (const auto &[range, kelvin] :
       {std::pair{"300 degC:500 degC:50 degC", 50.0}, std::pair{"600 degF:960 degF:90 degF", 50.0},
        std::pair{"600 K:700 K:50 K", 50.0}}) {
    const json rows = swept(folder, {"--quick", "--vary", std::string("weld.shielding_temperature=") + range},
                            example("logger-25"))["designs"];
    INFO(range);
    REQUIRE(rows.size() >= 3);
    for (std::size_t i = 1; i < rows.size(); ++i) {
      const auto at = [&](std::size_t n) {
        return rows[n]["varied"]["weld.shielding_temperature"].get<double>();
      };
      CHECK(at(i) - at(i - 1) == Approx(kelvin).epsilon(1e-9));
    }
  }
}

TEST_CASE("a price sweep shows its currency") {
  const ScratchFolder folder;
  const json all = swept(folder, {"--quick", "--vary", "shop.argon_price=9 CHF/m3:12 CHF/m3:1 CHF/m3"},
                         example("logger-25"));
  REQUIRE(all["designs"].size() == 4);
  CHECK_THAT(all["designs"][0]["name"].get<std::string>(), Contains("9 CHF/m3"));
  CHECK(all["units"]["shop.argon_price"] == "CHF/m3");
  CHECK_THAT(bytes_of(folder / "sweep/comparison.csv"), Contains("shop.argon_price [CHF/m3]"));
  CHECK_THAT(
      run_tool({"compare", example("logger-25"), "--vary", "shop.argon_price=9 CHF/m3:12 EUR/m3:1 CHF/m3"})
          .err,
      Contains("currencies differ"));
}

TEST_CASE("a sweep that cannot be judged is refused with its reason") {
  const std::string job = example("logger-25");
  for (const auto &[arguments, why] : std::vector<std::pair<std::vector<std::string>, std::string>>{
           {{"--vary", "fixture.wall=3 mm:4 mm:1 mm", "--vary", "fixture.wall=5 mm:6 mm:1 mm"},
            "varied twice"},
           {{"--vary", "fixture.wall=3 mm:25 mm:0.002 mm"}, "--quick"},
           {{"--quick"}, "--vary"}}) {
    std::vector<std::string> all{"compare", job};
    all.insert(all.end(), arguments.begin(), arguments.end());
    const auto refused = run_tool(all);
    INFO(refused.err);
    CHECK(refused.status == 2);
    CHECK(refused.out.empty());
    CHECK_THAT(refused.err, Contains(why));
  }
}

TEST_CASE("compare and its sweeps do not pass over a log that cannot be read") {
  const ScratchFolder folder;
  const auto job = job_in(folder, "gas:", "gas:\n  log: nowhere.csv");
  for (const std::vector<std::string> &more :
       std::vector<std::vector<std::string>>{{}, {"--vary", "fixture.wall=3 mm:4 mm:1 mm"}}) {
    std::vector<std::string> all{"compare", job};
    all.insert(all.end(), more.begin(), more.end());
    const auto refused = run_tool(all, {.folder = folder.path()});
    CHECK(refused.status == 2);
    CHECK_THAT(refused.err, Contains("nowhere.csv"));
    CHECK_FALSE(std::filesystem::exists(folder / "out"));
  }
}

TEST_CASE("a log that settles above the limit, rises or fits badly is told and not called measured") {
  const ScratchFolder folder;
  const std::string made = bytes_of(project_file("examples/logger-25-oxygen.csv"));
  const auto checked = [&](const std::string &text) {
    write_bytes(folder / "log.csv", text);
    return run_tool({"check", job_in(folder, "gas:", "gas:\n  log: log.csv\n  log_use: apply")});
  };
  // Rows of the log with their oxygen altered.
  const auto altered = [&](const auto &alter) {
    std::string text;
    int row = 0;
    for (const auto &line : lines_of(made)) {
      std::smatch cells;
      static const std::regex reading("([0-9.]+),([0-9.]+),(.*)");
      text += std::regex_match(line, cells, reading)
                  ? cells[1].str() + "," + std::to_string(alter(row++, std::stod(cells[2].str()))) + "," +
                        cells[3].str() + "\n"
                  : line + "\n";
    }
    return text;
  };
  const auto leaky = checked(altered([](int, double ppm) { return ppm + 300.0; }));
  CHECK(leaky.status == 1);
  CHECK_THAT(leaky.out, Contains("fail    log.bore_floor"));
  const auto rising =
      checked(altered([](int row, double ppm) { return row < 100 ? ppm : 100.0 * (row - 95); }));
  CHECK(rising.status == 1);
  CHECK_THAT(rising.out, Contains("fail    log.bore_steady"));
  const auto poor = checked(altered([](int row, double) { return row % 2 == 0 && row < 100 ? 2e5 : 5.0; }));
  CHECK(poor.status == 1);
  CHECK_THAT(poor.out, Contains("fail    log.bore_fit") && Contains("not usable") &&
                           !Contains("as measured") && !Contains("replaces the model's"));
  CHECK(checked(made).status == 0);
}

TEST_CASE("limits are printed with their side and not laxer than they are; rules not judged are named") {
  const auto done = run_tool({"check", "--all", example("logger-25")});
  CHECK_THAT(done.out, Contains("(limit \u2264 ") && Contains("(limit \u2265 ") &&
                           Contains("not judged: assembly.no_interference"));
  CHECK_FALSE(std::regex_search(done.out, std::regex(R"(\(limit [0-9-])")));
  const ScratchFolder folder;
  // 26.68 mm are not the 26.6849 mm that are needed: the digits printed tell them apart.
  const json rules = json::parse(run_tool({"check", "--json", example("logger-25")}).out)["rules"];
  const auto slot = std::ranges::find(rules, "access.slot_width", [](const json &r) { return r["id"]; });
  REQUIRE(slot != rules.end());
  CHECK((*slot)["bound"] == "at least");
  const double need = (*slot)["limit"].get<double>();
  const auto short_of = run_tool(
      {"check", job_in(folder, "weld:",
                       "fixture:\n  slot: {width: " + std::to_string(1e3 * need - 2e-4) + " mm}\nweld:")});
  CHECK(short_of.status == 1);
  std::smatch said;
  REQUIRE(std::regex_search(short_of.out, said,
                            std::regex("access.slot_width +([0-9.]+) mm \\(limit \u2265 ([0-9.]+) mm\\)")));
  CHECK(std::stod(said[1].str()) < std::stod(said[2].str()));
}

TEST_CASE("a limit of oxygen is not rounded up where the welder reads it") {
  const ScratchFolder folder;
  const auto done = run_tool({"check", job_in(folder, "bore: 50 ppm", "bore: 155 ppm")});
  CHECK_THAT(done.out, Contains("to 155 ppm") && !Contains("160 ppm"));
}

TEST_CASE("the terms of a sum are traced in the sum's unit") {
  const auto done = run_tool({"trace", example("logger-38"), "cycle.time"});
  REQUIRE(done.status == 0);
  std::set<std::string> units;
  for (const auto &line : lines_of(done.out)) {
    std::smatch found;
    if (std::regex_search(line, found, std::regex(R"(^ {0,2}[a-z_.0-9]+ = [0-9.]+ (s|min|h) )"))) {
      units.insert(found[1].str());
    }
  }
  CHECK(units == std::set<std::string>{"min"});
}

TEST_CASE("metals by their usual names; another metal is offered no grade") {
  const ScratchFolder folder;
  const auto checked = [&](const std::string &metal) {
    return run_tool({"check", job_in(folder, "material: titanium-grade-2", "material: " + metal)});
  };
  CHECK(checked("CP2").status == 0);
  CHECK(checked("CP2").out == run_tool({"check", job_in(folder)}).out);
  for (const std::string metal : {"titanium-grade-4", "Grade 23", "Ti-6Al-4V ELI"}) {
    const auto refused = checked(metal);
    CHECK(refused.status == 2);
    CHECK_THAT(refused.err, Contains(metal) && !Contains("did you mean"));
  }
  const auto schema = [&](const std::string &metal) {
    return run("/usr/bin/python3",
               {project_file("tests/e2e/validate_schema.py"), project_file("templates/job.schema.json"),
                job_in(folder, "material: titanium-grade-2", "material: " + metal)})
        .status;
  };
  for (const std::string metal : {"titanium-grade-2", "Grade 5", "ti 6al-4v", "3.7165", "6-4", "R56400"}) {
    INFO(metal);
    CHECK(schema(metal) == 0);
  }
  CHECK(schema("Grade 23") != 0);
}

TEST_CASE("compare ends with status 1 when any design fails a rule or clashes, else with 0") {
  const ScratchFolder folder;
  const std::string sound = example("logger-25");
  const auto status = [&](std::vector<std::string> arguments) {
    arguments.insert(arguments.begin(), "compare");
    const auto done = run_tool(arguments, {.folder = folder.path()});
    INFO(done.err);
    CHECK(std::filesystem::exists(folder / "out/compare/comparison.csv"));
    return done.status;
  };
  CHECK(status({sound, example("logger-51")}) == 0);
  CHECK(status({sound, "--vary", "fixture.wall=4 mm:5 mm:1 mm"}) == 0);
  const std::string lying = (folder / "lying.yaml").string(); // on its stands, however short
  write_bytes(lying, bytes_of(sound) + on_stands);
  CHECK(status({lying, "--vary", "tube.length=60 mm:160 mm:100 mm"}) == 1); // the first clashes
  CHECK(status({sound, "--quick", "--vary", "fixture.slot.width=5 mm:5 mm:1 mm"}) == 1);
  CHECK(status({sound, job_in(folder, "current: 33 A", "current: 320 A")}) == 1);
}

TEST_CASE("compare counts the cautions that check names") {
  const ScratchFolder folder;
  const auto job = job_in(folder, "wall: 0.9 mm\n  length: 190 mm", "wall: 0.9 mm\n  length: 160 mm");
  const auto cautions = with_status("caution", job);
  REQUIRE_FALSE(cautions.empty());
  const auto check = run_tool({"check", job});
  CHECK_THAT(check.out, Contains(std::to_string(cautions.size()) +
                                 (cautions.size() == 1 ? " is a caution" : " are cautions")));
  const auto done = run_tool({"compare", job, example("logger-38"), "-o", "both"}, {.folder = folder.path()});
  CHECK_THAT(done.out, Contains("cautions " + std::to_string(cautions.size())) && Contains("cautions 0"));
  const json all = json::parse(bytes_of(folder / "both/comparison.json"));
  CHECK(all["designs"][0]["rules"]["cautions_of_judged"] == cautions.size());
  CHECK(all["designs"][1]["rules"]["cautions_of_judged"] ==
        with_status("caution", example("logger-38")).size());
  CHECK_THAT(bytes_of(folder / "both/comparison.csv"), Contains("rules.cautions_of_judged [1]"));
}

TEST_CASE("the bore's outlet must be more than nothing, and its limit is printed so") {
  const auto done = run_tool({"check", "--all", example("logger-25")});
  CHECK_THAT(done.out, Contains(" mm2 (limit > 0 mm2)  Bore keeps an outlet"));
}

TEST_CASE("trace takes a rule's id") {
  const ScratchFolder folder;
  const std::string job = job_in(folder, "weld:", "fixture:\n  slot: {width: 20 mm}\nweld:");
  const auto traced = [&](const std::string &id, const std::string &of) {
    const auto done = run_tool({"trace", of, id});
    INFO(done.err);
    CHECK(done.status == 0);
    return done.out;
  };
  const auto rule_of = [](const std::string &of, const std::string &id) {
    const json rules = json::parse(run_tool({"check", "--json", of}).out)["rules"];
    const auto at = std::ranges::find_if(rules, [&](const json &r) { return r["id"] == id; });
    REQUIRE(at != rules.end());
    return *at;
  };
  const json rule = rule_of(job, "access.slot_width");
  CHECK_THAT(traced("access.slot_width", job),
             Contains("[fail]") && Contains(rule["title"].get<std::string>()) &&
                 Contains(rule["source"].get<std::string>()) && Contains(rule["remedy"].get<std::string>()) &&
                 Contains("20 mm (limit \u2265 "));
  const std::string passed = traced("access.slot_width", example("logger-25"));
  CHECK_THAT(passed, Contains("[pass]") && Contains("if it failed: ") && Contains("(limit \u2265 "));
  CHECK_THAT(traced("assembly.no_interference", job), Contains("not judged: it needs the solids"));
  CHECK_THAT(traced("log.bore_floor", job), Contains("not judged: this design has nothing that it judges"));
  write_bytes(folder / "short.yaml", too_short);
  CHECK_THAT(traced("layout.tube_length", (folder / "short.yaml").string()), Contains("[fail]"));
  const auto misspelt = run_tool({"trace", job, "access.slot_widht"});
  CHECK(misspelt.status == 2);
  CHECK_THAT(misspelt.err, Contains("did you mean 'access.slot_width'?"));
}
