// The job as the heat model sees it: mesh, surroundings, accuracy and the places the plan watches.
// Private to heat.
#pragma once

#include "purgewright/heat/plan.hpp"

namespace purgewright::heat::detail {

// A place on the tube: so much of the way from a ring's middle to the next one's.
struct Place {
  std::size_t ring = 0;
  double share = 0.0;
};

struct Scene {
  Chain chain;
  Surroundings surroundings;
  Accuracy accuracy;
  Arc arc; // power, widths and speed; start is set for each pass
  Region joint_zone, uncovered, everything;
  Place o_ring, wiper;
  std::size_t cap_centre = 0;
  double contact_radius = 0.0; // of the pin's contact on the cap, outer
  std::optional<Place> roller;
};

Scene scene_of(const job::Job &, const fixture::Layout &, const Options &, units::Temperature shielding);

} // namespace purgewright::heat::detail
