#include "purgewright/flow/reading.hpp"

#include "oxygen.hpp"

#include "purgewright/gas/bounds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <iterator>
#include <string>
#include <utility>

namespace purgewright::flow {
namespace {

std::vector<double> numbers_of(std::string_view line) {
  std::vector<double> numbers;
  const char *at = line.data(), *const end = at + line.size();
  for (;;) {
    at = std::find_if(at, end, [](char c) { return c != ' ' && c != '\t'; });
    if (at == end) {
      return numbers;
    }
    double number = 0.0;
    const auto read = std::from_chars(at, end, number);
    if (read.ec != std::errc()) {
      throw BadRecord(fmt::format("there is no number in '{}'", line.substr(0, 60)));
    }
    numbers.push_back(number);
    at = read.ptr;
  }
}

class Reader {
 public:
  Reader(const job::Job &job, const Case &written) : job_(job), hot_(is_hot(written.choice.stage)) {
    record_.places = written.places;
  }

  void take(const ProbesFile &file) {
    bool first = true;
    std::string_view text = file.text;
    for (std::size_t number = 1; !text.empty(); ++number) {
      const std::size_t end = text.find('\n');
      if (end == std::string_view::npos) {
        return; // still being written
      }
      const std::string_view line = text.substr(0, end);
      text.remove_prefix(end + 1);
      if (line.empty() || line.front() == '#') {
        continue;
      }
      try {
        add(numbers_of(line), std::exchange(first, false));
      } catch (const BadRecord &bad) {
        throw BadRecord(fmt::format("{}:{}: {}", file.name, number, bad.what()));
      }
    }
  }
  Record result() { return std::move(record_); }

 private:
  // `first`: of a file, which may begin before the former one's end.
  void require_sound(const std::vector<double> &row, bool first) const {
    if (row.size() != record_.places.size() + 1) {
      throw BadRecord(
          fmt::format("the line has {} numbers where {} belong", row.size(), record_.places.size() + 1));
    }
    if (!std::isfinite(row.front())) {
      throw BadRecord(fmt::format("{} is no time", row.front()));
    }
    if (!first && row.front() <= record_.times.back()) {
      throw BadRecord(fmt::format("the time {:g} s comes after {:g} s", row.front(), record_.times.back()));
    }
    for (std::size_t i = 0; i < record_.places.size(); ++i) {
      const double air = row[i + 1];
      if (!is_share_of_air(air)) {
        throw BadRecord(fmt::format("at {} the share of air is {:g}: the solution ran away and says nothing",
                                    record_.places[i], air));
      }
    }
  }

  void add(const std::vector<double> &row, bool first) {
    require_sound(row, first);
    if (first) { // what this run repeats
      while (!record_.times.empty() && record_.times.back() >= row.front()) {
        record_.times.pop_back();
        record_.oxygen.pop_back();
      }
    }
    std::vector<double> oxygen;
    std::transform(std::next(row.begin()), row.end(), std::back_inserter(oxygen),
                   [&](double air) { return oxygen_of(air, job_, hot_); });
    record_.times.push_back(row.front());
    record_.oxygen.push_back(std::move(oxygen));
  }

  const job::Job &job_;
  bool hot_;
  Record record_;
};

std::string ppm(double oxygen) {
  return oxygen >= 0.01 ? fmt::format("{:.2g} %", 100.0 * oxygen) : fmt::format("{:.2g} ppm", 1e6 * oxygen);
}

std::string in_units(double value, Stage stage) {
  return is_prepurge(stage) ? fmt::format("{:.3g} s", value) : ppm(value);
}

std::string solved_text(const Solved &solved, Stage stage) {
  if (!is_prepurge(stage)) {
    return fmt::format("{} at most, after {:.3g} s", ppm(solved.most), solved.most_at.value());
  }
  return solved.reached ? fmt::format("{:.3g} s", solved.reached->value())
                        : fmt::format("not in {:.3g} s ({} left)", solved.end.value(), ppm(solved.at_end));
}

std::string_view verdict(std::optional<bool> held) {
  return !held ? "the run is too short to say" : *held ? "within the bracket" : "OUTSIDE THE BRACKET";
}

// Air that lies over the argon leaves no sooner than a stirred bore's.
Bracket below(const gas::CircuitPlan &bore) {
  const double low = bore.high_vent_above.value(), high = bore.high.value();
  return high > low ? Bracket{low, std::sqrt(low * high), high}
                    : Bracket{bore.low.value(), bore.time.value(), high};
}

} // namespace

double oxygen_of(double air, const job::Job &job, bool hot) {
  double share = std::clamp(air, 0.0, 1.0);
  if (hot) {
    const double of_air = share / gas::molar_mass(gas::Species::air);
    share = of_air / (of_air + (1.0 - share) / gas::molar_mass(gas::species_of(job)));
  }
  return share * gas::air_oxygen + (1.0 - share) * job.gas.oxygen_in_supply;
}

double worst_at_joint(const Record &record, std::size_t time) {
  double worst = 0.0;
  for (std::size_t i = 0; i < record.places.size(); ++i) {
    if (record.places[i].starts_with("joint")) {
      worst = std::max(worst, record.oxygen[time][i]);
    }
  }
  return worst;
}

Record read_record(const std::vector<ProbesFile> &files, const job::Job &job, const Case &written) {
  Reader reader(job, written);
  for (const ProbesFile &file : files) {
    reader.take(file);
  }
  return reader.result();
}

Solved judge(const Record &record, double limit) {
  if (record.times.empty()) {
    throw BadRecord("the probes' file holds no time yet");
  }
  Solved solved;
  solved.end = units::seconds(record.times.back());
  solved.at_end = worst_at_joint(record, record.times.size() - 1);
  bool stays = true; // under the limit from here to the end
  for (std::size_t time = record.times.size(); time-- > 0;) {
    const double worst = worst_at_joint(record, time);
    stays = stays && worst < limit;
    if (stays) {
      solved.reached = units::seconds(record.times[time]);
    }
    if (worst > solved.most) {
      solved.most = worst;
      solved.most_at = units::seconds(record.times[time]);
    }
  }
  return solved;
}

Bracket network_bracket(const gas::Purge &purge, Stage stage) {
  const auto times = [](const gas::CircuitPlan &plan, units::Time high) {
    return Bracket{plan.low.value(), plan.time.value(), high.value()};
  };
  const auto levels = [](const gas::OxygenRange &range) {
    return Bracket{range.low, range.best, range.high};
  };
  switch (stage) {
  case Stage::bore:
    return times(purge.bore, purge.bore.high_vent_above);
  case Stage::bore_outlet_below:
    return below(purge.bore);
  case Stage::prepurge:
    return times(purge.chamber, purge.chamber.high);
  case Stage::open:
    return levels(purge.torch.cover_open);
  case Stage::away:
    return levels(purge.torch.away);
  case Stage::torch:
    return {0.0, purge.torch.back_floor, purge.torch.back_floor};
  }
  return {};
}

double limit_of(const job::Job &job, Stage stage) {
  return is_bore(stage) ? job.gas.oxygen_limit_bore : job.gas.oxygen_limit_chamber;
}

std::optional<bool> holds(const Bracket &bracket, const Solved &solved, Stage stage) {
  const auto within = [&](double value) { return bracket.low <= value && value <= bracket.high; };
  if (!is_prepurge(stage)) {
    return within(solved.most);
  }
  if (solved.reached) {
    return within(solved.reached->value());
  }
  return solved.end.value() > bracket.high ? std::optional(false) : std::nullopt;
}

std::string comparison_text(const job::Job &job, const gas::Purge &purge, const Case &written,
                            const Record &record) {
  const Stage stage = written.choice.stage;
  const double limit = limit_of(job, stage);
  const Bracket bracket = network_bracket(purge, stage);
  const Solved solved = judge(record, limit);
  std::string text =
      fmt::format("{}, stage {}: {} until {:.4g} s, {} cells\n", job.identity.name, to_text(stage),
                  is_hot(stage) ? hot_solver : cold_solver, solved.end.value(), written.cells);
  text += is_prepurge(stage) ? fmt::format("  until the joint is under {} of oxygen\n", ppm(limit))
                             : fmt::format("  most oxygen at the joint; its limit is {}\n", ppm(limit));
  text += fmt::format("    network  {} ({} to {})\n    flow     {}, {}\n", in_units(bracket.best, stage),
                      in_units(bracket.low, stage), in_units(bracket.high, stage), solved_text(solved, stage),
                      verdict(holds(bracket, solved, stage)));
  text += "  at the end\n";
  for (std::size_t i = 0; i < record.places.size(); ++i) {
    text += fmt::format("    {:<13}{}\n", record.places[i], ppm(record.oxygen.back()[i]));
  }
  return text + "Computed on one mesh, not measured: no substitute for an oxygen meter at the outlet.\n";
}

std::string comparison_csv(const job::Job &job, const gas::Purge &purge, const Case &written,
                           const Record &record) {
  const Stage stage = written.choice.stage;
  const Bracket bracket = network_bracket(purge, stage);
  const Solved solved = judge(record, limit_of(job, stage));
  const double value = is_prepurge(stage) ? (solved.reached ? solved.reached->value() : 0.0) : solved.most;
  const bool known = !is_prepurge(stage) || solved.reached.has_value();
  const auto held = holds(bracket, solved, stage);
  return fmt::format("stage,quantity,network_low,network_best,network_high,flow,held,cells\n"
                     "{},{},{:.6g},{:.6g},{:.6g},{},{},{}\n",
                     to_text(stage), is_prepurge(stage) ? "time_s" : "oxygen", bracket.low, bracket.best,
                     bracket.high, known ? fmt::format("{:.6g}", value) : "",
                     held ? (*held ? "yes" : "no") : "", written.cells);
}

std::string record_csv(const Record &record) {
  std::string text = fmt::format("time_s,{}\n", fmt::join(record.places, ","));
  for (std::size_t time = 0; time < record.times.size(); ++time) {
    text += fmt::format("{:.6g}", record.times[time]);
    for (const double oxygen : record.oxygen[time]) {
      text += fmt::format(",{:.6g}", oxygen);
    }
    text += '\n';
  }
  return text;
}

} // namespace purgewright::flow
