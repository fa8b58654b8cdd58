#include "solids/kernel/profile.hpp"

#include "purgewright/solids/kernel/scale.hpp"

#include <cmath>

namespace purgewright::solids::kernel {

namespace {

constexpr double turn = 2.0 * units::pi;

double wrapped(double angle) {
  return angle - turn * std::floor(angle / turn);
}

std::optional<ProfileArc> arc_through(ProfileSegment const &chord, double via_axial, double via_radial) {
  double const ax = via_axial - chord.axial;
  double const ay = via_radial - chord.radial;
  double const bx = chord.axial_end - chord.axial;
  double const by = chord.radial_end - chord.radial;
  double const cross = 2.0 * (ax * by - ay * bx);
  double const size = std::hypot(ax, ay) * std::hypot(bx, by);
  constexpr double in_line = 1e-9; // relative: the radius would be a thousand million chords
  if (!(std::abs(cross) > in_line * size))
    return std::nullopt;
  double const a2 = ax * ax + ay * ay;
  double const b2 = bx * bx + by * by;
  double const cx = (by * a2 - ay * b2) / cross;
  double const cy = (ax * b2 - bx * a2) / cross;
  double const start = std::atan2(-cy, -cx);
  double const middle = wrapped(std::atan2(ay - cy, ax - cx) - start);
  double const end = wrapped(std::atan2(by - cy, bx - cx) - start);
  return ProfileArc{.axial = chord.axial + cx,
                    .radial = chord.radial + cy,
                    .radius = std::hypot(cx, cy),
                    .start = start,
                    .sweep = middle < end ? end : end - turn};
}

} // namespace

std::vector<ProfileSegment> segments(std::vector<ProfilePoint> const &profile) {
  std::vector<ProfileSegment> result;
  for (std::size_t i = 0; i < profile.size(); ++i) {
    ProfilePoint const &from = profile[i];
    ProfilePoint const &to = profile[(i + 1) % profile.size()];
    ProfileSegment segment{.axial = mm(from.axial),
                           .radial = mm(from.radial),
                           .axial_end = mm(to.axial),
                           .radial_end = mm(to.radial),
                           .arc = std::nullopt};
    if (from.via) {
      segment.arc = arc_through(segment, mm(from.via->axial), mm(from.via->radial));
      segment.bad_arc = !segment.arc;
    }
    result.push_back(segment);
  }
  return result;
}

double swept_volume(ProfileSegment const &s) {
  if (!s.arc)
    return units::pi / 3.0 * (s.axial_end - s.axial) *
           (s.radial * s.radial + s.radial * s.radial_end + s.radial_end * s.radial_end);
  // With r = rc + R sin t and dx = -R sin t dt, the integral of r^2 dx falls into powers of the sine.
  auto const primitive = [&a = *s.arc](double t) {
    double const c = std::cos(t);
    double const sin1 = -c;
    double const sin2 = 0.5 * (t - std::sin(t) * c);
    double const sin3 = c * c * c / 3.0 - c;
    return a.radial * a.radial * sin1 + 2.0 * a.radial * a.radius * sin2 + a.radius * a.radius * sin3;
  };
  return -units::pi * s.arc->radius * (primitive(s.arc->start + s.arc->sweep) - primitive(s.arc->start));
}

} // namespace purgewright::solids::kernel
