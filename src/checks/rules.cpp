#include "purgewright/checks/rules.hpp"

#include "topics.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace purgewright::checks {
namespace {

std::vector<Rule> gather() {
  std::vector<Rule> all;
  for (const auto topic : {access_rules(), assembly_rules(), fit_rules(), seal_rules(), machining_rules(),
                           gas_rules(), log_rules(), bench_rules(), heat_rules()}) {
    all.insert(all.end(), topic.begin(), topic.end());
  }
  return all;
}

RuleResult conflict_result(const fixture::Conflict &conflict) {
  return {.id = conflict.rule,
          .title = conflict.first + " clashes with " + conflict.second,
          .status = Status::fail,
          .value = conflict.by.value(),
          .limit = 0.0,
          .dimension = units::Dimension::length,
          .source = "layout of the fixture",
          .remedy = conflict.remedy,
          .has_amount = conflict.by > units::Length{}};
}

RuleResult as_result(const Rule &rule, const Design &design) {
  const Verdict found = verdict(rule, design);
  std::string remedy;
  if (found.status != Status::pass) {
    remedy = rule.remedy;
    if (rule.advice != nullptr) {
      remedy += rule.advice(design);
    }
  }
  return {.id = std::string(rule.id),
          .title = std::string(rule.title),
          .status = found.status,
          .value = found.value,
          .limit = found.limit,
          .dimension = rule.dimension,
          .source = std::string(rule.source),
          .remedy = std::move(remedy),
          .bound = found.bound};
}

std::string_view why_not(const Rule &rule) {
  switch (rule.needs) {
  case Needs::solids:
    return "it needs the solids, which `design` builds";
  case Needs::log:
    return "the measured log has not been fitted";
  case Needs::warm_heat:
    return "the plan on the warm fixture has not been computed";
  default:
    return "purge and heat have not been computed";
  }
}

bool known(Needs needs, const Design &design) {
  switch (needs) {
  case Needs::nothing:
    return true;
  case Needs::purge:
  case Needs::heat:
  case Needs::log:
    return design.purge_known;
  case Needs::warm_heat:
    return design.purge_known && design.series.warm_known;
  case Needs::solids:
    return design.solids_known;
  }
  return false;
}

// Share of its limit by which a verdict misses it.
double missed_by(const Verdict &v) {
  const auto left = margin(v.value, v.limit, v.bound);
  return left ? std::abs(*left) : std::numeric_limits<double>::infinity();
}

Tally tally_of_clashes(const Design &design) {
  Tally result;
  result.failing = static_cast<int>(design.layout.conflicts.size());
  result.clashes = true;
  const auto worst = std::ranges::max_element(design.layout.conflicts, {}, &fixture::Conflict::by);
  result.worst = worst == design.layout.conflicts.end() ? std::string() : worst->rule;
  return result;
}

} // namespace

bool concerns(const Rule &rule, const Design &design) {
  return rule.about == nullptr || rule.about(design);
}

bool judgeable(const Rule &rule, const Design &design) {
  return concerns(rule, design) && known(rule.needs, design);
}

std::string_view to_text(Status status) {
  switch (status) {
  case Status::pass:
    return "pass";
  case Status::caution:
    return "caution";
  case Status::fail:
    return "fail";
  }
  return "fail";
}

std::string_view to_text(Bound bound) {
  switch (bound) {
  case Bound::at_most:
    return "at most";
  case Bound::at_least:
    return "at least";
  case Bound::above:
    return "above";
  }
  return "at most";
}

bool keeps(double value, double limit, Bound bound) {
  const double noise = 1e-9 * std::abs(limit);
  switch (bound) {
  case Bound::at_most:
    return value <= limit + noise;
  case Bound::at_least:
    return value >= limit - noise;
  case Bound::above:
    return value > limit;
  }
  return false;
}

std::optional<double> margin(double value, double limit, Bound bound) {
  const double over = bound == Bound::at_most ? limit - value : value - limit;
  const double left = over / std::abs(limit);
  return std::isfinite(left) ? std::optional(left) : std::nullopt;
}

Verdict verdict(const Rule &rule, const Design &design) {
  Verdict found = rule.judge(design);
  if (std::isnan(found.value) || std::isnan(found.limit)) {
    found.status = Status::fail;
  }
  return found;
}

std::span<const Rule> rules() {
  static const std::vector<Rule> all = gather();
  return all;
}

std::vector<RuleResult> judge(const Design &design) {
  std::vector<RuleResult> results;
  if (!design.layout.buildable()) {
    std::ranges::transform(design.layout.conflicts, std::back_inserter(results), conflict_result);
    return results;
  }
  results.reserve(rules().size());
  for (const Rule &rule : rules()) {
    if (judgeable(rule, design)) {
      results.push_back(as_result(rule, design));
    }
  }
  return results;
}

std::vector<NotJudged> not_judged(const Design &design) {
  std::vector<NotJudged> left_out;
  for (const Rule &rule : rules()) {
    if (!design.layout.buildable()) {
      left_out.push_back({rule.id, "the layout clashes"});
    } else if (concerns(rule, design) && !judgeable(rule, design)) {
      left_out.push_back({rule.id, why_not(rule)});
    }
  }
  return left_out;
}

Tally tally(const Design &design) {
  if (!design.layout.buildable()) {
    return tally_of_clashes(design);
  }
  Tally result;
  double most = -1.0;
  for (std::size_t i = 0; i < rules().size(); ++i) {
    const Rule &rule = rules()[i];
    if (!judgeable(rule, design)) {
      result.left_out.set(i, concerns(rule, design));
      continue;
    }
    ++result.judged;
    const Verdict found = verdict(rule, design);
    result.cautions += found.status == Status::caution ? 1 : 0;
    if (found.status != Status::fail) {
      continue;
    }
    ++result.failing;
    if (const double by = missed_by(found); by > most) {
      most = by;
      result.worst = rule.id;
    }
  }
  return result;
}

std::vector<std::string_view> not_judged(const Tally &counted) {
  std::vector<std::string_view> ids;
  for (std::size_t i = 0; i < rules().size(); ++i) {
    if (counted.left_out.test(i)) {
      ids.push_back(rules()[i].id);
    }
  }
  return ids;
}

std::bitset<rules_most> left_out(const std::vector<std::string> &ids) {
  std::bitset<rules_most> places;
  for (std::size_t i = 0; i < rules().size(); ++i) {
    places.set(i, std::ranges::find(ids, rules()[i].id) != ids.end());
  }
  return places;
}

Status worst(const std::vector<RuleResult> &results) {
  Status status = Status::pass;
  for (const RuleResult &result : results) {
    status = std::max(status, result.status);
  }
  return status;
}

} // namespace purgewright::checks
