#include "purgewright/checks/design.hpp"

#include "purgewright/fixture/figures.hpp"
#include "purgewright/gas/figures.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace purgewright::checks {

Design evaluate(job::Job job) {
  Design design{.job = std::move(job), .layout = {}, .volumes = {}, .areas = {}, .purge = {}};
  design.layout = fixture::lay_out(design.job);
  if (design.layout.buildable()) {
    design.volumes = fixture::volumes(design.job, design.layout);
    design.areas = fixture::areas(design.job, design.layout);
    design.purge = gas::plan_purge(design.job, design.layout, design.volumes, design.areas);
  }
  return design;
}

units::Figures figures(const Design &design) {
  units::Figures all = job::figures(design.job);
  if (design.layout.buildable()) {
    std::ranges::move(fixture::figures(design.job, design.layout, design.volumes, design.areas),
                      std::back_inserter(all));
    std::ranges::move(gas::figures(design.purge), std::back_inserter(all));
  }
  return all;
}

} // namespace purgewright::checks
