#include "purgewright/report/results.hpp"

#include "purgewright/fixture/choices.hpp"

#include <nlohmann/json.hpp>

#include <cmath>
#include <utility>

namespace purgewright::report {
namespace {

using Json = nlohmann::ordered_json;

Json as_json(const units::Figure &figure) {
  Json entry;
  entry["id"] = figure.id;
  entry["value"] = figure.value;
  entry["unit"] = units::si_unit(figure.dimension);
  entry["title"] = figure.title;
  entry["formula"] = figure.formula;
  entry["inputs"] = figure.inputs;
  entry["source"] = figure.source;
  entry["basis"] = units::to_text(figure.basis);
  return entry;
}

Json as_json(const checks::RuleResult &rule) {
  Json entry;
  entry["id"] = rule.id;
  entry["title"] = rule.title;
  entry["status"] = checks::to_text(rule.status);
  if (rule.has_amount) {
    entry["value"] = rule.value;
    entry["limit"] = rule.limit;
    entry["bound"] = checks::to_text(rule.bound);
    entry["unit"] = units::si_unit(rule.dimension);
  }
  entry["source"] = rule.source;
  entry["remedy"] = rule.remedy;
  return entry;
}

} // namespace

Findings find(checks::Design design) {
  Findings findings{std::move(design), {}, {}, {}};
  findings.figures = checks::figures(findings.design);
  findings.rules = checks::judge(findings.design);
  findings.not_judged = checks::not_judged(findings.design);
  return findings;
}

std::vector<std::string> titles(const Findings &findings, checks::Status status) {
  std::vector<std::string> out;
  for (const auto &rule : findings.rules) {
    if (rule.status == status) {
      out.push_back(rule.title);
    }
  }
  return out;
}

std::string results_json(const Findings &findings) {
  const auto &identity = findings.design.job.identity;
  Json root;
  root["job"] = {{"name", identity.name}, {"title", identity.title}, {"revision", identity.revision}};
  root["quantities"] = Json::array();
  for (const auto &figure : findings.figures) {
    if (std::isfinite(figure.value)) {
      root["quantities"].push_back(as_json(figure));
    }
  }
  root["choices"] = Json::array();
  for (const auto &choice : fixture::choices(findings.design.job, findings.design.layout)) {
    root["choices"].push_back({{"what", choice.what},
                               {"kind", choice.kind},
                               {"reason", choice.reason},
                               {"by_user", choice.by_user}});
  }
  root["rules"] = Json::array();
  for (const auto &rule : findings.rules) {
    root["rules"].push_back(as_json(rule));
  }
  root["not_judged"] = Json::array();
  for (const auto &[rule, why] : findings.not_judged) {
    root["not_judged"].push_back({{"id", rule}, {"why", why}});
  }
  return root.dump(2) + "\n";
}

} // namespace purgewright::report
