// The installed tree: complete, works wherever it is put, and other programs build upon it.
#include "e2e/program.hpp"
#include "support/paths.hpp"

#include <fstream>
#include <map>
#include <sstream>

using namespace purgewright::test;
using Catch::Contains;
using nlohmann::json;

namespace {

namespace fs = std::filesystem;

// Everything the build installs, put into a folder of the test's.
class Installed {
 public:
  Installed() {
    const auto done =
        run(PURGEWRIGHT_CMAKE, {"--install", PURGEWRIGHT_BUILD_DIR, "--prefix", root().string()});
    INFO(done.out << done.err);
    REQUIRE(done.status == 0);
  }
  fs::path root() const { return folder_ / "usr"; }
  fs::path scratch(const std::string &name) const { return folder_ / name; }
  Finished run_program(const std::vector<std::string> &arguments) const {
    return run((root() / "bin/purgewright").string(), arguments, {.folder = folder_.path()});
  }

 private:
  ScratchFolder folder_;
};

// Packages of the build that are libraries or fonts.
std::vector<std::string> third_parties() {
  std::vector<std::string> names;
  std::istringstream lines(bytes_of(project_file("tests/packages.txt")));
  for (std::string line; std::getline(lines, line) && !line.starts_with("# ----");) {
    if (line.ends_with("-dev") || line.starts_with("fonts-") || line.starts_with("libjs-")) {
      names.push_back(line);
    }
  }
  return names;
}

std::map<std::string, double> printed_numbers(const std::string &text) {
  std::map<std::string, double> numbers;
  std::istringstream words(text);
  std::string id;
  for (double number = 0.0; words >> id >> number;) {
    numbers[id] = number;
  }
  return numbers;
}

} // namespace

TEST_CASE("the installed tree holds the program, its words and the licences, and designs a fixture") {
  const Installed installed;
  for (const std::string file :
       {"bin/purgewright", "libexec/purgewright/purgewright-solids", "share/man/man1/purgewright.1",
        "share/bash-completion/completions/purgewright", "share/fish/vendor_completions.d/purgewright.fish",
        "share/zsh/site-functions/_purgewright", "share/zsh/vendor-completions/_purgewright",
        "share/purgewright/templates/flat-cap.yaml", "share/purgewright/templates/job.schema.json",
        "share/doc/purgewright/README.md", "share/doc/purgewright/LICENSE", "share/doc/purgewright/copyright",
        "share/doc/purgewright/licences/libraries.md", "share/doc/purgewright/examples/logger-25.yaml"}) {
    INFO(file);
    CHECK(fs::is_regular_file(installed.root() / file));
  }
  const auto designed = installed.run_program(
      {"design", (installed.root() / "share/doc/purgewright/examples/logger-25.yaml").string(), "-o", "out"});
  INFO(designed.err);
  CHECK(designed.status == 0);
  CHECK(fs::exists(installed.scratch("out/manifest.json")));
}

TEST_CASE("the list of licences names each library and font of the build, and its text stands beside it") {
  const std::string list = bytes_of(project_file("src/install/licences/libraries.md"));
  const Installed installed;
  const auto packages = third_parties();
  CHECK(packages.size() >= 15);
  for (const auto &package : packages) {
    INFO(package);
    CHECK_THAT(list, Contains(package));
    const auto text = installed.root() / "share/doc/purgewright/licences" / (package + ".txt");
    REQUIRE(fs::exists(text));
    CHECK(bytes_of(text).size() > 100);
  }
}

TEST_CASE("another program designs a fixture with the installed libraries, to the same numbers") {
  const Installed installed;
  const std::string source = project_file("examples/library");
  const auto build = installed.scratch("build");
  const auto configured = run(PURGEWRIGHT_CMAKE, {"-G", "Ninja", "-S", source, "-B", build.string(), "-D",
                                                  "CMAKE_PREFIX_PATH=" + installed.root().string(), "-D",
                                                  "CMAKE_BUILD_TYPE=Release"});
  INFO(configured.out << configured.err);
  REQUIRE(configured.status == 0);
  const auto built = run(PURGEWRIGHT_CMAKE, {"--build", build.string()});
  INFO(built.out << built.err);
  REQUIRE(built.status == 0);
  const auto ran = run((build / "fixture_numbers").string(), {});
  INFO(ran.out << ran.err);
  CHECK(ran.status == 0);
  auto numbers = printed_numbers(ran.out);
  CHECK(numbers.size() == 2);

  // The same job by the program.
  const std::string text = bytes_of(source + "/main.cpp");
  const std::string open = "R\"yaml(";
  const auto begin = text.find(open) + open.size();
  write_bytes(installed.scratch("job.yaml"), text.substr(begin, text.find(")yaml\"") - begin));
  const auto checked = installed.run_program({"check", "job.yaml", "--json"});
  CHECK(checked.status == ran.status);
  const json results = json::parse(checked.out);
  for (const auto &quantity : results["quantities"]) {
    const auto found = numbers.find(quantity["id"].get<std::string>());
    if (found != numbers.end()) {
      INFO(found->first);
      CHECK(found->second == Approx(quantity["value"].get<double>()).epsilon(1e-8)); // printed to nine digits
      numbers.erase(found);
    }
  }
  CHECK(numbers.empty());
}

TEST_CASE("each component of the package is found, and dxflib comes with its own alone") {
  const Installed installed;
  const auto project = installed.scratch("project");
  fs::create_directory(project);
  write_bytes(project / "empty.cpp", "int main() {}\n");
  const auto link = [&](const std::string &components, const std::string &target) {
    write_bytes(project / "CMakeLists.txt",
                "cmake_minimum_required(VERSION 3.25)\nproject(try LANGUAGES CXX)\n"
                "find_package(purgewright REQUIRED " +
                    components +
                    ")\nadd_executable(try empty.cpp)\n"
                    "target_link_libraries(try PRIVATE " +
                    target + ")\n");
    const auto build = installed.scratch("build-" + target.substr(target.rfind(':') + 1));
    const auto done = run(PURGEWRIGHT_CMAKE, {"-G", "Ninja", "-S", project.string(), "-B", build.string(),
                                              "-D", "CMAKE_PREFIX_PATH=" + installed.root().string()});
    INFO(done.out << done.err);
    REQUIRE(done.status == 0);
    return bytes_of(build / "build.ninja");
  };
  CHECK_THAT(link("", "purgewright::checks"), !Contains("TKernel") && !Contains("dxflib"));
  CHECK_THAT(link("COMPONENTS solids", "purgewright::solids"), Contains("TKernel") && !Contains("dxflib"));
  CHECK_THAT(link("COMPONENTS sheets", "purgewright::drawing"), Contains("cairo") && !Contains("dxflib"));
  CHECK_THAT(link("COMPONENTS dxf", "purgewright::dxf"), Contains("dxflib"));
}
