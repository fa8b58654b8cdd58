#include "heat/step.hpp"

#include "purgewright/heat/gas_film.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::heat::detail {

namespace {

using Eigen::Index;

const double gamma = 1.0 - 1.0 / std::sqrt(2.0);

void make_room(const Geometry &g, Reading &reading) {
  for (Field *field : {&reading.temperature, &reading.conductivity, &reading.least_heat}) {
    field->resize(g.angles, g.rings);
  }
}

// Written so that a NaN makes it false: no minimum is above 0 then, or no sum is finite.
bool makes_sense(const Reading &reading) {
  bool sense = std::isfinite(reading.temperature.sum()) && reading.temperature.minCoeff() > 0.0;
  for (const double kelvin : reading.bodies) {
    sense = sense && kelvin > 0.0 && std::isfinite(kelvin);
  }
  return sense;
}

} // namespace

Stepper::Stepper(const Chain &chain, const Surroundings &surroundings)
    : conduction_(chain), lumps_(chain.bodies), ambient_(surroundings.ambient.value()),
      gas_(surroundings.gas) {
  for (const Metal &metal : chain.metals) {
    const bool again =
        !tables_.empty() && metal.name == chain.metals.front().name && metal.name != "constant";
    tables_.push_back(again ? tables_.front() : EnthalpyTable(metal));
  }
  const Index rings = geometry().rings;
  const auto n = double(geometry().angles);
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
  for (Field *field :
       {&cubed_, &leak_, &capacity_, &along_, &slope_, &first_.cells, &second_.cells, &middle_.enthalpy}) {
    field->setZero(geometry().angles, rings);
  }
}

double Stepper::enthalpy_at(std::size_t ring, double kelvin) const {
  return tables_[table_of_ring_[ring]].enthalpy_at(kelvin);
}

void Stepper::read(const Content &content, Reading &reading) const {
  const Index rings = geometry().rings, n = geometry().angles;
  make_room(geometry(), reading);
  for (Index j = 0; j < rings; ++j) {
    const EnthalpyTable &table = tables_[table_of_ring_[std::size_t(j)]];
    const double *enthalpy = content.enthalpy.col(j).data();
    double *temperature = reading.temperature.col(j).data();
    double *conductivity = reading.conductivity.col(j).data();
    double *least_heat = reading.least_heat.col(j).data();
    for (Index i = 0; i < n; ++i) {
      const Properties p = table.at(enthalpy[i]);
      temperature[i] = p.temperature;
      conductivity[i] = p.conductivity;
      least_heat[i] = p.least_heat;
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

// What the linear system needs of the step's start. What the bore's walls shine at each other leaves a cell
// as if for good; `stage` gives it back.
void Stepper::fix_system(const Reading &reading, double dt) {
  cubed_ = reading.temperature.cube();
  for (Index j = 0; j < geometry().rings; ++j) {
    leak_.col(j) = still_(j) + 4.0 * (emitting_(j) + glowing_(j)) * cubed_.col(j);
    capacity_.col(j) = mass_(j) * reading.least_heat.col(j);
  }
  for (std::size_t f = 0; f < films_.size(); ++f) {
    film_values_[f] = film_conductance(films_[f], reading);
    leak_.col(films_[f].ring) += film_values_[f];
  }
  conduction_.set_conductivity(reading.conductivity);
  conduction_.set_system(capacity_, leak_, gamma * dt);
}

void Stepper::explicit_rates(const Reading &reading, const Field &heat, Rates &rates) {
  conduction_.outflow(reading.temperature, rates.cells);
  rates.cells = heat - rates.cells;
  const double cold = ambient_ * ambient_ * ambient_ * ambient_;
  rates.lost = 0.0;
  double shone = 0.0;
  for (Index j = 0; j < geometry().rings; ++j) {
    const auto t = reading.temperature.col(j);
    fourth_ = t.square().square();
    rates.cells.col(j) -=
        still_(j) * (t - ambient_) + emitting_(j) * (fourth_ - cold) + glowing_(j) * fourth_;
    rates.lost += still_(j) * (t - ambient_).sum() + emitting_(j) * (fourth_ - cold).sum();
    shone += glowing_(j) * fourth_.sum();
  }
  give_back(shone, rates.cells);
  for (std::size_t b = 0; b < body_count; ++b) {
    const double flow = lumps_[b].loss * (reading.bodies[b] - ambient_);
    rates.bodies[b] = -flow;
    rates.lost += flow;
  }
  for (const Film &film : films_) {
    const double conductance = film_conductance(film, reading), body = reading.bodies[film.body];
    rates.cells.col(film.ring) -= conductance * (reading.temperature.col(film.ring) - body);
    rates.bodies[film.body] += conductance * (reading.temperature.col(film.ring) - body).sum();
  }
}

// Every wall of the bore takes of what all of them shine by its area and emissivity.
void Stepper::give_back(double shone, Field &cells) const {
  const double all = glowing_.sum() * double(geometry().angles);
  if (all > 0.0) {
    for (Index j = 0; j < geometry().rings; ++j) {
      cells.col(j) += shone * glowing_(j) / all;
    }
  }
}

// Cells first, then the bodies with what the cells give them, then what the bodies' change and the bore's
// walls give back: an approximate factorisation that keeps the order. Everything leaves one place and enters
// another.
void Stepper::stage(double dt, Rates &rates) {
  const double scale = gamma * dt;
  conduction_.solve(rates.cells, along_, slope_);
  rates.cells = capacity_ * slope_;
  double leaving = 0.0, shone = 0.0;
  for (Index j = 0; j < geometry().rings; ++j) {
    leaving += (leak_.col(j) * along_.col(j)).sum();
    shone += 4.0 * glowing_(j) * (cubed_.col(j) * along_.col(j)).sum();
  }
  give_back(scale * shone, rates.cells);
  rates.lost += scale * (leaving - shone);
  implicit_bodies(scale, rates);
}

void Stepper::implicit_bodies(double scale, Rates &rates) const {
  Bodies conductance{}, slopes{};
  for (std::size_t f = 0; f < films_.size(); ++f) {
    const Film &film = films_[f];
    const double flow = scale * film_values_[f] * along_.col(film.ring).sum();
    rates.lost -= flow;
    rates.bodies[film.body] += flow;
    conductance[film.body] += film_values_[f] * double(geometry().angles);
  }
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

bool Stepper::advance(const Content &start, const Rates &rates, double dt, Content &end,
                      Reading &after) const {
  end.enthalpy.resize(geometry().angles, geometry().rings);
  for (Index j = 0; j < geometry().rings; ++j) {
    end.enthalpy.col(j) = start.enthalpy.col(j) + (dt / mass_(j)) * rates.cells.col(j);
  }
  for (std::size_t b = 0; b < body_count; ++b) {
    end.bodies[b] = start.bodies[b] + dt * rates.bodies[b];
  }
  end.lost = start.lost + dt * rates.lost;
  read(end, after);
  return makes_sense(after);
}

void Stepper::blend(double share, const Rates &first, double own, Rates &second) {
  second.cells = share * first.cells + own * second.cells;
  for (std::size_t b = 0; b < body_count; ++b) {
    second.bodies[b] = share * first.bodies[b] + own * second.bodies[b];
  }
  second.lost = share * first.lost + own * second.lost;
}

// ROS2: k1 = stage(F(u)), k2 = stage(F(u + dt k1) - 2 k1), u' = u + dt (3/2 k1 + 1/2 k2).
bool Stepper::step(const Content &start, const Reading &now, const Field &heat, double dt, Content &end,
                   Reading &after) {
  fix_system(now, dt);
  explicit_rates(now, heat, first_);
  stage(dt, first_);
  if (!advance(start, first_, dt, middle_, between_)) {
    return false;
  }
  conduction_.set_conductivity(between_.conductivity);
  explicit_rates(between_, heat, second_);
  blend(-2.0, first_, 1.0, second_);
  stage(dt, second_);
  blend(1.5, first_, 0.5, second_);
  return advance(start, second_, dt, end, after);
}

double Stepper::error(const Reading &after, double absolute, double relative) const {
  const double rise = (after.temperature - ambient_).abs().maxCoeff();
  return (after.temperature - between_.temperature).abs().maxCoeff() / (absolute + relative * rise);
}

double Stepper::body_energy(const Bodies &bodies) const {
  double sum = 0.0;
  for (const double energy : bodies) {
    sum += energy;
  }
  return sum;
}

} // namespace purgewright::heat::detail
