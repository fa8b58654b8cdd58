#include "gas/log/family.hpp"
#include "gas/require.hpp"

#include <Eigen/Dense>
#include <nlopt.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <span>

namespace purgewright::gas {
namespace {

using log::Curve;
using log::Family;
using log::Meter;

constexpr std::size_t most_fitted_readings = 2000; // more are thinned evenly: the curve has no finer detail
constexpr double tightest = 1e-4; // decades: a smaller misfit is the curve's own interpolation

enum Parameter : std::size_t { log_tanks, delay, log_floor, lag, parameter_count };
using Point = std::array<double, parameter_count>;

struct Problem {
  const Family &family;
  std::vector<double> times, log_oxygen; // log10
  double last = 0.0;                     // s
  double most_lag = 0.0;                 // s, by the meter's stated response

  Meter meter(const Point &p) const {
    return {family.curve(p[log_tanks], std::exp(p[log_floor])), p[lag], p[delay]};
  }
  Eigen::VectorXd misfits(const Point &p) const {
    const Meter shown = meter(p);
    Eigen::VectorXd result(static_cast<Eigen::Index>(times.size()));
    for (std::size_t i = 0; i < times.size(); ++i) {
      result(static_cast<Eigen::Index>(i)) = shown.shows(times[i]) - log_oxygen[i];
    }
    return result;
  }
  double squares(const Point &p) const { return misfits(p).squaredNorm(); }
  // How the misfits change with the logarithm of the flow: the curve runs the faster, delay and lag do not.
  Eigen::VectorXd flow_slopes(const Point &p) const {
    constexpr double step = 1e-3;
    const auto at = [&](double faster) {
      const Meter shown(family.curve(p[log_tanks], std::exp(p[log_floor])), p[lag] * faster, 0.0);
      Eigen::VectorXd result(static_cast<Eigen::Index>(times.size()));
      for (std::size_t i = 0; i < times.size(); ++i) {
        result(static_cast<Eigen::Index>(i)) = shown.shows((times[i] - p[delay]) * faster);
      }
      return result;
    };
    return (at(std::exp(step)) - at(std::exp(-step))) / (2.0 * step);
  }
  Point low() const { return {0.0, 0.0, std::log(1e-8), 0.0}; }
  Point high() const { return {std::log(most_fitted_tanks), last, std::log(0.1), most_lag}; }
};

// A first-order lag shows 90 % of a step after ln 10 lags.
Problem pose(const Family &family, const Readings &readings, units::Time response) {
  Problem problem{.family = family,
                  .times = {},
                  .log_oxygen = {},
                  .last = readings.times.back().value(),
                  .most_lag = response.value() / std::log(10.0)};
  const std::size_t stride = readings.times.size() / most_fitted_readings + 1;
  for (std::size_t i = 0; i < readings.times.size(); i += stride) {
    problem.times.push_back(readings.times[i].value());
    problem.log_oxygen.push_back(std::log10(readings.oxygen[i]));
  }
  return problem;
}

struct Best {
  Point point{};
  double squares = std::numeric_limits<double>::infinity();
};

// Quadratic models (BOBYQA) from a starting point; `free` parameters, the lag held at its start when there
// are three.
Best descend(const Problem &problem, const Point &start, std::size_t free) {
  nlopt::opt search(nlopt::LN_BOBYQA, static_cast<unsigned>(free));
  Best best;
  auto value = [&](const std::vector<double> &x) {
    Point p = start;
    std::ranges::copy(x, p.begin());
    const double squares = problem.squares(p);
    if (squares < best.squares) {
      best = {p, squares};
    }
    return squares;
  };
  search.set_min_objective([](const std::vector<double> &x, std::vector<double> &,
                              void *data) { return (*static_cast<decltype(value) *>(data))(x); },
                           &value);
  const Point low = problem.low(), high = problem.high();
  const auto part = [free](const Point &p) {
    return std::vector<double>(p.begin(), p.begin() + static_cast<long>(free));
  };
  search.set_lower_bounds(part(low));
  search.set_upper_bounds(part(high));
  const double second = std::min(0.2 * problem.family.fastest(), 0.1 * problem.last); // bounds leave twice it
  search.set_initial_step(part({0.3, second, 0.3, std::min(second, 0.1 * problem.most_lag)}));
  search.set_xtol_rel(1e-8);
  search.set_ftol_rel(1e-12);
  search.set_maxeval(3000);
  std::vector<double> x = part(start);
  double least = 0.0;
  try {
    search.optimize(x, least);
  } catch (const nlopt::roundoff_limited &) { // as exact as doubles allow; `best` holds it
  }
  return best;
}

// Time at which the log first falls under half of air.
double half_time(const Problem &problem, const auto &level) {
  for (std::size_t i = 0; i < problem.times.size(); ++i) {
    if (level(i) < std::log10(0.5 * air_oxygen)) {
      return problem.times[i];
    }
  }
  return problem.last;
}

Point first_guess(const Problem &problem, double tanks) {
  Point p{std::log(std::clamp(tanks, 1.1, 0.9 * most_fitted_tanks)), 0.0, 0.0, 0.0};
  const double lowest = std::pow(10.0, *std::ranges::min_element(problem.log_oxygen));
  p[log_floor] = std::clamp(std::log(0.9 * lowest), std::log(2e-8), std::log(0.05));
  const Meter prompt = problem.meter(p);
  const double read = half_time(problem, [&](std::size_t i) { return problem.log_oxygen[i]; });
  const double model = half_time(problem, [&](std::size_t i) { return prompt.shows(problem.times[i]); });
  p[delay] = std::clamp(read - model, 0.0, 0.95 * problem.last);
  return p;
}

Best better(const Best &a, const Best &b) {
  return b.squares < a.squares ? b : a;
}

// Without and with a lag; the lag stays when the readings pay for it. A meter of no stated response is taken
// to be prompt: what it lags then counts as the space's own slowness, which errs on the long side.
Best search(const Problem &problem) {
  Best prompt;
  for (const double tanks : {problem.family.model_tanks(), 1.3, 6.0}) {
    prompt = better(prompt, descend(problem, first_guess(problem, tanks), lag));
  }
  if (!(problem.most_lag > 0.0)) {
    return prompt;
  }
  Best lagging;
  for (const double share : {0.2, 1.0, 4.0}) {
    Point start = prompt.point;
    start[lag] = std::min(share * problem.family.fastest(), 0.8 * problem.most_lag);
    start[delay] = std::max(0.0, start[delay] - start[lag]);
    lagging = better(lagging, descend(problem, start, parameter_count));
  }
  const auto n = static_cast<double>(problem.times.size());
  const auto criterion = [n](const Best &best, std::size_t parameters) {
    return n * std::log(std::max(best.squares / n, tightest * tightest)) +
           static_cast<double>(parameters) * std::log(n);
  };
  return criterion(lagging, parameter_count) < criterion(prompt, lag) ? lagging : prompt;
}

// Standard errors by the linearised problem, and the flowmeter's own beside them; infinite for a parameter on
// its bound or without effect.
Point errors(const Problem &problem, const Best &best) {
  Point result;
  result.fill(std::numeric_limits<double>::infinity());
  const Point low = problem.low(), high = problem.high();
  std::vector<std::size_t> free;
  Eigen::MatrixXd slopes(static_cast<Eigen::Index>(problem.times.size()), 0);
  for (std::size_t i = 0; i < parameter_count; ++i) {
    const double step = i == delay || i == lag ? 0.25 * problem.family.step() : 1e-3;
    Point up = best.point, down = best.point;
    up[i] += step;
    down[i] -= step;
    if (down[i] < low[i] || up[i] > high[i]) {
      continue;
    }
    free.push_back(i);
    slopes.conservativeResize(Eigen::NoChange, slopes.cols() + 1);
    slopes.rightCols(1) = (problem.misfits(up) - problem.misfits(down)) / (2.0 * step);
  }
  const auto surplus = static_cast<double>(problem.times.size()) - static_cast<double>(free.size());
  if (free.empty() || surplus < 1.0) {
    return result;
  }
  const Eigen::FullPivLU<Eigen::MatrixXd> normal(slopes.transpose() * slopes);
  if (!normal.isInvertible()) {
    return result;
  }
  const Eigen::MatrixXd spread = normal.inverse() * (best.squares / surplus);
  // What the parameters move by when the flow is another than the flowmeter says.
  const Eigen::VectorXd moved =
      flowmeter_error * (normal.inverse() * (slopes.transpose() * problem.flow_slopes(best.point)));
  for (std::size_t i = 0; i < free.size(); ++i) {
    const auto at = static_cast<Eigen::Index>(i);
    result[free[i]] = std::hypot(std::sqrt(std::max(0.0, spread(at, at))), moved(at));
  }
  return result;
}

// Whether the search ended at a bound that says nothing of the space: the lower ends of delay, lag and floor
// are a prompt meter and a log that ends before its floor.
bool at_bound(const Problem &problem, const Point &p) {
  constexpr double near = 1e-3; // of the parameter's room
  const Point low = problem.low(), high = problem.high();
  const auto above = [&](Parameter i) { return p[i] > high[i] - near * (high[i] - low[i]); };
  const bool mixed = p[log_tanks] < low[log_tanks] + near * (high[log_tanks] - low[log_tanks]);
  const bool slower_meter = problem.most_lag > 0.0 && above(lag);
  return mixed || above(log_tanks) || above(delay) || above(log_floor) || slower_meter;
}

double median(std::span<const double> values) {
  std::vector<double> sorted(values.begin(), values.end());
  const auto middle = sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 2);
  std::ranges::nth_element(sorted, middle);
  return *middle;
}

// Level at the end and the lowest level of the readings themselves.
void find_levels(const Readings &readings, FitResult &result) {
  constexpr std::size_t share = 20, fewest = 3; // a twentieth of the readings, three at least
  const std::span<const double> all(readings.oxygen);
  const std::size_t width = std::max(fewest, all.size() / share);
  result.last = median(all.last(width));
  result.lowest = result.last;
  for (std::size_t i = 0; i + width <= all.size(); ++i) {
    result.lowest = std::min(result.lowest, median(all.subspan(i, width)));
  }
}

// When the meter was under the limit for good, two readings in a row; nothing where it never was. A meter's
// line and lag count: what it had not yet shown was not yet known.
std::optional<units::Time> time_under(const Readings &readings, double limit) {
  std::optional<units::Time> since;
  for (std::size_t i = 1; i < readings.oxygen.size(); ++i) {
    const bool under = readings.oxygen[i - 1] <= limit && readings.oxygen[i] <= limit;
    if (under && !since) {
      since = readings.times[i - 1];
    } else if (!under && readings.oxygen[i] > limit && readings.oxygen[i - 1] > limit) {
      since.reset();
    }
  }
  return since;
}

void judge(const Problem &problem, const Best &best, FitResult &result) {
  const auto n = static_cast<double>(problem.times.size());
  double mean = 0.0, total = 0.0;
  for (const double level : problem.log_oxygen) {
    mean += level / n;
  }
  for (const double level : problem.log_oxygen) {
    total += (level - mean) * (level - mean);
  }
  result.rms = std::sqrt(best.squares / n);
  result.r_squared = 1.0 - best.squares / total;
}

} // namespace

FitResult fit_log(const Log &log, Circuit circuit, const job::Job &job, const fixture::Layout &layout,
                  const fixture::Volumes &volumes, const fixture::Areas &areas, const Bounds &bounds) {
  const auto readings = std::ranges::find(log.circuits, circuit, &Readings::circuit);
  detail::require(readings != log.circuits.end(), "fit_log", "log must hold the circuit, index",
                  double(circuit));
  plan::Stage stage{.bore = bounds.bore.flow, .chamber = bounds.chamber.flow, .covered = true};
  for (const Readings &logged : log.circuits) {
    (logged.circuit == Circuit::bore ? stage.bore : stage.chamber) =
        logged.flow.value_or(logged.circuit == Circuit::bore ? bounds.bore.flow : bounds.chamber.flow);
  }
  const Family family({job, layout, volumes, areas}, circuit, stage, readings->times.back());
  const Problem problem = pose(family, *readings, job.gas.log_response);
  const Best best = search(problem);
  const Point spread = errors(problem, best);
  const auto logarithmic = [&](Parameter p) {
    const double value = std::exp(best.point[p]);
    return Fitted{value, value * spread[p]};
  };
  const bool bore = circuit == Circuit::bore;
  FitResult result{.circuit = circuit,
                   .flow = bore ? stage.bore : stage.chamber,
                   .prepurge = (bore ? bounds.bore : bounds.chamber).flow,
                   .under =
                       time_under(*readings, bore ? job.gas.oxygen_limit_bore : job.gas.oxygen_limit_chamber),
                   .readings = static_cast<int>(readings->times.size()),
                   .tanks = logarithmic(log_tanks),
                   .tanks_model = family.model_tanks(),
                   .delay = {best.point[delay], spread[delay]},
                   .lag = {best.point[lag], best.point[lag] > 0.0 ? spread[lag] : 0.0},
                   .floor = logarithmic(log_floor),
                   .floor_model = family.floor(),
                   .at_bound = at_bound(problem, best.point),
                   .times = readings->times,
                   .oxygen = readings->oxygen,
                   .curve = {}};
  const Meter shown = problem.meter(best.point);
  for (const units::Time &time : readings->times) {
    result.curve.push_back(std::pow(10.0, shown.shows(time.value())));
  }
  judge(problem, best, result);
  find_levels(*readings, result);
  return result;
}

} // namespace purgewright::gas
