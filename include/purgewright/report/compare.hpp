// Designs side by side: the figures people compare, the better one of each row marked.
//
// A row says how many rules fail, which worst, how many are cautions, and which were not judged; where purge
// and heat were left out the count is none of all rules and is never given as such.
//
// Units: values are SI. Guarantee: evaluating one design makes no text but a rule's id, so that quick sweeps
// run thousands a second.
#pragma once

#include "purgewright/checks/rules.hpp"

#include <array>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::report {

enum class Better { smaller, larger, neither };

struct Metric {
  std::string_view id, title;
  units::Dimension dimension;
  Better better;
  double (*value)(const checks::Design &);
};

std::span<const Metric> metrics();
inline constexpr std::size_t metric_count = 13;
using MetricValues = std::array<double, metric_count>;

// All metrics of a design; not a number where the layout has conflicts.
MetricValues measure(const checks::Design &);

struct ComparedDesign {
  std::string name;           // file stem, or the varied values "fixture.wall=4 mm"
  std::vector<double> varied; // SI, one for each key of the sweep
  MetricValues values{};
  checks::Tally rules{};
};

// A design as a row: its metrics and its rules.
ComparedDesign compared(const checks::Design &, std::string name = {});

struct Comparison {
  std::vector<std::string> varied_keys;
  std::vector<units::Dimension> varied_dimensions;
  std::vector<std::string> varied_currencies; // of prices; empty for other keys
  std::vector<ComparedDesign> designs;
  units::UnitSystem unit_system = units::UnitSystem::metric;
  bool quick = false; // purge, heat and measured log were left out: their rules are not judged
};

// "shop.argon_price=12 EUR/m3": the value of a row's varied key.
std::string varied_text(const Comparison &, std::size_t key, double value);

// Indices of the best designs of a row; empty when all are equal or the row has no better.
std::vector<std::size_t> best(const Comparison &, std::size_t metric);

// Whether a rule of any design fails, or its layout clashes.
bool any_fails(const Comparison &);

// Few designs: a row a figure. Many: a line a design. Best values carry a star.
std::string comparison_text(const Comparison &);
std::string comparison_csv(const Comparison &);  // SI values, comma, CRLF as RFC 4180
std::string comparison_json(const Comparison &); // SI values

} // namespace purgewright::report
