#include "row_json.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace purgewright::report::rows {
namespace {

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

template <class Numbers> Json numbers_json(const Numbers &numbers) {
  Json list = Json::array();
  for (const double number : numbers) {
    list.push_back(std::isfinite(number) ? Json(number) : Json());
  }
  return list;
}

Json rules_json(const ComparedDesign &design) {
  const checks::Tally &rules = design.rules;
  Json statuses = Json::array();
  for (const auto &status : design.of_each_rule) {
    statuses.push_back(status ? Json(static_cast<int>(*status)) : Json());
  }
  return {{"judged", rules.judged},
          {"failing", rules.failing},
          {"cautions", rules.cautions},
          {"worst", rules.worst},
          {"clashes", rules.clashes},
          {"left_out", checks::not_judged(rules)},
          {"tightest", design.tightest.rule},
          {"margin", design.tightest.margin},
          {"of_each_rule", std::move(statuses)}};
}

Json points_json(const fixture::Polygon &polygon) {
  Json points = Json::array();
  for (const fixture::PlanePoint &point : polygon) {
    points.push_back(point.across.value());
    points.push_back(point.up.value());
  }
  return points;
}

// A disc is its centre and radius: three numbers, which no polygon has.
Json outlines_json(const std::vector<fixture::Outline> &outlines) {
  Json all = Json::array();
  for (const fixture::Outline &outline : outlines) {
    const auto *disc = std::get_if<fixture::Disc>(&outline.end);
    all.push_back({outline.part, points_json(outline.side),
                   disc == nullptr
                       ? points_json(std::get<fixture::Polygon>(outline.end))
                       : Json{disc->centre.across.value(), disc->centre.up.value(), disc->radius.value()}});
  }
  return all;
}

std::vector<double> numbers_of(const Json &list) {
  std::vector<double> numbers;
  for (const Json &number : list) {
    numbers.push_back(number.is_null() ? unknown : number.get<double>());
  }
  return numbers;
}

// The rule's own id, which outlives the file's text.
std::string_view rule_of(const std::string &id) {
  const auto rules = checks::rules();
  const auto found = std::ranges::find(rules, id, &checks::Rule::id);
  return found == rules.end() ? std::string_view() : found->id;
}

void read_rules(const Json &rules, ComparedDesign &design) {
  design.rules = {.judged = rules.at("judged"),
                  .failing = rules.at("failing"),
                  .cautions = rules.at("cautions"),
                  .worst = rules.at("worst"),
                  .clashes = rules.at("clashes"),
                  .left_out = checks::left_out(rules.at("left_out").get<std::vector<std::string>>())};
  design.tightest = {rule_of(rules.at("tightest")), rules.at("margin")};
  for (const Json &status : rules.at("of_each_rule")) {
    design.of_each_rule.push_back(status.is_null() ? std::nullopt
                                                   : std::optional(enum_of(status, checks::Status::fail)));
  }
}

fixture::Polygon polygon_of(const std::vector<double> &numbers) {
  if (numbers.size() % 2 != 0 || numbers.size() < 6) {
    throw BadShard("an outline is none");
  }
  fixture::Polygon polygon;
  for (std::size_t i = 0; i < numbers.size(); i += 2) {
    polygon.push_back({units::metres(numbers[i]), units::metres(numbers[i + 1])});
  }
  return polygon;
}

fixture::Outline outline_of(const Json &json) {
  fixture::Outline outline{json.at(0), polygon_of(json.at(1)), {}};
  const std::vector<double> end = json.at(2);
  if (end.size() == 3) {
    outline.end = fixture::Disc{{units::metres(end[0]), units::metres(end[1])}, units::metres(end[2])};
  } else {
    outline.end = polygon_of(end);
  }
  return outline;
}

} // namespace

Json row_json(const ComparedDesign &design) {
  Json kinds = Json::array();
  for (const Kind &kind : design.kinds) {
    kinds.push_back({kind.what, kind.kind});
  }
  Json row{{"name", design.name},
           {"varied", numbers_json(design.varied)},
           {"values", numbers_json(design.values)},
           {"asked", numbers_json(design.asked)},
           {"currency", design.currency},
           {"kinds", std::move(kinds)},
           {"rules", rules_json(design)}};
  if (!design.outlines.empty()) {
    row["outlines"] = outlines_json(design.outlines);
  }
  return row;
}

ComparedDesign row_of(const Json &row) {
  ComparedDesign design{
      .name = row.at("name"), .varied = numbers_of(row.at("varied")), .currency = row.at("currency")};
  const auto values = numbers_of(row.at("values"));
  if (values.size() != design.values.size()) {
    throw BadShard("its rows are of another version");
  }
  std::ranges::copy(values, design.values.begin());
  design.asked = numbers_of(row.at("asked"));
  for (const Json &kind : row.at("kinds")) {
    design.kinds.push_back({kind.at(0), kind.at(1)});
  }
  read_rules(row.at("rules"), design);
  for (const Json &outline : row.value("outlines", Json::array())) {
    design.outlines.push_back(outline_of(outline));
  }
  return design;
}

} // namespace purgewright::report::rows
