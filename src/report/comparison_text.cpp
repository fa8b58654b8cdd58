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

std::string in_shop(const Comparison &c, std::string_view currency, double value, double beside,
                    Dimension dimension) {
  return std::isfinite(value)
             ? parts::with_currency(units::shop_text_beside(value, beside, dimension, c.unit_system),
                                    dimension, std::string(currency))
             : "-";
}

std::string metric_words(const Comparison &c, const Overview &all, std::string_view currency, double value,
                         std::size_t metric) {
  // The ratios among the metrics are all of oxygen.
  return metrics()[metric].dimension == Dimension::ratio && std::isfinite(value)
             ? oxygen_text(value)
             : in_shop(c, currency, value, all.largest(metric), metrics()[metric].dimension);
}

std::string starred(const Comparison &c, const Overview &all, const ComparedDesign &design,
                    std::size_t metric) {
  return metric_text(c, all, design, metric) + (all.wins(design, metric) ? " *" : "  ");
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
std::string not_judged_text(const Comparison &c, const Overview &all) {
  std::string text;
  if (all.judged_as() && all.judged_as()->left_out.any()) {
    text +=
        fmt::format("not judged{}: {}\n", c.quick ? " (--quick leaves out purge, heat and measured log)" : "",
                    fmt::join(checks::not_judged(*all.judged_as()), ", "));
  }
  return text + (all.any_clashes() ? "where the layout clashes no rule is judged\n" : "");
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

std::string side_by_side(const Comparison &c, const Overview &all) {
  std::string text = fmt::format("{:<20}", "");
  for (const auto &design : c.designs) {
    text += fmt::format(" {:>18}  ", design.name);
  }
  text += '\n';
  for (std::size_t m = 0; m < metrics().size(); ++m) {
    if (!all.is_known(m)) {
      continue;
    }
    text += fmt::format("{:<20}", metrics()[m].title);
    for (const ComparedDesign &design : c.designs) {
      text += fmt::format(" {:>20}", starred(c, all, design, m));
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

// Of a sweep, the figures that usually decide.
std::vector<std::size_t> deciding(const Comparison &c, const Overview &all) {
  std::vector<std::size_t> shown;
  for (const std::string_view id :
       {"volume.chamber_gas", "volume.bore_gas", "purge.wait", "cycle.time", "gas.cost.per_part",
        "purge.chamber.prepurge.flow", "purge.chamber.prepurge.time_mixed", "mass.total",
        "stock.total.removed"}) {
    const bool closed_form_alone = id.starts_with("purge.chamber.");
    const std::size_t m = metric_of(id);
    if (all.is_known(m) && (c.quick || !closed_form_alone)) {
      shown.push_back(m);
    }
  }
  return shown;
}

std::string titles_of_ranked(const Comparison &c) {
  std::vector<std::string_view> titles;
  for (const std::size_t metric : c.ranked) {
    titles.push_back(metrics()[metric].title);
  }
  return fmt::format("{}", fmt::join(titles, ", "));
}

std::string front_text(const Comparison &c, const Overview &all) {
  if (c.ranked.empty()) {
    return {};
  }
  const auto best_of_all = all.front();
  std::string text =
      fmt::format("\nTo choose from by {}: no design that {} beats one of these {}\n", titles_of_ranked(c),
                  c.quick ? "fails no rule judged here" : "passes", best_of_all.size());
  for (const auto &choice : best_of_all) {
    text += fmt::format("  {:<38}", choice.name);
    for (std::size_t i = 0; i < c.ranked.size(); ++i) {
      text += fmt::format(" {:>18}", metric_words(c, all, choice.currency, choice.values[i], c.ranked[i]));
    }
    text += '\n';
  }
  return text;
}

std::string foot_of(const Comparison &c, const Overview &all) {
  return not_judged_text(c, all) + "* better or best of its row\n" + front_text(c, all);
}

} // namespace

std::string metric_text(const Comparison &c, const Overview &all, const ComparedDesign &design,
                        std::size_t metric) {
  return metric_words(c, all, design.currency, design.values[metric], metric);
}

std::string asked_text(const Comparison &c, const ComparedDesign &design, std::size_t asked) {
  const double value = design.asked[asked];
  return in_shop(c, design.currency, value, value, c.asked[asked].dimension);
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

SweepLines::SweepLines(const Comparison &head, const Overview &all)
    : head_(head), overview_(all), shown_(deciding(head, all)) {}

std::string SweepLines::head() const {
  std::string text = fmt::format("{:<40}", "");
  for (const std::size_t m : shown_) {
    text += fmt::format(" {:>18}", metrics()[m].title);
  }
  for (const Asked &asked : head_.asked) {
    text += fmt::format(" {:>18}", asked.id);
  }
  return text + "  failing rules, worst, cautions\n";
}

std::string SweepLines::row(const ComparedDesign &design) {
  std::string text = fmt::format("{:<40}", design.name);
  if (before_ && compare_alike(*before_, design)) {
    text += "   the same as the line above in all that is compared\n";
  } else {
    for (const std::size_t m : shown_) {
      text += fmt::format(" {:>18}", starred(head_, overview_, design, m));
    }
    for (std::size_t a = 0; a < head_.asked.size(); ++a) {
      text += fmt::format(" {:>18}", asked_text(head_, design, a));
    }
    text += fmt::format("  {}\n", failing_text(head_, design));
  }
  before_ = design;
  return text;
}

std::string SweepLines::foot() const {
  return foot_of(head_, overview_);
}

std::string comparison_text(const Comparison &c) {
  constexpr std::size_t side_by_side_most = 6;
  const Overview all = overview(c);
  if (c.varied_keys.empty() && c.designs.size() <= side_by_side_most) {
    return side_by_side(c, all) + foot_of(c, all);
  }
  SweepLines lines(c, all);
  std::string text = lines.head();
  for (const ComparedDesign &design : c.designs) {
    text += lines.row(design);
  }
  return text + lines.foot();
}

} // namespace purgewright::report
