// Parts welded one after another: how warm the fixture settles, and how much longer every hold then takes.
//
// Model: chamber body, end plate and base plate are one lump of metal with the warmest temperature. Every
// part leaves in it, at once, all the arc's electrical heat, as the pedal eases it, but what tube and cap
// carry out at the end of the last hold; what the gas takes along and what the torch keeps is left out, so
// that the fixture comes out too warm. Until the next part it cools in still air: chamber and end plate on
// their free faces, the base plate as a fin from the chamber's foot to its farthest end. Stands, stop, block
// and feet are left out. A finer model, the base plate as a strip of cells and the heat spread over the
// part's time, has logger-25's chamber settle a sixth of that rise warmer at most (tests/unit/heat). After
// many parts the warming of one equals the cooling between two. The holds are those of a plan whose chamber,
// pin and gas start that warm. Units: quantity types; J, J/K, W/K as plain numbers. Errors: std::domain_error
// for a period, heat or capacity not above 0. Guarantee: deterministic. Source: lumped capacitance and fin of
// uniform section with an adiabatic tip: Incropera & DeWitt, eqs. 5.6 and 3.76; coefficient:
// ContactWishes::body_loss.
#pragma once

#include "purgewright/fixture/volumes.hpp"
#include "purgewright/heat/plan.hpp"

#include <optional>

namespace purgewright::heat {

struct Series {
  units::Time period{};                    // from one part to the next
  double heat = 0.0;                       // J that a part leaves, at most
  double capacity = 0.0, loss = 0.0;       // J/K, W/K of chamber body, end plate and base plate
  units::Temperature settled{};            // after the last hold of a part, many parts on
  units::Temperature settled_on_plastic{}; // of chamber body and end plate on a base plate that takes no heat
  // Plan of a part on the settled fixture, by add_warm_plan; absent where that is too warm for a hold to end.
  std::optional<HeatPlan> warm = {};

  units::Time time_constant() const { return units::seconds(capacity / loss); }
  units::Time settling() const { return 3.0 * time_constant(); } // until 95 % of the way is done
};

// Temperature right after a part's heat when every part leaves `heat` and follows the one before by `period`.
units::Temperature settled_temperature(units::Temperature room, double heat, double capacity, double loss,
                                       units::Time period);

// Heat that a fin of uniform section with an adiabatic tip passes, over what it would were it all at its
// foot's temperature; `side_over_section` is perimeter over area of the section, 1/m. Incropera & DeWitt,
// eq. 3.76.
double fin_efficiency(double coefficient, double conductivity, double side_over_section, double length);

// Settled temperatures; `plan` is the first part's, `period` the time from one part to the next.
Series settle(const job::Job &, const fixture::Layout &, const fixture::Volumes &, const HeatPlan &plan,
              const ContactWishes &, units::Time period);

// Shortest period at which the fixture settles at `limit` at most; absent when one part alone warms it more.
std::optional<units::Time> period_for(const Series &, units::Temperature room, units::Temperature limit);

// Adds the plan of a part on the settled fixture, with these options.
void add_warm_plan(const job::Job &, const fixture::Layout &, Options, Series &);

} // namespace purgewright::heat
