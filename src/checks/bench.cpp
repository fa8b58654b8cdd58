// What carries and turns the tube on the bench.
#include "topics.hpp"

#include "purgewright/fixture/family.hpp"

#include <array>

namespace purgewright::checks {
namespace {

constexpr std::string_view practice = "common practice, no source";

Verdict axial_stop(const Design &d) {
  return at_least(d.layout.stop.room.value(), d.layout.stop.room_needed.value(), Status::caution);
}

// Jobs of the family whose own layout clashes on the common bench.
Verdict family(const Design &d) {
  double clashing = 0.0;
  for (const auto &member : fixture::family_members(d.job)) {
    clashing += member.conflicts.empty() ? 0.0 : 1.0;
  }
  return at_most(clashing, 0.0);
}

constexpr std::array<Rule, 2> table{{
    {"bench.axial_stop", "Cradle has room for hand, index collar and axial stop", practice,
     units::Dimension::length, axial_stop,
     "the axial stop is left out: press the tube by hand, and read the collar against a mark on the front "
     "stand"},
    {"bench.family", "Every tube of fixture.family can be laid out on the common bench",
     "layout of the fixture", units::Dimension::count, family,
     "`purgewright check` of each job of fixture.family says what clashes there", Needs::family},
}};

} // namespace

std::span<const Rule> bench_rules() {
  return table;
}

} // namespace purgewright::checks
