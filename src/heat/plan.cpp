#include "purgewright/heat/plan.hpp"

#include "heat/pool.hpp"
#include "heat/scene.hpp"
#include "purgewright/standards/welding.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace purgewright::heat {

namespace {

using detail::Scene;
using units::Length;
using units::Temperature;
using units::Time;

// Straight between the rings on either side.
template <class Reading> Temperature at(const detail::Place &place, Reading reading) {
  return units::kelvins((1.0 - place.share) * reading(place.ring).value() +
                        place.share * reading(place.ring + 1).value());
}

// Makes tacks and runs one after the other on one model.
class Bench {
 public:
  Bench(const Scene &scene, const Options &options, HeatPlan &plan)
      : scene_(scene), options_(options), plan_(plan),
        model_(scene.chain, scene.surroundings, scene.accuracy) {
    model_.watch([this](const Model &) { note_step(); });
  }

  Weld tack(const fixture::Pass &pass);
  Weld spot(const fixture::Pass &pass, bool last);
  Weld run(const fixture::Pass &pass, bool last);
  // Lets the work cool where it is until none of it is warmer; absent when that takes longer than `most`.
  std::optional<Time> cool_to(Temperature limit, Time most);
  const Model &model() const { return model_; }

 private:
  // An arc that stands still, and what it struck on.
  struct Standing {
    Arc arc;
    Temperature on{};
    Time since{};
    Temperature hottest{}; // of both edges so far
  };
  Weld strike(const fixture::Pass &, units::Angle place);
  Temperature edge(const Model &, std::size_t ring) const;
  double over_melting(const Model &) const;
  double over_spot(const Model &) const;
  Length melted_width(double over, Time burning) const;
  void note_spot(Weld &);
  void stand_still(const Weld &, units::Angle place);
  double watch_pool(Weld &) const;
  template <class Reading> Temperature under_pin(Reading) const;
  Time wait_before_run();
  void dwell(Weld &);
  void travel(const Arc &, Weld &);
  void taper(Arc, Weld &);
  void follow(Weld &);
  Time hold(Weld &, bool last);
  void note_step();
  void sample();

  const Scene &scene_;
  const Options &options_;
  HeatPlan &plan_;
  Model model_;
  bool arc_ = false, first_ = true;
  std::optional<Standing> standing_;
};

void Bench::note_step() {
  if (standing_) {
    standing_->hottest = std::max(
        {standing_->hottest, edge(model_, scene_.chain.joint - 1), edge(model_, scene_.chain.joint)});
  }
  if (options_.history) {
    sample();
  }
}

void Bench::sample() {
  Temperature joint = model_.hottest(scene_.joint_zone);
  if (standing_) {
    joint = std::max({joint, edge(model_, scene_.chain.joint - 1), edge(model_, scene_.chain.joint)});
  }
  const auto now = [&](std::size_t ring) { return model_.hottest({ring, ring + 1}); };
  plan_.history.push_back({.time = model_.now(),
                           .joint = joint,
                           .under_pin = under_pin(now),
                           .o_ring = at(scene_.o_ring, now),
                           .arc = arc_});
}

// Hottest under the pin's contact: at its outer edge, the nearest to the weld, straight between rings.
template <class Reading> Temperature Bench::under_pin(Reading reading) const {
  const auto &rings = scene_.chain.rings;
  const Temperature centre = reading(scene_.cap_centre);
  for (std::size_t i = scene_.chain.joint + 1; i < rings.size(); ++i) {
    const double radius = rings[i].radius;
    if (radius <= scene_.contact_radius) {
      const double farther = rings[i - 1].radius;
      const double share = std::clamp((scene_.contact_radius - radius) / (farther - radius), 0.0, 1.0);
      const double near = reading(i).value(), far = reading(i - 1).value();
      return std::max(centre, units::kelvins(near + share * (far - near)));
    }
  }
  return centre;
}

// Reads what the model noted since the arc struck.
void Bench::follow(Weld &weld) {
  const auto &rings = scene_.chain.rings;
  weld.joint_peak = std::max(weld.joint_peak, weld.standing_peak);
  for (std::size_t i = scene_.joint_zone.first; i < scene_.joint_zone.last; ++i) {
    weld.joint_peak = std::max(weld.joint_peak, model_.peak(i));
  }
  for (std::size_t i = scene_.uncovered.first; i < scene_.uncovered.last; ++i) {
    weld.uncovered_peak = std::max(weld.uncovered_peak, model_.peak(i));
  }
  for (std::size_t i = scene_.chain.joint; i-- > 0;) {
    const double here = model_.peak(i).value(), limit = plan_.shielding_temperature.value();
    if (here <= limit) {
      const double before =
          model_.peak(i + 1).value(); // of the ring nearer the joint, above the limit if any is
      if (before > limit && i + 1 < scene_.chain.joint) {
        const double share = (before - limit) / (before - here);
        weld.hot_zone =
            units::metres(-rings[i + 1].position + share * (rings[i + 1].position - rings[i].position));
      }
      break;
    }
    weld.hot_zone = units::metres(0.5 * rings[i].length - rings[i].position);
  }
  const auto peak = [&](std::size_t ring) { return model_.peak(ring); };
  weld.o_ring_peak = at(scene_.o_ring, peak);
  weld.wiper_peak = at(scene_.wiper, peak);
  weld.cap_centre_peak = model_.peak(scene_.cap_centre);
  weld.tube_edge_peak = std::max(weld.tube_edge_peak, model_.peak(scene_.chain.joint - 1));
  weld.cap_edge_peak = std::max(weld.cap_edge_peak, model_.peak(scene_.chain.joint));
  weld.pin_contact_peak = under_pin(peak);
  if (scene_.roller) {
    weld.roller_peak = at(*scene_.roller, peak);
  }
}

// The uncovered tube is nearly always the cooler; when it is not, its time runs on beside the hold.
Time Bench::hold(Weld &weld, bool last) {
  const Temperature limit = plan_.shielding_temperature;
  const Time most = options_.longest_hold;
  weld.uncovered_hold = model_.cool_until(scene_.uncovered, limit, most);
  Time hold = weld.uncovered_hold;
  if (model_.hottest(scene_.joint_zone) > limit || hold.value() == 0.0) {
    hold += model_.cool_until(scene_.joint_zone, limit, most - hold);
  }
  if (last) {
    hold += model_.cool_until(scene_.everything, limit, most - hold);
  }
  weld.reached = model_.hottest(last ? scene_.everything : scene_.joint_zone) <= limit &&
                 model_.hottest(scene_.uncovered) <= limit;
  return hold;
}

Weld Bench::strike(const fixture::Pass &pass, units::Angle place) {
  if (!first_) {
    model_.cool(options_.torch_move + options_.torch_preflow);
  }
  first_ = false;
  Weld weld;
  weld.pass = pass;
  weld.strikes = model_.now();
  weld.start_temperature = detail::at_angle(model_, scene_.chain.joint, place);
  weld.joint_before = model_.hottest(scene_.joint_zone);
  model_.reset_peaks();
  arc_ = true;
  return weld;
}

// Over the middle of the nearest cell, where the mean of cells smears the arc the least; of two as near the
// one that the weld goes on into.
void Bench::stand_still(const Weld &weld, units::Angle place) {
  standing_ = {.arc = scene_.arc, .on = weld.start_temperature, .since = weld.strikes};
  constexpr double tie = 1e-6; // of a cell
  const double cell = 2.0 * units::pi / scene_.chain.angles;
  const double onwards = weld.pass.end >= weld.pass.start ? tie : -tie;
  standing_->arc.start = units::radians(cell * (std::floor(place.value() / cell + onwards) + 0.5));
  standing_->arc.speed = 0.0;
}

// Under the arc that stands.
Temperature Bench::edge(const Model &model, std::size_t ring) const {
  return detail::under_standing_arc(model, ring, standing_->arc, standing_->on,
                                    model.now() - standing_->since);
}

// By how much the colder of the two edges is above its melting, K: a tack holds when the metal on both sides
// of the joint has melted.
double Bench::over_melting(const Model &model) const {
  const Chain &chain = scene_.chain;
  double least = std::numeric_limits<double>::infinity();
  for (const std::size_t ring : {chain.joint - 1, chain.joint}) {
    least = std::min(least, (edge(model, ring) - chain.metals[chain.rings[ring].metal].liquidus).value());
  }
  return least;
}

// The arc stands still on the tack's middle until both edges have surely melted.
Weld Bench::tack(const fixture::Pass &pass) {
  const units::Angle middle = 0.5 * (pass.start + pass.end);
  Weld weld = strike(pass, middle);
  stand_still(weld, middle);
  const double margin = options_.tack_margin.value();
  const auto melted = [&](const Model &model) { return over_melting(model) - margin; };
  weld.welding = model_.weld_until(standing_->arc, melted, options_.longest_tack);
  if (weld.welding < options_.least_tack) {
    model_.weld(standing_->arc, options_.least_tack - weld.welding);
    weld.welding = options_.least_tack;
  }
  weld.tube_edge_peak = edge(model_, scene_.chain.joint - 1);
  weld.cap_edge_peak = edge(model_, scene_.chain.joint);
  weld.standing_peak = standing_->hottest;
  weld.start_pool = melted_width(over_melting(model_), weld.welding);
  standing_.reset();
  arc_ = false;
  weld.hold = hold(weld, false);
  follow(weld);
  return weld;
}

// Notes the pool's size; returns its width.
double Bench::watch_pool(Weld &weld) const {
  const detail::Pool pool = detail::pool_of(model_, scene_.arc.joint_radius.value());
  weld.pool_width = std::max(weld.pool_width, units::metres(pool.width));
  weld.pool_length = std::max(weld.pool_length, units::metres(pool.length));
  return pool.width;
}

Time Bench::wait_before_run() {
  return plan_.interpass_temperature
             ? model_.cool_until(scene_.joint_zone, *plan_.interpass_temperature, options_.longest_hold)
             : Time{};
}

Weld Bench::run(const fixture::Pass &pass, bool last) {
  const Time wait = wait_before_run();
  Arc arc = scene_.arc;
  arc.start = pass.start;
  arc.speed = pass.end >= pass.start ? arc.speed : -arc.speed;
  Weld weld = strike(pass, pass.start);
  weld.interpass_wait = wait;
  dwell(weld);
  travel(arc, weld);
  taper(arc, weld);
  weld.welding = model_.now() - weld.strikes;
  arc_ = false;
  weld.hold = hold(weld, last);
  follow(weld);
  return weld;
}

// The arc stands on the run's start until the joint has melted to its bottom.
void Bench::dwell(Weld &weld) {
  stand_still(weld, weld.pass.start);
  const double through = plan_.through_wall.value();
  const auto melted = [&](const Model &model) { return over_melting(model) - through; };
  weld.dwell = model_.weld_until(standing_->arc, melted, options_.longest_dwell);
  watch_pool(weld);
  weld.start_pool = melted_width(over_melting(model_), weld.dwell);
  weld.pool_width = std::max(weld.pool_width, weld.start_pool);
  weld.pool_length = std::max(weld.pool_length, weld.start_pool);
  weld.tube_edge_peak = edge(model_, scene_.chain.joint - 1);
  weld.cap_edge_peak = edge(model_, scene_.chain.joint);
  weld.standing_peak = standing_->hottest;
  standing_.reset();
}

// By how much the colder edge under a spot's arc is above what melts the wall's bottom as far as the spots
// are apart: they overlap there by half.
double Bench::over_spot(const Model &model) const {
  const double wanted = detail::over_for(scene_.chain.metals.front(),
                                         0.5 / standards::spot_pitch_most * plan_.spot_pitch.value(),
                                         standing_->arc, standing_->on, model.now() - standing_->since);
  return over_melting(model) - plan_.through_wall.value() - wanted;
}

// Of what an arc that stands has melted whose colder edge is this much above its melting, K.
Length Bench::melted_width(double over, Time burning) const {
  return units::metres(
      2.0 * detail::melted_half(scene_.chain.metals.front(), over, standing_->arc, standing_->on, burning));
}

// Of a spot, as its arc goes out.
void Bench::note_spot(Weld &weld) {
  const double over = over_melting(model_);
  weld.pool_width = weld.pool_length = melted_width(over, weld.dwell);
  weld.bottom_length = melted_width(over - plan_.through_wall.value(), weld.dwell);
  weld.tube_edge_peak = edge(model_, scene_.chain.joint - 1);
  weld.cap_edge_peak = edge(model_, scene_.chain.joint);
  weld.end_peak = std::min(weld.tube_edge_peak, weld.cap_edge_peak);
}

Weld Bench::spot(const fixture::Pass &pass, bool last) {
  const Time wait = wait_before_run();
  Weld weld = strike(pass, pass.start);
  weld.interpass_wait = wait;
  stand_still(weld, pass.start);
  weld.dwell = model_.weld_until(
      standing_->arc, [this](const Model &model) { return over_spot(model); }, options_.longest_dwell);
  if (weld.dwell < options_.least_tack) {
    model_.weld(standing_->arc, options_.least_tack - weld.dwell);
    weld.dwell = options_.least_tack;
  }
  weld.welding = weld.dwell;
  note_spot(weld);
  weld.standing_peak = standing_->hottest;
  standing_.reset();
  arc_ = false;
  weld.hold = hold(weld, last);
  follow(weld);
  return weld;
}

void Bench::travel(const Arc &arc, Weld &weld) {
  double share = 1.0;
  Time before = model_.now();
  const Time travel = units::seconds(weld.pass.extent().value() / scene_.arc.speed);
  const Time half_way = before + 0.5 * travel;
  model_.weld(arc, travel, [&](const Model &model) {
    share = detail::pedal_after(share, watch_pool(weld), plan_.pool_target.value(), model.now() - before);
    before = model.now();
    weld.least_current = std::min(weld.least_current, share);
    if (model.now() >= half_way) { // where the arc is over the middle of a cell this shows the pool best
      weld.end_peak = std::max(weld.end_peak, model.hottest(scene_.joint_zone));
    }
    return share;
  });
  weld.end_current = share;
}

void Bench::taper(Arc arc, Weld &weld) {
  const Time wanted = units::seconds(weld.end_current * plan_.current.value() / options_.taper_rate);
  constexpr double tenth = 0.1; // s, as it is told
  weld.taper = std::clamp(units::seconds(tenth * std::ceil(wanted.value() / tenth - 1e-9)),
                          options_.least_taper, options_.longest_taper);
  weld.run_out = units::radians(scene_.arc.speed * weld.taper.value());
  const Time began = model_.now();
  arc.start = weld.pass.end;
  arc.power = weld.end_current * arc.power;
  model_.weld(arc, weld.taper,
              [&](const Model &model) { return 1.0 - units::ratio(model.now() - began, weld.taper); });
}

std::optional<Time> Bench::cool_to(Temperature limit, Time most) {
  model_.watch({});
  const Time taken = model_.cool_until(scene_.everything, limit, most);
  return model_.hottest(scene_.everything) <= limit ? std::optional(taken) : std::nullopt;
}

void settle(const Bench &bench, HeatPlan &plan) {
  for (const auto *list : {&plan.tacks, &plan.runs}) {
    for (const Weld &weld : *list) {
      plan.longest_hold = std::max(plan.longest_hold, weld.hold);
      plan.longest_interpass_wait = std::max(plan.longest_interpass_wait, weld.interpass_wait);
      plan.arc_time += weld.welding;
      plan.o_ring_peak = std::max(plan.o_ring_peak, weld.o_ring_peak);
      plan.wiper_peak = std::max(plan.wiper_peak, weld.wiper_peak);
      plan.cap_centre_peak = std::max(plan.cap_centre_peak, weld.cap_centre_peak);
      plan.joint_peak = std::max(plan.joint_peak, weld.joint_peak);
      plan.pin_contact_peak = std::max(plan.pin_contact_peak, weld.pin_contact_peak);
      plan.pool_width = std::max(plan.pool_width, weld.pool_width);
      plan.hot_zone = std::max(plan.hot_zone, weld.hot_zone);
      plan.roller_peak = std::max({plan.roller_peak, plan.ambient, weld.roller_peak.value_or(plan.ambient)});
    }
  }
  plan.cycle = bench.model().now();
  plan.energy = bench.model().energy();
  plan.steps = bench.model().steps() + bench.model().refused_steps();
  plan.pin_peak = bench.model().body(Body::pin);
  plan.chamber_peak = bench.model().body(Body::chamber);
}

} // namespace

units::Current HeatPlan::pedal_low() const {
  double share = 1.0;
  for (const Weld &run : runs) {
    share = std::min(share, run.end_current);
  }
  return share * current;
}

units::Current HeatPlan::pedal_high() const {
  return runs.empty() ? current : std::ranges::max(runs, {}, &Weld::end_current).end_current * current;
}

bool HeatPlan::within_limits() const {
  const auto reached = [](const Weld &weld) { return weld.reached; };
  return std::all_of(tacks.begin(), tacks.end(), reached) && std::all_of(runs.begin(), runs.end(), reached) &&
         o_ring_peak <= o_ring_limit && cap_centre_peak <= cap_centre_limit &&
         pin_contact_peak <= pin_contact_limit && hot_zone <= covered;
}

namespace {

// Heat that enters evenly over the top of a plate and stays in it leaves its bottom colder than its mean by
// q t / (6 k). q is the middle of a Gaussian arc.
units::TemperatureDifference through_wall(const Arc &arc, const job::Job &job, const Metal &metal) {
  const double flux = arc.power.value() / (2.0 * units::pi * arc.radius.value() * arc.radius.value());
  return units::TemperatureDifference::from_value(flux * job.tube.wall.value() /
                                                  (6.0 * metal.pool_conductivity));
}

std::string metal_source(const job::Job &job) {
  const auto of = [](const standards::Metal &metal) {
    return fmt::format("{}: conductivity {}; specific heat {}", metal.title, metal.conductivity.source,
                       metal.specific_heat.source);
  };
  const std::string tube = of(*job.tube.material);
  return job.cap.material == job.tube.material ? tube : fmt::format("{}; {}", tube, of(*job.cap.material));
}

} // namespace

HeatPlan plan_heat(const job::Job &job, const fixture::Layout &layout, const Options &options) {
  HeatPlan plan;
  plan.metal_source = metal_source(job);
  plan.shielding_temperature = options.shielding_temperature.value_or(job.weld.shielding_temperature);
  const Scene scene = detail::scene_of(job, layout, options, plan.shielding_temperature);
  plan.detail = options.detail;
  plan.ambient = options.ambient;
  plan.interpass_temperature = job.weld.interpass_temperature;
  plan.o_ring_limit = options.o_ring_limit;
  plan.cap_centre_limit = options.cap_centre_limit.value_or(scene.chain.metals[1].beta_transus);
  plan.pin_contact_limit = standards::contact_melts(*job.cap.material, *job.fixture.pin_material);
  plan.cavity = -layout.body.cavity_start;
  plan.covered = -layout.body.x_min;
  plan.joint_zone = 0.5 * job.torch.cup_bore;
  plan.current = job.weld.current;
  plan.power = scene.arc.power;
  plan.line_energy = (scene.arc.power / job.weld.travel_speed).value();
  plan.outside_coefficient = scene.surroundings.outside_coefficient;
  plan.inside_coefficient = scene.surroundings.inside_coefficient;
  plan.torch_move = options.torch_move + options.torch_preflow;
  plan.torch_preflow = options.torch_preflow;
  plan.longest_hold_allowed = options.longest_hold;
  plan.arc_radius = options.arc_radius;
  plan.tack_length = options.tack_length;
  plan.pool_target = standards::kept_pool(job.tube.wall, job.tube.outside_diameter, job.cap.rim());
  plan.through_wall = through_wall(scene.arc, job, scene.chain.metals.front());
  if (job.rotation.seam == job::Seam::spots) {
    plan.spot_pitch = units::pi / double(job.rotation.runs) * job.tube.outside_diameter;
  }
  Bench bench(scene, options, plan);
  for (const fixture::Pass &pass : fixture::tack_passes(job, options.tack_length)) {
    plan.tacks.push_back(bench.tack(pass));
  }
  const std::vector<fixture::Pass> passes = fixture::run_passes(job);
  const bool spots = job.rotation.seam == job::Seam::spots;
  for (std::size_t i = 0; i < passes.size(); ++i) {
    const bool last = i + 1 == passes.size();
    plan.runs.push_back(spots ? bench.spot(passes[i], last) : bench.run(passes[i], last));
  }
  settle(bench, plan);
  if (options.hand_warm) {
    plan.hand_warm = bench.cool_to(*options.hand_warm, options.longest_hand_warm);
  }
  return plan;
}

RunAdvice advise_runs(const job::Job &job, const fixture::Layout &layout, Options options, int most) {
  options.detail = Detail::coarse;
  options.history = false;
  RunAdvice advice;
  if (job.rotation.seam == job::Seam::spots) {
    return advice; // as many as overlap
  }
  job::Job varied = job;
  for (int runs = 1; runs <= most; ++runs) {
    varied.rotation.runs = runs;
    const units::Angle share = units::radians(2.0 * units::pi / runs);
    if (varied.rotation.overlap >= share) {
      break;
    }
    const HeatPlan plan = plan_heat(varied, layout, options);
    advice.rows.push_back({runs, plan.within_limits(), plan.cycle, plan.longest_hold});
    if (!plan.within_limits()) {
      continue;
    }
    if (advice.fewest == 0) {
      advice.fewest = runs;
      advice.longest_run = share + job.rotation.overlap;
    }
  }
  return advice;
}

} // namespace purgewright::heat
