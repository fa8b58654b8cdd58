// A view as its part describes it: full-size geometry in the plane of projection and wishes for dimensions,
// before anything has a place on paper. Private to the drawing floor.
//
// Units: millimetres at full size; room in millimetres on paper. Frame: the part's own; `Looking` turns it
// into the plane, right and up as seen by the viewer, who stands on the side of right x up. Range and errors:
// plain values. Guarantee: no kernel types. Source: ISO 128-3 (views), ISO 5456-2.
#pragma once

#include "purgewright/drawing/sheet.hpp"

#include <optional>
#include <string>
#include <vector>

namespace purgewright::drawing {

struct Vec {
  double x = 0.0, y = 0.0, z = 0.0;
};
inline double dot(Vec a, Vec b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}
inline Vec operator+(Vec a, Vec b) {
  return {a.x + b.x, a.y + b.y, a.z + b.z};
}
inline Vec operator-(Vec a, Vec b) {
  return {a.x - b.x, a.y - b.y, a.z - b.z};
}
inline Vec operator*(double k, Vec a) {
  return {k * a.x, k * a.y, k * a.z};
}
inline Vec cross(Vec a, Vec b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}

struct Looking {
  Vec right, up;
  Point operator()(Vec v) const { return {dot(v, right), dot(v, up)}; }
  Vec toward() const { return cross(right, up); } // from the part to the viewer
};
inline constexpr Looking from_front{{1, 0, 0}, {0, 0, 1}};
inline constexpr Looking from_above{{1, 0, 0}, {0, 1, 0}};
inline constexpr Looking from_below{{1, 0, 0}, {0, -1, 0}};
inline constexpr Looking from_left{{0, -1, 0}, {0, 0, 1}};
inline constexpr Looking from_right{{0, 1, 0}, {0, 0, 1}};

enum class Side { below, above, left, right };

struct Label {
  std::vector<std::string> lines;
  fixture::Length value{};
  double shown = 0.0, last_digit = 0.0;
  std::size_t number_at = 0, number_size = 0; // where the first line says the value
  void put_before(const std::string &);       // of the first line
};

// A dimension between two points of the part, its line outside the view on one side.
struct Linear {
  std::string feature;
  Vec a, b;
  Side side = Side::below;
  Label label;
  Probe probe = Probe::distance;
  bool exact = false; // theoretically exact, in a box: a tolerance of position refers to it
};

enum class Ornament { plain, roughness, tolerance_frame, datum, balloon };

// A text at the end of a leader. With a radius the leader meets the circle about `tip` from outside.
struct Callout {
  std::string feature;
  Vec tip;
  double radius = 0.0;
  Label label;
  Ornament ornament = Ornament::plain;
  Probe probe = Probe::none;
  Vec surface{};                   // a point of the round face, for probes
  Vec axis{};                      // its axis
  std::optional<double> towards{}; // preferred direction of the leader, radians
};

// Cutting plane or viewing direction marked on a view, and the circle of a detail.
struct Mark {
  enum class Kind { cut, arrow, detail } kind = Kind::cut;
  std::string letter;
  Vec a, b;   // ends of the plane; arrow: tip and tail; detail: centre and a point of the circle
  Vec look{}; // direction of sight
};

struct Room {
  double left = 12.0, right = 12.0, above = 12.0, below = 12.0;
};

// A cut face; parts that meet are hatched in different ways.
struct Hatching {
  std::vector<Loop> loops; // even-odd
  double angle = 0.25 * std::numbers::pi;
  double spacing = 2.5; // mm on paper
};

struct ViewPlan {
  std::string name;          // "section", "from-left"
  std::string caption;       // "A-A"; empty for a view that its place explains
  std::string moved_caption; // "View from the left": when it stands in another row than its own
  Looking looking = from_front;
  double enlarge = 1.0;     // beyond the sheet's main scale
  double scale = 0.0;       // its own, of the preferred series; 0: the sheet's
  bool to_scale = true;     // false: no scale in its caption
  bool floating = false;    // stands anywhere in its row: details and pictorial views
  bool simplified = false;  // of forms of any size that would print as one line
  bool dispensable = false; // left out rather than given a sheet of its own
  std::vector<Stroke> strokes;
  std::vector<Hatching> hatched;
  std::vector<Linear> linears;
  std::vector<Callout> callouts;
  std::vector<Mark> marks;
  Room room;
  std::optional<Arc> clip; // of a detail, in the plane

  // ---- drawing in the plane, from points of the part ----
  void line(Line, Vec a, Vec b);
  void outline(Line, const std::vector<Vec> &, bool closed = true);
  void circle(Line, Vec centre, double radius, double start = 0.0, double sweep = full_turn);
  // Centre line from a to b; the composer adds its overrun, which is a length on paper.
  void axis(Vec a, Vec b);
  void centre_mark(Vec centre, double radius);
  std::vector<std::pair<Point, Point>> axes; // plane, before overrun
  Box box() const;
};

// A line of the parts list.
struct ListRow {
  int item = 0, count = 1;
  std::string title, material, number;
};

// Rows of views, top to bottom; views of a row share the horizontal through the part's origin.
struct PartPlan {
  std::string name, title, material, stock;
  double mass_kg = 0.0;
  std::vector<std::vector<ViewPlan>> rows;
  std::vector<std::string> notes;
  std::string document = "Part drawing";
  bool whole = false;                // reduced rather than spread over sheets
  std::vector<ListRow> list;         // on sheets of its own after the views
  std::vector<ViewPlan> beside_list; // or in a row of their own where the paper is narrow
  std::vector<std::string> steps;    // numbered, on sheets of their own at the end
};

fixture::Position position(Vec);

// A dimension with what it says, before it has ends and a place on paper.
Dimension described(const std::string &feature, const Label &, Probe);

} // namespace purgewright::drawing
