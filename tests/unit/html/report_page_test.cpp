// The report as text: what stands first, that links lead somewhere, that nothing of a job is markup. How a
// browser shows it is for the tests with a browser.
#include "purgewright/html/report_page.hpp"

#include "support/paths.hpp"

#include <catch2/catch.hpp>

#include <regex>
#include <set>
#include <string>

using namespace purgewright;
using Catch::Matchers::Contains;

namespace {

const std::string svg = "<svg xmlns=\"http://www.w3.org/2000/svg\"/>";

report::Findings findings_of(const std::string &title = "Housing") {
  auto resolution = job::read_job(test::example_job("logger-25"));
  REQUIRE(resolution.job);
  resolution.job->identity.title = title;
  return report::find(checks::evaluate_row(std::move(*resolution.job)));
}

std::string page_of(const report::Findings &findings) {
  return html::report_page(findings, {.assembly_glb = "glTF",
                                      .gas_spaces_glb = "glTF",
                                      .temperatures_svg = svg,
                                      .oxygen_svg = svg,
                                      .sheets = {{"drawings/cradle-stand-2.svg", svg}},
                                      .version = "1.2.3"});
}

std::set<std::string> all_of(const std::string &text, const std::regex &pattern) {
  std::set<std::string> found;
  for (std::sregex_iterator at(text.begin(), text.end(), pattern), end; at != end; ++at) {
    found.insert((*at)[1]);
  }
  return found;
}

// What the page's own scripts say is not its text.
std::string without_scripts(const std::string &page) {
  std::string text;
  std::size_t at = 0;
  for (std::size_t begin; (begin = page.find("<script", at)) != std::string::npos;) {
    text += page.substr(at, begin - at);
    at = page.find("</script>", begin);
  }
  return text + page.substr(at);
}

} // namespace

TEST_CASE("the report begins with the answer, then what is dangerous, then wait and flows") {
  const std::string page = page_of(findings_of());
  const auto answer = page.find("May I weld?</h2>"), danger = page.find("Before anything else"),
             bench = page.find("<h3>Wait</h3>"), fixture = page.find("id=\"view\""),
             rules = page.find("id=\"rules\"");
  REQUIRE(rules != std::string::npos);
  CHECK(answer < danger);
  CHECK(danger < bench);
  CHECK(bench < fixture);
  CHECK(fixture < rules);
  CHECK_THAT(page, Contains("Cradle stand, sheet 2") && Contains("href=\"drawings/cradle-stand.pdf\""));
}

TEST_CASE("each flow of the answer opens the figure that it shows") {
  auto resolution = job::read_job(test::example_job("well-114"));
  REQUIRE(resolution.job);
  auto design = checks::evaluate_row(std::move(*resolution.job));
  REQUIRE(design.purge.bore.prepurge != design.purge.chamber.prepurge);
  design.purge.bore.welding *= 1.3; // so that no two flows are alike
  const auto findings = report::find(std::move(design));
  const std::string page = page_of(findings);
  const std::regex number(
      "<summary>([0-9.]+) L/min</summary><p><a href=\"#n\\.(purge\\.[a-z]+\\.[a-z]+\\.flow)\"");
  std::set<std::string> seen;
  for (std::sregex_iterator at(page.begin(), page.end(), number), end; at != end; ++at) {
    const auto *figure = units::find(findings.figures, (*at)[2].str());
    INFO((*at)[2]);
    REQUIRE(figure != nullptr);
    constexpr double litre_per_minute = 1e-3 / 60.0, two_digits = 0.05;
    CHECK(std::stod((*at)[1]) == Approx(figure->value / litre_per_minute).epsilon(two_digits));
    seen.insert((*at)[2]);
  }
  CHECK(seen.size() == 4);
}

TEST_CASE("a failing rule is the answer, with what to do") {
  auto findings = findings_of();
  CHECK_THAT(page_of(findings), Contains("<strong>Yes,</strong>"));
  auto &rule = findings.rules.front();
  rule.status = checks::Status::caution;
  rule.remedy = "look at it";
  CHECK_THAT(page_of(findings), Contains("<strong>Yes, with care.</strong>"));
  rule.status = checks::Status::fail;
  rule.remedy = "take a wider slot";
  const std::string page = page_of(findings);
  CHECK_THAT(page, Contains("<strong>No.</strong> 1 of") && Contains("To do: take a wider slot"));
  CHECK(page.find("To do: take a wider slot") < page.find("Before anything else"));
}

TEST_CASE("every link within the report leads to something, and every id is one thing's alone") {
  const std::string text = without_scripts(page_of(findings_of()));
  const std::regex anchor("href=\"#([^\"]+)\""), id("\\sid=\"([^\"]+)\"");
  const auto ids = all_of(text, id);
  const auto links = all_of(text, anchor);
  CHECK(links.size() > 100);
  for (const auto &link : links) {
    INFO(link);
    CHECK(ids.contains(link));
  }
  const auto count =
      std::distance(std::sregex_iterator(text.begin(), text.end(), id), std::sregex_iterator());
  CHECK(static_cast<std::size_t>(count) == ids.size());
}

TEST_CASE("texts of the job are no markup, and the report asks no network") {
  const std::string page = page_of(findings_of("</title><script>alert(1)</script><img src=x>"));
  CHECK_THAT(page, !Contains("<script>alert") && !Contains("<img src=x"));
  CHECK_THAT(page, Contains("&lt;script&gt;alert(1)&lt;/script&gt;"));
  CHECK_THAT(page, Contains("default-src 'none'") && !Contains("unsafe"));
  for (const auto &address :
       all_of(without_scripts(page), std::regex("(?:src|href)=\"([a-z]+:[^\"]{0,20})"))) {
    INFO(address);
    CHECK(address.starts_with("data:"));
  }
}

TEST_CASE("same findings, same report") {
  const auto findings = findings_of();
  CHECK(page_of(findings) == page_of(findings));
}
