// Transient conduction in the work: a chain of rings, each cut into cells round the axis, under a moving arc,
// losing heat to gas, by radiation and to the bodies it touches.
//
// Units: quantity types; coefficients W/(m2 K), energies J as plain numbers.
// Frame: that of Chain; angles run round the axis, cell i spans angle i to i + 1 times 2 pi / angles.
// Method: enthalpy of every cell is the state (latent heat included), advanced by the two-stage,
// second-order Rosenbrock method ROS2 with gamma = 1 - 1/sqrt(2), whose order holds for any approximate
// Jacobian: here without the slopes of conductivity, latent heat and gas films, and factored into the chain's
// direction and the one round it (heat/conduction.hpp), then the bodies and what the bore's walls shine at
// each other. The first-order solution inside it estimates the error of a step; the step follows from it.
// Stages are fluxes between cells, so that no energy is lost. The arc's heat in a cell is integrated exactly
// over cell and step. Valid range: temperatures up to some 4000 K; evaporation is left out, so a pool's peak
// near boiling is an upper bound.
// The bore's walls, cap included, radiate to each other as to one grey enclosure: what the hot ones give the
// cold ones get. Errors: std::domain_error for a coefficient, power, time or width that makes no sense;
// std::runtime_error when even the shortest step leads to temperatures that are none.
// Guarantee: heat in = stored + lost to rounding; same calls, same bits; one object, one thread. Source:
// Verwer, Spee, Blom, Hundsdorfer, SIAM J. Sci. Comput. 20, 1456 (1999), ROS2; Incropera & DeWitt for the
// laws of loss; Gaussian arc: Tsai & Eagar, Welding J. 64, 346-s (1985).
#pragma once

#include "purgewright/heat/chain.hpp"
#include "purgewright/job/job.hpp"
#include "purgewright/units/quantity.hpp"

#include <functional>
#include <memory>
#include <optional>

namespace purgewright::heat {

inline constexpr double stefan_boltzmann = 5.670374419e-8; // W/(m2 K4), CODATA 2018

struct Surroundings {
  units::Temperature ambient = units::celsius(20.0);          // of gas, walls and bodies
  std::optional<units::Temperature> start = {};               // of the work; absent: ambient
  double outside_coefficient = 0.0, inside_coefficient = 0.0; // gas outside and in the bore
  job::GasSpecies gas = job::GasSpecies::argon;               // fills the gaps of the contacts
};

struct Accuracy {
  units::TemperatureDifference step_error =
      units::TemperatureDifference::from_value(2.0); // a step, hottest cell
  double relative_step_error = 0.01;                 // of the hottest rise over ambient, added to it
  double arc_step = 0.5;                             // most travel of the arc in a step, in arc radii
  units::Time longest_step = units::seconds(30.0);
  units::TemperatureDifference crossing =
      units::TemperatureDifference::from_value(0.5); // end of a hold or a tack
};

// An arc that travels round the joint at constant speed.
struct Arc {
  units::Power power{};         // into the metal
  units::Length radius{};       // standard deviation of its heat, along and across the joint
  units::Length joint_radius{}; // of the circle it travels
  units::Angle start{};         // where it strikes
  double speed = 0.0;           // rad/s, sign gives the direction; 0 stands still
  units::Length offset{};       // from the joint along the chain
};

struct Region {
  std::size_t first = 0, last = 0; // rings first .. last - 1
  bool empty() const { return first >= last; }
};

struct Energy {
  double in = 0.0;     // from arcs
  double stored = 0.0; // in the work over its enthalpy at the start
  double bodies = 0.0; // in chamber, plug, pin, rollers
  double lost = 0.0; // to gas, by radiation, from bodies to the room; below 0 when these warmed a colder work
};

class Model {
 public:
  Model(const Chain &, const Surroundings &, const Accuracy &);
  ~Model();
  Model(Model &&) noexcept;
  Model &operator=(Model &&) noexcept;

  // Burns the arc for this time. `pedal`, asked after every step, gives the share of the arc's power for the
  // next, 0 to 1.
  void weld(const Arc &, units::Time duration, const std::function<double(const Model &)> &pedal = {});
  // Burns the arc until `beyond` says 0 or more (K; it rises while the arc burns), at most for `most`;
  // returns the time.
  units::Time weld_until(const Arc &, const std::function<double(const Model &)> &beyond, units::Time most);
  // Lets the work cool for this time.
  void cool(units::Time duration);
  // Lets it cool until the region's hottest cell is at or below `limit`, at most for `most`; returns the
  // time.
  units::Time cool_until(Region, units::Temperature limit, units::Time most);
  // Sets every cell of a ring; for tests and closed forms. Counts as heat in.
  void set_ring(std::size_t ring, units::Temperature);

  units::Temperature hottest(Region) const;
  units::Temperature at(std::size_t ring, std::size_t angle) const;
  units::Temperature mean(std::size_t ring) const;
  units::Temperature body(Body) const;
  // Highest temperature of any cell of the ring since reset_peaks, taken at the ends of steps.
  units::Temperature peak(std::size_t ring) const;
  void reset_peaks();

  units::Time now() const;
  Energy energy() const;
  long steps() const;
  long refused_steps() const;
  const Chain &chain() const;
  // Called after every step.
  void watch(std::function<void(const Model &)>);

 private:
  struct State;
  units::Time burn(const Arc &, units::Time most, const std::function<double(const Model &)> &pedal,
                   const std::function<double(const Model &)> &beyond);
  std::unique_ptr<State> state_;
};

} // namespace purgewright::heat
