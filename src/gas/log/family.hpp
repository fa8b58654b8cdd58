// Curves of one circuit's meter place for any number of tanks, from the purge's network; private to the fit.
//
// Units: quantity types; oxygen is a volume fraction. Range: tanks 1 to most_fitted_tanks, times from 0;
// after the last kept time the curve stays. Guarantee: the network's own curve at whole numbers of tanks;
// between them a cubic in the logarithm of the oxygen, which is nearly straight there (tanks in series:
// -n theta + (n - 1) ln(n theta) - ln Gamma(n)), so that the fit sees no kinks.
#pragma once

#include "purgewright/gas/measured_log.hpp"

#include "gas/plan/scene.hpp"

#include <vector>

namespace purgewright::gas::log {

// Evenly kept oxygen of the space, from 0.
struct Curve {
  double step = 0.0; // s
  std::vector<double> oxygen;
};

class Family {
 public:
  Family(const plan::Subject &, Circuit, const plan::Stage &, units::Time duration);

  double floor() const { return floor_; }             // the model's
  double model_tanks() const { return model_tanks_; } // the model's
  double fastest() const { return fastest_; }         // one volume change, s
  double step() const { return step_; }

  // Curve with these tanks, settling at `floor` in place of the model's.
  Curve curve(double log_tanks, double floor) const;

 private:
  double floor_ = 0.0, model_tanks_ = 1.0, fastest_ = 0.0, step_ = 0.0;
  std::vector<std::vector<double>> above_; // by tanks less one: log of what stands above the floor
};

// What a meter shows: the curve through a first-order lag, then a line's delay; air before.
class Meter {
 public:
  Meter(const Curve &, double lag, double delay);
  double shows(double time) const;

 private:
  double step_, delay_;
  std::vector<double> log_oxygen_; // log10
};

} // namespace purgewright::gas::log
