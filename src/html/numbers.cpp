#include "html/markup.hpp"
#include "html/sections.hpp"

#include "purgewright/report/lines.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace purgewright::html {
namespace {

using report::Findings;

std::string_view topic_of(std::string_view id) {
  return id.substr(0, id.find('.'));
}

// Topics in the order in which their first figure comes.
std::vector<std::string_view> topics(const units::Figures &figures) {
  std::vector<std::string_view> found;
  for (const auto &figure : figures) {
    if (std::ranges::find(found, topic_of(figure.id)) == found.end()) {
      found.push_back(topic_of(figure.id));
    }
  }
  return found;
}

std::string term(std::string_view name, std::string_view text) {
  return text.empty() ? "" : fmt::format("<dt>{}</dt><dd>{}</dd>", name, text);
}

std::string inputs(const Findings &f, const units::Figure &figure) {
  std::string list;
  for (const auto &id : figure.inputs) {
    if (const auto *input = units::find(f.figures, id)) {
      list +=
          fmt::format("<li>{}: {}</li>", safe(input->title), number(f, report::value_text(f, *input), id));
    }
  }
  return list.empty() ? list : "<ul>" + list + "</ul>";
}

std::string figure_row(const Findings &f, const units::Figure &figure) {
  return fmt::format(
      "<details class=\"figure\" id=\"n.{0}\"><summary>{1}: <b>{2}</b> <code>{0}</code></summary><dl "
      "class=\"origin\">{3}{4}{5}{6}</dl></details>\n",
      safe(figure.id), safe(figure.title), safe(report::value_text(f, figure)),
      term("Basis", safe(units::to_text(figure.basis))), term("Formula", safe(figure.formula)),
      term("From", inputs(f, figure)), term("Source", safe(figure.source)));
}

} // namespace

std::string number(const Findings &f, std::string_view text, std::string_view id) {
  const bool of_figure = units::find(f.figures, id) != nullptr;
  const bool of_rule = std::ranges::find(f.rules, id, &checks::RuleResult::id) != f.rules.end();
  if (text.empty() || !(of_figure || of_rule)) {
    return safe(text);
  }
  return fmt::format(
      "<details class=\"number\"><summary>{}</summary><p><a href=\"#{}.{}\">{}</a></p></details>", safe(text),
      of_figure ? 'n' : 'r', safe(id), safe(id));
}

std::string all_numbers(const Findings &f) {
  std::string text = "<section id=\"numbers\" aria-labelledby=\"numbers-head\">\n<h2 id=\"numbers-head\">All "
                     "numbers</h2>\n<p "
                     "class=\"find\" hidden><label>Find <input type=\"search\" id=\"find\" "
                     "autocomplete=\"off\"></label> <span "
                     "id=\"found\" role=\"status\"></span></p>\n";
  for (const auto topic : topics(f.figures)) {
    text += fmt::format("<details class=\"topic\"><summary><h3>{}</h3></summary>\n", safe(topic));
    for (const auto &figure : f.figures) {
      if (topic_of(figure.id) == topic && std::isfinite(figure.value)) {
        text += figure_row(f, figure);
      }
    }
    text += "</details>\n";
  }
  return text + "</section>\n";
}

} // namespace purgewright::html
