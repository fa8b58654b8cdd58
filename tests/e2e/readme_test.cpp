// What the README shows must work: every command line and every job file ends with the status that the README
// promises of it, which is 0 unless its block says "exit status N".
#include "e2e/program.hpp"
#include "support/paths.hpp"

#include <filesystem>
#include <iterator>
#include <regex>
#include <sstream>

using namespace purgewright::test;

namespace {

struct Block {
  std::string language, text;
};

std::vector<Block> blocks(const std::string &markdown) {
  std::vector<Block> found;
  std::istringstream lines(markdown);
  bool inside = false;
  for (std::string line; std::getline(lines, line);) {
    if (line.starts_with("```")) {
      inside = !inside;
      if (inside) {
        found.push_back({line.substr(3), ""});
      }
    } else if (inside) {
      found.back().text += line + "\n";
    }
  }
  REQUIRE_FALSE(inside);
  return found;
}

int promised_status(const std::string &block) {
  std::smatch found;
  const std::regex said("exit status ([0-9])");
  return std::regex_search(block, found, said) ? std::stoi(found[1].str()) : 0;
}

} // namespace

TEST_CASE("the README's commands work as typed, in the project's folder once it is built") {
  namespace fs = std::filesystem;
  const ScratchFolder folder;
  fs::copy(project_file("examples"), folder / "examples", fs::copy_options::recursive);
  fs::create_directories(folder / "build/release");
  fs::create_directory_symlink(fs::path(PURGEWRIGHT_PROGRAM).parent_path(), folder / "build/release/src");
  int commands = 0;
  for (const auto &block : blocks(bytes_of(project_file("README.md")))) {
    const std::regex command("(^|\n)purgewright ");
    if (!block.language.empty() || !std::regex_search(block.text, command)) {
      continue;
    }
    commands += static_cast<int>(
        std::distance(std::sregex_iterator(block.text.begin(), block.text.end(), command), {}));
    const auto done = run("/usr/bin/bash", {"-e", "-x", "-c", block.text}, {.folder = folder.path()});
    INFO(done.err);
    CHECK(done.status == 0);
  }
  CHECK(commands >= 5);
  CHECK(fs::exists(folder / "out/my-flat-cap/manifest.json"));
}

TEST_CASE("every job file of the README has the status it promises") {
  const ScratchFolder folder;
  int jobs = 0;
  for (const auto &block : blocks(bytes_of(project_file("README.md")))) {
    if (block.language != "yaml") {
      continue;
    }
    ++jobs;
    INFO(block.text);
    write_bytes(folder / "job.yaml", block.text);
    const auto done = run_tool({"check", (folder / "job.yaml").string()});
    INFO(done.out << done.err);
    CHECK(done.status == promised_status(block.text));
    CHECK(done.err.empty());
  }
  CHECK(jobs >= 1);
}
