// A comparison as a table for programs, RFC 4180.
#include "comparison_parts.hpp"
#include "csv.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <span>

namespace purgewright::report {
namespace {

std::string rule_cells(const Comparison &c, const ComparedDesign &design) {
  const auto &rules = design.rules;
  std::string text = parts::counts_all(c, design) ? fmt::format(",{}", rules.failing) : std::string(",");
  text += fmt::format(",{},{},{},{},{}", rules.failing, rules.cautions, rules.judged, csv_cell(rules.worst),
                      rules.clashes ? "all" : fmt::format("{}", fmt::join(checks::not_judged(rules), " ")));
  return text + fmt::format(",{},{},", design.tightest.rule,
                            design.tightest.rule.empty() ? "" : fmt::format("{}", design.tightest.margin));
}

} // namespace

SweepTable::SweepTable(const Comparison &head, const Overview &overview) : head_(head) {
  for (const auto &choice : overview.front()) {
    front_.push_back(choice.design);
  }
  std::ranges::sort(front_);
}

std::string SweepTable::head() const {
  std::string text = "design";
  for (std::size_t k = 0; k < head_.varied_keys.size(); ++k) {
    text += fmt::format(",{} [{}]", head_.varied_keys[k], parts::varied_unit(head_, k));
  }
  for (const Metric &metric : metrics()) {
    text += fmt::format(",{} [{}]", metric.id, units::si_unit(metric.dimension));
  }
  for (const Asked &asked : head_.asked) {
    text += fmt::format(",{} [{}]", asked.id, units::si_unit(asked.dimension));
  }
  text += ",rules.failing [1],rules.failing_of_judged [1],rules.cautions_of_judged [1],rules.judged [1],"
          "rules.worst,rules.not_judged,rules.tightest,rules.tightest_margin [1],kinds";
  text += head_.ranked.empty() ? "" : ",front [1]";
  return text + "\r\n";
}

std::string SweepTable::row(const ComparedDesign &design) {
  std::string text = csv_cell(design.name);
  for (const double value : design.varied) {
    text += fmt::format(",{}", value);
  }
  for (const auto &values : {std::span<const double>(design.values), std::span<const double>(design.asked)}) {
    for (const double value : values) {
      text += std::isfinite(value) ? fmt::format(",{}", value) : std::string(",");
    }
  }
  text += rule_cells(head_, design);
  for (const Kind &kind : design.kinds) {
    text += fmt::format("{}{}={}", &kind == design.kinds.data() ? "" : " ", kind.what, kind.kind);
  }
  if (!head_.ranked.empty()) {
    text += std::ranges::binary_search(front_, next_) ? ",1" : ",0";
  }
  ++next_;
  return text + "\r\n";
}

std::string comparison_csv(const Comparison &c) {
  SweepTable table(c, overview(c));
  std::string text = table.head();
  for (const ComparedDesign &design : c.designs) {
    text += table.row(design);
  }
  return text;
}

} // namespace purgewright::report
