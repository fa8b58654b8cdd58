// A callout at one of its possible places: leader with arrow, and text, roughness symbol, tolerance frame or
// datum.
//
// Units: millimetres on paper. Frame: sheet. Range and errors: none. Guarantee: the ways are tried in one
// order. Source: ISO 129-1 leaders, ISO 21920-1 symbol, ISO 1101 frame, ISO 5459 datum.
#pragma once

#include "placement.hpp"

namespace purgewright::drawing {

struct LeaderWay {
  double angle = 0.0, length = 0.0, cost = 0.0;
};
std::vector<LeaderWay> leader_ways(const Callout &); // by rising cost

Dimension callout_shape(const Callout &, const Stand &, const LeaderWay &);

} // namespace purgewright::drawing
