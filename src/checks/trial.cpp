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

job::Draft for_trials(job::Draft draft) {
  const job::Entry &use = draft[job::Key::gas_log_use];
  const bool applied = use.stated && use.number == double(job::LogUse::apply);
  if (!applied) {
    draft[job::Key::gas_log].stated = false;
    draft.log.reset();
  }
  return draft;
}

std::optional<Design> evaluated(const job::Draft &draft, Design (*evaluation)(job::Job)) {
  job::Resolution resolution = job::resolve(draft);
  return resolution.job ? std::optional(evaluation(std::move(*resolution.job))) : std::nullopt;
}

Standing::Standing(const Design &design) : buildable_(design.layout.buildable()) {
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
    if (const Status status = verdict(rule, design).status; status != Status::pass) {
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
  return !buildable_ ||
         std::ranges::any_of(entries_, [](const Entry &e) { return e.status == Status::fail; });
}

Trial::Trial(const job::Draft &draft, const Design &design, std::string_view rule)
    : draft_(for_trials(draft)), rule_(rule) {
  const auto found = std::ranges::find(rules(), rule, &Rule::id);
  needs_purge_ = found != rules().end() && found->needs == Needs::purge;
  // The coarse plan of a search cannot promise what the fine one says of a rule of heat.
  searchable_ = found != rules().end() ? found->needs == Needs::nothing || found->needs == Needs::purge
                                       : !design.layout.buildable();
  if (searchable_) {
    closed_form_.emplace(evaluate_closed_form(design.job));
    if (const auto full = evaluated(draft_, evaluate_purge)) {
      full_.emplace(*full);
    }
    searchable_ = full_.has_value();
  }
}

bool Trial::better(const Change &change, Evaluation evaluation, const Standing &before) const {
  const auto design = evaluated(changed(draft_, {&change, 1}), evaluation);
  if (!design) {
    return false;
  }
  const Standing after(*design);
  return after.of(rule_) == Status::pass && after.no_worse_than(before);
}

bool Trial::cures(const Change &change) const {
  return needs_purge_ ? holds(change) : better(change, evaluate_closed_form, *closed_form_);
}

bool Trial::holds(const Change &change) const {
  return better(change, evaluate_purge, *full_);
}

} // namespace purgewright::checks
