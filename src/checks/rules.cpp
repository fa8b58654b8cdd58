#include "purgewright/checks/rules.hpp"

#include "topics.hpp"

#include <algorithm>

namespace purgewright::checks {
namespace {

std::vector<Rule> gather() {
  std::vector<Rule> all;
  for (const auto topic : {access_rules(), assembly_rules(), fit_rules(), seal_rules(), machining_rules(),
                           gas_rules(), bench_rules(), heat_rules()}) {
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
          .remedy = conflict.remedy};
}

RuleResult as_result(const Rule &rule, const Design &design) {
  const Verdict verdict = rule.judge(design);
  std::string remedy;
  if (verdict.status != Status::pass) {
    remedy = rule.remedy;
    if (rule.advice != nullptr) {
      remedy += rule.advice(design);
    }
  }
  return {std::string(rule.id), std::string(rule.title), verdict.status,           verdict.value,
          verdict.limit,        rule.dimension,          std::string(rule.source), std::move(remedy)};
}

} // namespace

bool judgeable(const Rule &rule, const Design &design) {
  switch (rule.needs) {
  case Needs::nothing:
    break;
  case Needs::purge:
  case Needs::heat:
    return design.purge_known;
  case Needs::solids:
    return design.solids_known;
  }
  return true;
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

int failures(const Design &design) {
  if (!design.layout.buildable()) {
    return static_cast<int>(design.layout.conflicts.size());
  }
  return static_cast<int>(std::ranges::count_if(rules(), [&](const Rule &rule) {
    return judgeable(rule, design) && rule.judge(design).status == Status::fail;
  }));
}

Status worst(const std::vector<RuleResult> &results) {
  Status status = Status::pass;
  for (const RuleResult &result : results) {
    status = std::max(status, result.status);
  }
  return status;
}

} // namespace purgewright::checks
