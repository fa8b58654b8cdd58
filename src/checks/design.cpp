#include "purgewright/checks/design.hpp"

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

} // namespace purgewright::checks
