#include "purgewright/heat/series.hpp"

#include "heat/require.hpp"

#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cmath>

namespace purgewright::heat {

namespace {

using units::Temperature;
using units::Time;

// Free faces of chamber and end plate: sides, ends and top; the bottom stands on the base plate.
double chamber_surface(const fixture::ChamberBody &body, const fixture::EndPlate &plate) {
  const units::Length length = body.length() + plate.thickness;
  return (2.0 * length * body.height() + 2.0 * body.width * body.height() + length * body.width).value();
}

double base_plate_surface(const fixture::BasePlate &plate, const fixture::ChamberBody &body) {
  const units::Area faces = 2.0 * plate.length() * plate.width() - body.length() * body.width;
  return (faces + 2.0 * (plate.length() + plate.width()) * plate.thickness).value();
}

// From the chamber's foot to the base plate's farthest end.
units::Length base_plate_reach(const fixture::BasePlate &plate, const fixture::ChamberBody &body) {
  return std::max({body.x_min - plate.x_min, plate.x_max - body.x_max, plate.y_max - 0.5 * body.width,
                   -0.5 * body.width - plate.y_min});
}

// Heat capacity and loss to the room of chamber and base plate, and what the plate conducts along its reach.
struct Bodies {
  double chamber, chamber_loss, plate, plate_loss; // J/K, W/K
  double along;                                    // W/K
};

// Eigenvectors of the cells' heat balance, made symmetric by the roots of their capacities.
std::array<Series::Mode, Series::cells + 1> modes_of(const Bodies &b) {
  constexpr auto cells = static_cast<Eigen::Index>(Series::cells);
  using Matrix = Eigen::Matrix<double, cells + 1, cells + 1>;
  Eigen::Vector<double, cells + 1> capacity;
  capacity.setConstant(b.plate / double(cells));
  capacity[0] = b.chamber;
  Matrix balance = Matrix::Zero();
  balance.diagonal().setConstant(b.plate_loss / double(cells));
  balance(0, 0) = b.chamber_loss;
  for (Eigen::Index i = 0; i < cells; ++i) {
    const double link =
        (i == 0 ? 2.0 : 1.0) * double(cells) * b.along; // the chamber stands on the first half cell's end
    balance(i, i) += link;
    balance(i + 1, i + 1) += link;
    balance(i, i + 1) = balance(i + 1, i) = -link;
  }
  const auto scaling = capacity.cwiseSqrt().cwiseInverse().asDiagonal();
  const Eigen::SelfAdjointEigenSolver<Matrix> solved(scaling * balance * scaling);
  std::array<Series::Mode, Series::cells + 1> modes;
  for (Eigen::Index i = 0; i <= cells; ++i) {
    const double share = solved.eigenvectors()(0, i);
    modes[static_cast<std::size_t>(i)] = {share * share / b.chamber, solved.eigenvalues()[i]};
  }
  return modes;
}

} // namespace

double settled_rise(const Series &series, Time period, Time after) {
  detail::require(period.value() > 0.0, "settled_rise", "period must be above 0", period.value());
  const double heating = std::min(series.warming, period).value();
  double rise = 0.0; // of a joule
  for (const auto &[per_joule, rate] : series.modes) {
    rise += std::exp(-rate * after.value()) * per_joule * std::expm1(-rate * heating) / (rate * heating) /
            std::expm1(-rate * period.value());
  }
  return series.heat * rise;
}

Time cooling_time(const Series &series, Temperature room, Temperature limit) {
  const double most = (limit - room).value();
  detail::require(most > 0.0, "cooling_time", "limit must be above the room's temperature", most);
  const auto rise = [&](Time after) { return settled_rise(series, series.period, after); };
  Time hot{}, cold{};
  while (rise(cold) > most) {
    hot = cold;
    cold += series.time_constant();
  }
  constexpr auto close = units::seconds(0.1);
  while (cold - hot > close) {
    const Time middle = 0.5 * (hot + cold);
    (rise(middle) > most ? hot : cold) = middle;
  }
  return cold;
}

double fin_efficiency(double coefficient, double conductivity, double side_over_section, double length) {
  const double m_length = std::sqrt(coefficient / conductivity * side_over_section) * length;
  return m_length < 1e-6 ? 1.0 : std::tanh(m_length) / m_length;
}

Temperature settled_temperature(Temperature room, double heat, double capacity, double loss, Time period) {
  constexpr std::string_view here = "settled_temperature";
  detail::require(heat > 0.0, here, "heat must be above 0", heat);
  detail::require(capacity > 0.0, here, "capacity must be above 0", capacity);
  detail::require(loss > 0.0, here, "loss must be above 0", loss);
  detail::require(period.value() > 0.0, here, "period must be above 0", period.value());
  const double lost_share = -std::expm1(-period.value() * loss / capacity);
  return units::kelvins(room.value() + heat / capacity / lost_share);
}

Series settle(const job::Job &job, const fixture::Layout &layout, const fixture::Volumes &volumes,
              const HeatPlan &plan, const ContactWishes &wishes, Time period) {
  const standards::Metal &metal = *job.fixture.material;
  const double by_volume = metal.density.value() * metal.specific_heat.room(), air = wishes.body_loss;
  const double chamber = by_volume * (volumes.chamber_walls + volumes.end_plate).value();
  const double chamber_loss = air * chamber_surface(layout.body, layout.end_plate);
  const double reach = base_plate_reach(layout.base, layout.body).value(),
               conductivity = metal.conductivity.room();
  const double surface = base_plate_surface(layout.base, layout.body);
  const double share =
      fin_efficiency(air, conductivity, 2.0 / layout.base.thickness.value(), reach); // wide and thin
  Series series;
  series.period = period;
  series.heat = plan.energy.in / job.weld.arc_efficiency - plan.energy.stored;
  const double plate = by_volume * volumes.base_plate.value();
  series.capacity = chamber + plate;
  series.loss = chamber_loss + air * share * surface;
  series.warming = plan.cycle;
  // A plate of this volume, as long as it reaches, has the section volume / reach.
  const double along = conductivity * volumes.base_plate.value() / (reach * reach);
  series.modes = modes_of({chamber, chamber_loss, plate, air * surface, along});
  series.settled = units::kelvins(plan.ambient.value() + settled_rise(series, period));
  series.settled_on_plastic = settled_temperature(plan.ambient, series.heat, chamber, chamber_loss, period);
  return series;
}

std::optional<Time> period_for(const Series &series, Temperature room, Temperature limit) {
  const double most = (limit - room).value();
  Time quick = series.warming, slow = std::max(quick, series.time_constant());
  if (settled_rise(series, quick) <= most) {
    return quick;
  }
  constexpr double longest = 1e3; // time constants: by then nothing is left of the part before
  while (settled_rise(series, slow) > most) {
    if (slow > longest * series.time_constant()) {
      return std::nullopt;
    }
    slow *= 2.0;
  }
  constexpr double close = 1e-9; // of the period
  while (slow - quick > close * slow) {
    const Time middle = 0.5 * (quick + slow);
    (settled_rise(series, middle) <= most ? slow : quick) = middle;
  }
  return slow;
}

void add_warm_plan(const job::Job &job, const fixture::Layout &layout, Options options, Series &series) {
  const Temperature shielding = options.shielding_temperature.value_or(job.weld.shielding_temperature);
  const Temperature coldest_wanted = std::min(shielding, job.weld.interpass_temperature.value_or(shielding));
  series.warm_known = true;
  if (series.settled <= coldest_wanted - least_cooling) {
    options.history = false;
    options.fixture = series.settled;
    Time fixture{};
    if (options.hand_warm && series.settled > *options.hand_warm - least_cooling) {
      fixture = cooling_time(series, options.ambient, *options.hand_warm - least_cooling);
      options.hand_warm = series.settled + least_cooling;
    }
    series.warm = plan_heat(job, layout, options);
    if (series.warm->hand_warm) {
      *series.warm->hand_warm += fixture;
    }
  }
}

} // namespace purgewright::heat
