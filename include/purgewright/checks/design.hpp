// A design: the job and everything computed from it without solids. One call makes it; checks, reports,
// sweeps and drawings read it. What only solids can tell is added by `design`, which builds them.
#pragma once

#include "purgewright/fixture/access.hpp"
#include "purgewright/fixture/layout.hpp"
#include "purgewright/fixture/volumes.hpp"
#include "purgewright/gas/measured_log.hpp"
#include "purgewright/gas/purge.hpp"
#include "purgewright/heat/plan.hpp"
#include "purgewright/heat/series.hpp"
#include "purgewright/heat/shrinkage.hpp"
#include "purgewright/job/job.hpp"
#include "purgewright/units/figure.hpp"

#include <optional>
#include <string>
#include <vector>

namespace purgewright::checks {

// Metal that two parts claim at once, as the solids show it.
struct Clash {
  std::string first, second;
  units::Volume shared{};
};

struct Design {
  job::Job job;
  fixture::Layout layout;
  fixture::Volumes volumes;
  fixture::Areas areas;
  fixture::Clearances clearances;
  gas::Bounds bounds;
  gas::Purge purge;
  heat::HeatPlan heat;
  heat::Series series; // its warm plan by evaluate alone
  heat::RunAdvice run_advice;
  heat::OrderAdvice order_advice; // by evaluate alone
  bool purge_known = false;       // the models of purge and heat have been solved
  gas::LogFits log;               // the measured log that the job names, and what is wrong with it
  bool solids_known = false;      // the solids have been built and searched for clashes
  std::vector<Clash> clashes;
};

// Everything. Volumes, purge and heat are zero when the layout has conflicts.
Design evaluate(job::Job);

// The same for a search over jobs, several times quicker: heat by its coarse plan, no advice on the number of
// runs.
Design evaluate_purge(job::Job);

// The hotter of the first part's peak and that on the settled fixture, where that one is known: what rules
// judge. And whether it is the settled fixture's, whose figure is heat.series.X.peak where the first part's
// is heat.X.peak.
using Peak = units::Temperature heat::HeatPlan::*;
units::Temperature hottest(const Design &, Peak);
bool settled_is_hotter(const Design &, Peak);

// All that evaluate shows but the advice, by the coarse plan of heat: a first answer while evaluate is at
// work.
Design evaluate_coarse(job::Job);

// All that evaluate's rules judge, for a row of a sweep; by the coarse plan where it fails anyway.
Design evaluate_row(job::Job);

// All but the models of purge and heat, in closed form: what quick sweeps use, thousands a second. Neither
// purge, heat nor a measured log can be judged on it.
Design evaluate_closed_form(job::Job);

// Shortest time from part to part, one after another, at which the chamber keeps cool enough for its gaskets,
// for rubber, for holds to end and for its gas to lie in the room's draught: the cycle where it does so
// anyway, absent where one part alone warms it more. Needs purge and heat.
std::optional<units::Time> pace(const Design &);

// The same where nobody unloads with gloves: after the last hold each part lies until a bare hand may touch
// it. Needs evaluate.
std::optional<units::Time> bare_hand_pace(const Design &);

// Every figure of the design: job values, fixture, purge, heat. Job values alone when the layout has
// conflicts.
units::Figures figures(const Design &);

} // namespace purgewright::checks
