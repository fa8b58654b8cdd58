#include "purgewright/report/shard.hpp"

#include "row_json.hpp"

#include "purgewright/job/nearest.hpp"
#include "purgewright/job/sweep.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <limits>
#include <utility>

namespace purgewright::report {
namespace {

using rows::enum_of;
using rows::Json;
using rows::row_json;
using rows::row_of;

constexpr std::size_t most_pieces = 100'000; // more than any scheduler's array has

std::size_t whole_number(std::string_view text) {
  std::size_t number = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  return error == std::errc() && end == text.data() + text.size() ? number : 0;
}

// ---- writing

Json job_json(const ReadJob &job) {
  Json inputs = Json::array();
  for (const InputFile &input : job.inputs) {
    inputs.push_back({input.name, input.sha256});
  }
  return {{"name", job.name}, {"sha256", job.sha256}, {"inputs", std::move(inputs)}};
}

template <class Enum> Json enums_json(const std::vector<Enum> &all) {
  Json list = Json::array();
  for (const Enum each : all) {
    list.push_back(static_cast<int>(each));
  }
  return list;
}

// ---- reading; nlohmann throws where a value is absent or of another kind

ShardOf piece_of(const Json &piece) {
  const ShardOf of{piece.at(0), piece.at(1)};
  if (of.index < 1 || of.count < of.index || of.count > most_pieces) {
    throw BadShard("it says that it is a piece that there cannot be");
  }
  return of;
}

ReadJob job_of(const Json &job) {
  ReadJob read{.name = job.at("name"), .sha256 = job.at("sha256"), .inputs = {}};
  for (const Json &input : job.at("inputs")) {
    read.inputs.push_back({input.at(0), input.at(1)});
  }
  return read;
}

Comparison comparison_of(const Json &root) {
  Comparison c{.varied_keys = root.at("varied_keys"),
               .varied_dimensions = {},
               .varied_currencies = root.at("varied_currencies"),
               .asked = {},
               .ranked = root.at("ranked"),
               .designs = {},
               .unit_system = enum_of(root.at("unit_system"), units::UnitSystem::inch),
               .quick = root.at("quick")};
  for (const Json &dimension : root.at("varied_dimensions")) {
    c.varied_dimensions.push_back(enum_of(dimension, units::Dimension::price));
  }
  if (std::ranges::any_of(c.ranked, [](std::size_t metric) { return metric >= metric_count; }) ||
      c.varied_dimensions.size() != c.varied_keys.size() ||
      c.varied_currencies.size() != c.varied_keys.size()) {
    throw BadShard("its rows are of another version");
  }
  for (const Json &asked : root.at("asked")) {
    c.asked.push_back({asked.at(0), asked.at(1), enum_of(asked.at(2), units::Dimension::price)});
  }
  for (const Json &row : root.at("rows")) {
    c.designs.push_back(row_of(row));
    if (c.designs.back().varied.size() != c.varied_keys.size() ||
        c.designs.back().asked.size() != c.asked.size()) {
      throw BadShard("its rows are of another version");
    }
  }
  return c;
}

// ---- what a piece says twice, it says the same

[[noreturn]] void contradicted(const ComparedDesign &row, std::string_view what) {
  throw BadShard(fmt::format("row '{}' contradicts itself or its sweep: {}", row.name, what));
}

// Where rules stand for themselves, the counts are theirs.
void require_counted(const ComparedDesign &row) {
  const auto with = [&](std::optional<checks::Status> status) {
    return std::ranges::count(row.of_each_rule, status);
  };
  const checks::Tally &counted = row.rules;
  if (counted.judged != std::ssize(row.of_each_rule) - with(std::nullopt)) {
    contradicted(row, "rules judged");
  }
  if (!counted.clashes && counted.failing != with(checks::Status::fail)) {
    contradicted(row, "rules that fail");
  }
  if (counted.cautions != with(checks::Status::caution)) {
    contradicted(row, "cautions");
  }
  const auto rules = checks::rules();
  const auto worst = std::ranges::find(rules, counted.worst, &checks::Rule::id) - rules.begin();
  if (!counted.clashes && counted.failing > 0 &&
      (worst == std::ssize(rules) ||
       row.of_each_rule[static_cast<std::size_t>(worst)] != checks::Status::fail)) {
    contradicted(row, "the worst rule");
  }
}

// `quick`: only counts are known where purge and heat were left out.
void require_rules_agree(const ComparedDesign &row, bool quick) {
  const checks::Tally &counted = row.rules;
  const bool each = !(quick && row.of_each_rule.empty());
  if (each && row.of_each_rule.size() != checks::rules().size()) {
    throw BadShard("its rows are of another version");
  }
  if (counted.failing < (counted.clashes ? 1 : 0) || counted.cautions < 0 ||
      (!counted.clashes && counted.failing + counted.cautions > counted.judged)) {
    contradicted(row, "rules that fail");
  }
  if (counted.worst.empty() != (counted.failing == 0)) {
    contradicted(row, "the worst rule");
  }
  if (each) {
    require_counted(row);
  }
}

std::vector<job::Sweep> sweeps_of(const Shard &shard) {
  std::vector<job::Sweep> sweeps;
  for (const std::string &text : shard.sweeps) {
    auto [sweep, problem, nearest] = job::read_sweep(text);
    if (!sweep) {
      throw BadShard(fmt::format("its sweep {}: {}{}", text, problem, job::did_you_mean(nearest)));
    }
    sweeps.push_back(std::move(*sweep));
    if (job::designs_of(sweeps) > job::most_designs) {
      throw BadShard(fmt::format("its sweep has more than {} designs", job::most_designs));
    }
  }
  return sweeps;
}

void require_sweep_agrees(const Shard &shard) {
  constexpr double noise = 1e-9; // of a step: another machine may round otherwise
  const auto sweeps = sweeps_of(shard);
  const Comparison &c = shard.comparison;
  if (!std::ranges::equal(sweeps, c.varied_keys, {},
                          [](const job::Sweep &sweep) { return sweep.field->path; })) {
    throw BadShard("the keys that it varies are not its sweep's");
  }
  if (const std::size_t rows = shard.of.rows(job::designs_of(sweeps)); c.designs.size() != rows) {
    throw BadShard(fmt::format("it has {} rows, of its sweep {}", c.designs.size(), rows));
  }
  for (std::size_t n = 0; n < c.designs.size(); ++n) {
    const auto values = job::values_of_design(sweeps, shard.of.row(n));
    for (std::size_t k = 0; k < sweeps.size(); ++k) {
      if (!(std::abs(c.designs[n].varied[k] - values[k]) <= noise * sweeps[k].step)) {
        contradicted(c.designs[n], sweeps[k].field->path);
      }
    }
  }
}

// Everything but the piece's own rows: the same in all pieces of a sweep.
std::string sweep_of(const Shard &shard) {
  Json root = Json::parse(shard_json(shard));
  root.erase("piece");
  root.erase("rows");
  return root.dump();
}

void require_one_sweep(const std::vector<Shard> &shards) {
  for (const Shard &shard : shards) {
    if (shard.of.count != shards.front().of.count || sweep_of(shard) != sweep_of(shards.front())) {
      throw BadShard(fmt::format("piece {}/{} and piece {}/{} are of different sweeps, jobs or versions",
                                 shards.front().of.index, shards.front().of.count, shard.of.index,
                                 shard.of.count));
    }
  }
}

void require_each_once(const std::vector<Shard> &shards) {
  for (std::size_t i = 0; i < shards.size(); ++i) {
    if (i > 0 && shards[i].of.index == shards[i - 1].of.index) {
      throw BadShard(fmt::format("piece {}/{} is given twice", shards[i].of.index, shards[i].of.count));
    }
    if (shards[i].of.index != i + 1) {
      throw BadShard(fmt::format("piece {}/{} is missing", i + 1, shards[i].of.count));
    }
  }
  if (shards.size() != shards.front().of.count) {
    throw BadShard(fmt::format("piece {}/{} is missing", shards.size() + 1, shards.front().of.count));
  }
}

// Rows of a piece may differ in number by one from another's, the earlier ones having it.
void require_whole(const std::vector<Shard> &shards) {
  std::size_t total = 0;
  for (const Shard &shard : shards) {
    total += shard.comparison.designs.size();
  }
  for (const Shard &shard : shards) {
    if (shard.comparison.designs.size() != shard.of.rows(total)) {
      throw BadShard(fmt::format("piece {}/{} has {} rows where the sweep's {} leave it {}", shard.of.index,
                                 shard.of.count, shard.comparison.designs.size(), total,
                                 shard.of.rows(total)));
    }
  }
}

} // namespace

ShardOf parse_shard(std::string_view text) {
  const auto slash = text.find('/');
  const std::size_t index = whole_number(text.substr(0, slash)),
                    count = slash == std::string_view::npos ? 0 : whole_number(text.substr(slash + 1));
  if (index < 1 || count < index || count > most_pieces) {
    throw BadShard("write I/N, the piece and how many there are, such as 2/8");
  }
  return {index, count};
}

std::string shard_json(const Shard &shard) {
  const Comparison &c = shard.comparison;
  Json asked = Json::array(), rows = Json::array();
  for (const Asked &each : c.asked) {
    asked.push_back({each.id, each.title, static_cast<int>(each.dimension)});
  }
  for (const ComparedDesign &design : c.designs) {
    rows.push_back(row_json(design));
  }
  const Json root{{"version", shard.version},
                  {"job", job_json(shard.job)},
                  {"sweeps", shard.sweeps},
                  {"piece", {shard.of.index, shard.of.count}},
                  {"varied_keys", c.varied_keys},
                  {"varied_dimensions", enums_json(c.varied_dimensions)},
                  {"varied_currencies", c.varied_currencies},
                  {"asked", std::move(asked)},
                  {"ranked", c.ranked},
                  {"unit_system", static_cast<int>(c.unit_system)},
                  {"quick", c.quick},
                  {"rows", std::move(rows)}};
  return root.dump() + "\n";
}

Shard read_shard(std::string_view text, std::string_view name) {
  try {
    const Json root = Json::parse(text);
    Shard shard{.of = piece_of(root.at("piece")),
                .version = root.at("version"),
                .job = job_of(root.at("job")),
                .sweeps = root.at("sweeps"),
                .comparison = comparison_of(root)};
    for (const ComparedDesign &row : shard.comparison.designs) {
      require_rules_agree(row, shard.comparison.quick);
    }
    require_sweep_agrees(shard);
    return shard;
  } catch (const Json::exception &) {
    throw BadShard(fmt::format("{} is no piece of a sweep as --shard writes it", name));
  } catch (const BadShard &error) {
    throw BadShard(fmt::format("{}: {}", name, error.what()));
  }
}

Shard merged(std::vector<Shard> shards) {
  if (shards.empty()) {
    throw BadShard("give the folders of all pieces");
  }
  require_one_sweep(shards);
  std::ranges::sort(shards, {}, [](const Shard &shard) { return shard.of.index; });
  require_each_once(shards);
  require_whole(shards);
  Shard whole{.of = {},
              .version = shards.front().version,
              .job = shards.front().job,
              .sweeps = shards.front().sweeps,
              .comparison = shards.front().comparison};
  auto &designs = whole.comparison.designs;
  designs.clear();
  const std::size_t longest = shards.front().comparison.designs.size();
  for (std::size_t n = 0; n < longest; ++n) {
    for (Shard &shard : shards) {
      if (n < shard.comparison.designs.size()) {
        designs.push_back(std::move(shard.comparison.designs[n]));
      }
    }
  }
  return whole;
}

std::string kept_head(const Shard &shard) {
  Json asked = Json::array();
  for (const Asked &each : shard.comparison.asked) {
    asked.push_back(each.id);
  }
  const Json head{{"version", shard.version},  {"job", job_json(shard.job)},
                  {"sweeps", shard.sweeps},    {"piece", {shard.of.index, shard.of.count}},
                  {"asked", std::move(asked)}, {"quick", shard.comparison.quick}};
  return head.dump() + "\n";
}

namespace {

// Ties a row to its sweep and its place.
std::string seal(std::string_view head, std::size_t place, std::string_view row) {
  constexpr std::size_t enough = 16; // hexadecimal digits: against mistakes, not against forgers
  return sha256(fmt::format("{}{}\n{}", head, place, row)).substr(0, enough);
}

} // namespace

std::string kept_row(std::string_view head, std::size_t place, const ComparedDesign &design) {
  const std::string row = row_json(design).dump();
  return fmt::format("{} {}\n", seal(head, place, row), row);
}

std::optional<ComparedDesign> read_kept_row(std::string_view head, std::size_t place, std::string_view line) {
  const auto space = line.find(' ');
  if (space == std::string_view::npos || line.substr(0, space) != seal(head, place, line.substr(space + 1))) {
    return std::nullopt;
  }
  return row_of(Json::parse(line.substr(space + 1)));
}

} // namespace purgewright::report
