// A comparison as a table for programs, RFC 4180.
#include "comparison_parts.hpp"
#include "csv.hpp"

#include <fmt/format.h>

#include <cmath>
#include <span>

namespace purgewright::report {

std::string comparison_csv(const Comparison &c) {
  std::string text = "design";
  for (std::size_t k = 0; k < c.varied_keys.size(); ++k) {
    text += fmt::format(",{} [{}]", c.varied_keys[k], parts::varied_unit(c, k));
  }
  for (const Metric &metric : metrics()) {
    text += fmt::format(",{} [{}]", metric.id, units::si_unit(metric.dimension));
  }
  for (const Asked &asked : c.asked) {
    text += fmt::format(",{} [{}]", asked.id, units::si_unit(asked.dimension));
  }
  text += ",rules.failing [1],rules.failing_of_judged [1],rules.cautions_of_judged [1],rules.judged [1],"
          "rules.worst,rules.not_judged,rules.tightest,rules.tightest_margin [1],kinds";
  text += c.ranked.empty() ? "" : ",front [1]";
  text += "\r\n";
  const std::set<std::size_t> on_front = parts::front_set(c);
  for (std::size_t d = 0; d < c.designs.size(); ++d) {
    const ComparedDesign &design = c.designs[d];
    text += csv_cell(design.name);
    for (const double value : design.varied) {
      text += fmt::format(",{}", value);
    }
    for (const auto &values :
         {std::span<const double>(design.values), std::span<const double>(design.asked)}) {
      for (const double value : values) {
        text += std::isfinite(value) ? fmt::format(",{}", value) : std::string(",");
      }
    }
    const auto &rules = design.rules;
    text += parts::counts_all(c, design) ? fmt::format(",{}", rules.failing) : std::string(",");
    text += fmt::format(",{},{},{},{},{}", rules.failing, rules.cautions, rules.judged, csv_cell(rules.worst),
                        rules.clashes ? "all" : fmt::format("{}", fmt::join(checks::not_judged(rules), " ")));
    text += fmt::format(",{},{},", design.tightest.rule,
                        design.tightest.rule.empty() ? "" : fmt::format("{}", design.tightest.margin));
    for (const Kind &kind : design.kinds) {
      text += fmt::format("{}{}={}", &kind == design.kinds.data() ? "" : " ", kind.what, kind.kind);
    }
    text += c.ranked.empty() ? "" : on_front.contains(d) ? ",1" : ",0";
    text += "\r\n";
  }
  return text;
}

} // namespace purgewright::report
