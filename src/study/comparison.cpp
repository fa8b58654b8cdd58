#include "purgewright/study/comparison.hpp"

#include "rows.hpp"

#include <utility>

namespace purgewright::study {
namespace {

void add(job::Diagnostics &all, const job::Diagnostics &more) {
  all.insert(all.end(), more.begin(), more.end());
}

} // namespace

Comparing compare(std::span<const job::Sources> all, const Wanted &wanted) {
  Comparing result{.comparison = report::Comparison{}, .problems = {}};
  result.comparison->ranked = rows::ranked(wanted.rank);
  for (const auto &sources : all) {
    job::Resolution resolution = job::read_job(sources);
    add(result.problems, resolution.problems);
    if (resolution.job) {
      result.comparison->unit_system = resolution.job->shop.unit_system;
      const checks::Design design = checks::evaluate(std::move(*resolution.job));
      add(result.problems, design.log.problems);
      if (result.comparison->designs.empty()) {
        result.comparison->asked = rows::asked_of(design, wanted.show);
      }
      result.comparison->designs.push_back(report::compared(design, design.job.identity.name, wanted.show));
      if (report::is_drawn(result.comparison->designs.size() - 1, all.size())) {
        rows::draw(design, result.comparison->designs.back());
      }
    }
  }
  if (job::has_errors(result.problems)) {
    result.comparison.reset();
  } else {
    require_ranked_known(*result.comparison, report::overview(*result.comparison));
  }
  return result;
}

} // namespace purgewright::study
