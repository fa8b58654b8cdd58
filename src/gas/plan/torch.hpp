// The open chamber with the torch away and back over the joint; private to the purge plan.
#pragma once

#include "scene.hpp"

namespace purgewright::gas::plan {

// Room air that a hot joint draws in through the open slot, before the outflow opposes it: the plume of the
// tube's top, and argon as hot as the metal under the slot; both 0 for a joint as cold as the shop.
// Sources: plume from a point, Rouse, Yih & Humphreys 1952, with the heat of a ring of tube as wide as the
// torch's cup, Churchill & Chu 1975; exchange, Epstein 1988. Which of the two it is nearer to: the flow
// solutions of tests/reference/gas/flow_solutions.yaml lie between.
struct Drawn {
  units::VolumeFlow low{}, high{};
};
// With the torch over the slot what is left open is beside its cup, and its cold gas halves the rise of what
// the metal heats (common practice, no source).
Drawn drawn_in(const Subject &, units::Temperature metal, bool torch = false);

// What of it comes in against a net outflow; both fall by the same share.
Drawn against(const Drawn &, units::VolumeFlow outflow);

// The same in the first seconds after the torch has left, which are the worst; low and high lie nearer
// together.
Drawn away(const Drawn &, units::VolumeFlow outflow);

// Oxygen at the joint's outside of an open chamber at rest.
OxygenRange cold_floor(const Subject &, const Stage &);
OxygenRange hot_floor(const Subject &, Stage, const Drawn &);

// Fills Purge::torch; needs the welding flows.
void plan_torch(const Subject &, Purge &);

} // namespace purgewright::gas::plan
