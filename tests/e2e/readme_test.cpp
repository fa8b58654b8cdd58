// What the README shows must work: every command line runs, every job file is accepted.
#include "e2e/program.hpp"
#include "support/paths.hpp"

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

// Words of a command line as a shell would part them: blanks, single quotes, a comment at the end.
std::vector<std::string> words(const std::string &line) {
  std::vector<std::string> all;
  const std::regex word(R"('([^']*)'|(#.*)|([^\s#]+))");
  for (std::sregex_iterator at(line.begin(), line.end(), word), end; at != end; ++at) {
    if ((*at)[2].matched) {
      break;
    }
    all.push_back((*at)[1].matched ? (*at)[1].str() : (*at)[3].str());
  }
  return all;
}

} // namespace

TEST_CASE("every command line of the README runs") {
  const ScratchFolder folder;
  write_bytes(folder / "a.yaml", bytes_of(example("logger-25")));
  write_bytes(folder / "b.yaml", bytes_of(example("logger-38")));
  int commands = 0;
  for (const auto &block : blocks(bytes_of(purgewright::test::project_file("README.md")))) {
    std::istringstream lines(block.text);
    for (std::string line; std::getline(lines, line);) {
      auto line_words = words(line);
      if (line_words.size() < 2 || line_words[0] != "purgewright") {
        continue;
      }
      ++commands;
      INFO(line);
      line_words.erase(line_words.begin());
      const auto done = run_tool(line_words, {.folder = folder.path()});
      INFO(done.err);
      CHECK(done.status == 0);
    }
  }
  CHECK(commands >= 5);
}

TEST_CASE("every job file of the README is accepted") {
  const ScratchFolder folder;
  int jobs = 0;
  for (const auto &block : blocks(bytes_of(purgewright::test::project_file("README.md")))) {
    if (block.language != "yaml") {
      continue;
    }
    ++jobs;
    INFO(block.text);
    write_bytes(folder / "job.yaml", block.text);
    const auto done = run_tool({"check", (folder / "job.yaml").string()});
    INFO(done.out << done.err);
    CHECK((done.status == 0 || done.status == 1)); // its design may fail a rule and say what would resolve it
    CHECK(done.err.empty());
  }
  CHECK(jobs >= 1);
}
