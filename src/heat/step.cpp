#include "heat/step.hpp"

#include "purgewright/heat/gas_film.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace purgewright::heat::detail {

namespace {

using Eigen::Index;

const double gamma = 1.0 - 1.0 / std::sqrt(2.0);

} // namespace

Stepper::Stepper(const Chain &chain, const Surroundings &surroundings, double residual)
    : conduction_(chain), lumps_(chain.bodies), ambient_(surroundings.ambient.value()),
      gas_(surroundings.gas), residual_(residual) {
  for (const Metal &metal : chain.metals) {
    const bool again =
        !tables_.empty() && metal.name == chain.metals.front().name && metal.name != "constant";
    tables_.push_back(again ? tables_.front() : EnthalpyTable(metal));
  }
  const Index rings = geometry().rings;
  const double n = double(geometry().angles);
  mass_.resize(rings);
  still_.resize(rings);
  emitting_.resize(rings);
  glowing_.resize(rings);
  for (Index j = 0; j < rings; ++j) {
    const Ring &ring = chain.rings[std::size_t(j)];
    const Metal &metal = chain.metals[ring.metal];
    table_of_ring_.push_back(ring.metal);
    mass_(j) = metal.density.value() * ring.volume / n;
    still_(j) =
        (surroundings.outside_coefficient * ring.outside + surroundings.inside_coefficient * ring.inside) / n;
    emitting_(j) = metal.emissivity * stefan_boltzmann * ring.outside / n;
    glowing_(j) = metal.emissivity * stefan_boltzmann * ring.inside / n;
  }
  for (const Contact &c : chain.contacts) {
    films_.push_back({Index(c.ring), std::size_t(c.body), c.area / n, c.gap, c.coefficient});
  }
  film_values_.resize(films_.size());
  for (Field *field : {&leak_, &capacity_, &slope_, &first_slope_, &flow_, &first_.cells, &second_.cells,
                       &middle_.enthalpy}) {
    field->setZero(geometry().angles, rings);
  }
}

double Stepper::enthalpy_at(std::size_t ring, double kelvin) const {
  return tables_[table_of_ring_[ring]].enthalpy_at(kelvin);
}

void Stepper::read(const Content &content, Reading &reading) const {
  const Index rings = geometry().rings, n = geometry().angles;
  for (Field *field : {&reading.temperature, &reading.conductivity, &reading.specific_heat}) {
    field->resize(n, rings);
  }
  for (Index j = 0; j < rings; ++j) {
    const EnthalpyTable &table = tables_[table_of_ring_[std::size_t(j)]];
    for (Index i = 0; i < n; ++i) {
      const Properties p = table.at(content.enthalpy(i, j));
      reading.temperature(i, j) = p.temperature;
      reading.conductivity(i, j) = p.conductivity;
      reading.specific_heat(i, j) = p.specific_heat;
    }
  }
  for (std::size_t b = 0; b < body_count; ++b) {
    reading.bodies[b] = ambient_ + content.bodies[b] / lumps_[b].capacity;
  }
}

// Films take the gas at the mean of the ring's and the body's temperature.
double Stepper::film_conductance(const Film &film, const Reading &reading) const {
  if (film.gap <= 0.0) {
    return film.area * film.coefficient;
  }
  const double mean = 0.5 * (reading.temperature.col(film.ring).mean() + reading.bodies[film.body]);
  return film.area * gas_conductivity(gas_, units::kelvins(std::clamp(mean, 250.0, 1500.0))) / film.gap;
}

// Conductances to the surroundings for the linear system; films and conductivity stay the same within a step.
void Stepper::leaks(const Reading &reading, double dt) {
  for (Index j = 0; j < geometry().rings; ++j) {
    const auto t = reading.temperature.col(j);
    leak_.col(j) = still_(j) + 4.0 * emitting_(j) * t * t * t;
  }
  for (std::size_t f = 0; f < films_.size(); ++f) {
    film_values_[f] = film_conductance(films_[f], reading);
    leak_.col(films_[f].ring) += film_values_[f];
  }
  for (Index j = 0; j < geometry().rings; ++j) {
    capacity_.col(j) = mass_(j) * reading.specific_heat.col(j);
  }
  conduction_.set_conductivity(reading.conductivity);
  conduction_.set_system(capacity_, leak_, gamma * dt);
}

double Stepper::steady_step(const Reading &reading) const {
  constexpr double share =
      0.5; // of the time in which a cell would lose all it has over the rest at that rate
  double most = std::numeric_limits<double>::infinity();
  for (Index j = 0; j < geometry().rings; ++j) {
    const double hottest = reading.temperature.col(j).maxCoeff();
    const double slope = 4.0 * glowing_(j) * hottest * hottest * hottest;
    if (slope > 0.0) {
      most = std::min(most, share * mass_(j) * reading.specific_heat.col(j).minCoeff() / slope);
    }
  }
  return most;
}

double Stepper::bore_glow(const Reading &reading) const {
  double sum = 0.0;
  for (Index j = 0; j < geometry().rings; ++j) {
    sum += glowing_(j) * reading.temperature.col(j).square().square().mean();
  }
  const double all = glowing_.sum();
  return all > 0.0 ? sum / all : 0.0;
}

void Stepper::explicit_rates(const Reading &reading, const Field &heat, Rates &rates) const {
  conduction_.outflow_at(reading.conductivity, reading.temperature, rates.cells);
  rates.cells = heat - rates.cells;
  const double cold = ambient_ * ambient_ * ambient_ * ambient_, glow = bore_glow(reading);
  rates.lost = 0.0;
  for (Index j = 0; j < geometry().rings; ++j) {
    const auto t = reading.temperature.col(j);
    const Eigen::ArrayXd fourth = t.square().square();
    const Eigen::ArrayXd flow = still_(j) * (t - ambient_) + emitting_(j) * (fourth - cold);
    rates.cells.col(j) -= flow + glowing_(j) * (fourth - glow);
    rates.lost += flow.sum();
  }
  for (std::size_t b = 0; b < body_count; ++b) {
    const double flow = lumps_[b].loss * (reading.bodies[b] - ambient_);
    rates.bodies[b] = -flow;
    rates.lost += flow;
  }
  for (const Film &film : films_) {
    const Eigen::ArrayXd flow =
        film_conductance(film, reading) * (reading.temperature.col(film.ring) - reading.bodies[film.body]);
    rates.cells.col(film.ring) -= flow;
    rates.bodies[film.body] += flow.sum();
  }
}

// slope_ comes in as the guess. Cells first, then the bodies with what the cells give them, then what the
// bodies' change gives back: an approximate factorisation that keeps the order. Everything leaves one place
// and enters another.
void Stepper::stage(double dt, Rates &rates) {
  const double scale = gamma * dt;
  iterations_ += conduction_.solve(rates.cells, residual_, slope_);
  conduction_.outflow(slope_, flow_);
  rates.cells -= scale * (flow_ + leak_ * slope_);
  double leaving = (leak_ * slope_).sum();
  Bodies conductance{};
  for (std::size_t f = 0; f < films_.size(); ++f) {
    const Film &film = films_[f];
    const double flow = film_values_[f] * slope_.col(film.ring).sum();
    leaving -= flow;
    rates.bodies[film.body] += scale * flow;
    conductance[film.body] += film_values_[f] * double(geometry().angles);
  }
  rates.lost += scale * leaving;
  Bodies slopes{};
  for (std::size_t b = 0; b < body_count; ++b) {
    const double capacity = lumps_[b].capacity;
    slopes[b] =
        std::isinf(capacity) ? 0.0 : rates.bodies[b] / (capacity + scale * (conductance[b] + lumps_[b].loss));
    rates.bodies[b] -= scale * (conductance[b] + lumps_[b].loss) * slopes[b];
    rates.lost += scale * lumps_[b].loss * slopes[b];
  }
  for (std::size_t f = 0; f < films_.size(); ++f) {
    rates.cells.col(films_[f].ring) += scale * film_values_[f] * slopes[films_[f].body];
  }
}

// ROS2: k1 = stage(F(u)), k2 = stage(F(u + dt k1) - 2 k1), u' = u + dt (3/2 k1 + 1/2 k2).
void Stepper::step(const Content &start, const Reading &now, const Field &heat, double dt, Content &end,
                   Reading &after) {
  leaks(now, dt);
  explicit_rates(now, heat, first_);
  slope_ = first_slope_;
  stage(dt, first_);
  first_slope_ = slope_;
  for (Index j = 0; j < geometry().rings; ++j) {
    middle_.enthalpy.col(j) = start.enthalpy.col(j) + (dt / mass_(j)) * first_.cells.col(j);
  }
  for (std::size_t b = 0; b < body_count; ++b) {
    middle_.bodies[b] = start.bodies[b] + dt * first_.bodies[b];
  }
  read(middle_, between_);
  explicit_rates(between_, heat, second_);
  second_.cells -= 2.0 * first_.cells;
  for (std::size_t b = 0; b < body_count; ++b) {
    second_.bodies[b] -= 2.0 * first_.bodies[b];
  }
  second_.lost -= 2.0 * first_.lost;
  slope_ = -first_slope_;
  stage(dt, second_);
  end.enthalpy.resize(geometry().angles, geometry().rings);
  for (Index j = 0; j < geometry().rings; ++j) {
    end.enthalpy.col(j) =
        start.enthalpy.col(j) + (dt / mass_(j)) * (1.5 * first_.cells.col(j) + 0.5 * second_.cells.col(j));
  }
  for (std::size_t b = 0; b < body_count; ++b) {
    end.bodies[b] = start.bodies[b] + dt * (1.5 * first_.bodies[b] + 0.5 * second_.bodies[b]);
  }
  end.lost = start.lost + dt * (1.5 * first_.lost + 0.5 * second_.lost);
  read(end, after);
}

double Stepper::error(const Reading &after, double absolute, double relative) const {
  const double rise = (after.temperature - ambient_).abs().maxCoeff();
  const double worst =
      (after.temperature - between_.temperature).abs().maxCoeff() / (absolute + relative * rise);
  return std::isfinite(worst) ? worst : 1e300;
}

double Stepper::body_energy(const Bodies &bodies) const {
  double sum = 0.0;
  for (const double energy : bodies) {
    sum += energy;
  }
  return sum;
}

} // namespace purgewright::heat::detail
