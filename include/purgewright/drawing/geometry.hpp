// Plane geometry on a sheet: points, boxes, segments and arcs.
//
// Units: millimetres on paper; angles in radians, counter-clockwise from +X.
// Frame: origin at the lower left corner of the trimmed sheet, Y up.
// Range and errors: plain values, no errors. Guarantee: same input, same bits.
// Source: plain geometry.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <variant>
#include <vector>

namespace purgewright::drawing {

inline constexpr double full_turn = 2.0 * std::numbers::pi;

struct Point {
  double x = 0.0, y = 0.0;
  friend Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
  friend Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
  friend Point operator*(double k, Point a) { return {k * a.x, k * a.y}; }
};

inline double dot(Point a, Point b) {
  return a.x * b.x + a.y * b.y;
}
inline double length(Point a) {
  return std::hypot(a.x, a.y);
}
inline Point unit(Point a) {
  return (1.0 / length(a)) * a;
}
inline Point turned_left(Point a) {
  return {-a.y, a.x};
}
inline Point polar(double radius, double angle) {
  return {radius * std::cos(angle), radius * std::sin(angle)};
}

// Empty when least > greatest.
struct Box {
  Point least{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
  Point greatest{-std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};

  double width() const { return greatest.x - least.x; }
  double height() const { return greatest.y - least.y; }
  Point centre() const { return 0.5 * (least + greatest); }
  void include(Point p) {
    least = {std::min(least.x, p.x), std::min(least.y, p.y)};
    greatest = {std::max(greatest.x, p.x), std::max(greatest.y, p.y)};
  }
  void include(const Box &b) {
    include(b.least);
    include(b.greatest);
  }
  Box grown(double by) const { return {{least.x - by, least.y - by}, {greatest.x + by, greatest.y + by}}; }
  bool contains(const Box &b) const {
    return b.least.x >= least.x && b.least.y >= least.y && b.greatest.x <= greatest.x &&
           b.greatest.y <= greatest.y;
  }
};

inline bool overlap(const Box &a, const Box &b) {
  return a.least.x < b.greatest.x && b.least.x < a.greatest.x && a.least.y < b.greatest.y &&
         b.least.y < a.greatest.y;
}

struct Segment {
  Point a, b;
};

// From angle `start` counter-clockwise by `sweep`; a full circle sweeps a full turn.
struct Arc {
  Point centre;
  double radius = 0.0, start = 0.0, sweep = full_turn;
  bool is_circle() const { return sweep >= full_turn - 1e-9; }
  Point at(double share) const { return centre + polar(radius, start + share * sweep); }
};

using Curve = std::variant<Segment, Arc>;
using Loop = std::vector<Point>; // closed, last joins first

// Chords of a curve, none farther than `deviation` from it.
std::vector<Segment> chords(const Curve &, double deviation);

Box box_of(const Curve &);

// Whether a segment passes through a box's inside.
bool crosses(const Segment &, const Box &);
// Whether two segments cross at a point inside both.
bool cross(const Segment &, const Segment &);

} // namespace purgewright::drawing
