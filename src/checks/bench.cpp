// What carries and turns the tube on the bench.
#include "topics.hpp"

#include <array>

namespace purgewright::checks {
namespace {

constexpr std::string_view practice = "common practice, no source";

Verdict axial_stop(const Design &d) {
  return at_least(d.layout.stop.room.value(), d.layout.stop.room_needed.value(), Status::caution);
}

constexpr std::array<Rule, 1> table{{
    {"bench.axial_stop", "Cradle has room for hand, index collar and axial stop", practice, units::Dimension::length,
     axial_stop,
     "the axial stop is left out: press the tube by hand, and read the collar against a mark on the front stand"},
}};

} // namespace

std::span<const Rule> bench_rules() { return table; }

} // namespace purgewright::checks
