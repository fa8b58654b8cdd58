#include "job_text.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <vector>

using namespace purgewright::job;
using namespace purgewright::job::test;

namespace {

std::vector<std::filesystem::path> bad_jobs() {
  std::vector<std::filesystem::path> found;
  for (const auto &entry : std::filesystem::directory_iterator(path_in_tests("e2e/jobs"))) {
    if (entry.path().filename().string().starts_with("bad-")) {
      found.push_back(entry.path());
    }
  }
  std::ranges::sort(found);
  return found;
}

} // namespace

TEST_CASE("each bad job gives the one diagnostic its first line expects", "[unit]") {
  constexpr std::string_view lead = "# expect: ";
  const auto jobs = bad_jobs();
  REQUIRE(jobs.size() > 70);
  for (const auto &path : jobs) {
    CAPTURE(path.filename());
    const std::string text = file_text(path.string());
    const std::string first = text.substr(0, text.find('\n'));
    REQUIRE(first.starts_with(lead));
    const Resolution resolution = read_job(path.string());
    CHECK_FALSE(resolution.job.has_value());
    REQUIRE(resolution.problems.size() == 1);
    CHECK(to_text(resolution.problems.front()) ==
          path.string() + (first[lead.size()] == 'e' ? ": " : ":") + first.substr(lead.size()));
  }
}
