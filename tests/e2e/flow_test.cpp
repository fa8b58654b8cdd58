// `flow`: cases written, solved by OpenFOAM where it is installed, and read back.
#include "e2e/program.hpp"

#include <sstream>

using namespace purgewright::test;
using Catch::Contains;

namespace {

namespace fs = std::filesystem;

constexpr const char *solver = "twoLiquidMixingFoam";

bool solver_is_there() {
  const bool there = run("/bin/sh", {"-c", std::string("command -v ") + solver}).status == 0;
  if (!there) {
    WARN("skipped: OpenFOAM is not installed (apt-get install --no-install-recommends openfoam)");
  }
  return there;
}

std::vector<std::string> coarse(const fs::path &folder, const std::vector<std::string> &more = {}) {
  std::vector<std::string> words{"flow", example("logger-25"), "--cells", "600", "--duration", "0.2 s",
                                 "-o",   folder.string()};
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

std::size_t probe_lines(const fs::path &folder) {
  std::size_t lines = 0;
  for (const auto &run : fs::directory_iterator(folder / "postProcessing/probes")) {
    std::istringstream text(bytes_of(run.path() / "alpha.air"));
    for (std::string line; std::getline(text, line);) {
      lines += line.starts_with("#") ? 0 : 1;
    }
  }
  return lines;
}

} // namespace

TEST_CASE("flow writes a case that needs no solver, the same bytes each time") {
  const ScratchFolder folder;
  for (const std::string stage : {"bore", "bore-outlet-below", "prepurge", "open", "away", "torch"}) {
    INFO(stage);
    const auto done =
        run_tool(coarse(folder / stage, {"--stage", stage}), {.environment = {{"PATH", "/nowhere"}}});
    INFO(done.err);
    CHECK(done.status == 0);
    for (const std::string file : {"constant/polyMesh/points", "system/controlDict", "0/U", "run.sh",
                                   "cluster.sh", "about.txt", "manifest.json"}) {
      CHECK(fs::exists(folder / stage / file));
    }
  }
  REQUIRE(run_tool(coarse(folder / "again", {"--stage", "away"})).status == 0);
  CHECK(tree(folder / "again") == tree(folder / "away"));
}

TEST_CASE("flow without OpenFOAM ends with the one command that installs it") {
  const ScratchFolder folder;
  const auto done =
      run_tool(coarse(folder / "case", {"--run", "1"}), {.environment = {{"PATH", "/nowhere"}}});
  CHECK(done.status == 2);
  CHECK_THAT(done.err, Contains("apt-get install --no-install-recommends openfoam"));
  CHECK_FALSE(fs::exists(folder / "case"));
}

TEST_CASE("flow says what is wrong with what it is asked") {
  const ScratchFolder folder;
  const auto said = [&](const std::vector<std::string> &words) {
    const auto done = run_tool(coarse(folder / "case", words));
    CHECK(done.status == 2);
    return done.err;
  };
  CHECK_THAT(said({"--stage", "bores"}), Contains("did you mean 'bore'"));
  CHECK_THAT(said({"--read"}), Contains("does not hold this case"));
  CHECK_THAT(said({"--run", "0"}), Contains("at least 1 process"));
  CHECK_THAT(said({"--run", "-1"}), Contains("at least 1 process"));
  CHECK_THAT(said({"--run", "100000"}), Contains("100000 processes") && Contains("500 cells each"));
  CHECK_FALSE(fs::exists(folder / "case"));
  REQUIRE(run_tool(coarse(folder / "case")).status == 0);
  CHECK_THAT(said({"--read"}), Contains("no result yet"));
}

TEST_CASE("a coarse bore is solved, read, and goes on rather than beginning anew") {
  if (!solver_is_there()) {
    return;
  }
  const ScratchFolder folder;
  const auto solved = run_tool(coarse(folder / "case", {"--run", "1", "--read"}));
  INFO(solved.err);
  REQUIRE(solved.status == 0);
  CHECK_THAT(solved.out,
             Contains("network") && Contains("flow") && Contains("joint_top") && Contains("not measured"));
  const std::string csv = bytes_of(folder / "case" / "answer/oxygen.csv");
  // Pictures beside the tables: the joint over time, the plane of symmetry at the end.
  CHECK(bytes_of(folder / "case" / "answer/oxygen.svg").find("<polyline") != std::string::npos);
  CHECK(bytes_of(folder / "case" / "answer/slice.svg").find("plane of symmetry after") != std::string::npos);
  CHECK_THAT(csv, Catch::StartsWith("time_s,joint_top,joint_side,joint_bottom,cap_middle,outlet\n"));
  const std::size_t lines = probe_lines(folder / "case");
  CHECK(lines > 100);

  // Started again it has nothing left to solve; another case is not written over what was solved.
  const auto before = bytes_of(folder / "case" / "answer/oxygen.csv");
  REQUIRE(run_tool(coarse(folder / "case", {"--run", "1", "--read"})).status == 0);
  CHECK(probe_lines(folder / "case") == lines);
  CHECK(bytes_of(folder / "case" / "answer/oxygen.csv") == before);
  const auto other =
      run_tool({"flow", example("logger-25"), "--cells", "900", "-o", (folder / "case").string()});
  CHECK(other.status == 3);
  CHECK_THAT(other.err, Contains("would be lost"));
  CHECK(bytes_of(folder / "case" / "answer/oxygen.csv") == before);
}
