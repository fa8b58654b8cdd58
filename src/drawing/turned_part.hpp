// What the views of a turned part share; private to the drawing floor.
//
// Units: millimetres at full size. Frame: the part's own. Range and errors: the part's body is a TurnedBody.
// Guarantee: plain functions. Source: none.
#pragma once

#include "feature_views.hpp"

#include <fmt/format.h>

namespace purgewright::drawing {

template <class Kind, class Do> void each(const fixture::Part &part, Do &&on) {
  for (const auto &feature : part.features) {
    if (const auto *found = std::get_if<Kind>(&feature)) {
      on(*found);
    }
  }
}

const fixture::TurnedBody &body_of(const fixture::Part &);
// "end-plug.spigot_radius"
std::string name(const fixture::Part &, std::string_view feature, std::string_view size);
// Where lengths start.
fixture::Length datum_x(const fixture::TurnedBody &);

struct Span {
  const fixture::TurnedStep &step;
  fixture::Length from;
};
std::vector<Span> spans(const fixture::TurnedBody &);

// Radius of the contour's outermost metal at a face, for the foot of a dimension.
double foot(const fixture::TurnedBody &, fixture::Length x);

// Every hole on the section: its edges, sizes and place.
void turned_holes(ViewPlan &, const Inputs &, const fixture::Part &);

} // namespace purgewright::drawing
