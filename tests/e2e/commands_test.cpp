// The commands that write no folder: check, trace, new, compare, and the exit status of what goes wrong.
#include "e2e/program.hpp"
#include "support/paths.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <sstream>

#include <sys/stat.h>

using namespace purgewright::test;
using Catch::Contains;
using Catch::StartsWith;
using nlohmann::json;

namespace {

std::map<std::string, double> quantities(const std::string &text) {
  std::map<std::string, double> values;
  const json results = json::parse(text);
  for (const auto &quantity : results["quantities"]) {
    CHECK(values.emplace(quantity["id"].get<std::string>(), quantity["value"].get<double>()).second);
  }
  return values;
}

std::size_t lines(const std::string &text) {
  return static_cast<std::size_t>(std::ranges::count(text, '\n'));
}

} // namespace

TEST_CASE("a command that there is none of is named, with the nearest") {
  const auto wrong = run_tool({"chekc", "job.yaml"});
  CHECK(wrong.status == 2);
  CHECK_THAT(wrong.err, Contains("no command 'chekc'") && Contains("did you mean 'check'?"));
  CHECK(wrong.out.empty());
}

TEST_CASE("an option that a command has not is named, with the nearest, before a missing job is") {
  const auto wrong = run_tool({"check", "--jsn"});
  CHECK(wrong.status == 2);
  CHECK_THAT(wrong.err, Contains("no option of check '--jsn'") && Contains("did you mean '--json'?"));
  CHECK(run_tool({"compare", "--vary=tube.wall=1 mm:2 mm:1 mm"}).status == 2);
  CHECK_THAT(run_tool({"compare", "--vary=tube.wall=1 mm:2 mm:1 mm"}).err, Contains("jobs is required"));
}

TEST_CASE("an output without a name, or standard output, is refused") {
  const ScratchFolder folder;
  for (const std::string command : {"design", "compare"}) {
    for (const std::string name : {"", "-"}) {
      INFO(command << " -o '" << name << "'");
      const auto refused = run_tool({command, example("logger-25"), "-o", name}, {.folder = folder.path()});
      CHECK(refused.status == 2);
      CHECK_THAT(refused.err, Contains("--output"));
      CHECK(std::filesystem::is_empty(folder.path()));
    }
  }
}

TEST_CASE("check prints results to stdout alone, plain when stdout is no terminal") {
  for (const std::string &name : example_names()) {
    INFO(name);
    const auto done = run_tool({"check", example(name)});
    CHECK(done.status == 0);
    CHECK(done.err.empty());
    CHECK(lines(done.out) > 40);
    CHECK(done.out.find('\x1b') == std::string::npos);
    CHECK_THAT(done.out, Contains("argon") || Contains("Argon"));
    const auto all = run_tool({"check", "--all", example(name)});
    CHECK(all.status == 0);
    CHECK_THAT(all.out, Contains("pass    access.slot_width ") && Contains(" of chips\n") &&
                            Contains("  weld.arc_efficiency "));
  }
}

TEST_CASE("check --json follows the results schema, and every input of a figure is a figure") {
  const ScratchFolder folder;
  for (const std::string &name : example_names()) {
    INFO(name);
    const auto done = run_tool({"check", "--json", example(name)});
    REQUIRE(done.status == 0);
    CHECK(done.err.empty());
    write_bytes(folder / "results.json", done.out);
    const auto validated = validate_results(folder / "results.json");
    INFO(validated.err);
    CHECK(validated.status == 0);
    const auto values = quantities(done.out);
    for (const std::string id : {"volume.chamber_gas",
                                 "volume.bore_gas",
                                 "volume.lines.bore",
                                 "volume.lines.chamber",
                                 "area.slot",
                                 "area.tube_gap",
                                 "area.vent",
                                 "mass.chamber-body",
                                 "volume.end-plug",
                                 "stock.gas-port-block.removed",
                                 "purge.bore.prepurge.flow",
                                 "purge.bore.prepurge.time",
                                 "purge.bore.prepurge.volume_changes",
                                 "purge.chamber.prepurge.flow",
                                 "purge.chamber.prepurge.time",
                                 "purge.chamber.prepurge.volume_changes",
                                 "purge.postflow.time",
                                 "heat.run.1.hold",
                                 "heat.run.1.peak",
                                 "heat.shielding_temperature",
                                 "cycle.time",
                                 "gas.used.per_part",
                                 "room.oxygen"}) {
      INFO(id);
      CHECK(values.contains(id));
    }
    const json results = json::parse(done.out);
    for (const auto &quantity : results["quantities"]) {
      for (const auto &input : quantity["inputs"]) {
        INFO(quantity["id"] << " needs " << input);
        CHECK(values.contains(input.get<std::string>()));
      }
    }
  }
}

TEST_CASE("the results schema refuses what it should") {
  const ScratchFolder folder;
  auto results = json::parse(run_tool({"check", "--json", example("logger-25")}).out);
  results["quantities"][0]["basis"] = "guess";
  results["quantities"][1].erase("unit");
  results["more"] = 1;
  write_bytes(folder / "results.json", results.dump());
  const auto validated = validate_results(folder / "results.json");
  CHECK(validated.status == 1);
  CHECK(lines(validated.err) == 3);
}

TEST_CASE("a job in inches has the numbers of the job in millimetres") {
  const ScratchFolder folder;
  const std::string metric = R"(job: {name: twin}
tube: {material: titanium-grade-2, outside_diameter: 31.75 mm, wall: 0.889 mm, length: 165.1 mm,
       outside_diameter_tolerance: 0.0254 mm, wall_tolerance: 0.0254 mm,
       vent: {diameter: 3.175 mm, from_joint: 101.6 mm}}
cap: {shape: domed, diameter: 31.75 mm, thickness: 1.27 mm, dome_height: 8.89 mm}
)";
  const std::string inch = R"(job: {name: twin}
tube: {material: titanium-grade-2, outside_diameter: 1 1/4 in, wall: 35 thou, length: 6.5 in,
       outside_diameter_tolerance: 1 thou, wall_tolerance: 0.001 in,
       vent: {diameter: 1/8 in, from_joint: 4 in}}
cap: {shape: domed, diameter: 1.25 in, thickness: 0.05 in, dome_height: 0.35 in}
)";
  write_bytes(folder / "mm.yaml", metric);
  write_bytes(folder / "in.yaml", inch);
  const auto a = run_tool({"check", "--json", (folder / "mm.yaml").string()});
  const auto b = run_tool({"check", "--json", (folder / "in.yaml").string()});
  INFO(a.err << b.err);
  REQUIRE(a.status == b.status);
  CHECK(quantities(a.out) == quantities(b.out));
}

TEST_CASE("every bad job is refused with its place and nothing on stdout") {
  int tried = 0;
  for (const auto &entry :
       std::filesystem::directory_iterator(purgewright::test::project_file("tests/e2e/jobs"))) {
    const std::string path = entry.path().string();
    if (!entry.path().filename().string().starts_with("bad-")) {
      continue;
    }
    INFO(path);
    const auto refused = run_tool({"check", path});
    CHECK(refused.status == 2);
    CHECK(refused.out.empty());
    CHECK_THAT(refused.err, StartsWith(path + ":") && Contains("error: "));
    ++tried;
  }
  CHECK(tried > 70);
}

TEST_CASE("a wrong command line is status 2 and says so on stderr") {
  const std::string job = example("logger-25");
  for (const std::vector<std::string> &arguments : std::vector<std::vector<std::string>>{
           {},
           {"chek", job},
           {"check"},
           {"check", "--jsn", job},
           {"check", "none.yaml"},
           {"design", "none.yaml"},
           {"trace", job, "volume.chamber_gass"},
           {"new", "round-cap"},
           {"compare"},
           {"check", "/"},
           {"compare", job, "--vary", "fixture.wall"},
           {"compare", job, "--vary", "fixture.wal=3 mm:4 mm:1 mm"},
           {"compare", job, "--vary", "fixture.wall=3:4:1"},
           {"compare", job, "--vary", "fixture.wall=4 mm:3 mm:1 mm"},
           {"compare", job, "--vary", "fixture.wall=3 mm:4 mm:0 mm"},
           {"compare", job, "--vary", "cap.shape=1:2:1"},
           {"compare", job, "--rank", "purge.wiat"},
           {"compare", job, "--shard", "1/2"},
           {"compare", job, "--vary", "fixture.wall=3 mm:4 mm:1 mm", "--shard", "3/2"},
           {"compare", job, "--vary", "fixture.wall=3 mm:4 mm:1 mm", "--shard", "1/3"},
           {"compare", job, "--merge", "--quick"},
           {"compare", job, "--rank", "purge.bore.welding.flow"},
           {"compare", job, "--vary", "fixture.wall=3 mm:4 mm:1 mm", "--quick", "--rank", "purge.wait"},
           {"compare", job, "--vary", "fixture.wall=3 mm:25 mm:0.000001 mm"}}) {
    std::string line;
    for (const auto &argument : arguments) {
      line += argument + " ";
    }
    INFO(line);
    const ScratchFolder folder;
    const auto refused = run_tool(arguments, {.folder = folder.path()});
    CHECK(refused.status == 2);
    CHECK(refused.out.empty());
    CHECK_FALSE(refused.err.empty());
    CHECK(tree(folder.path()).empty());
  }
}

TEST_CASE("an option without its value is named, not given the next option") {
  const std::string job = example("logger-25");
  for (const std::string option : {"--vary", "--show", "--rank", "--shard", "-o"}) {
    INFO(option);
    const auto refused = run_tool({"compare", job, option, "--json"});
    CHECK(refused.status == 2);
    CHECK_THAT(refused.err, Contains(option + " wants a value; '--json' is an option"));
  }
}

TEST_CASE("help and version are results") {
  for (const std::string flag : {"--help", "--version"}) {
    const auto done = run_tool({flag});
    CHECK(done.status == 0);
    CHECK(done.err.empty());
    CHECK_THAT(done.out, Contains("purgewright"));
  }
}

TEST_CASE("a job that fails a rule is status 1 with its numbers; a clash says what would resolve it") {
  const ScratchFolder folder;
  const auto narrow = run_tool({"check", job_in(folder, "gas:", "fixture: {slot: {width: 27 mm}}\ngas:")});
  CHECK(narrow.status == 1);
  CHECK_THAT(narrow.out, Contains("access.slot_width") && Contains("fixture.slot.width"));
  const auto clash = run_tool(
      {"check", "--json", job_in(folder, "gas:", "fixture: {cradle: stands, slot: {length: 180 mm}}\ngas:")});
  CHECK(clash.status == 1);
  const auto rules = json::parse(clash.out)["rules"];
  REQUIRE(rules.size() >= 1);
  CHECK(rules[0]["id"] == "layout.tube_length");
  CHECK_THAT(rules[0]["remedy"].get<std::string>(), Contains("tube.length"));
}

TEST_CASE("a measured log that cannot be used is told where it is named; one that can is shown and applied") {
  const ScratchFolder folder;
  const auto missing = run_tool({"check", job_in(folder, "gas:", "gas:\n  log: nowhere.csv")});
  CHECK(missing.status == 2);
  CHECK(missing.out.empty());
  CHECK_THAT(missing.err, Contains("job.yaml:") && Contains("gas.log") && Contains("nowhere.csv"));

  write_bytes(folder / "log.csv", bytes_of(purgewright::test::project_file("examples/logger-25-oxygen.csv")));
  const auto compared = run_tool({"check", "--all", job_in(folder, "gas:", "gas:\n  log: log.csv")});
  const auto applied =
      run_tool({"check", "--all", job_in(folder, "gas:", "gas:\n  log: log.csv\n  log_use: apply")});
  CHECK(compared.status == 0);
  CHECK(applied.status == 0);
  CHECK_THAT(compared.out, Contains("121 readings") && !Contains("mixing as measured"));
  CHECK_THAT(applied.out, Contains("121 readings") && Contains("mixing as measured"));
}

TEST_CASE("a rule that fails comes with the smallest change of a value, which then passes") {
  const ScratchFolder folder;
  const auto failed = run_tool({"check", job_in(folder, "weld:", "fixture:\n  slot: {width: 27 mm}\nweld:")});
  CHECK(failed.status == 1);
  CHECK_THAT(failed.out, Contains("fixture.slot.width at least 28.4 mm (now 27 mm)"));
  CHECK(run_tool({"check", job_in(folder, "weld:", "fixture:\n  slot: {width: 28.4 mm}\nweld:")}).status ==
        0);
}

TEST_CASE("solving makes the chamber smaller, says what it chose and keeps to the job") {
  const auto plain = run_tool({"check", example("logger-25"), "--json"});
  const auto solved = run_tool({"check", example("logger-25"), "--solve", "--json"});
  CHECK(solved.status == 0);
  CHECK(quantities(solved.out).at("volume.chamber_gas") < quantities(plain.out).at("volume.chamber_gas"));
  CHECK_THAT(run_tool({"check", example("logger-25"), "--solve"}).out,
             Contains("Chosen (--solve)") && Contains("fixture.radial_clearance"));
  const ScratchFolder folder;
  const auto stated = run_tool(
      {"check", job_in(folder, "weld:", "fixture:\n  radial_clearance: 5 mm\nweld:"), "--solve", "--json"});
  CHECK(quantities(stated.out).at("fixture.radial_clearance") == 5e-3);
}

TEST_CASE("new writes a job from a tube's sizes that passes check, in its own units") {
  const ScratchFolder folder;
  const RunOptions here{.folder = folder.path()};
  const auto done = run_tool({"new", "--tube", "1 in x 0.035 in x 8 in", "--cap", "flat"}, here);
  INFO(done.err);
  REQUIRE(done.status == 0);
  const std::string path = done.out.substr(0, done.out.find('\n'));
  const auto checked = run_tool({"check", path}, here);
  CHECK(checked.status == 0);
  CHECK_THAT(checked.out, Contains("PASSES") && Contains(" in diameter; slot "));
  CHECK_THAT(run_tool({"new", "--tube", "1 in x 0.035 in x 8 in"}, here).err, Contains("stands already"));
}

TEST_CASE("new refuses sizes that no job may have, and writes nothing") {
  const ScratchFolder folder;
  for (const std::vector<std::string> &arguments :
       std::vector<std::vector<std::string>>{{"new"},
                                             {"new", "--cap", "flat"},
                                             {"new", "flat-cap", "--tube", "1 in x 0.035 in x 8 in"},
                                             {"new", "--tube", "1 in x 0.035 in"},
                                             {"new", "--tube", "1 in x 0.7 in x 8 in"},
                                             {"new", "--tube", "1 in x 0.035 in x 8 in", "--cap", "round"}}) {
    const auto done = run_tool(arguments, {.folder = folder.path()});
    INFO(done.err);
    CHECK(done.status == 2);
    CHECK(done.out.empty());
    CHECK(tree(folder.path()).empty());
  }
  // No one has seen the text whose lines a job's faults would name.
  CHECK_THAT(run_tool({"new", "--tube", "1 in x 0.7 in x 8 in"}, {.folder = folder.path()}).err,
             Contains("--tube: error: tube.wall: 0.7 in"));
}

TEST_CASE("trace looks for words, and lists everything without one") {
  const std::string job = example("logger-25");
  const auto all = run_tool({"trace", job});
  CHECK(all.status == 0);
  CHECK(lines(all.out) > 300);
  const auto some = run_tool({"trace", job, "oxygen", "floor"});
  CHECK(some.status == 0);
  CHECK_THAT(some.out, Contains("purge.bore.oxygen_floor") && !Contains("heat.cycle"));
}

TEST_CASE("trace follows a number to the job file's lines") {
  const std::string job = example("logger-25");
  const auto traced = run_tool({"trace", job, "volume.chamber_gas"});
  CHECK(traced.status == 0);
  CHECK(traced.err.empty());
  CHECK_THAT(traced.out, Contains("tube.outside_diameter") && Contains("job file, line 10, column 21"));
  CHECK_THAT(run_tool({"trace", job, "volume.chamber_gass"}).err, Contains("volume.chamber_gas'"));
}

TEST_CASE("new writes a job that passes check, and never over a file") {
  for (const std::string name : {"flat-cap", "domed-cap", "spigot-cap"}) {
    INFO(name);
    const ScratchFolder folder;
    const auto made = run_tool({"new", name}, {.folder = folder.path()});
    CHECK(made.status == 0);
    const std::string text = bytes_of(folder / (name + ".yaml"));
    CHECK(text == bytes_of(purgewright::test::project_file("templates/") + name + ".yaml"));
    const auto checked = run_tool({"check", (folder / (name + ".yaml")).string()});
    INFO(checked.out << checked.err);
    CHECK(checked.status == 0);
    write_bytes(folder / (name + ".yaml"), "mine");
    CHECK(run_tool({"new", name}, {.folder = folder.path()}).status == 3);
    CHECK(bytes_of(folder / (name + ".yaml")) == "mine");
    CHECK(run_tool({"new", name, "-o", "other.yaml"}, {.folder = folder.path()}).status == 0);
    CHECK(bytes_of(folder / "other.yaml") == text);
  }
}

TEST_CASE("new writes the job and its schema, or none of them") {
  const ScratchFolder folder;
  std::filesystem::create_symlink("nowhere/schema.json", folder / "job.schema.json");
  const auto refused = run_tool({"new", "flat-cap"}, {.folder = folder.path()});
  CHECK(refused.status == 3);
  CHECK(refused.out.empty());
  CHECK_THAT(refused.err, Contains("job.schema.json: is a link to nothing"));
  CHECK_FALSE(std::filesystem::exists(folder / "flat-cap.yaml"));
  write_bytes(folder / "schema.json", "{}");
  std::filesystem::remove(folder / "job.schema.json");
  std::filesystem::create_symlink("schema.json", folder / "job.schema.json");
  CHECK(run_tool({"new", "flat-cap"}, {.folder = folder.path()}).status == 0);
  CHECK(bytes_of(folder / "schema.json") == "{}"); // serves other jobs
}

TEST_CASE("compare lays designs side by side and agrees with check") {
  const ScratchFolder folder;
  const auto compared = run_tool({"compare", example("logger-25"), example("logger-51"), "-o", "both"},
                                 {.folder = folder.path()});
  INFO(compared.err);
  CHECK(compared.status == 0);
  CHECK_THAT(compared.out, Contains("logger-25") && Contains("logger-51"));
  const auto files = tree(folder / "both");
  CHECK(files.contains("comparison.csv"));
  CHECK(files.contains("comparison.json"));
  const std::string volume =
      json(quantities(run_tool({"check", "--json", example("logger-25")}).out).at("volume.chamber_gas"))
          .dump();
  CHECK_THAT(files.at("comparison.json"), Contains(volume));
}

TEST_CASE("a sweep in pieces, put together, has the bytes of one run") {
  const ScratchFolder folder;
  const RunOptions there{.folder = folder.path()};
  const auto swept = [&](const std::string &target, std::vector<std::string> more) {
    std::vector<std::string> words{"compare", example("logger-25"),
                                   "--vary",  "fixture.wall=4 mm:6 mm:0.5 mm",
                                   "--rank",  "mass.total",
                                   "--show",  "chamber.length",
                                   "-o",      target};
    words.insert(words.end(), more.begin(), more.end());
    const auto done = run_tool(words, there);
    INFO(done.err);
    REQUIRE(done.status == 0);
  };
  swept("whole", {});
  for (const std::string piece : {"1", "2", "3"}) {
    swept("piece-" + piece, {"--shard", piece + "/3"});
  }
  const auto together =
      run_tool({"compare", "--merge", "piece-3", "piece-1", "piece-2", "-o", "together"}, there);
  INFO(together.err);
  REQUIRE(together.status == 0);
  CHECK(tree(folder / "together") == tree(folder / "whole"));
  const auto before = tree(folder.path());
  const auto over = run_tool({"compare", "--merge", "piece-3", "piece-1", "piece-2", "-o", "piece-1"}, there);
  CHECK(over.status == 3);
  CHECK_THAT(over.err, Contains("piece-1") && Contains("compare --shard"));
  CHECK(run_tool({"compare", example("logger-25"), "-o", "piece-1"}, there).status == 3);
  const auto other = run_tool({"compare", example("logger-25"), "--vary", "fixture.wall=5 mm:7 mm:1 mm",
                               "--shard", "2/3", "-o", "piece-1"},
                              there);
  CHECK(other.status == 3);
  CHECK_THAT(other.err, Contains("compare --shard 1/3"));
  swept("piece-1", {"--shard", "1/3"});
  CHECK(tree(folder.path()) == before);
  const auto missing = run_tool({"compare", "--merge", "piece-3", "piece-1", "-o", "no"}, there);
  CHECK(missing.status == 2);
  CHECK_THAT(missing.err, Contains("piece 2/3 is missing"));
  const auto nothing = run_tool({"compare", "--merge", "whole", "-o", "no"}, there);
  CHECK(nothing.status == 2);
  CHECK_THAT(nothing.err, Contains("piece.json"));
  write_bytes(folder / "piece-2/piece.json", bytes_of(folder / "piece-2/piece.json") + " ");
  const auto edited = run_tool({"compare", "--merge", "piece-3", "piece-1", "piece-2", "-o", "no"}, there);
  CHECK(edited.status == 2);
  CHECK_THAT(edited.err, Contains("piece-2/piece.json: is not the file that manifest.json"));
  CHECK_FALSE(std::filesystem::exists(folder / "no"));
}

TEST_CASE(
    "a sweep that is interrupted goes on where it was, to the bytes of one run, and leaves older results") {
  const ScratchFolder folder;
  const std::string job = job_in(folder);
  const auto words = [&](const std::string &keys, const std::string &target) {
    return std::vector<std::string>{"compare", "job.yaml", "--vary", keys, "-o", target};
  };
  const std::string keys = "weld.current=25 A:55 A:0.25 A"; // 121 rows
  REQUIRE(run_tool(words(keys, "whole"), {.folder = folder.path()}).status <= 1);
  REQUIRE(run_tool(words("weld.current=30 A:31 A:1 A", "out"), {.folder = folder.path()}).status <= 1);
  const auto older = tree(folder / "out");
  const std::filesystem::path kept = folder / "out.unfinished";
  for (const int by : {2, 9}) { // a hand at the keys, a scheduler
    Finished cut;
    for (double after = 1.0; after < 30.0; after *= 2.0) { // s; a busy machine takes longer to the first row
      cut = run_tool(words(keys, "out"), {.folder = folder.path(), .kill_after = after, .kill_with = by});
      if (std::filesystem::exists(kept) && lines(bytes_of(kept)) > 1) {
        break;
      }
    }
    INFO(by << cut.err);
    REQUIRE(cut.status == 128 + by);
    CHECK(tree(folder / "out") == older);
    REQUIRE(std::filesystem::exists(kept));
  }
  const std::string rows = bytes_of(kept);
  CHECK(std::ranges::count(rows, '\n') > 1);
  // Another sweep, or the job after a change, takes none of it and destroys none of it.
  CHECK(run_tool(words("weld.current=25 A:55 A:0.5 A", "out"), {.folder = folder.path()}).status == 3);
  write_bytes(folder / "job.yaml", with(bytes_of(folder / "job.yaml"), "name: logger-25", "name: logger-26"));
  const auto changed = run_tool(words(keys, "out"), {.folder = folder.path()});
  CHECK(changed.status == 3);
  CHECK_THAT(changed.err, Contains("out.unfinished") && Contains("another sweep"));
  CHECK(bytes_of(kept) == rows);
  write_bytes(folder / "job.yaml", with(bytes_of(folder / "job.yaml"), "name: logger-26", "name: logger-25"));
  write_bytes(kept, rows + "0123456789abcdef {\"name\":\"a row that was cut"); // as by a loss of power
  const auto resumed = run_tool(words(keys, "out"), {.folder = folder.path()});
  INFO(resumed.err);
  CHECK(resumed.status <= 1);
  CHECK_THAT(resumed.err, Contains("goes on after"));
  CHECK(tree(folder / "out") == tree(folder / "whole"));
  CHECK_FALSE(std::filesystem::exists(kept));
}

TEST_CASE("a file of the user's where rows would be kept is left alone") {
  const ScratchFolder folder;
  job_in(folder);
  write_bytes(folder / "out.unfinished", "mine");
  const auto refused = run_tool({"compare", "job.yaml", "--vary", "fixture.wall=4 mm:4 mm:1 mm", "-o", "out"},
                                {.folder = folder.path()});
  CHECK(refused.status == 3);
  CHECK(bytes_of(folder / "out.unfinished") == "mine");
  CHECK_FALSE(std::filesystem::exists(folder / "out"));
}

TEST_CASE("a FIFO where rows would be kept is refused, not waited for") {
  const ScratchFolder folder;
  job_in(folder);
  REQUIRE(::mkfifo((folder / "out.unfinished").c_str(), 0600) == 0);
  const auto refused = run_tool({"compare", "job.yaml", "--vary", "fixture.wall=4 mm:4 mm:1 mm", "-o", "out"},
                                {.folder = folder.path()});
  CHECK(refused.status == 3);
  CHECK_THAT(refused.err, Contains("out.unfinished") && Contains("regular file"));
  CHECK_FALSE(std::filesystem::exists(folder / "out"));
}

TEST_CASE(
    "a sweep on one core has the bytes of one on all, and one too long for a page is written row by row") {
  const ScratchFolder folder;
  job_in(folder);
  const std::string sweep = " compare job.yaml --quick --rank mass.total --vary 'fixture.radial_clearance=4 "
                            "mm:14.1 mm:0.001 mm' -o ";
  const auto at_once =
      run("/bin/bash", {"-c", "\"$0\"" + sweep + "out", PURGEWRIGHT_PROGRAM}, {.folder = folder.path()});
  INFO(at_once.err);
  REQUIRE(at_once.status == 0);
  const auto files = tree(folder / "out");
  CHECK(lines(files.at("comparison.csv")) == 10101 + 1);
  CHECK_FALSE(files.contains("comparison.json"));
  CHECK_THAT(at_once.out, Contains("no comparison.json"));
  const auto one = run("/bin/bash", {"-c", "exec taskset -c 0 \"$0\"" + sweep + "out", PURGEWRIGHT_PROGRAM},
                       {.folder = folder.path()});
  CHECK(one.status == 0);
  CHECK(tree(folder / "out") == files);
  CHECK(one.out == at_once.out);
  CHECK(run_tool({"compare", "job.yaml", "--quick", "--json", "--vary",
                  "fixture.radial_clearance=4 mm:14.1 mm:0.001 mm"},
                 {.folder = folder.path()})
            .status == 2);
}

TEST_CASE("compare --rank says in text, CSV and JSON which designs no other beats") {
  const ScratchFolder folder;
  const auto swept = run_tool({"compare", example("logger-25"), "--vary", "fixture.wall=4 mm:6 mm:1 mm",
                               "--rank", "volume.chamber_gas", "--rank", "mass.total", "-o", "sweep"},
                              {.folder = folder.path()});
  INFO(swept.err);
  REQUIRE(swept.status == 0);
  CHECK_THAT(swept.out, Contains("To choose from by chamber gas, mass of all parts"));
  const auto files = tree(folder / "sweep");
  const json comparison = json::parse(files.at("comparison.json"));
  CHECK(comparison["ranked"] == json{"volume.chamber_gas", "mass.total"});
  std::size_t on_front = 0;
  std::istringstream rows(files.at("comparison.csv"));
  std::string row;
  std::getline(rows, row);
  CHECK(row.ends_with(",front [1]\r"));
  while (std::getline(rows, row)) {
    on_front += row.ends_with(",1\r") ? 1 : 0;
  }
  CHECK(on_front == comparison["front"].size());
  CHECK(on_front > 0);
}

TEST_CASE("compare --vary sweeps every value, its ends included") {
  const ScratchFolder folder;
  const auto swept =
      run_tool({"compare", example("logger-25"), "--vary", "fixture.wall=3 mm:6 mm:1 mm", "--vary",
                "fixture.radial_clearance=5 mm:7 mm:0.5 mm", "--json", "-o", "sweep"},
               {.folder = folder.path()});
  INFO(swept.err);
  REQUIRE(swept.status == 0);
  CHECK(json::accept(swept.out));
  const std::string csv = tree(folder / "sweep").at("comparison.csv");
  constexpr std::size_t designs = 4 * 5;
  const std::size_t rows = lines(csv);
  INFO(csv.substr(0, 300));
  CHECK((rows == designs + 1 ||
         std::ranges::count(csv.substr(0, csv.find('\n')), ',') >= static_cast<long>(designs)));
}
