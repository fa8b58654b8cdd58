// The smallest chamber that passes every rule, over what the job leaves open; other kinds of plug, cradle and
// chamber where no size helps.
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

using Changes = std::vector<Change>;

Changes other_choices(const Draft &draft, Key key, int now) {
  Changes others;
  const auto kinds = static_cast<int>(job::field(key).choices.size());
  for (int kind = 1; kind < kinds && !draft[key].stated; ++kind) { // the first is to leave it to the layout
    if (kind != now) {
      others.push_back({key, double(now), double(kind)});
    }
  }
  return others;
}

// Kinds of plug, cradle and chamber that the layout did not choose: one of them another first, then plug and
// cradle.
std::vector<Changes> other_kinds(const Draft &draft, const fixture::Layout &layout) {
  const Changes plugs = other_choices(draft, fixture_plug, 1 + static_cast<int>(layout.plug.kind)),
                cradles = other_choices(draft, fixture_cradle, 1 + static_cast<int>(layout.cradle.kind)),
                chambers = other_choices(draft, fixture_chamber, 1 + static_cast<int>(layout.body.kind));
  std::vector<Changes> all;
  for (const Change &change : plugs) {
    all.push_back({change});
  }
  for (const Change &change : cradles) {
    all.push_back({change});
  }
  for (const Change &change : chambers) {
    all.push_back({change});
  }
  for (const Change &plug : plugs) {
    for (const Change &cradle : cradles) {
      all.push_back({plug, cradle});
    }
  }
  return all;
}

// Of the candidates the first that is no worse than `cured`.
void make_small(const Draft &draft, const Design &cured, Solution &solution) {
  const Standing before(cured);
  const Changes cures = solution.choices;
  for (const Candidate &candidate : candidates(draft, cured, cures)) {
    const auto design = evaluated(changed(draft, candidate.changes), evaluate_purge);
    if (design && Standing(*design).no_worse_than(before)) {
      solution.choices = candidate.changes;
      solution.passes = !Standing(*design).fails();
      return;
    }
  }
}

enum class Wanted { best, passing };

// With these kinds. When a passing one is wanted, one that fails is not made small.
Solution solve_with(const Changes &kinds, const Draft &stated, Wanted wanted) {
  const Draft draft = for_trials(stated);
  Solution solution{.draft = stated, .choices = kinds, .passes = false};
  cure(draft, left_open(draft), solution.choices);
  const auto cured = evaluated(changed(draft, solution.choices), evaluate_purge);
  if (cured && cured->layout.buildable() && (wanted == Wanted::best || !Standing(*cured).fails())) {
    make_small(draft, *cured, solution);
  }
  solution.draft = changed(solution.draft, solution.choices);
  return solution;
}

} // namespace

Solution solve(const Draft &stated) {
  Solution as_chosen = solve_with({}, stated, Wanted::best);
  const auto now = evaluated(for_trials(stated), evaluate_closed_form);
  if (as_chosen.passes || !now) {
    return as_chosen;
  }
  for (const Changes &kinds : other_kinds(stated, now->layout)) {
    if (Solution other = solve_with(kinds, stated, Wanted::passing); other.passes) {
      return other;
    }
  }
  return as_chosen;
}

} // namespace purgewright::checks
