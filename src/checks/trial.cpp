#include "trial.hpp"

#include <algorithm>
#include <utility>

namespace purgewright::checks {

job::Draft changed(job::Draft draft, std::span<const Change> changes) {
  for (const Change &change : changes) {
    job::Entry &entry = draft[change.key];
    entry.stated = true;
    entry.is_share = false;
    entry.number = change.to;
  }
  return draft;
}

Standing::Standing(const Design &design)
    : buildable_(design.layout.buildable()), purge_known_(design.purge_known) {
  for (const auto &conflict : design.layout.conflicts) {
    clashes_.push_back(conflict.rule);
  }
  if (!buildable_) {
    return;
  }
  for (const Rule &rule : rules()) {
    if (!judgeable(rule, design)) {
      continue;
    }
    if (const Status status = rule.judge(design).status; status != Status::pass) {
      entries_.push_back({rule.id, status});
    }
  }
}

Status Standing::of(std::string_view rule) const {
  if (std::ranges::find(clashes_, rule) != clashes_.end()) {
    return Status::fail;
  }
  const auto found = std::ranges::find(entries_, rule, &Entry::rule);
  return found == entries_.end() ? Status::pass : found->status;
}

bool Standing::no_worse_than(const Standing &before) const {
  if (!before.buildable_) { // no rule was judged then
    return clashes_.size() < before.clashes_.size();
  }
  return buildable_ && std::ranges::all_of(entries_, [&](const Entry &entry) {
           return entry.status <= before.of(entry.rule);
         });
}

bool Standing::fails() const {
  return !buildable_ || std::ranges::any_of(entries_, [](const Entry &e) { return e.status == Status::fail; });
}

Trial::Trial(const job::Draft &draft, const Design &design, std::string_view rule)
    : draft_(draft), before_(design), rule_(rule) {
  const auto found = std::ranges::find(rules(), rule, &Rule::id);
  needs_purge_ = found != rules().end() && found->needs == Needs::purge;
  // The coarse plan of a search cannot promise what the fine one says of a rule of heat.
  searchable_ = found != rules().end() ? found->needs != Needs::solids && found->needs != Needs::heat
                                       : !design.layout.buildable();
}

bool Trial::cures(std::initializer_list<Change> changes) const {
  job::Resolution resolution = job::resolve(changed(draft_, changes));
  if (!resolution.job) {
    return false;
  }
  const auto judged = [&](Design design) {
    const Standing after(design);
    return after.of(rule_) == Status::pass && after.no_worse_than(before_);
  };
  if (!needs_purge_) {
    return judged(evaluate_closed_form(std::move(*resolution.job)));
  }
  return judged(evaluate_purge(std::move(*resolution.job)));
}

} // namespace purgewright::checks
