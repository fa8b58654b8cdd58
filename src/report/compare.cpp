#include "purgewright/report/compare.hpp"

#include "csv.hpp"
#include "text_parts.hpp"

#include "purgewright/fixture/figures.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <limits>

namespace purgewright::report {
namespace {

using checks::Design;
using units::Dimension;

double total_mass(const Design &d) {
  double sum = 0.0;
  for (const auto &part : fixture::part_metals(d.job, d.layout, d.volumes)) {
    sum += part.count * part.mass().value();
  }
  return sum;
}

double total_removed(const Design &d) {
  double sum = 0.0;
  for (const auto &part : fixture::part_metals(d.job, d.layout, d.volumes)) {
    sum += part.name == ids::purge_lance ? 0.0 : part.count * part.removed().value();
  }
  return sum;
}

constexpr std::array<Metric, metric_count> table{{
    {"volume.chamber_gas", "chamber gas", Dimension::volume, Better::smaller,
     [](const Design &d) { return d.volumes.chamber_gas.value(); }},
    {"volume.bore_gas", "bore gas", Dimension::volume, Better::smaller,
     [](const Design &d) { return d.volumes.bore_gas.value(); }},
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
    {"mass.total", "mass of all parts", Dimension::mass, Better::smaller, total_mass},
    {"stock.total.removed", "chips removed", Dimension::volume, Better::smaller, total_removed},
}};

// The largest value of a row chooses the unit of all.
double largest(const Comparison &c, std::size_t metric) {
  double most = 0.0;
  for (const auto &design : c.designs) {
    most = std::isfinite(design.values[metric]) ? std::max(most, std::abs(design.values[metric])) : most;
  }
  return most;
}

std::string shop(const Comparison &c, double value, double beside, Dimension dimension) {
  return std::isfinite(value) ? units::shop_text_beside(value, beside, dimension, c.unit_system) : "-";
}

std::string starred(const Comparison &c, const std::vector<std::size_t> &winners, std::size_t design,
                    std::size_t metric, double beside) {
  const bool wins = std::ranges::find(winners, design) != winners.end();
  return shop(c, c.designs[design].values[metric], beside, table[metric].dimension) + (wins ? " *" : "  ");
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
  if (row != c.designs.end() && row->rules.left_out != 0) {
    text +=
        fmt::format("not judged{}: {}\n", c.quick ? " (--quick leaves out purge, heat and measured log)" : "",
                    fmt::join(checks::not_judged(row->rules), ", "));
  }
  if (std::ranges::any_of(c.designs, [](const ComparedDesign &d) { return d.rules.clashes; })) {
    text += "where the layout clashes no rule is judged\n";
  }
  return text;
}

std::string side_by_side(const Comparison &c) {
  std::string text = fmt::format("{:<20}", "");
  for (const auto &design : c.designs) {
    text += fmt::format(" {:>18}", design.name);
  }
  text += '\n';
  for (std::size_t m = 0; m < table.size(); ++m) {
    const auto winners = best(c, m);
    const double beside = largest(c, m);
    text += fmt::format("{:<20}", table[m].title);
    for (std::size_t d = 0; d < c.designs.size(); ++d) {
      text += fmt::format(" {:>18}", starred(c, winners, d, m, beside));
    }
    text += '\n';
  }
  for (const auto &design : c.designs) {
    text += fmt::format("failing rules, worst, cautions: {} {}\n", design.name, failing_text(c, design));
  }
  return text;
}

// A sweep's lines: what was varied and the figures that usually decide.
std::string line_by_line(const Comparison &c) {
  constexpr std::array<std::size_t, 6> shown{0, 1, 5, 6, 11, 12};
  std::vector<std::vector<std::size_t>> winners;
  std::vector<double> beside;
  std::string text = fmt::format("{:<40}", "");
  for (const std::size_t m : shown) {
    text += fmt::format(" {:>18}", table[m].title);
    winners.push_back(best(c, m));
    beside.push_back(largest(c, m));
  }
  text += "  failing rules, worst, cautions\n";
  for (std::size_t d = 0; d < c.designs.size(); ++d) {
    text += fmt::format("{:<40}", c.designs[d].name);
    for (std::size_t i = 0; i < shown.size(); ++i) {
      text += fmt::format(" {:>18}", starred(c, winners[i], d, shown[i], beside[i]));
    }
    text += fmt::format("  {}\n", failing_text(c, c.designs[d]));
  }
  return text;
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

ComparedDesign compared(const Design &design, std::string name) {
  return {.name = std::move(name), .varied = {}, .values = measure(design), .rules = checks::tally(design)};
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

std::string comparison_text(const Comparison &c) {
  constexpr std::size_t side_by_side_most = 6;
  const bool few = c.varied_keys.empty() && c.designs.size() <= side_by_side_most;
  return (few ? side_by_side(c) : line_by_line(c)) + not_judged_text(c) + "* better or best of its row\n";
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
  entry["not_judged"] = Json::array();
  if (rules.clashes) {
    entry["not_judged"].push_back("all");
  }
  for (const auto rule : checks::not_judged(rules)) {
    entry["not_judged"].push_back(rule);
  }
  return entry;
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
  text += ",rules.failing [1],rules.failing_of_judged [1],rules.cautions_of_judged [1],rules.judged [1],"
          "rules.worst,rules.not_judged";
  text += "\r\n";
  for (const auto &design : c.designs) {
    text += csv_cell(design.name);
    for (const double value : design.varied) {
      text += fmt::format(",{}", value);
    }
    for (const double value : design.values) {
      text += std::isfinite(value) ? fmt::format(",{}", value) : std::string(",");
    }
    const auto &rules = design.rules;
    text += counts_all(c, design) ? fmt::format(",{}", rules.failing) : std::string(",");
    text += fmt::format(",{},{},{},{},{}", rules.failing, rules.cautions, rules.judged, csv_cell(rules.worst),
                        rules.clashes ? "all" : fmt::format("{}", fmt::join(checks::not_judged(rules), " ")));
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
    entry["rules"] = rules_json(c, c.designs[d]);
    root["designs"].push_back(entry);
  }
  for (std::size_t m = 0; m < table.size(); ++m) {
    for (const std::size_t winner : best(c, m)) {
      root["best"][std::string(table[m].id)].push_back(c.designs[winner].name);
    }
  }
  return root.dump(2) + "\n";
}

} // namespace purgewright::report
