// Parts welded one after another: how warm the fixture settles, and how much longer every hold then takes.
//
// Model: chamber walls and end plate are one node, the base plate under them a strip of cells from the
// chamber's foot to its farthest end, its whole capacity and surface spread over it. Every part leaves in the
// chamber, evenly from its first arc to the end of its last hold, all the arc's electrical heat, as the pedal
// eases it, but what tube and cap carry out; what the gas takes along and what the torch keeps is left out,
// so that the fixture comes out too warm. All faces but the chamber's bottom cool in still air. Stands, stop,
// block and feet are left out. After many parts the warming of one equals the cooling till the next: solved
// exactly, mode by mode. The holds are those of a plan whose chamber, pin and gas start that warm. Units:
// quantity types; J, J/K, W/K as plain numbers. Errors: std::domain_error for a period, heat or capacity not
// above 0. Guarantee: deterministic. Source: linear heat balance of the cells; lumped capacitance and fin of
// uniform section with an adiabatic tip, for the time constant: Incropera & DeWitt, eqs. 5.6 and 3.76;
// coefficient: ContactWishes::body_loss.
#pragma once

#include "purgewright/fixture/volumes.hpp"
#include "purgewright/heat/plan.hpp"

#include <array>
#include <optional>

namespace purgewright::heat {

struct Series {
  units::Time period{};                    // from one part to the next
  double heat = 0.0;                       // J that a part leaves, at most
  double capacity = 0.0, loss = 0.0;       // J/K, W/K of chamber walls, end plate and base plate
  units::Time warming{};                   // in which a part leaves its heat
  units::Temperature settled{};            // after the last hold of a part, many parts on
  units::Temperature settled_on_plastic{}; // of chamber body and end plate on a base plate that takes no heat
  // A way in which chamber and base plate cool together: how much a joule in the chamber warms the chamber by
  // it, and how fast that goes. Rates are above 0.
  struct Mode {
    double rise = 0.0, rate = 0.0; // K/J, 1/s
  };
  static constexpr std::size_t cells = 24; // of the base plate
  std::array<Mode, cells + 1> modes{};
  // Plan of a part on the settled fixture, by add_warm_plan; absent where that is too warm for a hold to end.
  std::optional<HeatPlan> warm = {};
  bool warm_known = false; // add_warm_plan has been asked

  units::Time time_constant() const { return units::seconds(capacity / loss); }
  units::Time settling() const { return 3.0 * time_constant(); } // until 95 % of the way is done
};

// The chamber's rise over the room at the end of a part's last hold, many parts on, K; and this long after
// it, when no part follows.
double settled_rise(const Series &, units::Time period, units::Time after = {});

// From then until the chamber is at `limit`, which must be above the room's temperature.
units::Time cooling_time(const Series &, units::Temperature room, units::Temperature limit);

// Of one node that gets its heat at once: temperature right after, when every part leaves `heat` and follows
// the one before by `period`.
units::Temperature settled_temperature(units::Temperature room, double heat, double capacity, double loss,
                                       units::Time period);

// Heat that a fin of uniform section with an adiabatic tip passes, over what it would were it all at its
// foot's temperature; `side_over_section` is perimeter over area of the section, 1/m. Incropera & DeWitt,
// eq. 3.76.
double fin_efficiency(double coefficient, double conductivity, double side_over_section, double length);

// Settled temperatures; `plan` is the first part's, `period` the time from one part to the next.
Series settle(const job::Job &, const fixture::Layout &, const fixture::Volumes &, const HeatPlan &plan,
              const ContactWishes &, units::Time period);

// Shortest period at which the fixture settles at `limit` at most, a part's own time at least; absent when
// one part alone warms it more.
std::optional<units::Time> period_for(const Series &, units::Temperature room, units::Temperature limit);

// Adds the plan of a part on the settled fixture, with these options. Work in a fixture that is itself warmer
// than a hand may touch is hand-warm once it has come near the fixture and then the fixture has cooled: one
// time after the other, which comes out too long.
void add_warm_plan(const job::Job &, const fixture::Layout &, Options, Series &);

} // namespace purgewright::heat
