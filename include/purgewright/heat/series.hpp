// Parts welded one after another: how warm the fixture settles, and how much longer every hold then takes.
//
// Model: chamber body, end plate and base plate are one lump of metal with the warmest temperature. Every part leaves
// in it, at once, all the arc's electrical heat but what tube and cap carry out at the end of the last hold; what the
// gas takes along and what the torch keeps is left out, so that the fixture comes out too warm. Until the next part it
// cools in still air: chamber and end plate on their free faces, the base plate as a fin from the chamber's foot to its
// farthest end. Stands, stop, block and feet are left out. After many parts the warming of one equals the cooling
// between two. The holds are those of a plan whose chamber, pin and gas start that warm.
// Units: quantity types; J, J/K, W/K as plain numbers. Errors: std::domain_error for a period, heat or capacity not
// above 0. Guarantee: deterministic. Source: lumped capacitance and fin of uniform section with an adiabatic tip:
// Incropera & DeWitt, eqs. 5.6 and 3.76; coefficient: ContactWishes::body_loss.
#pragma once

#include "purgewright/fixture/volumes.hpp"
#include "purgewright/heat/plan.hpp"

#include <optional>
#include <vector>

namespace purgewright::heat {

// Bare metal this hot burns the skin within a minute. Source: ISO 13732-1:2006, burn threshold for contact of 1 min;
// the value from memory.
inline constexpr units::Temperature burn_threshold = units::celsius(51.0);

// How much cooler than the shielding temperature the fixture must be for a hold to end at all: common practice, no source.
inline constexpr auto least_cooling = units::TemperatureDifference::from_value(5.0); // K

struct Series {
  units::Time period{}; // from one part to the next
  double heat = 0.0;    // J that a part leaves, at most
  double capacity = 0.0, loss = 0.0; // J/K, W/K of chamber body, end plate and base plate
  units::Temperature settled{};      // after the last hold of a part, many parts on
  units::Temperature settled_on_plastic{}; // of chamber body and end plate on a base plate that takes no heat
  bool too_warm = false;    // chamber as warm as the shielding temperature, less `least_cooling`, or a hold that does not end
  bool holds_known = false; // by add_holds; what follows is then set, unless it is too warm to hold at all
  std::vector<units::Time> tack_holds, run_holds;
  units::Time longest_hold{}, torch_move{};

  units::Time time_constant() const { return units::seconds(capacity / loss); }
  units::Time settling() const { return 3.0 * time_constant(); } // until 95 % of the way is done
  units::Time postflow() const { return longest_hold + torch_move; }
};

// Temperature right after a part's heat when every part leaves `heat` and follows the one before by `period`.
units::Temperature settled_temperature(units::Temperature room, double heat, double capacity, double loss,
                                       units::Time period);

// Settled temperatures; `plan` is the first part's, `period` the time from one part to the next.
Series settle(const job::Job &, const fixture::Layout &, const fixture::Volumes &, const HeatPlan &plan,
              const ContactWishes &, units::Time period);

// Shortest period at which the fixture settles at `limit` at most; absent when one part alone warms it more.
std::optional<units::Time> period_for(const Series &, units::Temperature room, units::Temperature limit);

// Holds on the settled fixture, by one more plan with these options.
void add_holds(const job::Job &, const fixture::Layout &, Options, Series &);

} // namespace purgewright::heat
