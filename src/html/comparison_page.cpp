#include "purgewright/html/comparison_page.hpp"

#include "html/markup.hpp"
#include "html/outline_pictures.hpp"
#include "html/web.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace purgewright::html {
namespace {

using checks::Status;
using report::ComparedDesign;
using report::Comparison;
using report::Overview;

std::string head(std::string_view title, std::string_view id, bool number) {
  return fmt::format("<th scope=\"col\" title=\"{}\"{}>{}</th>", safe(id), number ? " data-axis" : "",
                     safe(title));
}

std::string heads(const Comparison &c, const Overview &all) {
  std::string text = "<th scope=\"col\">Design</th>";
  for (const auto &key : c.varied_keys) {
    text += head(key, key, true);
  }
  text += head("Rules that fail", "rules.failing", true) + head("Cautions", "rules.cautions", true) +
          head("Tightest rule", "rules.tightest", true);
  for (std::size_t m = 0; m < report::metric_count; ++m) {
    const auto &metric = report::metrics()[m];
    text += all.is_known(m) ? head(metric.title, metric.id, true) : std::string();
  }
  for (const auto &asked : c.asked) {
    text += head(asked.title, asked.id, true);
  }
  for (const auto &kind : c.designs.front().kinds) {
    text += head(kind.what, kind.what, false);
  }
  return text;
}

std::string cell(double value, std::string_view text, bool best = false) {
  return std::isfinite(value)
             ? fmt::format("<td data-sort=\"{:.9g}\"{}>{}{}</td>", value, best ? " class=\"best\"" : "",
                           safe(text), best ? "<span role=\"img\" aria-label=\"best\"> \u2605</span>" : "")
             : std::string("<td data-sort=\"\">-</td>");
}

std::string failing(const Comparison &c, const ComparedDesign &design) {
  const auto &rules = design.rules;
  return fmt::format("<td data-sort=\"{}\"><span class=\"mark {}\">{}{}</span> {}</td>", rules.failing,
                     rules.failing > 0    ? "fail"
                     : rules.cautions > 0 ? "caution"
                                          : "pass",
                     rules.failing,
                     c.quick && !rules.clashes ? fmt::format(" of the {} judged", rules.judged)
                                               : std::string(),
                     safe(rules.worst));
}

std::string metric_cells(const Comparison &c, const Overview &all, const ComparedDesign &design) {
  std::string text;
  for (std::size_t m = 0; m < report::metric_count; ++m) {
    if (all.is_known(m)) {
      text += cell(design.values[m], report::metric_text(c, all, design, m), all.wins(design, m));
    }
  }
  return text;
}

std::string rule_cells(const Comparison &c, const ComparedDesign &design) {
  return failing(c, design) + fmt::format("<td data-sort=\"{0}\">{0}</td>", design.rules.cautions) +
         (design.tightest.rule.empty() ? std::string("<td data-sort=\"\">-</td>")
                                       : cell(design.tightest.margin, report::tightest_text(design)));
}

// A design of a sweep goes by its number: what was varied stands in columns of its own.
std::string row(const Comparison &c, const Overview &all, std::size_t d, bool on_front) {
  const ComparedDesign &design = c.designs[d];
  const std::string_view mark =
      on_front ? "<span role=\"img\" aria-label=\"none beats it\"> \u25C6</span>" : "";
  std::string text =
      fmt::format("<tr{}>", on_front ? " class=\"front\"" : "") +
      (c.varied_keys.empty() ? fmt::format("<th scope=\"row\">{}{}</th>", safe(design.name), mark)
                             : fmt::format("<th scope=\"row\" data-sort=\"{0}\">{0}{1}</th>", d + 1, mark));
  for (std::size_t k = 0; k < design.varied.size(); ++k) {
    const std::string words = report::varied_text(c, k, design.varied[k]);
    text += cell(design.varied[k], words.substr(words.find('=') + 1));
  }
  text += rule_cells(c, design) + metric_cells(c, all, design);
  for (std::size_t a = 0; a < c.asked.size(); ++a) {
    text += cell(design.asked[a], report::asked_text(c, design, a));
  }
  for (std::size_t k = 0; k < c.designs.front().kinds.size(); ++k) {
    text += fmt::format("<td>{}</td>", k < design.kinds.size() ? safe(design.kinds[k].kind) : "-");
  }
  return text + "</tr>\n";
}

std::string ranked_titles(const Comparison &c, std::string_view between) {
  std::vector<std::string_view> titles;
  for (const std::size_t metric : c.ranked) {
    titles.push_back(report::metrics()[metric].title);
  }
  return safe(fmt::format("{}", fmt::join(titles, between)));
}

std::string table(const Comparison &c, const Overview &all) {
  std::string text = fmt::format("<table class=\"sorts\" id=\"designs\" data-ranked=\"{}\">\n<thead><tr>{}"
                                 "</tr></thead>\n<tbody>\n",
                                 ranked_titles(c, "|"), heads(c, all));
  std::vector<bool> on_front(c.designs.size());
  for (const auto &choice : all.front()) {
    on_front[choice.design] = true;
  }
  for (std::size_t d = 0; d < c.designs.size(); ++d) {
    text += row(c, all, d, on_front[d]);
  }
  return text + "</tbody>\n</table>\n";
}

// ---- rules as a grid: those that some design does not pass

bool passes(const Comparison &c, std::size_t rule) {
  return std::ranges::all_of(c.designs, [&](const ComparedDesign &d) {
    return rule >= d.of_each_rule.size() || d.of_each_rule[rule].value_or(Status::pass) == Status::pass;
  });
}

std::string mark(const ComparedDesign &design, std::size_t rule) {
  const auto status = rule < design.of_each_rule.size() ? design.of_each_rule[rule] : std::nullopt;
  const std::string_view word = status ? checks::to_text(*status) : "";
  return fmt::format("<td><span class=\"mark {0}\">{0}</span></td>", word);
}

std::string grid(const Comparison &c) {
  constexpr std::size_t most_columns = 60;
  const std::size_t columns = std::min(c.designs.size(), most_columns);
  std::string rows;
  for (std::size_t r = 0; r < checks::rules().size(); ++r) {
    if (!passes(c, r)) {
      rows += fmt::format("<tr><th scope=\"row\">{}<small>{}</small></th>", safe(checks::rules()[r].title),
                          safe(checks::rules()[r].id));
      for (std::size_t d = 0; d < columns; ++d) {
        rows += mark(c.designs[d], r);
      }
      rows += "</tr>\n";
    }
  }
  if (c.quick || rows.empty()) {
    return c.quick ? "<p>A quick sweep: purge, heat and measured log are not judged.</p>\n"
                   : "<p>No design fails a rule that was judged, or stands on a caution.</p>\n";
  }
  std::string text = "<div class=\"wide-table\" tabindex=\"0\" role=\"region\" aria-label=\"Rules\">\n<table "
                     "id=\"grid\">\n<thead><tr><th scope=\"col\">Rule</th>";
  for (std::size_t d = 0; d < columns; ++d) {
    text += fmt::format("<th scope=\"col\">{}</th>", safe(c.designs[d].name));
  }
  text += "</tr></thead>\n<tbody>\n" + rows + "</tbody>\n</table>\n</div>\n";
  return columns < c.designs.size() ? text + fmt::format("<p>The first {} designs.</p>\n", columns) : text;
}

std::string answer(const Comparison &c) {
  const auto good =
      std::ranges::count_if(c.designs, [](const ComparedDesign &d) { return d.rules.failing == 0; });
  const auto calm = std::ranges::count_if(
      c.designs, [](const ComparedDesign &d) { return d.rules.failing == 0 && d.rules.cautions == 0; });
  return fmt::format("<strong>{} of {}{}.</strong> {}{}", good, c.designs.size(),
                     c.quick ? " fail none of the rules judged here" : "",
                     good == calm ? "" : fmt::format("{} of them with cautions to weigh. ", good - calm),
                     c.quick
                         ? "That is no leave to weld: a quick sweep leaves out purge, heat and measured log."
                         : "Rules that need solids are judged by <code>design</code> alone.");
}

std::string choice(const Comparison &c, const Overview &all) {
  return c.ranked.empty()
             ? std::string()
             : fmt::format(
                   "<p>To choose from by {}: of those that {}, none beats the {} marked \u25C6.</p>\n",
                   ranked_titles(c, ", "), c.quick ? "fail no rule judged" : "pass", all.front().size());
}

} // namespace

std::string comparison_page(const Comparison &c, std::string_view version) {
  const std::string policy =
      fmt::format("default-src 'none'; style-src {}; script-src {} {}; base-uri 'none'; "
                  "form-action 'none'",
                  policy_hash(web::page_css), policy_hash(web::page_js), policy_hash(web::comparison_js));
  const report::Overview all = report::overview(c);
  const std::string outlines = outline_section(c);
  return filled(
      web::comparison_html,
      {{"policy", policy},
       {"style", std::string(web::page_css)},
       {"by", fmt::format("purgewright {}", safe(version))},
       {"worst", all.any_fails() ? "caution" : "pass"},
       {"answer", answer(c)},
       {"choice", choice(c, all)},
       {"table", table(c, all)},
       {"to_outlines", outlines.empty() ? "" : "<li><a href=\"#outlines\">How large they are</a></li>\n"},
       {"outlines", outlines},
       {"grid", grid(c)},
       {"page_js", std::string(web::page_js)},
       {"comparison_js", std::string(web::comparison_js)}});
}

} // namespace purgewright::html
