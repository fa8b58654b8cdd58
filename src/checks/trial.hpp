// A job with some values changed, judged against the design it came from; private to the checks floor.
#pragma once

#include "purgewright/checks/remedy.hpp"

#include <initializer_list>

namespace purgewright::checks {

// The draft with these values stated.
job::Draft changed(job::Draft, std::span<const Change>);

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
  bool buildable_ = true, purge_known_ = false;
  std::vector<Entry> entries_;
  std::vector<std::string> clashes_; // the layout's own names live no longer than the design
};

class Trial {
 public:
  // `rule`: the rule or clash to cure.
  Trial(const job::Draft &, const Design &, std::string_view rule);
  bool searchable() const { return searchable_; } // the rule follows from what a trial computes
  bool needs_purge() const { return needs_purge_; }
  // The rule passes after the changes, and no other is worse.
  bool cures(std::initializer_list<Change>) const;

 private:
  job::Draft draft_;
  Standing before_;
  std::string_view rule_;
  bool needs_purge_ = false, searchable_ = true;
};

} // namespace purgewright::checks
