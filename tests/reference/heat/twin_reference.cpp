// The model against a slow twin on the same rings: explicit steps so short that nothing needs solving, every
// law written out cell by cell, temperatures read from enthalpy by a table of its own. What both share is the
// chain and the metals' tables; what the twin does not have is factored systems, long steps, their control,
// and a Jacobian that leaves out the heats of melting and of the alpha-beta change.
// Source of the twin's scheme: forward Euler on the enthalpy method, Voller & Cross, Int. J. Heat Mass
// Transfer 24, 545 (1981), from memory.
#include "support/paths.hpp"

#include "purgewright/heat/gas_film.hpp"
#include "purgewright/heat/model.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <vector>

using namespace purgewright;
using namespace purgewright::heat;

namespace {

constexpr double ambient = 293.15;            // K
constexpr double outside = 9.0, inside = 4.0; // W/(m2 K)

// Temperature over enthalpy, straight between whole kelvins.
class Inverse {
 public:
  explicit Inverse(const Metal &metal) {
    for (double t = coldest.value(); t <= hottest.value(); t += 1.0) {
      enthalpy_.push_back(metal.enthalpy_at(units::kelvins(t)));
    }
  }
  double operator()(double enthalpy) const {
    const auto above = std::upper_bound(enthalpy_.begin() + 1, enthalpy_.end() - 1, enthalpy);
    const double low = *(above - 1), high = *above;
    return coldest.value() + double(above - 1 - enthalpy_.begin()) + (enthalpy - low) / (high - low);
  }

 private:
  std::vector<double> enthalpy_;
};

class Twin {
 public:
  explicit Twin(const Chain &chain)
      : chain_(chain), n_(std::size_t(chain.angles)), inverse_(chain.metals.front()),
        enthalpy_(chain.rings.size() * n_), kelvin_(enthalpy_.size(), ambient), rate_(enthalpy_.size()) {
    const Metal &metal = chain.metals.front();
    std::fill(enthalpy_.begin(), enthalpy_.end(), metal.enthalpy_at(units::kelvins(ambient)));
  }

  // A Gaussian at an angle, of this standard deviation (rad), over the rings with these shares.
  void step(double dt, double power, double angle, double deviation, const std::vector<double> &shares) {
    const Metal &metal = chain_.metals.front();
    std::fill(rate_.begin(), rate_.end(), 0.0);
    for (std::size_t j = 0; j < chain_.rings.size(); ++j) {
      for (std::size_t i = 0; i < n_; ++i) {
        along(j, i, metal);
        round(j, i, metal);
        lose(j, i, metal);
        rate_[at(j, i)] += power * shares[j] * share_round(i, angle, deviation);
      }
    }
    shine(metal);
    for (std::size_t j = 0; j < chain_.rings.size(); ++j) {
      const double mass = metal.density.value() * chain_.rings[j].volume / double(n_);
      for (std::size_t i = 0; i < n_; ++i) {
        enthalpy_[at(j, i)] += dt / mass * rate_[at(j, i)];
        kelvin_[at(j, i)] = inverse_(enthalpy_[at(j, i)]);
      }
    }
  }
  double kelvin(std::size_t ring, std::size_t angle) const { return kelvin_[at(ring, angle)]; }

 private:
  std::size_t at(std::size_t ring, std::size_t angle) const { return ring * n_ + angle % n_; }
  double conductivity(std::size_t ring, std::size_t angle, const Metal &metal) const {
    return metal.conductivity_at(units::kelvins(kelvin(ring, angle)));
  }
  void pass(std::size_t from, std::size_t to, double conductance) {
    const double flow = conductance * (kelvin_[from] - kelvin_[to]);
    rate_[from] -= flow;
    rate_[to] += flow;
  }
  void along(std::size_t j, std::size_t i, const Metal &metal) {
    const Ring &ring = chain_.rings[j];
    if (ring.face > 0.0) {
      const double near = ring.to_face / (ring.face * conductivity(j, i, metal)),
                   far = ring.from_face / (ring.far_face * conductivity(j + 1, i, metal));
      pass(at(j, i), at(j + 1, i), 1.0 / (near + far) / double(n_));
    }
  }
  void round(std::size_t j, std::size_t i, const Metal &metal) {
    const Ring &ring = chain_.rings[j];
    const double mean = 0.5 * (conductivity(j, i, metal) + conductivity(j, i + 1, metal));
    pass(at(j, i), at(j, i + 1), mean * ring.section / (2.0 * units::pi * ring.radius / double(n_)));
  }
  void lose(std::size_t j, std::size_t i, const Metal &metal) {
    const Ring &ring = chain_.rings[j];
    const double t = kelvin(j, i);
    rate_[at(j, i)] -=
        ((outside * ring.outside + inside * ring.inside) * (t - ambient) +
         metal.emissivity * stefan_boltzmann * ring.outside * (std::pow(t, 4) - std::pow(ambient, 4))) /
        double(n_);
  }
  // The bore's walls to each other, as one grey enclosure of one emissivity.
  void shine(const Metal &metal) {
    double area = 0.0, sum = 0.0;
    for (std::size_t j = 0; j < chain_.rings.size(); ++j) {
      for (std::size_t i = 0; i < n_; ++i) {
        area += chain_.rings[j].inside;
        sum += chain_.rings[j].inside * std::pow(kelvin(j, i), 4);
      }
    }
    for (std::size_t j = 0; j < chain_.rings.size(); ++j) {
      for (std::size_t i = 0; i < n_; ++i) {
        rate_[at(j, i)] -= metal.emissivity * stefan_boltzmann * chain_.rings[j].inside / double(n_) *
                           (std::pow(kelvin(j, i), 4) - sum / area);
      }
    }
  }
  double share_round(std::size_t i, double angle, double deviation) const {
    const double cell = 2.0 * units::pi / double(n_);
    double off = std::remainder((double(i) + 0.5) * cell - angle, 2.0 * units::pi);
    const auto below = [&](double edge) { return 0.5 * std::erfc(-edge / deviation / std::sqrt(2.0)); };
    return below(off + 0.5 * cell) - below(off - 0.5 * cell);
  }

  const Chain &chain_;
  std::size_t n_;
  Inverse inverse_;
  std::vector<double> enthalpy_, kelvin_, rate_;
};

std::vector<double> shares_along(const Chain &chain, double deviation) {
  std::vector<double> shares;
  double sum = 0.0;
  for (const Ring &ring : chain.rings) {
    const auto below = [&](double x) { return 0.5 * std::erfc(-x / deviation / std::sqrt(2.0)); };
    shares.push_back(below(ring.position + 0.5 * ring.length) - below(ring.position - 0.5 * ring.length));
    sum += shares.back();
  }
  for (double &share : shares) {
    share /= sum;
  }
  return shares;
}

} // namespace

TEST_CASE("Tube and cap under a moving arc, as a slow twin has them", "[reference][heat]") {
  const auto read = job::read_job(purgewright::test::example_job("logger-25"));
  REQUIRE(read.job);
  Chain chain = chain_of(*read.job, fixture::lay_out(*read.job),
                         {.tube = 9, .cap = 4, .angles = 12, .grading = 3.5}, {});
  chain.contacts.clear();
  const double radius = 12.7e-3, deviation = 1.5e-3, power = 400.0, speed = 0.3, start = 0.4;
  const double burns = 6.0, cools = 4.0;
  const auto shares = shares_along(chain, deviation);
  Twin twin(chain);
  constexpr double dt = 5e-4; // a fifth of what the smallest cell at the cap's centre bears
  double hottest = 0.0;
  for (double t = 0.0; t < burns - 0.5 * dt; t += dt) {
    twin.step(dt, power, start + speed * (t + 0.5 * dt), deviation / radius, shares);
    hottest = std::max(hottest, twin.kelvin(chain.joint, 2));
  }
  Model model(
      chain,
      {.ambient = units::kelvins(ambient), .outside_coefficient = outside, .inside_coefficient = inside},
      {.step_error = units::TemperatureDifference::from_value(1.0),
       .relative_step_error = 0.003,
       .arc_step = 0.3});
  model.weld({.power = units::Power::from_value(power),
              .radius = units::metres(deviation),
              .joint_radius = units::metres(radius),
              .start = units::radians(start),
              .speed = speed},
             units::seconds(burns));
  // Of the rise: what steps of that error make, and the tables' corners.
  constexpr double share = 0.01, kelvins = 3.0;
  const auto compare = [&](const char *when) {
    for (std::size_t j = 0; j < chain.rings.size(); ++j) {
      for (std::size_t i = 0; i < 12; ++i) {
        INFO(when << " ring " << j << " angle " << i);
        CHECK(model.at(j, i).value() - ambient ==
              Approx(twin.kelvin(j, i) - ambient).epsilon(share).margin(kelvins));
      }
    }
  };
  CHECK(hottest > chain.metals.front().liquidus.value()); // it melted
  compare("under the arc");
  for (double t = 0.0; t < cools - 0.5 * dt; t += dt) {
    twin.step(dt, 0.0, 0.0, 1.0, shares);
  }
  model.cool(units::seconds(cools));
  compare("after it");
}
