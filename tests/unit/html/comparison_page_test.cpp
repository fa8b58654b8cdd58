// Pictures of designs on the page of a comparison: all to one scale, which the bar says as well.
#include "purgewright/html/comparison_page.hpp"

#include "support/paths.hpp"

#include <catch2/catch.hpp>

#include <regex>
#include <set>
#include <string>

using namespace purgewright;
using Catch::Matchers::Contains;

namespace {

report::ComparedDesign row_of(const std::string &name, units::UnitSystem &system) {
  auto resolution = job::read_job(test::example_job(name));
  REQUIRE(resolution.job);
  const auto design = checks::evaluate_closed_form(std::move(*resolution.job));
  system = design.job.shop.unit_system;
  auto row = report::compared(design, name);
  row.outlines = fixture::outlines(design.job, design.layout);
  return row;
}

std::string page_of(const std::vector<std::string> &names) {
  report::Comparison comparison;
  comparison.quick = true;
  for (const std::string &name : names) {
    comparison.designs.push_back(row_of(name, comparison.unit_system));
  }
  return html::comparison_page(comparison, "1");
}

// Scales of all pictures, user units a millimetre of the page.
std::set<long> scales_in(const std::string &page) {
  static const std::regex picture(
      "width=\"([0-9.]+)mm\" height=\"([0-9.]+)mm\" viewBox=\"\\S+ \\S+ ([0-9.]+) ([0-9.]+)\"");
  std::set<long> scales;
  for (std::sregex_iterator at(page.begin(), page.end(), picture), end; at != end; ++at) {
    scales.insert(std::lround(100.0 * std::stod((*at)[3]) / std::stod((*at)[1])));
    scales.insert(std::lround(100.0 * std::stod((*at)[4]) / std::stod((*at)[2])));
  }
  return scales;
}

} // namespace

TEST_CASE("all outlines have one scale, of the preferred series, and the bar says it") {
  const std::string page = page_of({"logger-25", "logger-51"});
  CHECK(scales_in(page.substr(page.find("class=\"outlines\""))) == std::set<long>{500}); // 1:5
  CHECK_THAT(page, Contains("100 mm, 1:5 on paper") && Contains("a bar of 100 mm\" width=\"20.000mm\""));
  const std::string larger = page_of({"logger-25", "well-114"});
  CHECK(scales_in(larger.substr(larger.find("class=\"outlines\""))) == std::set<long>{1000});
}

TEST_CASE("a design that cannot be drawn leaves no picture, none at all no section") {
  report::Comparison comparison;
  comparison.designs.emplace_back();
  comparison.designs.back().name = "clashes";
  CHECK_THAT(html::comparison_page(comparison, "1"),
             !Contains("id=\"outlines\"") && !Contains("#outlines\""));
}

TEST_CASE("of many designs few are drawn, the first and the last among them") {
  for (const std::size_t total : {1, 2, 11, 12, 13, 23, 24, 100, 4321, 1'000'000}) {
    std::size_t drawn = 0;
    for (std::size_t d = 0; d < total; ++d) {
      drawn += report::is_drawn(d, total) ? 1 : 0;
    }
    INFO(total);
    CHECK(drawn == std::min(total, report::most_drawn));
    CHECK(report::is_drawn(0, total));
    CHECK(report::is_drawn(total - 1, total));
  }
}
