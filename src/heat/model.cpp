#include "purgewright/heat/model.hpp"

#include "heat/arc_heat.hpp"
#include "heat/require.hpp"
#include "heat/step.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

namespace purgewright::heat {

namespace {

using detail::Content;
using detail::Field;
using detail::Reading;
using detail::require;
using Eigen::Index;
using units::Temperature;
using units::Time;

constexpr double first_step = 0.1;     // s, after the arc strikes or goes out
constexpr double shortest_step = 1e-4; // s, taken whatever its error
constexpr double worst_error = 1e300;  // of a step that leads nowhere
constexpr double growth_most = 3.0, growth_least = 0.2, growth_margin = 0.9;

void check(const Surroundings &s) {
  constexpr std::string_view here = "heat model";
  require(s.outside_coefficient >= 0.0, here, "outside coefficient must not be negative",
          s.outside_coefficient);
  require(s.inside_coefficient >= 0.0, here, "inside coefficient must not be negative", s.inside_coefficient);
  require(s.ambient > coldest && s.ambient < units::kelvins(1000.0), here,
          "ambient must lie in 200 K to 1000 K", s.ambient.value());
  const Temperature start = s.start.value_or(s.ambient);
  require(start > coldest && start < units::kelvins(1000.0), here, "start must lie in 200 K to 1000 K",
          start.value());
}

void check(const Accuracy &a) {
  constexpr std::string_view here = "heat accuracy";
  require(a.step_error.value() > 0.0, here, "step error must be above 0", a.step_error.value());
  require(a.relative_step_error >= 0.0, here, "relative step error must not be negative",
          a.relative_step_error);
  require(a.arc_step > 0.0, here, "arc step must be above 0", a.arc_step);
  require(a.longest_step.value() > 0.0, here, "longest step must be above 0", a.longest_step.value());
  require(a.crossing.value() > 0.0, here, "crossing must be above 0", a.crossing.value());
}

void check(const Arc &arc) {
  constexpr std::string_view here = "weld";
  require(arc.power.value() >= 0.0, here, "power must not be negative", arc.power.value());
  require(arc.radius.value() > 0.0, here, "arc radius must be above 0", arc.radius.value());
  require(arc.joint_radius.value() > 0.0, here, "joint radius must be above 0", arc.joint_radius.value());
}

double hottest_of(const Reading &reading, Region region) {
  return reading.temperature.middleCols(Index(region.first), Index(region.last - region.first)).maxCoeff();
}

} // namespace

struct Model::State {
  State(Chain c, Surroundings s, Accuracy a)
      : chain(std::move(c)), surroundings(std::move(s)), accuracy(std::move(a)),
        stepper(chain, surroundings) {
    const auto rings = Index(chain.rings.size());
    content.enthalpy.resize(chain.angles, rings);
    rest.resize(rings);
    for (Index j = 0; j < rings; ++j) {
      rest(j) =
          stepper.enthalpy_at(std::size_t(j), surroundings.start.value_or(surroundings.ambient).value());
      content.enthalpy.col(j).setConstant(rest(j));
    }
    heat.setZero(chain.angles, rings);
    round.setZero(chain.angles);
    stepper.read(content, now);
    reset_peaks();
  }

  void reset_peaks() { peaks = now.temperature.colwise().maxCoeff().transpose(); }
  double hottest(Region region) const { return hottest_of(now, region); }
  // Spreads the arc's heat over the cells while it travels from `done` to `done + dt`.
  void aim(const Arc &, double done, double dt);
  // Tries a step of `dt`; whether its error allows it or it cannot be shorter. Sets the next step.
  bool attempt(double dt);
  // Shortens the step tried last until it ends no more than `crossing` beyond a limit; `before` and
  // `beyond` say how far beyond its start and its end lie, `again` prepares another length. Returns the
  // length.
  double land(double dt, double before, const std::function<double()> &beyond,
              const std::function<void(double)> &again);
  // What the model would say were the step tried last accepted.
  double of_trial(double dt, const std::function<double(const Model &)> &, const Model &);
  void accept(double dt);

  Chain chain;
  Surroundings surroundings;
  Accuracy accuracy;
  detail::Stepper stepper;
  Content content, trial;
  Reading now, after;
  Field heat; // W per cell
  Eigen::ArrayXd along, round, rest, peaks;
  double power = 0.0, time = 0.0, in = 0.0, next_step = first_step;
  long steps = 0, refused = 0;
  std::function<void(const Model &)> watcher;
};

void Model::State::aim(const Arc &arc, double done, double dt) {
  const double start = arc.start.value() + arc.speed * done;
  detail::shares_round(start, start + arc.speed * dt, units::ratio(arc.radius, arc.joint_radius), round);
  heat = (power * round.matrix() * along.matrix().transpose()).array();
}

bool Model::State::attempt(double dt) {
  const bool sense = stepper.step(content, now, heat, dt, trial, after);
  if (!sense && dt <= shortest_step) {
    throw std::runtime_error(
        fmt::format("heat model: {} s after the first arc even a step of {} s leads nowhere", time, dt));
  }
  const double error =
      sense ? stepper.error(after, accuracy.step_error.value(), accuracy.relative_step_error) : worst_error;
  const double growth = growth_margin / std::sqrt(std::max(error, 1e-6));
  next_step = std::min(dt * std::clamp(growth, growth_least, growth_most), accuracy.longest_step.value());
  next_step = std::max(next_step, shortest_step);
  if (!sense || (error > 1.0 && dt > shortest_step)) {
    ++refused;
    return false;
  }
  return true;
}

double Model::State::land(double dt, double before, const std::function<double()> &beyond,
                          const std::function<void(double)> &again) {
  const double planned = next_step, most = accuracy.crossing.value();
  for (int i = 0; i < 6; ++i) {
    const double end = beyond();
    if (end <= most || end - before < 1e-9) {
      break;
    }
    const double shorter = dt * std::clamp((0.5 * most - before) / (end - before), 0.02, 0.98);
    again(shorter);
    if (!stepper.step(content, now, heat, shorter, trial, after)) {
      break;
    }
    dt = shorter;
  }
  next_step = planned;
  return dt;
}

double Model::State::of_trial(double dt, const std::function<double(const Model &)> &say,
                              const Model &model) {
  std::swap(now, after);
  time += dt;
  const double said = say(model);
  std::swap(now, after);
  time -= dt;
  return said;
}

void Model::State::accept(double dt) {
  std::swap(content, trial);
  std::swap(now, after);
  peaks = peaks.max(now.temperature.colwise().maxCoeff().transpose());
  time += dt;
  in += power * dt;
  ++steps;
}

Model::Model(const Chain &chain, const Surroundings &surroundings, const Accuracy &accuracy) {
  check(surroundings);
  check(accuracy);
  state_ = std::make_unique<State>(chain, surroundings, accuracy);
}
Model::~Model() = default;
Model::Model(Model &&) noexcept = default;
Model &Model::operator=(Model &&) noexcept = default;

void Model::weld(const Arc &arc, Time duration, const std::function<double(const Model &)> &pedal) {
  burn(arc, duration, pedal, {});
}

Time Model::weld_until(const Arc &arc, const std::function<double(const Model &)> &beyond, Time most) {
  return burn(arc, most, {}, beyond);
}

Time Model::burn(const Arc &arc, Time most, const std::function<double(const Model &)> &pedal,
                 const std::function<double(const Model &)> &beyond) {
  check(arc);
  require(most.value() >= 0.0, "weld", "duration must not be negative", most.value());
  State &s = *state_;
  const double deviation = units::ratio(arc.radius, arc.joint_radius);
  s.along = detail::shares_along(s.chain, arc.offset.value(), arc.radius.value());
  const double travel = arc.speed == 0.0 ? 1e300 : s.accuracy.arc_step * deviation / std::abs(arc.speed);
  s.power = arc.power.value();
  s.next_step = std::min(first_step, s.accuracy.longest_step.value());
  double done = 0.0, before = beyond ? beyond(*this) : -1.0;
  while (done < most.value() && before < 0.0) {
    const double left = most.value() - done;
    double dt = std::min({s.next_step, travel, left});
    s.aim(arc, done, dt);
    if (!s.attempt(dt)) {
      continue;
    }
    if (beyond) {
      const auto again = [&](double shorter) {
        dt = shorter;
        s.aim(arc, done, dt);
      };
      dt = s.land(
          dt, before, [&] { return s.of_trial(dt, beyond, *this); }, again);
    }
    s.accept(dt);
    done = dt == left ? most.value() : done + dt;
    if (s.watcher) {
      s.watcher(*this);
    }
    before = beyond ? beyond(*this) : -1.0;
    s.power = arc.power.value() * (pedal ? std::clamp(pedal(*this), 0.0, 1.0) : 1.0);
  }
  s.power = 0.0;
  s.heat.setZero();
  s.next_step = std::min(first_step, s.accuracy.longest_step.value());
  return units::seconds(done);
}

void Model::cool(Time duration) {
  require(duration.value() >= 0.0, "cool", "duration must not be negative", duration.value());
  State &s = *state_;
  for (double done = 0.0; done < duration.value();) {
    const double left = duration.value() - done;
    const double dt = std::min(s.next_step, left);
    if (s.attempt(dt)) {
      s.accept(dt);
      done = dt == left ? duration.value() : done + dt;
      if (s.watcher) {
        s.watcher(*this);
      }
    }
  }
}

Time Model::cool_until(Region region, Temperature limit, Time most) {
  State &s = *state_;
  const auto below = [&](const Reading &reading) { return limit.value() - hottest_of(reading, region); };
  double done = 0.0;
  while (!region.empty() && done < most.value() && below(s.now) < 0.0) {
    double dt = std::min(s.next_step, most.value() - done);
    if (!s.attempt(dt)) {
      continue;
    }
    dt = s.land(
        dt, below(s.now), [&] { return below(s.after); }, [](double) {});
    s.accept(dt);
    done += dt;
    if (s.watcher) {
      s.watcher(*this);
    }
  }
  return units::seconds(done);
}

void Model::set_ring(std::size_t ring, Temperature temperature) {
  State &s = *state_;
  const double enthalpy = s.stepper.enthalpy_at(ring, temperature.value());
  auto column = s.content.enthalpy.col(Index(ring));
  s.in += s.stepper.mass(Index(ring)) * (enthalpy - column).sum();
  column.setConstant(enthalpy);
  s.stepper.read(s.content, s.now);
  s.reset_peaks();
  s.next_step = std::min(first_step, s.accuracy.longest_step.value());
}

Temperature Model::hottest(Region region) const {
  return units::kelvins(region.empty() ? state_->surroundings.ambient.value() : state_->hottest(region));
}
Temperature Model::at(std::size_t ring, std::size_t angle) const {
  return units::kelvins(state_->now.temperature(Index(angle), Index(ring)));
}
Temperature Model::mean(std::size_t ring) const {
  return units::kelvins(state_->now.temperature.col(Index(ring)).mean());
}
Temperature Model::body(Body body) const {
  return units::kelvins(state_->now.bodies[std::size_t(body)]);
}
Temperature Model::peak(std::size_t ring) const {
  return units::kelvins(state_->peaks(Index(ring)));
}
void Model::reset_peaks() {
  state_->reset_peaks();
}
Time Model::now() const {
  return units::seconds(state_->time);
}
long Model::steps() const {
  return state_->steps;
}
long Model::refused_steps() const {
  return state_->refused;
}
const Chain &Model::chain() const {
  return state_->chain;
}
void Model::watch(std::function<void(const Model &)> watcher) {
  state_->watcher = std::move(watcher);
}

Energy Model::energy() const {
  const State &s = *state_;
  Energy energy{.in = s.in, .bodies = s.stepper.body_energy(s.content.bodies), .lost = s.content.lost};
  for (Index j = 0; j < Index(s.chain.rings.size()); ++j) {
    energy.stored += s.stepper.mass(j) * (s.content.enthalpy.col(j) - s.rest(j)).sum();
  }
  return energy;
}

} // namespace purgewright::heat
