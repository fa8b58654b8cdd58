// What the command line refuses before it reads a job, which here is sound and would be swept.
#include "purgewright/cli/app.hpp"

#include "support/paths.hpp"
#include "support/run_program.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <iterator>
#include <string>
#include <vector>

using namespace purgewright;

namespace {

const std::string job = test::project_file("examples/logger-25.yaml");
const std::string wall = "fixture.wall=4 mm:5 mm:1 mm";

cli::ExitCode code_of(std::vector<std::string> words) {
  words.insert(words.begin(), "purgewright");
  std::vector<const char *> arguments;
  std::ranges::transform(words, std::back_inserter(arguments), [](const auto &word) { return word.c_str(); });
  return cli::run(static_cast<int>(arguments.size()), arguments.data());
}

} // namespace

TEST_CASE("an empty value of an option is refused, not taken for none") {
  const test::ScratchFolder folder;
  const std::string out = (folder / "out").string();
  for (const std::vector<std::string> &words : std::vector<std::vector<std::string>>{
           {"compare", job, "--vary", wall, "--quick", "-o", out, "--shard", ""},
           {"compare", job, "--vary", wall, "--quick", "-o", ""},
           {"new", "-o", out, "--tube", "1 in x 0.035 in x 8 in", "--cap", ""},
           {"new", "flat-cap", "-o", out, "--tube", ""},
           {"flow", job, "-o", out, "--cells", "600", "--duration", ""}}) {
    INFO(words.back() << words[words.size() - 2]);
    CHECK(code_of(words) == cli::ExitCode::bad_input);
    CHECK_FALSE(std::filesystem::exists(out));
  }
}

TEST_CASE("an option is not taken for the value of the one before it") {
  const std::filesystem::path strange = "--quick"; // in the folder of this run
  CHECK(code_of({"compare", job, "--vary", wall, "-o", "--quick"}) == cli::ExitCode::bad_input);
  CHECK_FALSE(std::filesystem::exists(strange));
}
