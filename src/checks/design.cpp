#include "purgewright/checks/design.hpp"

#include "purgewright/fixture/figures.hpp"
#include "purgewright/gas/figures.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace purgewright::checks {

Design evaluate_closed_form(job::Job job) {
  Design design;
  design.job = std::move(job);
  design.layout = fixture::lay_out(design.job);
  if (design.layout.buildable()) {
    design.volumes = fixture::volumes(design.job, design.layout);
    design.areas = fixture::areas(design.job, design.layout);
    design.clearances = fixture::clearances(design.job, design.layout);
    design.bounds = gas::bound_prepurge(design.job, design.layout, design.volumes, design.areas);
  }
  return design;
}

Design evaluate_purge(job::Job job) {
  Design design = evaluate_closed_form(std::move(job));
  if (design.layout.buildable()) {
    design.log = gas::fit_job_log(design.job, design.layout, design.volumes, design.areas, design.bounds);
    design.purge = gas::plan_purge(design.job, design.layout, design.volumes, design.areas, design.bounds,
                                   gas::mixing_to_use(design.job, design.log));
    design.purge_known = true;
  }
  return design;
}

Design evaluate(job::Job job) { return evaluate_purge(std::move(job)); }

units::Figures figures(const Design &design) {
  units::Figures all = job::figures(design.job);
  if (design.layout.buildable()) {
    std::ranges::move(fixture::figures(design.job, design.layout, design.volumes, design.areas),
                      std::back_inserter(all));
    std::ranges::move(gas::figures(design.job, design.bounds, design.purge), std::back_inserter(all));
    std::ranges::move(gas::log_figures(design.log), std::back_inserter(all));
  }
  return all;
}

} // namespace purgewright::checks
