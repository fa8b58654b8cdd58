// A design as a row of a comparison.
#include "purgewright/report/compare.hpp"

#include "purgewright/fixture/choices.hpp"

#include <limits>
#include <stdexcept>
#include <utility>

namespace purgewright::report {
namespace {

using checks::Design;

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

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

} // namespace purgewright::report
