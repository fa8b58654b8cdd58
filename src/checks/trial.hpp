// A job with some values changed, judged against the design it came from; private to the checks floor.
#pragma once

#include "purgewright/checks/remedy.hpp"

#include <optional>
#include <span>
#include <string>

namespace purgewright::checks {

// The draft with these values stated.
job::Draft changed(job::Draft, std::span<const Change>);

// The draft as trials take it: without the measured log, whose fit is slow and decides no rule unless it is
// applied.
job::Draft for_trials(job::Draft);

// Empty when the draft resolves to no job.
std::optional<Design> evaluated(const job::Draft &, Design (*evaluation)(job::Job));

// The rules that do not pass, without text; a clash of the layout counts as failing.
class Standing {
 public:
  explicit Standing(const Design &);
  Status of(std::string_view rule) const; // pass when it is not listed
  // No rule is worse here than there, but for the ones that were not judged there.
  bool no_worse_than(const Standing &) const;
  bool fails() const;

 private:
  struct Entry {
    std::string_view rule;
    Status status;
  };
  bool buildable_ = true;
  std::vector<Entry> entries_;
  std::vector<std::string> clashes_; // the layout's own names live no longer than the design
};

class Trial {
 public:
  // `rule`: the rule or clash to cure.
  Trial(const job::Draft &, const Design &, std::string_view rule);
  bool searchable() const { return searchable_; } // the rule follows from what a trial computes
  bool needs_purge() const { return needs_purge_; }
  // The rule passes after the change, and no other that follows from the same evaluation is worse: closed
  // form, or purge where the rule needs it.
  bool cures(const Change &) const;
  // The same with purge and heat: no rule at all is worse.
  bool holds(const Change &) const;

 private:
  using Evaluation = Design (*)(job::Job);
  bool better(const Change &, Evaluation, const Standing &before) const;

  job::Draft draft_;
  std::string_view rule_;
  std::optional<Standing> closed_form_, full_; // of the draft, evaluated as the changed job is
  bool needs_purge_ = false, searchable_ = true;
};

} // namespace purgewright::checks
