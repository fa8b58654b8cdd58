// The smallest chamber that passes every rule, over what the job leaves open.
#include "purgewright/checks/remedy.hpp"

#include "trial.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace purgewright::checks {
namespace {

using job::Draft;
using job::Key;
using enum job::Key;

// Values that --solve may set where a rule needs it; the first two are also what it makes small.
constexpr std::array free_keys{fixture_radial_clearance, fixture_end_clearance, fixture_slot_width,
                               fixture_slot_length,      fixture_diffuser_hole, fixture_wall};

std::vector<Key> left_open(const Draft &draft) {
  std::vector<Key> keys;
  std::ranges::copy_if(free_keys, std::back_inserter(keys), [&](Key key) { return !draft[key].stated; });
  return keys;
}

void put(std::vector<Change> &choices, const Change &change) {
  const auto known = std::ranges::find(choices, change.key, &Change::key);
  if (known == choices.end()) {
    choices.push_back(change);
  } else {
    known->to = change.to;
  }
}

// First cures what fails, one rule after another.
void cure(Draft draft, std::span<const Key> keys, std::vector<Change> &choices) {
  constexpr int most_cures = 12;
  for (int i = 0; i < most_cures; ++i) {
    const Draft now = changed(draft, choices);
    const auto design = evaluated(now, evaluate_purge);
    if (!design) {
      return;
    }
    std::optional<Change> change;
    for (const RuleResult &result : judge(*design)) {
      if (result.status == Status::fail && (change = find_change(now, *design, result.id, keys))) {
        break;
      }
    }
    if (!change) {
      return;
    }
    put(choices, *change);
  }
}

struct Candidate {
  std::vector<Change> changes;
  units::Volume gas{};
};

// Values of a key from its least up to what it is now, on the shop's grid.
std::vector<Change> down_from(Key key, double now, units::UnitSystem system) {
  const double step = system == units::UnitSystem::inch ? units::inches(1.0 / 64.0).value() : 0.5e-3; // m
  std::vector<Change> values{{key, now, now}};
  for (double value = std::ceil(job::field(key).least / step) * step; value < now - 0.5 * step;
       value += step) {
    values.push_back({key, now, value});
  }
  return values;
}

// Every pair of clearances whose closed-form rules are no worse, smallest gas volume first; of equal volumes
// the one with the larger clearances.
std::vector<Candidate> candidates(const Draft &draft, const Design &from, std::span<const Change> cures) {
  const auto &job = from.job;
  const bool free_radial = !draft[fixture_radial_clearance].stated,
             free_end = !draft[fixture_end_clearance].stated;
  const double radial = job.fixture.radial_clearance.value(), end = job.fixture.end_clearance.value();
  const auto choice = [&](Key key, double now, bool open) {
    return open ? down_from(key, now, job.shop.unit_system) : std::vector<Change>{{key, now, now}};
  };
  const Standing before(evaluate_closed_form(job));
  std::vector<Candidate> all;
  for (const Change &r : choice(fixture_radial_clearance, radial, free_radial)) {
    for (const Change &e : choice(fixture_end_clearance, end, free_end)) {
      Candidate candidate{{cures.begin(), cures.end()}, {}};
      for (const Change &change : {r, e}) {
        if (change.to != change.from) {
          put(candidate.changes, change);
        }
      }
      const auto design = evaluated(changed(draft, candidate.changes), evaluate_closed_form);
      if (design && Standing(*design).no_worse_than(before)) {
        candidate.gas = design->volumes.chamber_gas;
        all.push_back(std::move(candidate));
      }
    }
  }
  const auto sum = [](const Candidate &c) {
    double total = 0.0;
    for (const Change &change : c.changes) {
      total += change.to - change.from;
    }
    return total;
  };
  std::ranges::stable_sort(all, [&](const Candidate &a, const Candidate &b) {
    return a.gas != b.gas ? a.gas < b.gas : sum(a) > sum(b);
  });
  return all;
}

} // namespace

Solution solve(const Draft &stated) {
  const Draft draft = for_trials(stated);
  Solution solution{.draft = stated, .choices = {}, .passes = false};
  const auto keys = left_open(draft);
  cure(draft, keys, solution.choices);
  const auto cured = evaluated(changed(draft, solution.choices), evaluate_purge);
  if (cured && cured->layout.buildable()) {
    const Standing before(*cured);
    const std::vector<Change> cures = solution.choices;
    for (const Candidate &candidate : candidates(draft, *cured, cures)) {
      const auto design = evaluated(changed(draft, candidate.changes), evaluate_purge);
      if (design && Standing(*design).no_worse_than(before)) {
        solution.choices = candidate.changes;
        solution.passes = !Standing(*design).fails();
        break;
      }
    }
  }
  solution.draft = changed(solution.draft, solution.choices);
  return solution;
}

} // namespace purgewright::checks
