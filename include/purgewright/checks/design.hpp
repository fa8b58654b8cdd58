// A design: the job and everything computed from it without solids. One call makes it; checks, reports, sweeps
// and drawings read it.
#pragma once

#include "purgewright/fixture/layout.hpp"
#include "purgewright/fixture/volumes.hpp"
#include "purgewright/gas/measured_log.hpp"
#include "purgewright/gas/purge.hpp"
#include "purgewright/job/job.hpp"
#include "purgewright/units/figure.hpp"

namespace purgewright::checks {

struct Design {
  job::Job job;
  fixture::Layout layout;
  fixture::Volumes volumes;
  fixture::Areas areas;
  gas::Bounds bounds;
  gas::Purge purge;
  bool purge_known = false; // the full purge model has been solved
  gas::LogFits log;         // the measured log that the job names, and what is wrong with it
};

// Everything. Volumes and purge are zero when the layout has conflicts.
Design evaluate(job::Job);

// All but the full purge model, in closed form: what sweeps use, thousands a second.
Design evaluate_closed_form(job::Job);

// Every figure of the design: job values, fixture, purge. Job values alone when the layout has conflicts.
units::Figures figures(const Design &);

} // namespace purgewright::checks
