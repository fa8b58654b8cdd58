#include "purgewright/report/text.hpp"

#include "text_parts.hpp"

#include "purgewright/job/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <vector>

namespace purgewright::report {
namespace {

using namespace parts;

// `beside`: the figure in whose unit this one is printed, so that the terms of a sum stand in one unit.
void trace_into(const Findings &f, const units::Figure &figure, double beside, int depth,
                std::vector<std::string> &seen, std::string &text) {
  constexpr int indent = 2;
  const std::string pad(static_cast<std::size_t>(depth * indent), ' ');
  text += fmt::format("{}{} = {}   {} [{}]\n", pad, figure.id,
                      shop_beside(f, figure.value, beside, figure.dimension), figure.title,
                      units::to_text(figure.basis));
  if (std::ranges::find(seen, figure.id) != seen.end()) {
    text += fmt::format("{}  (as above)\n", pad);
    return;
  }
  seen.push_back(figure.id);
  if (!figure.formula.empty()) {
    text += fmt::format("{}  formula: {}\n", pad, figure.formula);
  }
  text += fmt::format("{}  source: {}\n", pad, figure.source);
  for (const auto &input : figure.inputs) {
    if (const auto *next = units::find(f.figures, input)) {
      trace_into(f, *next, next->dimension == figure.dimension ? beside : next->value, depth + 1, seen, text);
    }
  }
}

// A rule by its id: what it judged, against what, by whose word, and what to do; nullopt when there is none.
std::optional<std::string> trace_rule(const Findings &f, std::string_view id) {
  const auto result = std::ranges::find(f.rules, id, &checks::RuleResult::id);
  const auto rule = std::ranges::find(checks::rules(), id, &checks::Rule::id);
  if (result != f.rules.end()) {
    const std::string amount = against_limit(f, *result);
    return fmt::format("{}   {} [{}]\n{}  source: {}\n{}", result->id, result->title,
                       checks::to_text(result->status),
                       amount.empty() ? "" : fmt::format("  value: {}\n", amount), result->source,
                       result->remedy.empty() ? fmt::format("  if it failed: {}\n", rule->remedy)
                                              : fmt::format("  to do: {}\n", result->remedy));
  }
  if (rule == checks::rules().end()) {
    return std::nullopt;
  }
  const auto left_out = std::ranges::find(f.not_judged, id, &checks::NotJudged::rule);
  return fmt::format("{}   {} [not judged: {}]\n  source: {}\n  if it failed: {}\n", rule->id, rule->title,
                     left_out != f.not_judged.end() ? left_out->why
                                                    : "this design has nothing that it judges",
                     rule->source, rule->remedy);
}

} // namespace

std::optional<std::string> trace_text(const Findings &f, std::string_view id) {
  const auto *figure = units::find(f.figures, id);
  if (figure == nullptr) {
    return trace_rule(f, id);
  }
  std::string text;
  std::vector<std::string> seen;
  trace_into(f, *figure, figure->value, 0, seen, text);
  return text;
}

std::optional<std::string> trace_text(const Findings &f, std::span<const std::string> ids) {
  std::optional<std::string> all;
  for (const std::string &id : ids) {
    const auto one = trace_text(f, std::string_view(id));
    if (!one) {
      return std::nullopt;
    }
    all = all ? *all + "\n" + *one : *one;
  }
  return all;
}

std::string nearest_id(const Findings &f, std::string_view id) {
  std::vector<std::string_view> ids;
  std::ranges::transform(f.figures, std::back_inserter(ids), &units::Figure::id);
  std::ranges::transform(checks::rules(), std::back_inserter(ids), &checks::Rule::id);
  const auto nearest =
      std::ranges::min_element(ids, {}, [&](std::string_view other) { return job::edits(id, other); });
  return job::edits(id, *nearest) <= id.size() / 2 ? std::string(*nearest) : std::string();
}

} // namespace purgewright::report
