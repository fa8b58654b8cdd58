// The output folder: complete or as it was, the same bytes for the same job, and what happens when it cannot
// be.
#include "e2e/program.hpp"
#include "support/paths.hpp"

#include <algorithm>
#include <chrono>
#include <set>
#include <thread>
#include <unistd.h>

using namespace purgewright::test;
using Catch::Contains;
using nlohmann::json;

namespace fs = std::filesystem;

namespace {

std::set<std::string> names_in(const fs::path &folder) {
  std::set<std::string> names;
  for (const auto &entry : fs::directory_iterator(folder)) {
    names.insert(entry.path().filename().string());
  }
  return names;
}

std::string sha256(const fs::path &file) { // by the system's own program
  const auto done = run("/usr/bin/sha256sum", {file.string()});
  REQUIRE(done.status == 0);
  return done.out.substr(0, done.out.find(' '));
}

void check_manifest(const fs::path &folder, const std::string &job) {
  const auto manifest = json::parse(bytes_of(folder / "manifest.json"));
  CHECK(manifest["job_sha256"] == sha256(job));
  std::set<std::string> listed{"manifest.json"};
  for (const auto &file : manifest["files"]) {
    const std::string path = file["path"].get<std::string>();
    INFO(path);
    listed.insert(path);
    CHECK(file["sha256"] == sha256(folder / path));
  }
  std::set<std::string> there;
  for (const auto &[path, bytes] : tree(folder)) {
    there.insert(path);
  }
  CHECK(listed == there);
}

// What check prints, and what the solids add.
void check_results(const json &designed, const json &checked) {
  CHECK(designed["quantities"] == checked["quantities"]);
  json rules = json::array();
  int from_solids = 0;
  for (const auto &rule : designed["rules"]) {
    if (rule["id"] == "assembly.no_interference") {
      ++from_solids;
      CHECK(rule["status"] == "pass");
      CHECK(rule["value"] == 0.0);
    } else {
      rules.push_back(rule);
    }
  }
  CHECK(from_solids == 1);
  CHECK(rules == checked["rules"]);
}

// A folder as an earlier run may have left it, to see it survive.
std::map<std::string, std::string> make_earlier(const fs::path &folder) {
  fs::create_directories(folder);
  write_bytes(folder / "results.json", "earlier");
  const nlohmann::ordered_json manifest{
      {"program", "purgewright"},
      {"command", "design"},
      {"files", {{{"path", "results.json"}, {"bytes", 7}, {"sha256", sha256(folder / "results.json")}}}}};
  write_bytes(folder / "manifest.json", sealed(manifest));
  return tree(folder);
}

} // namespace

TEST_CASE("design writes the whole folder, the same bytes each time, and its own report of them") {
  const ScratchFolder folder;
  const std::string job = job_in(folder);
  const auto first = run_tool({"design", job}, {.folder = folder.path()});
  INFO(first.err);
  REQUIRE(first.status == 0);
  CHECK(first.err.empty());
  const fs::path out = folder / "out/logger-25"; // its place when no other is asked for
  auto files = tree(out);
  for (const std::string name :
       {"chamber-body", "chamber-end-plate", "backing-pin", "end-plug", "gas-port-block"}) {
    CHECK(files.contains("parts/" + name + ".step"));
    CHECK(files.contains("parts/" + name + ".stl"));
  }
  for (const std::string name :
       {"results.json", "setup-sheet.pdf", "plots/temperatures.svg", "plots/oxygen.svg", "assembly.step",
        "assembly.glb", "parts-list.csv", "manifest.json", "drawings/assembly-1.png"}) {
    INFO(name);
    CHECK(files.contains(name));
  }
  check_manifest(out, job);
  check_results(json::parse(files.at("results.json")), json::parse(run_tool({"check", "--json", job}).out));
  CHECK(names_in(folder / "out") == std::set<std::string>{"logger-25"}); // nothing left beside it
  // Again over the first, elsewhere on the clock, in another folder, time zone and language.
  const auto second = run_tool(
      {"design", job, "--json"},
      {.folder = folder.path(), .environment = {{"TZ", "Pacific/Kiritimati"}, {"LC_ALL", "de_DE.UTF-8"}}});
  REQUIRE(second.status == 0);
  CHECK(second.out == files.at("results.json"));
  CHECK(second.err.empty());
  CHECK(tree(out) == files);
  CHECK(names_in(folder / "out") == std::set<std::string>{"logger-25"});
}

TEST_CASE("a rule that fails is status 1 and the files are there; --strict and clashes write none") {
  const ScratchFolder folder;
  const std::string narrow = job_in(folder, "gas:", "fixture: {slot: {width: 27 mm}}\ngas:");
  const auto strict = run_tool({"design", "--strict", narrow, "-o", "strict"}, {.folder = folder.path()});
  CHECK(strict.status == 1);
  CHECK_FALSE(fs::exists(folder / "strict"));
  CHECK_THAT(strict.out, Contains("access.slot_width"));
  const auto lenient = run_tool({"design", narrow, "-o", "lenient"}, {.folder = folder.path()});
  CHECK(lenient.status == 1);
  CHECK(fs::exists(folder / "lenient/parts/chamber-body.step"));
  const std::string impossible =
      job_in(folder, "gas:", "fixture: {cradle: stands, slot: {length: 180 mm}}\ngas:");
  const auto clash = run_tool({"design", impossible, "-o", "clash"}, {.folder = folder.path()});
  CHECK(clash.status == 1);
  CHECK_THAT(clash.err, Contains("nothing is written"));
  CHECK(names_in(folder.path()) == std::set<std::string>{"job.yaml", "lenient"});
}

TEST_CASE("a folder of another origin, a file in its place or a bad job leaves everything as it was") {
  const ScratchFolder folder;
  const std::string job = job_in(folder);
  fs::create_directory(folder / "mine");
  write_bytes(folder / "mine/thesis.txt", "years of work");
  write_bytes(folder / "file", "a file");
  make_earlier(folder / "earlier");
  const auto before = tree(folder.path());
  for (const std::string target : {"mine", "file", "file/below"}) {
    INFO(target);
    const auto refused = run_tool({"design", job, "-o", target}, {.folder = folder.path()});
    CHECK(refused.status == 3);
    CHECK(refused.out.empty());
    CHECK_THAT(refused.err, Contains("file") || Contains("mine"));
  }
  const auto bad = run_tool(
      {"design", purgewright::test::project_file("tests/e2e/jobs/bad-wall-zero.yaml"), "-o", "earlier"},
      {.folder = folder.path()});
  CHECK(bad.status == 2);
  CHECK(tree(folder.path()) == before);
  CHECK(names_in(folder.path()) == std::set<std::string>{"job.yaml", "mine", "file", "earlier"});
}

TEST_CASE("a folder that may not be written is status 3 and names it") {
  const ScratchFolder folder;
  const std::string job = job_in(folder);
  fs::permissions(folder.path(), fs::perms::owner_all | fs::perms::others_read | fs::perms::others_exec);
  fs::create_directory(folder / "locked");
  fs::permissions(folder / "locked", fs::perms::owner_read | fs::perms::owner_exec | fs::perms::others_read |
                                         fs::perms::others_exec);
  const auto refused = run_tool({"design", job, "-o", (folder / "locked/out").string()}, {.as_nobody = true});
  CHECK(refused.status == 3);
  CHECK(refused.out.empty());
  CHECK_THAT(refused.err, Contains("locked"));
  CHECK(names_in(folder / "locked").empty());
}

TEST_CASE("a disk that fills up leaves the earlier folder, no half one, and status 3") {
  const ScratchFolder folder;
  const std::string job = job_in(folder);
  const auto earlier = make_earlier(folder / "out");
  // No file may grow past 64 KiB: writing fails as on a full disk, and no signal ends the program.
  const std::string limited = "ulimit -f 64; exec \"$0\" design \"$1\" -o \"$2\"";
  const auto full = run("/bin/bash", {"-c", limited, PURGEWRIGHT_PROGRAM, job, (folder / "out").string()});
  INFO(full.out << full.err);
  CHECK(full.status == 3);
  CHECK_FALSE(full.err.empty());
  CHECK(tree(folder / "out") == earlier);
  CHECK(names_in(folder.path()) == std::set<std::string>{"job.yaml", "out"});
}

TEST_CASE("a killed run leaves the earlier folder; the next run sweeps up after it") {
  const ScratchFolder folder;
  const std::string job = job_in(folder);
  const auto earlier = make_earlier(folder / "out");
  std::set<std::string> left;
  // On a busy machine it takes a while before there is anything to leave; solids take longer still.
  for (double while_building = 0.5; left.size() < 3 && while_building < 10.0; while_building *= 1.5) {
    const auto killed =
        run_tool({"design", job, "-o", "out"}, {.folder = folder.path(), .kill_after = while_building});
    CHECK(killed.status == 128 + 9);
    CHECK(tree(folder / "out") == earlier);
    std::this_thread::sleep_for(std::chrono::milliseconds(300)); // whatever it had started has ended too
    left = names_in(folder.path());
  }
  const auto done = run_tool({"design", job, "-o", "out"}, {.folder = folder.path()});
  INFO(done.err);
  CHECK(done.status == 0);
  CHECK(names_in(folder.path()) == std::set<std::string>{"job.yaml", "out"});
  CHECK(left.size() == 3); // the half-written folder was beside, and is gone
  check_manifest(folder / "out", job);
}

TEST_CASE("two runs at once into one folder end with one whole folder") {
  const ScratchFolder folder;
  const std::string job = job_in(folder);
  Finished other;
  std::thread side([&] { other = run_tool({"design", job, "-o", "out"}, {.folder = folder.path()}); });
  const auto one = run_tool({"design", job, "-o", "out"}, {.folder = folder.path()});
  side.join();
  INFO(one.err << other.err);
  CHECK((one.status == 0 || other.status == 0));
  check_manifest(folder / "out", job);
  CHECK(names_in(folder.path()) == std::set<std::string>{"job.yaml", "out"});
}

TEST_CASE("two jobs of a family get the same bench, and each says so") {
  const ScratchFolder folder;
  std::map<std::string, json> results;
  for (const std::string name : {"housing-32", "housing-45"}) {
    const auto done =
        run_tool({"design", example("one-bench/" + name), "-o", name, "--json"}, {.folder = folder.path()});
    INFO(done.err);
    REQUIRE(done.status == 0);
    results[name] = json::parse(done.out);
    CHECK_THAT(bytes_of(folder / name / "parts-list.csv"),
               Contains("common with " + std::string(name == "housing-32" ? "housing-45" : "housing-32")));
  }
  const auto quantity = [&](const std::string &name, const std::string &id) {
    for (const auto &figure : results[name].at("quantities")) {
      if (figure.at("id") == id) {
        return figure.at("value").get<double>();
      }
    }
    FAIL(id);
    return 0.0;
  };
  for (const std::string part : {"base-plate", "cradle-stand", "gas-port-block"}) {
    INFO(part);
    CHECK(quantity("housing-32", "volume." + part) ==
          Approx(quantity("housing-45", "volume." + part)).epsilon(1e-9));
  }
  for (const std::string file : {"parts/base-plate.stl", "parts/gas-port-block.stl"}) {
    INFO(file);
    CHECK(bytes_of(folder / "housing-32" / file) == bytes_of(folder / "housing-45" / file));
  }
  CHECK(quantity("housing-45", "bench.axis_height") > quantity("housing-32", "bench.axis_height"));
  for (const std::string name : {"housing-32", "housing-45"}) {
    const auto sheet = [&](const std::string &part) {
      return run("/usr/bin/pdftotext", {(folder / name / "drawings" / (part + ".pdf")).string(), "-"}).out;
    };
    CHECK_THAT(sheet("base-plate"),
               Contains("housing-32-base-plate") && Contains("Common to housing-32, housing-45"));
    CHECK_THAT(sheet("chamber-body"), Contains(name + "-chamber-body"));
  }
}
