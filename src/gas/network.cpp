#include "purgewright/gas/network.hpp"

#include "gas/balance.hpp"
#include "gas/require.hpp"

#include <unsupported/Eigen/MatrixFunctions>

#include <algorithm>
#include <cmath>

namespace purgewright::gas {

using detail::Balance;
using detail::require;
using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

namespace {

constexpr int refinements = 14; // halvings of a kept interval when a target is closed in on

Index at(std::size_t i) {
  return static_cast<Index>(i);
}

// One circuit as a closed linear system y' = M y of [fractions; 1; oxygen left / volume]: the last row counts
// what leaves, so that the ledger rests on its own integral and not on the balance it checks.
struct Circuit {
  std::vector<std::size_t> tanks;
  MatrixXd motion;
  double volume = 0.0;
};

Circuit circuit_of(const Balance &balance, std::vector<std::size_t> tanks) {
  const Index n = at(tanks.size());
  Circuit circuit{.tanks = std::move(tanks), .motion = MatrixXd::Zero(n + 2, n + 2)};
  for (const std::size_t tank : circuit.tanks)
    circuit.volume += balance.volume(at(tank));
  for (Index i = 0; i < n; ++i) {
    const Index tank = at(circuit.tanks[static_cast<std::size_t>(i)]);
    for (Index j = 0; j < n; ++j)
      circuit.motion(i, j) = balance.rates(tank, at(circuit.tanks[static_cast<std::size_t>(j)]));
    circuit.motion(i, n) = balance.source(tank);
    circuit.motion(n + 1, i) = balance.leave(tank) / circuit.volume;
  }
  return circuit;
}

// Propagators over an interval, its half, its quarter ... ; the last is an exponential, the others its
// squares. They share one block of memory: taken and given back piece by piece, it costs more than the
// squares.
class Ladder {
 public:
  Ladder(const MatrixXd &motion, double interval, int depth)
      : size_(motion.rows()), depth_(depth), block_(size_, size_ * (depth + 1)) {
    step(depth) = (motion * std::ldexp(interval, -depth)).exp();
    for (int k = depth; k > 0; --k)
      step(k - 1).noalias() = step(k) * step(k);
  }
  int depth() const { return depth_; }
  Eigen::Block<const MatrixXd, Eigen::Dynamic, Eigen::Dynamic, true> step(int k) const {
    return block_.middleCols(size_ * k, size_);
  }

 private:
  Eigen::Block<MatrixXd, Eigen::Dynamic, Eigen::Dynamic, true> step(int k) {
    return block_.middleCols(size_ * k, size_);
  }
  Index size_;
  int depth_;
  MatrixXd block_;
};

// First time after `before` (which is above the limit) at or under it, within one interval; straight within
// the shortest step.
double close_in(const Ladder &ladder, VectorXd before, Index tank, double limit, double interval) {
  double time = 0.0, half = interval;
  for (int k = 1; k <= ladder.depth(); ++k) {
    half *= 0.5;
    VectorXd next = ladder.step(k) * before;
    if (next(tank) > limit) {
      before = std::move(next);
      time += half;
    }
  }
  const double end = (ladder.step(ladder.depth()) * before)(tank), over = before(tank) - limit;
  return time + half * std::min(1.0, over / (before(tank) - end));
}

struct Watch {
  std::size_t target;
  Index tank; // within its circuit
  double limit;
};

std::vector<Watch> watches_of(const Circuit &circuit, const TankMap &map, std::span<const Target> targets) {
  std::vector<Watch> watches;
  for (std::size_t t = 0; t < targets.size(); ++t) {
    const auto tank = std::ranges::find(circuit.tanks, tank_at(map, targets[t].zone, targets[t].position));
    if (tank != circuit.tanks.end())
      watches.push_back({t, tank - circuit.tanks.begin(), targets[t].limit});
  }
  return watches;
}

void follow(const Circuit &circuit, std::span<const double> initial, std::span<const Target> targets,
            Course &course) {
  const std::size_t count = course.times.size(), width = course.map.size();
  const double interval = course.times[1].value();
  std::vector<Watch> watches = watches_of(circuit, course.map, targets);
  const Ladder ladder(circuit.motion, interval, watches.empty() ? 0 : refinements);
  const Index n = at(circuit.tanks.size());
  VectorXd y = VectorXd::Zero(n + 2), before;
  for (Index i = 0; i < n; ++i)
    y(i) = initial[circuit.tanks[static_cast<std::size_t>(i)]];
  y(n) = 1.0;
  for (std::size_t step = 0; step < count; ++step) {
    if (step > 0) {
      before = y;
      y.noalias() = ladder.step(0) * before;
    }
    for (Index i = 0; i < n; ++i)
      course.states[step * width + circuit.tanks[static_cast<std::size_t>(i)]] = y(i);
    std::erase_if(watches, [&](const Watch &watch) {
      if (y(watch.tank) > watch.limit)
        return false;
      const double offset =
          step == 0 ? 0.0 : close_in(ladder, before, watch.tank, watch.limit, interval) - interval;
      course.reached[watch.target] = course.times[step] + units::seconds(offset);
      return true;
    });
  }
  course.ledger.left += y(n + 1) * circuit.volume;
}

double held(const VectorXd &volume, std::span<const double> state) {
  return volume.dot(Eigen::Map<const VectorXd>(state.data(), at(state.size())));
}

void check_solve(const Balance &balance, std::span<const double> initial, units::Time duration,
                 int intervals) {
  require(initial.size() == balance.map.size(), "solve", "state must have one value a tank",
          static_cast<double>(initial.size()));
  for (const double fraction : initial)
    require(fraction >= 0.0 && fraction <= 1.0, "solve", "initial fraction must lie in 0 to 1", fraction);
  require(duration.value() > 0.0, "solve", "duration must be above 0", duration.value());
  require(intervals >= 1 && intervals <= 100000, "solve", "intervals must lie in 1 to 100000", intervals);
}

Eigen::FullPivLU<MatrixXd> factor(const MatrixXd &rates, std::string_view function) {
  Eigen::FullPivLU<MatrixXd> lu(rates);
  require(lu.isInvertible(), function, "every zone must lead to a reservoir; rank",
          static_cast<double>(lu.rank()));
  return lu;
}

// Rates with each row over its turnover, so that a small hose and a large chamber weigh alike in the rank.
struct Scaled {
  MatrixXd rates;
  VectorXd turnover;
};

Scaled scaled(const MatrixXd &rates, std::string_view function) {
  Scaled result{rates, -rates.diagonal()};
  for (Index i = 0; i < rates.rows(); ++i) {
    require(result.turnover(i) > 0.0, function, "every tank must be swept, turnover", result.turnover(i));
    result.rates.row(i) /= result.turnover(i);
  }
  return result;
}

} // namespace

double Ledger::error() const {
  const double largest = std::max({brought, left, held_before, held_after});
  return largest > 0.0 ? (held_before + brought - left - held_after) / largest : 0.0;
}

Course solve(const Network &network, std::span<const double> initial, units::Time duration, int intervals,
             std::span<const Target> targets) {
  const Balance balance = detail::assemble(network, "solve");
  check_solve(balance, initial, duration, intervals);
  Course course;
  course.map = balance.map;
  const auto count = static_cast<std::size_t>(intervals) + 1;
  for (std::size_t i = 0; i < count; ++i)
    course.times.push_back(duration * (static_cast<double>(i) / intervals));
  course.states.assign(count * balance.map.size(), 0.0);
  course.reached.assign(targets.size(), std::nullopt);
  for (std::vector<std::size_t> &tanks : detail::circuits(balance.rates))
    follow(circuit_of(balance, std::move(tanks)), initial, targets, course);
  course.ledger.brought = balance.bring.sum() * duration.value();
  course.ledger.held_before = held(balance.volume, initial);
  course.ledger.held_after = held(balance.volume, course.state(count - 1));
  return course;
}

std::vector<double> steady_state(const Network &network) {
  const Balance balance = detail::assemble(network, "steady_state");
  const Scaled system = scaled(balance.rates, "steady_state");
  const VectorXd floor =
      factor(system.rates, "steady_state").solve(-balance.source.cwiseQuotient(system.turnover));
  return {floor.data(), floor.data() + floor.size()};
}

FloorParts floor_parts(const Network &network, std::size_t zone, double position) {
  constexpr std::string_view here = "floor_parts";
  const Balance balance = detail::assemble(network, here);
  const Scaled system = scaled(balance.rates, here);
  const std::size_t tank = tank_at(balance.map, zone, position);
  // The adjoint gives what one unit of source anywhere adds at this tank.
  const VectorXd pull =
      factor(system.rates.transpose(), here).solve(-VectorXd::Unit(balance.rates.rows(), at(tank)));
  const VectorXd weight =
      pull.cwiseQuotient(system.turnover).cwiseQuotient(balance.volume); // per m3/s of oxygen
  FloorParts parts;
  for (const Edge &edge : network.edges) {
    double part = 0.0;
    if (edge.from.kind == Place::Kind::reservoir)
      part = (edge.flow + edge.exchange).value() * network.reservoirs[edge.from.index] *
             weight(at(balance.map.first[edge.to.index]));
    else if (edge.to.kind == Place::Kind::reservoir)
      part = edge.exchange.value() * network.reservoirs[edge.to.index] *
             weight(at(balance.map.first[edge.from.index + 1] - 1));
    parts.edges.push_back(part);
    parts.floor += part;
  }
  for (const Ingress &ingress : network.ingress) {
    double part = 0.0;
    for (std::size_t t = balance.map.first[ingress.zone]; t < balance.map.first[ingress.zone + 1]; ++t)
      part += ingress.oxygen.value() * balance.map.share[t] * weight(at(t));
    parts.ingress.push_back(part);
    parts.floor += part;
  }
  return parts;
}

} // namespace purgewright::gas
