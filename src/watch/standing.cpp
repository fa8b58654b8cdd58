#include "watch/standing.hpp"

#include <algorithm>
#include <utility>

namespace purgewright::watch {
namespace {

bool same(const job::Document &a, const job::Document &b) {
  return a.bytes == b.bytes && a.name == b.name && a.problem == b.problem;
}

} // namespace

bool same_bytes(const job::Sources &a, const job::Sources &b) {
  return same(a.job, b.job) && std::ranges::equal(a.family, b.family, same) &&
         a.log.has_value() == b.log.has_value() && (!a.log || same(*a.log, *b.log));
}

void Standing::save(job::Sources sources, Clock::time_point at) {
  sources_ = std::move(sources);
  saved_ = at;
}

void Standing::take(study::Opening opening, Plan plan) {
  problems_ = std::move(opening.problems);
  if (!opening.study) {
    return;
  }
  judged_ = std::make_shared<const study::Study>(*std::move(opening.study));
  judged_saved_ = saved_;
  plan_ = plan;
  if (!judged_->findings.design.layout.buildable()) {
    return;
  }
  if (numbers_saved_ != saved_) { // else the fine plan of what the coarse one answered first
    before_ = std::move(numbers_);
  }
  numbers_ = judged_;
  numbers_saved_ = saved_;
}

bool Standing::take_clashes(const SharedStudy &of, std::vector<checks::Clash> clashes) {
  if (of != numbers_) {
    return false;
  }
  study::Study known = *of;
  study::add_clashes(known, std::move(clashes));
  const bool last = judged_ == numbers_;
  numbers_ = std::make_shared<const study::Study>(std::move(known));
  if (last) {
    judged_ = numbers_;
    plan_ = Plan::with_solids;
  }
  return true;
}

} // namespace purgewright::watch
