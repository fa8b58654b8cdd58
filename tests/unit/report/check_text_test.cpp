// What `check` prints: verdict first, short and narrow, every number with the id that `trace` takes.
#include "purgewright/report/lines.hpp"
#include "purgewright/report/text.hpp"

#include "support/examples.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

using namespace purgewright;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

namespace {

job::Job job_of(const std::string &name) {
  const auto resolution = job::read_job(test::example_job(name));
  REQUIRE(resolution.job);
  return *resolution.job;
}

std::vector<std::string> lines_of(const std::string &text) {
  std::vector<std::string> all;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) {
    all.push_back(line);
  }
  return all;
}

std::size_t columns(const std::string &line) {
  return static_cast<std::size_t>(
      std::ranges::count_if(line, [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

// Ids at the ends of lines, of quantities that the design has.
void check_ids(const report::Findings &findings, const std::vector<std::string> &lines) {
  std::string section;
  int ids = 0;
  for (const std::string &line : lines) {
    section = line.empty() || line.front() == ' ' ? section : line;
    const bool numbers =
        section == "Set" || section == "Do, in this order" || section == "Use" || section == "Sizes";
    if (!numbers || line.empty() || line.front() != ' ' || line.find("in order") == 2) {
      continue;
    }
    INFO(line);
    const std::string id = line.substr(line.rfind(' ') + 1);
    CHECK(report::trace_text(findings, id).has_value());
    ++ids;
  }
  CHECK(ids > 30);
}

} // namespace

TEST_CASE("The report of a job that passes is 60 lines of 110 columns, each with an id to trace",
          "[unit][report]") {
  for (const std::string &name : purgewright::test::example_names()) {
    INFO(name);
    const auto findings = report::find(checks::evaluate(job_of(name)));
    REQUIRE(checks::worst(findings.rules) != checks::Status::fail);
    const auto lines = lines_of(report::check_text(findings, {}));
    CHECK(lines.size() <= 60);
    for (const std::string &line : lines) {
      INFO(line);
      CHECK(columns(line) <= 110);
      CHECK((line.empty() || line.back() != ' '));
    }
    REQUIRE(lines.size() > 2);
    CHECK_THAT(lines[0], StartsWith(name));
    CHECK_THAT(lines[1], StartsWith("PASSES"));
    check_ids(findings, lines);
    const std::string all = report::check_text(findings, {.all = true});
    for (const auto &rule : findings.rules) {
      CHECK_THAT(all, Contains(" " + rule.id + " "));
    }
  }
}

TEST_CASE("Rules that fail stand before all numbers, with what to do; wide texts are wrapped",
          "[unit][report]") {
  auto job = job_of("logger-25");
  job.fixture.slot_width = units::millimetres(20.0);
  const auto findings = report::find(checks::evaluate(job));
  REQUIRE(checks::worst(findings.rules) == checks::Status::fail);
  const std::string text = report::check_text(findings, {});
  const auto lines = lines_of(text);
  CHECK_THAT(lines[1], StartsWith("FAILS, not for use"));
  const auto at = text.find("fail    access.slot_width");
  REQUIRE(at != std::string::npos);
  CHECK(at < text.find("\nSet\n"));
  CHECK(text.find("to do: ", at) < text.find("\nSet\n"));
  for (const std::string &line : lines) {
    INFO(line);
    CHECK(columns(line) <= 110);
  }
}

TEST_CASE("A limit is printed with the side on which a value keeps to it", "[unit][report]") {
  const auto findings = report::find(checks::evaluate(job_of("logger-25")));
  std::set<checks::Bound> seen;
  for (const auto &rule : findings.rules) {
    const std::string amount = report::against_limit(findings, rule);
    INFO(rule.id << ": " << amount);
    if (amount.empty()) {
      continue;
    }
    const bool most = amount.find("\u2264") != std::string::npos;
    const bool least =
        amount.find("\u2265") != std::string::npos || amount.find("limit > ") != std::string::npos;
    CHECK(most == (rule.bound == checks::Bound::at_most));
    CHECK(least != most);
    if (rule.status == checks::Status::pass && rule.value != rule.limit) {
      CHECK((rule.value < rule.limit) == most);
    }
    seen.insert(rule.bound);
  }
  CHECK(seen.size() > 1);
}
