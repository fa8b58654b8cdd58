#include "purgewright/checks/design.hpp"

#include "topics.hpp"

#include "purgewright/checks/printing.hpp"
#include "purgewright/checks/rules.hpp"
#include "purgewright/fixture/figures.hpp"
#include "purgewright/fixture/setups.hpp"
#include "purgewright/gas/figures.hpp"
#include "purgewright/heat/figures.hpp"
#include "purgewright/units/ids.hpp"

#include <algorithm>
#include <cmath>
#include <future>
#include <iterator>
#include <utility>

namespace purgewright::checks {
namespace {

constexpr int most_advised_runs = 8; // shorter runs only add torch moves

} // namespace

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

namespace {

// Gas first: the torch's preflow is a part of the time between arcs. `options` takes it over.
Design with_models(job::Job job, heat::Options &options) {
  Design design = evaluate_closed_form(std::move(job));
  if (design.layout.buildable()) {
    design.log = gas::fit_job_log(design.job, design.layout, design.volumes, design.areas, design.bounds);
    design.purge = gas::plan_purge(design.job, design.layout, design.volumes, design.areas, design.bounds,
                                   gas::mixing_to_use(design.job, design.log));
    options.torch_preflow = design.purge.torch.preflow;
    design.heat = heat::plan_heat(design.job, design.layout, options);
    gas::add_use(design.job, design.heat.cycle, design.purge);
    design.series = heat::settle(design.job, design.layout, design.volumes, design.heat, options.contacts,
                                 design.purge.use.cycle);
    gas::add_warm_draught(design.job, design.layout, design.series.settled, design.purge);
    design.purge_known = true;
  }
  return design;
}

} // namespace

Design evaluate_purge(job::Job job) {
  heat::Options coarse{.detail = heat::Detail::coarse};
  return with_models(std::move(job), coarse);
}

namespace {

// No coarse plan made a peak or pool worse than the fine one by this share of its limit, on 22 stock tubes at
// three quarters to five quarters of their current; better by more it may make them.
constexpr double coarse_error = 0.3;

const Rule &rule_called(std::string_view id) {
  return *std::ranges::find(rules(), id, &Rule::id);
}

// A rule fails that no finer plan would pass.
bool fails_anyway(const Design &design) {
  return std::ranges::any_of(judge(design), [](const RuleResult &result) {
    if (result.status != Status::fail) {
      return false;
    }
    const auto left = margin(result.value, result.limit, result.bound);
    return rule_called(result.id).needs != Needs::heat || (left && *left < -coarse_error);
  });
}

Design with_warm_plan(job::Job job, heat::Options options) {
  Design design = with_models(std::move(job), options);
  if (design.purge_known) {
    heat::add_warm_plan(design.job, design.layout, options, design.series);
  }
  return design;
}

} // namespace

bool settled_is_hotter(const Design &d, Peak peak) {
  if (!d.series.warm) {
    return false;
  }
  const units::Temperature settled = *d.series.warm.*peak;
  return settled > d.heat.*peak || std::isnan(settled.value()); // what is no number is judged, not hidden
}

units::Temperature hottest(const Design &d, Peak peak) {
  return settled_is_hotter(d, peak) ? *d.series.warm.*peak : d.heat.*peak;
}

Design evaluate_coarse(job::Job job) {
  return with_warm_plan(std::move(job), {.detail = heat::Detail::coarse});
}

Design evaluate_row(job::Job job) {
  Design coarse = evaluate_coarse(job);
  return !coarse.purge_known || fails_anyway(coarse) ? coarse : with_warm_plan(std::move(job), {});
}

Design evaluate(job::Job job) {
  // The advice is several coarse plans: beside the fine one it costs no time of its own.
  struct Advice {
    heat::RunAdvice runs;
    heat::OrderAdvice order;
  };
  auto advice = std::async(std::launch::async, [job] {
    const fixture::Layout layout = fixture::lay_out(job);
    return layout.buildable() ? Advice{heat::advise_runs(job, layout, {}, most_advised_runs),
                                       heat::advise_order(job, layout, {})}
                              : Advice{};
  });
  heat::Options options{.history = true};
  Design design = with_models(std::move(job), options);
  if (design.purge_known) {
    options.hand_warm = heat::burn_threshold;
    heat::add_warm_plan(design.job, design.layout, options, design.series);
  }
  Advice given = advice.get();
  design.run_advice = std::move(given.runs);
  design.order_advice = given.order;
  heat::add_rim_shifts(design.job, judged_pool(design.heat), design.order_advice);
  return design;
}

namespace {

// A flowmeter may pass half of what it shows: common practice, no source.
constexpr double without_meter = 2.0;

units::Figure wait_without_meter(const gas::Purge &purge) {
  return {.id = std::string(ids::wait_without_meter),
          .value = without_meter * purge.wait().value(),
          .dimension = units::Dimension::time,
          .title = "Prepurge for a shop without an oxygen meter",
          .formula = "2 x purge.wait: a flowmeter may pass half of what it shows",
          .inputs = {std::string(ids::prepurge_wait)},
          .source = "common practice, no source",
          .basis = units::Basis::computed};
}

} // namespace

std::optional<units::Time> pace(const Design &d) {
  gas::Purge purge = d.purge;
  const auto lies = [&](units::Temperature fixture) {
    gas::add_warm_draught(d.job, d.layout, fixture, purge);
    return purge.bench.draught_warm >= std::min(d.job.shop.draught, d.purge.bench.draught_lying);
  };
  units::Temperature warm = std::min({series_limit(d), rubber_limit(d), d.series.settled}),
                     cool = d.heat.ambient;
  if (lies(warm)) {
    cool = warm;
  }
  constexpr double close = 0.1; // K
  while ((warm - cool).value() > close) {
    const units::Temperature middle = cool + 0.5 * (warm - cool);
    (lies(middle) ? cool : warm) = middle;
  }
  return cool < d.series.settled ? heat::period_for(d.series, d.heat.ambient, cool) : d.series.period;
}

std::optional<units::Time> bare_hand_pace(const Design &d) {
  const auto shortest = pace(d);
  if (!shortest || !d.series.warm || !d.series.warm->hand_warm) {
    return std::nullopt;
  }
  return std::max(*shortest, d.purge.use.cycle + *d.series.warm->hand_warm);
}

namespace {

units::Figures pace_figures(const Design &design) {
  const auto shortest = pace(design);
  if (!shortest) {
    return {};
  }
  units::Figures list{
      {.id = "heat.series.pace",
       .value = shortest->value(),
       .dimension = units::Dimension::time,
       .title = "Shortest time from part to part",
       .formula = "at which the chamber settles cool enough for gaskets, holds and the draught of the room",
       .inputs = {"heat.series.settled", "heat.series.time_constant", "shop.draught",
                  "heat.shielding_temperature"},
       .source = "heat/series.hpp, gas/purge.hpp",
       .basis = units::Basis::computed}};
  if (const auto bare = bare_hand_pace(design)) {
    list.push_back(
        {.id = "heat.series.bare_hand_pace",
         .value = bare->value(),
         .dimension = units::Dimension::time,
         .title = "Shortest time from part to part without gloves",
         .formula = "time for one part + wait until a bare hand may touch it; heat.series.pace at least",
         .inputs = {std::string(ids::cycle_time), "heat.series.hand_warm", "heat.series.pace"},
         .source = "definition",
         .basis = units::Basis::computed});
  }
  return list;
}

} // namespace

units::Figures figures(const Design &design) {
  units::Figures all = job::figures(design.job);
  if (design.layout.buildable()) {
    std::ranges::move(fixture::figures(design.job, design.layout, design.volumes, design.areas),
                      std::back_inserter(all));
    std::ranges::move(fixture::setup_figures(design.layout), std::back_inserter(all));
    std::ranges::move(gas::figures(design.job, design.bounds, design.purge), std::back_inserter(all));
    std::ranges::move(gas::log_figures(design.log), std::back_inserter(all));
    if (design.purge_known) {
      all.push_back(wait_without_meter(design.purge));
      std::ranges::move(heat::figures(design.heat), std::back_inserter(all));
      std::ranges::move(heat::figures(design.series, design.layout.body.kind), std::back_inserter(all));
      std::ranges::move(pace_figures(design), std::back_inserter(all));
      std::ranges::move(heat::figures(design.run_advice), std::back_inserter(all));
      std::ranges::move(heat::figures(design.order_advice), std::back_inserter(all));
      std::ranges::move(figures(part_heat(design)), std::back_inserter(all));
    }
  }
  return all;
}

} // namespace purgewright::checks
