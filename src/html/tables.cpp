#include "html/markup.hpp"
#include "html/sections.hpp"

#include "purgewright/fixture/assembly_order.hpp"
#include "purgewright/fixture/choices.hpp"
#include "purgewright/report/bench_numbers.hpp"
#include "purgewright/report/lines.hpp"
#include "purgewright/report/parts_list.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace purgewright::html {
namespace {

using report::Findings;

std::string lines_table(const Findings &f, std::string_view head, const report::Lines &lines) {
  std::string text = fmt::format("<table class=\"lines\">\n<caption>{}</caption>\n<tbody>\n", head);
  for (const auto &line : lines) {
    text += fmt::format("<tr><th scope=\"row\">{}</th><td>{}</td></tr>\n", safe(line.what),
                        number(f, line.text, line.id));
  }
  return text + "</tbody>\n</table>\n";
}

std::string weld_cells(const Findings &f, const report::WeldRow &row) {
  return fmt::format(
      "<tr><th scope=\"row\">{}</th><td>{}</td><td>{}</td><td>{}</td><td>{}</td><td>{}</td><td>{}"
      "</td><td>{}</td></tr>\n",
      row.name, row.collar, row.arc, number(f, row.hold, row.id), row.warm_hold, row.before, row.peak,
      row.pool);
}

std::string weld_table(const Findings &f) {
  std::string text =
      "<div class=\"wide-table\" tabindex=\"0\" role=\"region\" aria-label=\"Tacks and runs\">\n<table>\n"
      "<caption>Tack and weld in this order</caption>\n<thead><tr><th scope=\"col\">Pass</th><th "
      "scope=\"col\">Collar, deg</th><th scope=\"col\">Arc</th><th scope=\"col\">Hold, cold fixture</th><th "
      "scope=\"col\">Hold, warm fixture</th><th scope=\"col\">Joint before</th><th scope=\"col\">Joint, "
      "peak</th><th scope=\"col\">Pool</th></tr></thead>\n<tbody>\n";
  for (const auto &row : report::weld_rows(f)) {
    text += weld_cells(f, row);
  }
  return text + "</tbody>\n</table>\n</div>\n";
}

std::string choices(const Findings &f) {
  std::string text;
  for (const auto &choice : fixture::choices(f.design.job, f.design.layout)) {
    text += fmt::format("<li>{}: <b>{}</b>, {}</li>\n", safe(choice.what), safe(choice.kind),
                        safe(choice.reason));
  }
  return text.empty() ? text : "<h3>Kinds chosen</h3>\n<ul>\n" + text + "</ul>\n";
}

// How much of its limit a rule leaves, as a bar and in words.
std::string margin_cell(const checks::RuleResult &rule) {
  const auto left = checks::margin(rule.value, rule.limit, rule.bound);
  if (!rule.has_amount || !left) {
    return "<td></td>";
  }
  const double percent = 100.0 * *left;
  return fmt::format("<td data-sort=\"{:.6g}\"><meter min=\"0\" low=\"0\" high=\"10\" optimum=\"100\" "
                     "max=\"100\" value=\"{:.0f}\" aria-hidden=\"true\">"
                     "</meter> {} %</td>",
                     percent, std::clamp(percent, 0.0, 100.0),
                     percent > 999.0  ? std::string("over 999")
                     : percent < 10.0 ? fmt::format("{:.1f}", std::floor(10.0 * percent) / 10.0)
                                      : fmt::format("{:.0f}", std::floor(percent)));
}

std::string rule_row(const Findings &f, const checks::RuleResult &rule) {
  const auto status = checks::to_text(rule.status);
  const auto known = std::ranges::find(checks::rules(), rule.id, &checks::Rule::id);
  const std::string remedy = !rule.remedy.empty()             ? "To do: " + rule.remedy
                             : known != checks::rules().end() ? fmt::format("If it failed: {}", known->remedy)
                                                              : std::string();
  return fmt::format(
      "<tr id=\"r.{0}\" class=\"{1}\"><td><span class=\"mark {1}\">{1}</span></td><th scope=\"row\"><details>"
      "<summary>{2}</summary><dl class=\"origin\"><dt>Rule</dt><dd><code>{0}</code></dd><dt>Limit "
      "from</dt><dd>{3}</dd><dt>Remedy</dt><dd>{4}</dd></dl></details></th><td>{5}</td>{6}</tr>\n",
      safe(rule.id), status, safe(rule.title), safe(rule.source), safe(remedy),
      safe(report::against_limit(f, rule)), margin_cell(rule));
}

std::string part_cells(const report::PartRow &row, const report::MassUnit &unit) {
  const auto &item = row.item;
  return fmt::format(
      "<tr><td>{}</td><th scope=\"row\">{}</th><td>{}</td><td>{}</td><td>{}</td><td>{}</td><td>{}"
      "</td></tr>\n",
      item.number, safe(item.title), item.quantity, safe(item.material), safe(item.size),
      row.mass.empty() ? "" : fmt::format("{} {}", row.mass, unit.name), safe(row.serves));
}

// How it goes together, step by step, with the list's numbers.
std::string order_of_assembly(const Findings &f) {
  const auto &d = f.design;
  const auto items = fixture::parts_list(d.job, d.layout, d.volumes);
  std::string text;
  for (const auto &step : fixture::assembly_order(d.job, d.layout)) {
    text += fmt::format("<li>{}</li>\n", safe(fixture::numbered(step, items)));
  }
  return "<h3>Order of assembly</h3>\n<ol>\n" + text + "</ol>\n";
}

report::Lines sizes_and_served(const Findings &f) {
  report::Lines lines = report::sizes(f);
  lines += report::served(f);
  return lines;
}

} // namespace

std::string settings(const Findings &f) {
  return "<section id=\"settings\" aria-labelledby=\"settings-head\">\n<h2 id=\"settings-head\">Set and "
         "weld</h2>\n<p class=\"hint\">Open a number to see where it comes from.</p>\n" +
         lines_table(f, "Gas and arc", report::gas_settings(f)) + weld_table(f) +
         lines_table(f, "While welding", report::welding(f)) +
         lines_table(f, "A part and the room", report::use(f)) +
         lines_table(f, "Sizes", sizes_and_served(f)) + choices(f) + "</section>\n";
}

std::string rules(const Findings &f) {
  std::string text =
      "<section id=\"rules\" aria-labelledby=\"rules-head\">\n<h2 id=\"rules-head\">Rules</h2>\n<p "
      "class=\"hint\">Open a rule to see where its limit comes from and what would cure it. "
      "Room left is the share of the limit that is not used; temperatures count from absolute "
      "zero.</p>\n<div class=\"wide-table\" tabindex=\"0\" role=\"region\" aria-label=\"Rules\">\n"
      "<table class=\"sorts\">\n<thead><tr><th scope=\"col\">Result</th><th scope=\"col\">Rule</th>"
      "<th scope=\"col\">Value and limit</th><th scope=\"col\">Room left</th></tr></thead>\n<tbody>\n";
  for (const auto status : {checks::Status::fail, checks::Status::caution, checks::Status::pass}) {
    for (const auto &rule : f.rules) {
      text += rule.status == status ? rule_row(f, rule) : "";
    }
  }
  return text + "</tbody>\n</table>\n</div>\n</section>\n";
}

std::string parts_list(const Findings &f) {
  std::string text =
      "<section id=\"parts\" aria-labelledby=\"parts-head\">\n<h2 id=\"parts-head\">Parts</h2>\n<div "
      "class=\"wide-table\" tabindex=\"0\" role=\"region\" aria-label=\"Parts list\">\n<table "
      "class=\"sorts\">\n<thead><tr><th scope=\"col\">No.</th><th scope=\"col\">Part</th><th "
      "scope=\"col\">Pieces</th><th scope=\"col\">Material</th><th scope=\"col\">Stock or size</th>"
      "<th scope=\"col\">Mass a piece</th><th scope=\"col\">Serves</th></tr></thead>\n<tbody>\n";
  for (const auto &row : report::part_rows(f.design)) {
    text += part_cells(row, report::mass_unit(f.design));
  }
  return text + "</tbody>\n</table>\n</div>\n" + order_of_assembly(f) + "</section>\n";
}

} // namespace purgewright::html
