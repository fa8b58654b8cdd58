// Man page and completions against what the program itself says of its commands and options: a forgotten one,
// or one that is gone, fails.
#include "e2e/program.hpp"
#include "support/paths.hpp"

#include <algorithm>
#include <regex>
#include <set>
#include <sstream>

using namespace purgewright::test;
using Catch::Contains;

namespace {

using Words = std::set<std::string>;

struct Section { // of a command; of the program itself when its name is empty
  std::string name, about;
  Words options;              // "-o", "--output", ...
  std::set<std::string> told; // what is said of options and arguments
};

std::vector<std::string> lines_of(const std::string &text) {
  std::vector<std::string> all;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    all.push_back(line);
  }
  return all;
}

// The options that a text names, each once: -o, --output.
Words options_in(const std::string &text) {
  const std::regex option(R"((^|[^-\w])(--?[a-z][a-z-]*))");
  Words found;
  for (std::sregex_iterator at(text.begin(), text.end(), option), end; at != end; ++at) {
    found.insert((*at)[2]);
  }
  return found;
}

// As --help tells it: "  -o,--output TEXT            Folder to write".
Section told_by_program(const std::string &command) {
  std::vector<std::string> arguments{"--help"};
  if (!command.empty()) {
    arguments.insert(arguments.begin(), command);
  }
  const auto done = run_tool(arguments);
  REQUIRE(done.status == 0);
  Section section{.name = command, .about = "", .options = {}, .told = {}};
  const std::regex row(R"(  (\S.*?)(?:  +(\S.*))?)"), more(R"( {10,}(\S.*))");
  bool commands = false;
  std::string last;
  const auto keep = [&] {
    if (!last.empty()) {
      section.told.insert(last);
    }
    last.clear();
  };
  for (const auto &line : lines_of(done.out)) {
    std::smatch match;
    commands = commands || line.starts_with("Subcommands:");
    if (section.about.empty()) {
      section.about = line;
    } else if (std::regex_match(line, match, more)) {
      last += (last.empty() ? "" : " ") + match[1].str();
    } else if (!commands && std::regex_match(line, match, row)) {
      keep();
      section.options.merge(options_in(match[1]));
      last = match[2];
    }
  }
  keep();
  return section;
}

std::vector<std::string> commands() {
  std::vector<std::string> names;
  const std::string help = run_tool({"--help"}).out;
  const std::regex row(R"(  ([a-z]+) +\S.*)");
  for (const auto &line : lines_of(help.substr(help.find("Subcommands:")))) {
    std::smatch match;
    if (std::regex_match(line, match, row)) {
      names.push_back(match[1]);
    }
  }
  REQUIRE(names.size() >= 5);
  return names;
}

// The man page's part on a command, its marks of roff taken away.
std::string of_man_page(const std::string &heading) {
  const std::string page = bytes_of(project_file("src/install/man/purgewright.1"));
  const auto begin = page.find("\n.SS " + heading + "\n");
  REQUIRE(begin != std::string::npos);
  const auto end = page.find("\n.S", begin + 1);
  std::string text = page.substr(begin, end - begin);
  text = std::regex_replace(text, std::regex(R"(\\f[A-Z])"), "");
  text = std::regex_replace(text, std::regex(R"(\\-)"), "-");
  return std::regex_replace(text, std::regex(R"(\\\(aq)"), "'");
}

Words joined(Words words, const Words &more) {
  words.insert(more.begin(), more.end());
  return words;
}

const Words help_options{"-h", "--help"};

// What a shell offers for a command line that ends where it is to be completed.
Words offered(const std::string &shell, const std::string &line, const std::filesystem::path &folder) {
  const std::string program = PURGEWRIGHT_PROGRAM;
  const auto done =
      run(project_file("tests/e2e/complete"), {shell, line},
          {.folder = folder,
           .environment = {{"PATH", std::filesystem::path(program).parent_path().string() + ":/usr/bin:/bin"},
                           {"HOME", folder.string()}}});
  INFO(shell << ": " << line << '\n' << done.err);
  CHECK(done.status == 0);
  Words words;
  for (const auto &word : lines_of(done.out)) {
    words.insert(word);
  }
  return words;
}

bool holds(const Words &all, const Words &part) {
  return std::ranges::includes(all, part);
}

} // namespace

TEST_CASE("the man page says of each command and option what --help says") {
  for (const auto &command : commands()) {
    INFO(command);
    const Section section = told_by_program(command);
    const std::string text = of_man_page(command);
    CHECK(joined(options_in(text), help_options) == section.options);
    CHECK_THAT(text, Contains("\n" + section.about + "\n"));
    for (const auto &told : section.told) {
      INFO(told);
      if (told != "Print this help message and exit") {
        CHECK_THAT(text + "\n", Contains("\n" + told + "\n"));
      }
    }
  }
  const Section program = told_by_program("");
  CHECK(joined(options_in(of_man_page("The program itself")), help_options) == program.options);
}

TEST_CASE("the man page is formatted without a warning") {
  const auto done =
      run("/usr/bin/man", {"--warnings", "--local-file", project_file("src/install/man/purgewright.1")},
          {.folder = {}, .environment = {{"LC_ALL", "C.UTF-8"}, {"MANWIDTH", "100"}}});
  CHECK(done.status == 0);
  CHECK(done.err.empty());
  CHECK_THAT(done.out, Contains("EXIT STATUS"));
  CHECK_THAT(done.out,
             Contains("purgewright new --tube SIZES") && Contains("purgewright compare --merge FOLDER"));
}

TEST_CASE("each shell completes the commands, their options and nothing else") {
  const std::string shell = GENERATE("bash", "fish", "zsh");
  const ScratchFolder folder;
  const auto names = commands();
  CHECK(holds(offered(shell, "purgewright ", folder.path()), Words(names.begin(), names.end())));
  for (const auto &command : names) {
    INFO(shell << ' ' << command);
    // Bash and zsh offer short and long options for one dash, fish the long ones for two.
    const Words words = joined(offered(shell, "purgewright " + command + " -", folder.path()),
                               offered(shell, "purgewright " + command + " --", folder.path()));
    CHECK(words == told_by_program(command).options);
  }
}

TEST_CASE("each shell completes templates, job files and what trace can trace") {
  const std::string shell = GENERATE("bash", "fish", "zsh");
  INFO(shell);
  const ScratchFolder folder;
  write_bytes(folder / "cap.yaml", bytes_of(example("logger-25")));
  write_bytes(folder / "cup.txt", "no job\n");
  CHECK(offered(shell, "purgewright new ", folder.path()) == Words{"flat-cap", "domed-cap", "spigot-cap"});
  CHECK(offered(shell, "purgewright check c", folder.path()) == Words{"cap.yaml"});
  CHECK(offered(shell, "purgewright trace cap.yaml volume.chamber_", folder.path()) ==
        Words{"volume.chamber_gas"});
}
