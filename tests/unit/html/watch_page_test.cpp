// Pages under watch as text: a fault with its line, what is from before it, nothing of a job as markup. How
// they are renewed is for the tests with a browser.
#include "purgewright/html/watch_page.hpp"

#include "purgewright/study/study.hpp"
#include "support/paths.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <string>

using namespace purgewright;
using Catch::Matchers::Contains;

namespace {

const html::SaveTime first = html::SaveTime{} + std::chrono::hours(30),
                     second = first + std::chrono::minutes(1);

const report::Findings &sound() {
  static const report::Findings findings = [] {
    auto resolution = job::read_job(test::example_job("logger-25"));
    return report::find(checks::evaluate_coarse(std::move(*resolution.job)));
  }();
  return findings;
}

job::Sources sources_of(std::string text) {
  return {.job = {{}, "logger.yaml", std::move(text), {}, {}}, .family = {}, .log = std::nullopt};
}

} // namespace

TEST_CASE("a fault stands with its place, its line, what is allowed and what may have been meant") {
  const auto sources = sources_of("job: {name: logger}\ntube:\n  wall: thick <b>\n");
  const job::Diagnostics problems{{.file = "logger.yaml",
                                   .mark = {3, 9},
                                   .key = "tube.wall",
                                   .problem = "'thick <b>' is not a length",
                                   .allowed = "a length",
                                   .nearest = "0.9 mm"}};
  const auto parts = html::state_parts({.file = "logger.yaml",
                                        .sources = sources,
                                        .problems = problems,
                                        .saved = second,
                                        .judged = &sound(),
                                        .numbers = &sound(),
                                        .numbers_saved = first,
                                        .view_saved = {}});
  const std::string &box = parts.at("faults");
  CHECK_THAT(box, Contains("logger.yaml:3:9"));
  CHECK_THAT(box, Contains("<span class=\"line\">3</span>   wall: <mark>thick</mark> &lt;b&gt;</pre>"));
  CHECK_THAT(box, Contains("Allowed: <b>a length</b>"));
  CHECK_THAT(box, Contains("Did you mean <b>0.9 mm</b>?"));
  CHECK_THAT(box, Contains("from before"));
  CHECK_THAT(box, !Contains("<b>' is"));
  CHECK_THAT(parts.at("state"), Contains("data-title=\"Fault: logger-25\""));
}

TEST_CASE("numbers say when they are from before a fault, or not yet exact, and nothing else") {
  const auto sources = sources_of("job: {}\n");
  const job::Diagnostics none,
      faults{{.file = "logger.yaml", .key = "tube", .problem = "is missing", .allowed = {}, .nearest = {}}};
  html::Watched watched{.file = "logger.yaml",
                        .sources = sources,
                        .problems = none,
                        .saved = first,
                        .judged = &sound(),
                        .numbers = &sound(),
                        .numbers_saved = first,
                        .view_saved = {}};
  const auto exact = html::watched_numbers(watched, "1.2.3");
  CHECK_THAT(exact.at("answer"), !Contains("class=\"tag\""));
  CHECK(exact.contains("numbers"));
  watched.coarse = true;
  const auto coarse = html::watched_numbers(watched, "1.2.3");
  CHECK_THAT(coarse.at("answer"), Contains("First numbers, heat by its coarse plan"));
  CHECK_FALSE(coarse.contains("numbers"));
  const html::Watched faulty{.file = "logger.yaml",
                             .sources = sources,
                             .problems = faults,
                             .saved = second,
                             .judged = &sound(),
                             .numbers = &sound(),
                             .numbers_saved = first,
                             .view_saved = {}};
  for (const auto &[name, markup] : html::watched_numbers(faulty, "1.2.3")) {
    if (name != "head" && name != "changes") {
      CAPTURE(name);
      CHECK_THAT(markup, Contains("From before the fault"));
    }
  }
}

TEST_CASE("a column of a job with a fault does not say that it may be welded") {
  const auto sources = sources_of("job: {}\n");
  const job::Diagnostics none,
      faults{{.file = "b<i>.yaml", .key = "tube", .problem = "is missing", .allowed = {}, .nearest = {}}};
  const std::array<html::Watched, 2> jobs{
      {{.file = "a.yaml",
        .sources = sources,
        .problems = none,
        .saved = first,
        .judged = &sound(),
        .numbers = &sound(),
        .numbers_saved = first,
        .view_saved = {}},
       {.file = "b<i>.yaml", .sources = sources, .problems = faults, .saved = second, .view_saved = {}}}};
  const std::string table = html::list_parts(jobs).at("table");
  CHECK_THAT(table, Contains("<a href=\"1/\">logger-25</a>"));
  CHECK_THAT(table, Contains("<a href=\"2/\">b&lt;i&gt;.yaml</a>"));
  CHECK_THAT(table, Contains("<span class=\"mark fail\">not judged: a fault</span>"));
  CHECK_THAT(table, !Contains("<i>"));
}

TEST_CASE("a page under watch fetches from its own server alone and frames nothing") {
  const std::string policy = html::watch_policy();
  CHECK_THAT(policy, Catch::StartsWith("default-src 'none';"));
  CHECK_THAT(policy, Contains("connect-src 'self';"));
  CHECK_THAT(policy, !Contains("unsafe"));
  CHECK_THAT(html::watched_page({}, 7), Contains("data-version=\"7\""));
}
