// A comparison as lines to read: few designs side by side, many line by line.
#include "comparison_parts.hpp"
#include "text_parts.hpp"

#include "purgewright/report/bench_numbers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace purgewright::report {
namespace {

using parts::counts_all;
using units::Dimension;

std::size_t metric_of(std::string_view id) {
  return static_cast<std::size_t>(std::ranges::find(metrics(), id, &Metric::id) - metrics().begin());
}

// The largest value of a row chooses the unit of all.
double largest(const Comparison &c, std::size_t metric) {
  double most = 0.0;
  for (const auto &design : c.designs) {
    most = std::isfinite(design.values[metric]) ? std::max(most, std::abs(design.values[metric])) : most;
  }
  return most;
}

std::string in_shop(const Comparison &c, const ComparedDesign &design, double value, double beside,
                    Dimension dimension) {
  return std::isfinite(value)
             ? parts::with_currency(units::shop_text_beside(value, beside, dimension, c.unit_system),
                                    dimension, design.currency)
             : "-";
}

std::string starred(const Comparison &c, const std::vector<std::size_t> &winners, std::size_t design,
                    std::size_t metric) {
  const bool wins = std::ranges::find(winners, design) != winners.end();
  return metric_text(c, c.designs[design], metric) + (wins ? " *" : "  ");
}

// "0", "2 heat.joint_boils, cautions 1", "1 clash: layout.lance"; of a quick sweep "? of all, 0 of 47
// judged".
std::string failing_text(const Comparison &c, const ComparedDesign &design) {
  const auto &rules = design.rules;
  if (rules.clashes) {
    return fmt::format("{} {}: {}", rules.failing, rules.failing == 1 ? "clash" : "clashes", rules.worst);
  }
  std::string text = c.quick ? fmt::format("? ({} of the {} judged)", rules.failing, rules.judged)
                             : fmt::format("{}", rules.failing);
  text += rules.failing > 0 ? " " + rules.worst : "";
  return text + fmt::format(", cautions {}", rules.cautions);
}

// What the counts above leave out, said once for all rows.
std::string not_judged_text(const Comparison &c) {
  std::string text;
  const auto row =
      std::ranges::find(c.designs, false, [](const ComparedDesign &d) { return d.rules.clashes; });
  if (row != c.designs.end() && row->rules.left_out.any()) {
    text +=
        fmt::format("not judged{}: {}\n", c.quick ? " (--quick leaves out purge, heat and measured log)" : "",
                    fmt::join(checks::not_judged(row->rules), ", "));
  }
  if (std::ranges::any_of(c.designs, [](const ComparedDesign &d) { return d.rules.clashes; })) {
    text += "where the layout clashes no rule is judged\n";
  }
  return text;
}

// Rows of what is not a metric: figures asked for, kinds chosen, the tightest rule.
std::string more_rows(const Comparison &c) {
  std::string text;
  const auto row = [&](std::string_view title, auto &&cell) {
    text += fmt::format("{:<20}", title);
    for (const ComparedDesign &design : c.designs) {
      text += fmt::format(" {:>18}  ", cell(design));
    }
    text += '\n';
  };
  for (std::size_t k = 0; k < c.designs.front().kinds.size(); ++k) {
    row(c.designs.front().kinds[k].what,
        [&](const ComparedDesign &d) { return k < d.kinds.size() ? d.kinds[k].kind : std::string("-"); });
  }
  for (std::size_t a = 0; a < c.asked.size(); ++a) {
    row(c.asked[a].id, [&](const ComparedDesign &d) { return asked_text(c, d, a); });
  }
  for (const ComparedDesign &design : c.designs) {
    text += design.tightest.rule.empty()
                ? std::string()
                : fmt::format("tightest rule: {} {}\n", design.name, tightest_text(design));
  }
  return text;
}

std::string side_by_side(const Comparison &c) {
  std::string text = fmt::format("{:<20}", "");
  for (const auto &design : c.designs) {
    text += fmt::format(" {:>18}  ", design.name);
  }
  text += '\n';
  for (std::size_t m = 0; m < metrics().size(); ++m) {
    if (!is_known(c, m)) {
      continue;
    }
    const auto winners = best(c, m);
    text += fmt::format("{:<20}", metrics()[m].title);
    for (std::size_t d = 0; d < c.designs.size(); ++d) {
      text += fmt::format(" {:>20}", starred(c, winners, d, m));
    }
    text += '\n';
  }
  text += more_rows(c);
  for (const auto &design : c.designs) {
    text += fmt::format("failing rules, worst, cautions: {} {}\n", design.name, failing_text(c, design));
  }
  return text;
}

// Whether nothing that is compared tells two rows apart: a size that went to the same drill, stock or grid.
bool compare_alike(const ComparedDesign &a, const ComparedDesign &b) {
  const auto same = [](double x, double y) { return x == y || (std::isnan(x) && std::isnan(y)); };
  return std::ranges::equal(a.values, b.values, same) && std::ranges::equal(a.asked, b.asked, same) &&
         a.of_each_rule == b.of_each_rule && a.tightest.rule == b.tightest.rule &&
         same(a.tightest.margin, b.tightest.margin) && a.rules.clashes == b.rules.clashes;
}

// A sweep's lines: what was varied and the figures that usually decide.
std::string line_by_line(const Comparison &c) {
  std::vector<std::size_t> shown;
  for (const std::string_view id :
       {"volume.chamber_gas", "volume.bore_gas", "purge.wait", "cycle.time", "gas.cost.per_part",
        "purge.chamber.prepurge.flow", "purge.chamber.prepurge.time_mixed", "mass.total",
        "stock.total.removed"}) {
    const bool closed_form_alone = id.starts_with("purge.chamber.");
    const std::size_t m = metric_of(id);
    if (is_known(c, m) && (c.quick || !closed_form_alone)) {
      shown.push_back(m);
    }
  }
  std::string text = fmt::format("{:<40}", "");
  std::vector<std::vector<std::size_t>> winners;
  for (const std::size_t m : shown) {
    text += fmt::format(" {:>18}", metrics()[m].title);
    winners.push_back(best(c, m));
  }
  for (const Asked &asked : c.asked) {
    text += fmt::format(" {:>18}", asked.id);
  }
  text += "  failing rules, worst, cautions\n";
  for (std::size_t d = 0; d < c.designs.size(); ++d) {
    text += fmt::format("{:<40}", c.designs[d].name);
    if (d > 0 && compare_alike(c.designs[d - 1], c.designs[d])) {
      text += "   the same as the line above in all that is compared\n";
      continue;
    }
    for (std::size_t i = 0; i < shown.size(); ++i) {
      text += fmt::format(" {:>18}", starred(c, winners[i], d, shown[i]));
    }
    for (std::size_t a = 0; a < c.asked.size(); ++a) {
      text += fmt::format(" {:>18}", asked_text(c, c.designs[d], a));
    }
    text += fmt::format("  {}\n", failing_text(c, c.designs[d]));
  }
  return text;
}

std::string titles_of_ranked(const Comparison &c) {
  std::vector<std::string_view> titles;
  for (const std::size_t metric : c.ranked) {
    titles.push_back(metrics()[metric].title);
  }
  return fmt::format("{}", fmt::join(titles, ", "));
}

std::string front_text(const Comparison &c) {
  if (c.ranked.empty()) {
    return {};
  }
  const auto best_of_all = front(c);
  std::string text = fmt::format("\nTo choose from by {}: no design that passes beats one of these {}\n",
                                 titles_of_ranked(c), best_of_all.size());
  for (const std::size_t d : best_of_all) {
    text += fmt::format("  {:<38}", c.designs[d].name);
    for (const std::size_t metric : c.ranked) {
      text += fmt::format(" {:>18}", metric_text(c, c.designs[d], metric));
    }
    text += '\n';
  }
  return text;
}

} // namespace

std::string metric_text(const Comparison &c, const ComparedDesign &design, std::size_t metric) {
  const double value = design.values[metric];
  // The ratios among the metrics are all of oxygen.
  return metrics()[metric].dimension == Dimension::ratio && std::isfinite(value)
             ? oxygen_text(value)
             : in_shop(c, design, value, largest(c, metric), metrics()[metric].dimension);
}

std::string asked_text(const Comparison &c, const ComparedDesign &design, std::size_t asked) {
  const double value = design.asked[asked];
  return in_shop(c, design, value, value, c.asked[asked].dimension);
}

std::string tightest_text(const ComparedDesign &design) {
  const auto &[rule, margin] = design.tightest;
  return rule.empty() ? "-"
                      : fmt::format("{} {:.1f} % {}", rule, 100.0 * std::abs(margin),
                                    margin < 0.0 ? "missed" : "left");
}

std::string varied_text(const Comparison &c, std::size_t key, double value) {
  const Dimension dimension = c.varied_dimensions[key];
  return fmt::format("{}={}", c.varied_keys[key],
                     parts::with_currency(units::shop_text(value, dimension, c.unit_system), dimension,
                                          c.varied_currencies[key]));
}

std::string comparison_text(const Comparison &c) {
  constexpr std::size_t side_by_side_most = 6;
  const bool few = c.varied_keys.empty() && c.designs.size() <= side_by_side_most;
  return (few ? side_by_side(c) : line_by_line(c)) + not_judged_text(c) + "* better or best of its row\n" +
         front_text(c);
}

} // namespace purgewright::report
