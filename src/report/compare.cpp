#include "purgewright/report/compare.hpp"

#include "csv.hpp"
#include "text_parts.hpp"

#include "purgewright/fixture/choices.hpp"
#include "purgewright/fixture/figures.hpp"
#include "purgewright/fixture/setups.hpp"
#include "purgewright/report/bench_numbers.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <stdexcept>
#include <utility>

namespace purgewright::report {
namespace {

using checks::Design;
using units::Dimension;

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

// Of all made parts.
template <class Value> double total(const Design &d, Value &&value) {
  double sum = 0.0;
  for (const auto &part : fixture::part_metals(d.job, d.layout, d.volumes)) {
    sum += part.volume > units::Volume{} ? part.count * value(part) : 0.0;
  }
  return sum;
}

double total_mass(const Design &d) {
  return total(d, [](const fixture::PartMetal &part) { return part.mass().value(); });
}

double total_stock(const Design &d) {
  return total(d, [](const fixture::PartMetal &part) { return part.stock.volume().value(); });
}

double total_removed(const Design &d) {
  return total(d, [](const fixture::PartMetal &part) {
    return part.name == ids::purge_lance ? 0.0 : part.removed().value();
  });
}

double total_setups(const Design &d) {
  double sum = 0.0;
  for (const auto &part : fixture::count_setups(d.layout)) {
    sum += part.count();
  }
  return sum;
}

double total_hold(const Design &d) {
  double sum = 0.0;
  for (const auto *welds : {&d.heat.tacks, &d.heat.runs}) {
    for (const auto &weld : *welds) {
      sum += weld.reached ? weld.hold.value() : unknown;
    }
  }
  return sum;
}

double wait(const Design &d) {
  return d.purge.bore.reached && d.purge.chamber.reached ? d.purge.wait().value() : unknown;
}

// What is known from purge and heat alone.
template <double (*value)(const Design &)> double with_purge(const Design &d) {
  return d.purge_known ? value(d) : unknown;
}

constexpr std::array<Metric, metric_count> table{{
    {"volume.chamber_gas", "chamber gas", Dimension::volume, Better::smaller,
     [](const Design &d) { return d.volumes.chamber_gas.value(); }},
    {"volume.bore_gas", "bore gas", Dimension::volume, Better::smaller,
     [](const Design &d) { return d.volumes.bore_gas.value(); }},
    {"purge.wait", "wait", Dimension::time, Better::smaller, with_purge<wait>},
    {"purge.bore.welding.flow", "bore, welding", Dimension::flow, Better::neither,
     with_purge<[](const Design &d) { return d.purge.bore.welding.value(); }>},
    {"purge.chamber.welding.flow", "chamber, welding", Dimension::flow, Better::neither,
     with_purge<[](const Design &d) { return d.purge.chamber.welding.value(); }>},
    {"purge.bore.oxygen_floor", "oxygen in bore", Dimension::ratio, Better::smaller,
     with_purge<[](const Design &d) { return d.purge.bore.welding_floor.oxygen; }>},
    {"purge.chamber.oxygen_floor", "oxygen, torch on", Dimension::ratio, Better::smaller,
     with_purge<[](const Design &d) { return d.purge.chamber.welding_floor.oxygen; }>},
    {"purge.chamber.torch_away.oxygen_floor", "oxygen, torch away", Dimension::ratio, Better::smaller,
     with_purge<[](const Design &d) { return d.purge.torch.away.best; }>},
    {"heat.hold.total", "all holds", Dimension::time, Better::smaller, with_purge<total_hold>},
    {"cycle.time", "time of a part", Dimension::time, Better::smaller,
     with_purge<[](const Design &d) { return d.purge.use.cycle.value(); }>},
    {"gas.used.per_part", "gas of a part", Dimension::volume, Better::smaller,
     with_purge<[](const Design &d) { return d.purge.use.per_part.value(); }>},
    {"gas.cost.per_part", "its cost", Dimension::cost, Better::smaller,
     with_purge<[](const Design &d) { return d.purge.use.cost; }>},
    {"gas.parts_per_bottle", "parts a bottle", Dimension::count, Better::larger,
     with_purge<[](const Design &d) { return std::floor(d.purge.use.parts_per_bottle); }>},
    {"heat.pin_contact.peak", "cap under the pin", Dimension::temperature, Better::smaller,
     with_purge<[](const Design &d) { return d.heat.pin_contact_peak.value(); }>},
    {"area.slot", "slot opening", Dimension::area, Better::smaller,
     [](const Design &d) { return d.areas.slot.value(); }},
    {"purge.bore.prepurge.flow", "bore flow", Dimension::flow, Better::neither,
     [](const Design &d) { return d.bounds.bore.flow.value(); }},
    {"purge.bore.prepurge.time_mixed", "bore time, mixed", Dimension::time, Better::smaller,
     [](const Design &d) { return d.bounds.bore.mixed.value(); }},
    {"purge.chamber.prepurge.flow", "chamber flow", Dimension::flow, Better::neither,
     [](const Design &d) { return d.bounds.chamber.flow.value(); }},
    {"purge.chamber.prepurge.time_mixed", "chamber time, mixed", Dimension::time, Better::smaller,
     [](const Design &d) { return d.bounds.chamber.mixed.value(); }},
    {"chamber.length", "body length", Dimension::length, Better::smaller,
     [](const Design &d) { return d.layout.body.length().value(); }},
    {"chamber.width", "body width", Dimension::length, Better::smaller,
     [](const Design &d) { return d.layout.body.width.value(); }},
    {"chamber.height", "body height", Dimension::length, Better::smaller,
     [](const Design &d) { return d.layout.body.height().value(); }},
    {"port_block.length", "port block length", Dimension::length, Better::smaller,
     [](const Design &d) { return d.layout.block.length.value(); }},
    {"base_plate.length", "base plate length", Dimension::length, Better::smaller,
     [](const Design &d) { return (d.layout.base.x_max - d.layout.base.x_min).value(); }},
    {"heat.hot_zone", "hot tube", Dimension::length, Better::smaller,
     with_purge<[](const Design &d) { return d.heat.hot_zone.value(); }>},
    {"mass.total", "mass of all parts", Dimension::mass, Better::smaller, total_mass},
    {"setups.total", "set-ups", Dimension::count, Better::smaller, total_setups},
    {"stock.total", "stock", Dimension::volume, Better::smaller, total_stock},
    {"stock.total.removed", "chips removed", Dimension::volume, Better::smaller, total_removed},
}};

std::size_t metric_of(std::string_view id) {
  return static_cast<std::size_t>(std::ranges::find(table, id, &Metric::id) - table.begin());
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

bool counts_all(const Comparison &c, const ComparedDesign &design) {
  return !c.quick || design.rules.clashes;
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
  for (std::size_t m = 0; m < table.size(); ++m) {
    if (!is_known(c, m)) {
      continue;
    }
    const auto winners = best(c, m);
    text += fmt::format("{:<20}", table[m].title);
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
    text += fmt::format(" {:>18}", table[m].title);
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

Tightest tightest(const std::vector<std::optional<checks::Verdict>> &verdicts) {
  // Share of the limit; what keeps to it by less was laid out to stand there, and rounded to the shop's grid.
  constexpr double by_design = 0.01, by_solving = 1e-6;
  Tightest found;
  for (std::size_t i = 0; i < verdicts.size(); ++i) {
    const checks::Rule &rule = checks::rules()[i];
    const auto &v = verdicts[i];
    const double left = v ? checks::margin(v->value, v->limit, v->bound).value_or(unknown) : unknown;
    const double at_limit = rule.needs == checks::Needs::nothing ? by_design : by_solving;
    if ((left > at_limit || left < -by_solving) && (found.rule.empty() || left < found.margin)) {
      found = {rule.id, left};
    }
  }
  return found;
}

void add_rules(const Design &design, ComparedDesign &row) {
  std::vector<std::optional<checks::Verdict>> verdicts;
  for (const checks::Rule &rule : checks::rules()) {
    const bool judged = design.layout.buildable() && checks::judgeable(rule, design);
    verdicts.push_back(judged ? std::optional(checks::verdict(rule, design)) : std::nullopt);
    row.of_each_rule.push_back(judged ? std::optional(verdicts.back()->status) : std::nullopt);
  }
  row.tightest = tightest(verdicts);
}

void add_asked(const Design &design, std::span<const std::string> asked, ComparedDesign &row) {
  const auto figures = checks::figures(design);
  for (const std::string &id : asked) {
    const auto *figure = units::find(figures, id);
    row.asked.push_back(figure != nullptr ? figure->value : unknown);
  }
}

} // namespace

std::span<const Metric> metrics() {
  return table;
}

MetricValues measure(const Design &design) {
  MetricValues values;
  values.fill(std::numeric_limits<double>::quiet_NaN());
  for (std::size_t m = 0; m < table.size(); ++m) {
    if (design.layout.buildable()) {
      values[m] = table[m].value(design);
    }
  }
  return values;
}

bool is_drawn(std::size_t design, std::size_t of) {
  if (of <= most_drawn) {
    return true;
  }
  const std::size_t nearest = (design * (most_drawn - 1) + (of - 1) / 2) / (of - 1);
  return design == (nearest * (of - 1) + (most_drawn - 1) / 2) / (most_drawn - 1);
}

ComparedDesign compared(const Design &design, std::string name, std::span<const std::string> asked) {
  ComparedDesign row{.name = std::move(name),
                     .varied = {},
                     .values = measure(design),
                     .rules = checks::tally(design),
                     .currency = design.job.shop.currency};
  if (design.purge_known || !design.layout.buildable()) {
    add_rules(design, row);
    for (const auto &choice : fixture::choices(design.job, design.layout)) {
      row.kinds.push_back({std::string(choice.what), std::string(choice.kind)});
    }
  }
  if (!asked.empty()) {
    add_asked(design, asked, row);
  }
  return row;
}

std::vector<Asked> asked_of(const Design &design, std::span<const std::string> ids) {
  const auto figures = checks::figures(design);
  std::vector<Asked> asked;
  for (const std::string &id : ids) {
    const auto *figure = units::find(figures, id);
    if (figure == nullptr) {
      throw std::out_of_range(id);
    }
    asked.push_back({figure->id, figure->title, figure->dimension});
  }
  return asked;
}

std::string metric_text(const Comparison &c, const ComparedDesign &design, std::size_t metric) {
  const double value = design.values[metric];
  // The ratios among the metrics are all of oxygen.
  return table[metric].dimension == Dimension::ratio && std::isfinite(value)
             ? oxygen_text(value)
             : in_shop(c, design, value, largest(c, metric), table[metric].dimension);
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

bool is_known(const Comparison &c, std::size_t metric) {
  return std::ranges::any_of(c.designs,
                             [&](const ComparedDesign &d) { return std::isfinite(d.values[metric]); });
}

std::string varied_text(const Comparison &c, std::size_t key, double value) {
  const Dimension dimension = c.varied_dimensions[key];
  return fmt::format("{}={}", c.varied_keys[key],
                     parts::with_currency(units::shop_text(value, dimension, c.unit_system), dimension,
                                          c.varied_currencies[key]));
}

std::vector<std::size_t> best(const Comparison &c, std::size_t metric) {
  if (table[metric].better == Better::neither) {
    return {};
  }
  const double sign = table[metric].better == Better::smaller ? 1.0 : -1.0;
  std::vector<std::size_t> winners;
  double least = std::numeric_limits<double>::infinity();
  std::size_t comparable = 0;
  for (std::size_t d = 0; d < c.designs.size(); ++d) {
    const double value = sign * c.designs[d].values[metric];
    if (!std::isfinite(value)) {
      continue;
    }
    ++comparable;
    if (value < least) {
      least = value;
      winners.clear();
    }
    if (value == least) {
      winners.push_back(d);
    }
  }
  return winners.size() == comparable ? std::vector<std::size_t>{} : winners;
}

bool any_fails(const Comparison &c) {
  return std::ranges::any_of(c.designs, [](const ComparedDesign &d) { return d.rules.failing > 0; });
}

namespace {

std::string titles_of_ranked(const Comparison &c) {
  std::vector<std::string_view> titles;
  for (const std::size_t metric : c.ranked) {
    titles.push_back(table[metric].title);
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

std::string comparison_text(const Comparison &c) {
  constexpr std::size_t side_by_side_most = 6;
  const bool few = c.varied_keys.empty() && c.designs.size() <= side_by_side_most;
  return (few ? side_by_side(c) : line_by_line(c)) + not_judged_text(c) + "* better or best of its row\n" +
         front_text(c);
}

namespace {

using Json = nlohmann::ordered_json;

std::string varied_unit(const Comparison &c, std::size_t key) {
  const Dimension dimension = c.varied_dimensions[key];
  return dimension == Dimension::price ? c.varied_currencies[key] + "/m3"
                                       : std::string(units::si_unit(dimension));
}

Json rules_json(const Comparison &c, const ComparedDesign &design) {
  const auto &rules = design.rules;
  Json entry;
  if (counts_all(c, design)) {
    entry["failing"] = rules.failing;
  }
  entry["failing_of_judged"] = rules.failing;
  entry["cautions_of_judged"] = rules.cautions;
  entry["judged"] = rules.judged;
  if (!rules.worst.empty()) {
    entry["worst"] = rules.worst;
  }
  if (!design.tightest.rule.empty()) {
    entry["tightest"] = {{"id", design.tightest.rule}, {"margin", design.tightest.margin}};
  }
  entry["not_judged"] = Json::array();
  if (rules.clashes) {
    entry["not_judged"].push_back("all");
  }
  for (const auto rule : checks::not_judged(rules)) {
    entry["not_judged"].push_back(rule);
  }
  return entry;
}

std::set<std::size_t> front_set(const Comparison &c) {
  const auto all = c.ranked.empty() ? std::vector<std::size_t>{} : front(c);
  return {all.begin(), all.end()};
}

} // namespace

std::string comparison_csv(const Comparison &c) {
  std::string text = "design";
  for (std::size_t k = 0; k < c.varied_keys.size(); ++k) {
    text += fmt::format(",{} [{}]", c.varied_keys[k], varied_unit(c, k));
  }
  for (const Metric &metric : table) {
    text += fmt::format(",{} [{}]", metric.id, units::si_unit(metric.dimension));
  }
  for (const Asked &asked : c.asked) {
    text += fmt::format(",{} [{}]", asked.id, units::si_unit(asked.dimension));
  }
  text += ",rules.failing [1],rules.failing_of_judged [1],rules.cautions_of_judged [1],rules.judged [1],"
          "rules.worst,rules.not_judged,rules.tightest,rules.tightest_margin [1],kinds";
  text += c.ranked.empty() ? "" : ",front [1]";
  text += "\r\n";
  const std::set<std::size_t> on_front = front_set(c);
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
    text += counts_all(c, design) ? fmt::format(",{}", rules.failing) : std::string(",");
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

std::string comparison_json(const Comparison &c) {
  Json root;
  root["judged"] = c.quick ? "in closed form only: not_judged names the rules left out"
                           : "by every rule that needs no solids";
  for (std::size_t k = 0; k < c.varied_keys.size(); ++k) {
    root["units"][c.varied_keys[k]] = varied_unit(c, k);
  }
  root["designs"] = Json::array();
  for (std::size_t d = 0; d < c.designs.size(); ++d) {
    Json entry;
    entry["name"] = c.designs[d].name;
    for (std::size_t k = 0; k < c.varied_keys.size(); ++k) {
      entry["varied"][c.varied_keys[k]] = c.designs[d].varied[k];
    }
    for (std::size_t m = 0; m < table.size(); ++m) {
      if (std::isfinite(c.designs[d].values[m])) {
        entry["values"][std::string(table[m].id)] = c.designs[d].values[m];
      }
    }
    for (std::size_t a = 0; a < c.asked.size(); ++a) {
      if (std::isfinite(c.designs[d].asked[a])) {
        entry["values"][c.asked[a].id] = c.designs[d].asked[a];
      }
    }
    for (const Kind &kind : c.designs[d].kinds) {
      entry["kinds"][std::string(kind.what)] = kind.kind;
    }
    entry["rules"] = rules_json(c, c.designs[d]);
    root["designs"].push_back(entry);
  }
  for (std::size_t m = 0; m < table.size(); ++m) {
    for (const std::size_t winner : best(c, m)) {
      root["best"][std::string(table[m].id)].push_back(c.designs[winner].name);
    }
  }
  if (!c.ranked.empty()) {
    root["ranked"] = Json::array();
    for (const std::size_t metric : c.ranked) {
      root["ranked"].push_back(table[metric].id);
    }
    root["front"] = Json::array();
    for (const std::size_t d : front(c)) {
      root["front"].push_back(c.designs[d].name);
    }
  }
  return root.dump(2) + "\n";
}

} // namespace purgewright::report
