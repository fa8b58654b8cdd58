// Where a job under watch stands: what its last save led to, and the last good numbers.
//
// Units: SI. Frame: job.hpp. Errors: none. Guarantee: numbers once shown stay until there are newer ones,
// whatever is wrong with a save; each says of which save it is. Source: none.
#pragma once

#include "purgewright/study/study.hpp"

#include <chrono>
#include <memory>
#include <optional>

namespace purgewright::watch {

using Clock = std::chrono::system_clock;
using SharedStudy = std::shared_ptr<const study::Study>;

enum class Plan { coarse, fine, with_solids }; // what is known: with heat by its coarse plan, by the fine one

class Standing {
 public:
  // A save was seen; what it leads to follows.
  void save(job::Sources, Clock::time_point);

  // What the last save led to: faults, or numbers, by the coarse plan first.
  void take(study::Opening, Plan);

  // The solids of a study: false when the numbers are of another save by now.
  bool take_clashes(const SharedStudy &of, std::vector<checks::Clash>);

  bool faulty() const { return job::has_errors(problems_); }
  const job::Diagnostics &problems() const { return problems_; } // of the last save, cautions too
  const job::Sources &sources() const { return sources_; }       // as last saved
  Clock::time_point saved() const { return saved_; }

  SharedStudy judged() const { return judged_; }   // of the last save without fault; none so far
  SharedStudy numbers() const { return numbers_; } // of the last that can be built as well
  SharedStudy before() const { return before_; }   // the numbers of the save before that
  Plan plan() const { return plan_; }              // of judged()
  Clock::time_point judged_saved() const { return judged_saved_; }
  Clock::time_point numbers_saved() const { return numbers_saved_; }

 private:
  job::Sources sources_;
  job::Diagnostics problems_;
  Clock::time_point saved_{}, judged_saved_{}, numbers_saved_{};
  SharedStudy judged_, numbers_, before_;
  Plan plan_ = Plan::coarse;
};

// Whether two readings of a job and of the files it names are of the same bytes.
bool same_bytes(const job::Sources &, const job::Sources &);

} // namespace purgewright::watch
