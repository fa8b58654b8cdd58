// The plug's rubber at the worst of tube, groove and ring.
// Purge gas stands a few hundred pascals above the room: what counts is that some squeeze is left, that the
// rubber is not crushed, and that a hand can set the plug.
#include "topics.hpp"

#include <array>

namespace purgewright::checks {
namespace {

Verdict squeeze_least(const Design &d) {
  return at_least(d.layout.plug.seal.squeeze_least, 0.0);
}

Verdict squeeze_most(const Design &d) {
  const auto &seal = d.layout.plug.seal;
  return at_most(seal.squeeze_most, seal.squeeze_limit);
}

Verdict stretch(const Design &d) {
  const auto &seal = d.layout.plug.seal;
  return seal.stretch < 0.0 ? Verdict{Status::fail, seal.stretch, 0.0, Bound::at_least}
                            : at_most(seal.stretch, seal.stretch_limit);
}

Verdict fill(const Design &d) {
  return at_most(d.layout.plug.seal.fill_most, standards::seal_rules().fill_max);
}

// Push or torque as a share of what a hand does.
Verdict by_hand(const Design &d) {
  const auto &seal = d.layout.plug.seal;
  return at_most(seal.hand / seal.hand_limit, 1.0);
}

bool has_ring(const Design &d) {
  return d.layout.plug.seal.ring != nullptr;
}

constexpr std::string_view tolerances =
    "measure the tube and state closer tube.outside_diameter_tolerance and tube.wall_tolerance, or "
    "fixture.plug: auto";
constexpr std::array<Rule, 5> table{{
    {"seal.plug_squeeze_least", "Plug's rubber keeps some squeeze at the worst of tube, groove and ring",
     "MIL-G-5514: a positive interference", units::Dimension::ratio, squeeze_least, tolerances},
    {"seal.plug_squeeze_most", "Plug's rubber is not crushed at the tightest of tube, groove and ring",
     "Mechanical Engineers' Handbook vol. 3: 30 % at most for a ring at rest; a sleeve 25 %, from memory",
     units::Dimension::ratio, squeeze_most, tolerances},
    {"seal.plug_stretch", "Plug O-ring's stretch",
     "O-ring handbooks: 0 to 5 % on a groove; 20 % for minutes on a tube, from memory",
     units::Dimension::ratio, stretch, "fixture.plug: auto takes a kind that serves this tube",
     Needs::nothing, nullptr, has_ring},
    {"seal.plug_fill", "Plug O-ring's share of its groove", "O-ring handbooks: 85 % at most",
     units::Dimension::ratio, fill, tolerances, Needs::nothing, nullptr, has_ring},
    {"seal.plug_hand", "Push on the plug, or torque at its knob, as a share of what a hand does",
     "150 N one arm, 100 N each of two hands at the knob's rim; from memory of ergonomic tables",
     units::Dimension::ratio, by_hand, "fixture.plug: expanding, or closer tube tolerances"},
}};

} // namespace

std::span<const Rule> seal_rules() {
  return table;
}

} // namespace purgewright::checks
