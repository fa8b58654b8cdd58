// What carries and turns the tube on the bench.
#include "topics.hpp"

#include "purgewright/fixture/balance.hpp"
#include "purgewright/fixture/family.hpp"

#include <array>

namespace purgewright::checks {
namespace {

constexpr std::string_view practice = "common practice, no source";

Verdict axial_stop(const Design &d) {
  return at_least(d.layout.stop.room.value(), d.layout.stop.room_needed.value(), Status::caution);
}

// A hand on the collar or a hose that pulls must not tip the tube off its rollers.
Verdict balanced(const Design &d) {
  constexpr double least = 10e-3; // m, common practice
  return at_least(fixture::balance(d.job, d.layout).margin().value(), least);
}

// What the springs still give, drawn back over a spigot and a millimetre of play.
Verdict draws_back(const Design &d) {
  constexpr units::Length play = units::millimetres(1.0);
  const auto &stop = d.layout.stop;
  const auto needed = d.job.cap.spigot_length + play;
  return at_least((stop.spring_free - stop.preload - stop.spring_solid).value(), needed.value());
}

// Jobs of the family whose own layout clashes on the common bench.
Verdict family(const Design &d) {
  double clashing = 0.0;
  for (const auto &member : fixture::family_members(d.job)) {
    clashing += member.conflicts.empty() ? 0.0 : 1.0;
  }
  return at_most(clashing, 0.0);
}

bool has_family(const Design &d) {
  return !d.job.family.empty();
}

bool bought_in_inches(const Design &d) {
  return d.job.origin(job::Key::tube_outside_diameter).inches;
}

// A tube bought in inches is welded in an inch shop more often than not.
Verdict units_said(const Design &d) {
  const bool guessed = d.job.origin(job::Key::shop_units).basis != units::Basis::given;
  return at_most(guessed ? 1.0 : 0.0, 0.0, Status::caution);
}

bool has_stop(const Design &d) {
  return d.layout.stop.present;
}

constexpr std::array<Rule, 5> table{{
    {"bench.axial_stop", "Cradle has room for hand, index collar and axial stop", practice,
     units::Dimension::length, axial_stop,
     "the axial stop is left out: press the tube by hand, and read the collar on the front stand as "
     "before; fixture.cradle: spindle has room for it"},
    {"bench.balance", "Weight of all that turns lies between the end rollers", practice,
     units::Dimension::length, balanced,
     "a longer tube.length, a lighter cap, or hold the tube down on its rear rollers by hand as it turns"},
    {"bench.press_stroke", "Axial stop's springs let the tube be drawn back to load the cap", practice,
     units::Dimension::length, draws_back, "shorter cap.spigot_length", Needs::nothing, nullptr, has_stop},
    {"bench.units_said", "Units of sheets and screws are said where the tube's diameter is given in inches",
     practice, units::Dimension::count, units_said,
     "shop.units: inch for sheets in inches, unified screws and inch stock; metric keeps them metric",
     Needs::nothing, nullptr, bought_in_inches},
    {"bench.family", "Every tube of fixture.family can be laid out on the common bench",
     "layout of the fixture", units::Dimension::count, family,
     "`purgewright check` of each job of fixture.family says what clashes there", Needs::nothing, nullptr,
     has_family},
}};

} // namespace

std::span<const Rule> bench_rules() {
  return table;
}

} // namespace purgewright::checks
