// A comparison as JSON.
#include "comparison_parts.hpp"

#include <nlohmann/json.hpp>

#include <cmath>

namespace purgewright::report {
namespace {

using Json = nlohmann::ordered_json;

Json rules_json(const Comparison &c, const ComparedDesign &design) {
  const auto &rules = design.rules;
  Json entry;
  if (parts::counts_all(c, design)) {
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

} // namespace

std::string comparison_json(const Comparison &c) {
  Json root;
  root["judged"] = c.quick ? "in closed form only: not_judged names the rules left out"
                           : "by every rule that needs no solids";
  for (std::size_t k = 0; k < c.varied_keys.size(); ++k) {
    root["units"][c.varied_keys[k]] = parts::varied_unit(c, k);
  }
  root["designs"] = Json::array();
  for (std::size_t d = 0; d < c.designs.size(); ++d) {
    Json entry;
    entry["name"] = c.designs[d].name;
    for (std::size_t k = 0; k < c.varied_keys.size(); ++k) {
      entry["varied"][c.varied_keys[k]] = c.designs[d].varied[k];
    }
    for (std::size_t m = 0; m < metrics().size(); ++m) {
      if (std::isfinite(c.designs[d].values[m])) {
        entry["values"][std::string(metrics()[m].id)] = c.designs[d].values[m];
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
  const Overview all = overview(c);
  for (std::size_t m = 0; m < metrics().size(); ++m) {
    for (const ComparedDesign &design : c.designs) {
      if (all.wins(design, m)) {
        root["best"][std::string(metrics()[m].id)].push_back(design.name);
      }
    }
  }
  if (!c.ranked.empty()) {
    root["ranked"] = Json::array();
    for (const std::size_t metric : c.ranked) {
      root["ranked"].push_back(metrics()[metric].id);
    }
    root["front"] = Json::array();
    for (const auto &choice : all.front()) {
      root["front"].push_back(choice.name);
    }
  }
  return root.dump(2) + "\n";
}

} // namespace purgewright::report
