#include "gas/log/family.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace purgewright::gas::log {
namespace {

constexpr int nodes = static_cast<int>(most_fitted_tanks); // 1, 2, 3 ... tanks
constexpr double steps_per_change = 20.0;
constexpr int fewest_steps = 100, most_steps = 2000;
constexpr double least_above = 1e-12; // below it the network's own rounding shows

// Where the meter stands: the bore's outlet, the joint's outside.
Target meter_place(const plan::Scene &scene, Circuit circuit) {
  if (circuit == Circuit::chamber) {
    return scene.chamber_joint;
  }
  return {.zone = plan::zone::bore_swept, .position = 1.0, .limit = 0.0}; // what leaves the bore
}

} // namespace

Family::Family(const plan::Subject &subject, Circuit circuit, const plan::Stage &stage,
               units::Time duration) {
  const bool bore = circuit == Circuit::bore;
  const units::VolumeFlow flow = bore ? stage.bore : stage.chamber;
  fastest_ = ((bore ? subject.volumes.bore_gas : subject.volumes.chamber_gas) / flow).value();
  const int steps =
      std::clamp(static_cast<int>(steps_per_change * duration.value() / fastest_), fewest_steps, most_steps);
  step_ = duration.value() / steps;
  const plan::Scene model = plan::build_scene(subject, stage);
  model_tanks_ = bore ? model.bore_tanks : model.chamber_tanks;
  for (int node = 0; node < nodes; ++node) {
    plan::Stage measured = stage;
    (bore ? measured.bore_tanks : measured.chamber_tanks) = node + 1.0;
    const plan::Scene scene = plan::build_scene(subject, measured);
    const Target place = meter_place(scene, circuit);
    const Course course = solve(scene.network, plan::between_parts(scene), duration, steps);
    const std::size_t tank = tank_at(course.map, place.zone, place.position);
    floor_ = steady_state(scene.network)[tank];
    std::vector<double> above;
    for (std::size_t i = 0; i < course.times.size(); ++i) {
      above.push_back(std::log(std::max(least_above, course.state(i)[tank] - floor_)));
    }
    above_.push_back(std::move(above));
  }
}

Curve Family::curve(double log_tanks, double floor) const {
  // Lagrange's cubic through the four nodes around.
  const double at = std::clamp(std::exp(log_tanks), 1.0, most_fitted_tanks) - 1.0;
  const int first = std::clamp(static_cast<int>(at) - 1, 0, nodes - 4);
  std::array<double, 4> weights{};
  for (int i = 0; i < 4; ++i) {
    weights[static_cast<std::size_t>(i)] = 1.0;
    for (int j = 0; j < 4; ++j) {
      if (j != i) {
        weights[static_cast<std::size_t>(i)] *= (at - first - j) / (i - j);
      }
    }
  }
  Curve curve{.step = step_, .oxygen = std::vector<double>(above_.front().size())};
  const double stretch = (air_oxygen - floor) / (air_oxygen - floor_);
  for (std::size_t t = 0; t < curve.oxygen.size(); ++t) {
    double above = 0.0;
    for (std::size_t i = 0; i < 4; ++i) {
      above += weights[i] * above_[static_cast<std::size_t>(first) + i][t];
    }
    curve.oxygen[t] = floor + stretch * std::exp(above);
  }
  return curve;
}

Meter::Meter(const Curve &curve, double lag, double delay) : step_(curve.step), delay_(delay) {
  // Exact answer of a first-order lag to straight pieces.
  const double ratio = lag > 0.0 ? step_ / lag : 0.0;
  const double keep = std::exp(-ratio);
  const double mean = ratio > 1e-9 ? -std::expm1(-ratio) / ratio : 1.0;
  double shown = curve.oxygen.front();
  log_oxygen_.push_back(std::log10(shown));
  for (std::size_t t = 1; t < curve.oxygen.size(); ++t) {
    const double before = curve.oxygen[t - 1], now = curve.oxygen[t];
    shown = lag > 0.0 ? keep * shown + (mean - keep) * before + (1.0 - mean) * now : now;
    log_oxygen_.push_back(std::log10(shown));
  }
}

double Meter::shows(double time) const {
  const double at = std::max(0.0, (time - delay_) / step_);
  const auto left = static_cast<std::size_t>(std::min(at, static_cast<double>(log_oxygen_.size() - 1)));
  const std::size_t right = std::min(left + 1, log_oxygen_.size() - 1);
  return std::lerp(log_oxygen_[left], log_oxygen_[right], std::min(1.0, at - static_cast<double>(left)));
}

} // namespace purgewright::gas::log
