// fixture.family: the jobs that share a bench, and what is wrong with them.
#include "purgewright/job/job.hpp"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

using namespace purgewright::job;
namespace fs = std::filesystem;

namespace {

// A folder of job files that goes with the test.
class Folder {
 public:
  Folder() {
    std::string name = (fs::temp_directory_path() / "purgewright-family-XXXXXX").string();
    REQUIRE(::mkdtemp(name.data()) != nullptr);
    path_ = name;
  }
  ~Folder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  Folder(const Folder &) = delete;
  Folder &operator=(const Folder &) = delete;

  std::string write(const std::string &name, const std::string &diameter,
                    const std::string &rest = {}) const {
    const fs::path file = path_ / (name + ".yaml");
    std::ofstream(file) << "job: {name: " << name << "}\n"
                        << "tube: {material: titanium-grade-2, outside_diameter: " << diameter
                        << ", wall: 1 mm, length: 160 mm}\n"
                        << "cap: {shape: flat, diameter: " << diameter << ", thickness: 1.2 mm}\n"
                        << rest;
    return file.string();
  }

 private:
  fs::path path_;
};

std::string fixture(const std::string &keys) {
  return "fixture: {" + keys + "}\n";
}

} // namespace

TEST_CASE("a family is read relative to the job's folder, and one list may serve all its jobs") {
  const Folder folder;
  const auto a = folder.write("a", "25 mm", fixture("family: [a.yaml, b.yaml]"));
  const auto b = folder.write("b", "40 mm", fixture("family: [a.yaml, b.yaml]"));
  for (const auto &[file, other] : {std::pair(a, "b"), std::pair(b, "a")}) {
    const auto read = read_job(file);
    REQUIRE(read.job);
    REQUIRE(read.job->family.size() == 1);
    CHECK(read.job->family[0]->identity.name == other);
    CHECK(read.job->family[0]->family.empty());
  }
}

TEST_CASE("a member that is not there, or faulty, is an error where it is named") {
  const Folder folder;
  const auto lost = read_job(folder.write("a", "25 mm", fixture("family: [lost.yaml]")));
  REQUIRE_FALSE(lost.job);
  REQUIRE(lost.problems.size() == 1);
  CHECK(lost.problems[0].key == "fixture.family");
  CHECK(lost.problems[0].mark.line == 4);
  CHECK(lost.problems[0].problem == "'lost.yaml': there is no such file");

  folder.write("battery", "40 mm");
  CHECK(read_job(folder.write("a", "25 mm", fixture("family: [batery.yaml]"))).problems.at(0).nearest ==
        "battery.yaml");

  folder.write("bad", "40 mm", "cup: {}\n");
  const auto faulty = read_job(folder.write("c", "25 mm", fixture("family: [bad.yaml]")));
  REQUIRE_FALSE(faulty.job);
  REQUIRE(faulty.problems.size() == 2);
  CHECK(faulty.problems[0].key == "fixture.family");
  CHECK(faulty.problems[1].file.ends_with("bad.yaml"));
  CHECK(faulty.problems[1].mark.line == 4);
}

TEST_CASE("one gas-port block serves a family: its ports, outlets and units are the same") {
  const Folder folder;
  folder.write("m5", "40 mm", "gas: {port_thread: M5}\n");
  folder.write("four", "40 mm", fixture("circuits: 4"));
  folder.write("inch", "40 mm", "shop: {units: inch}\ngas: {port_thread: G1/8}\n");
  const auto problem_with = [&](const std::string &member) {
    const auto read = read_job(folder.write("a", "25 mm", fixture("family: [" + member + ".yaml]")));
    CHECK_FALSE(read.job);
    REQUIRE(read.problems.size() == 1);
    return read.problems[0].problem;
  };
  CHECK(problem_with("m5") == "gas.port_thread of m5 is M5, here it is G1/8");
  CHECK(problem_with("four") == "fixture.circuits of four is 4, here it is 2");
  CHECK(problem_with("inch") == "shop.units of inch is inch, here it is metric");
}

TEST_CASE("two jobs of a family bear different names") {
  const Folder folder;
  folder.write("a", "40 mm");
  fs::rename(fs::path(folder.write("a", "40 mm")),
             fs::path(folder.write("a", "40 mm")).parent_path() / "b.yaml");
  const auto read = read_job(folder.write("a", "25 mm", fixture("family: [b.yaml]")));
  REQUIRE_FALSE(read.job);
  CHECK(read.problems.at(0).problem == "two jobs are named a");
  folder.write("c", "40 mm");
  const auto twice = read_job(folder.write("a", "25 mm", fixture("family: [c.yaml, c.yaml]")));
  REQUIRE_FALSE(twice.job);
  CHECK(twice.problems.at(0).problem == "two jobs are named c");
}
