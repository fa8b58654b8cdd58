// A drawing sheet as placed geometry: what the PDF, SVG and DXF writers draw, and what tests measure.
//
// Units: millimetres on paper; a dimension's value and its probes are quantity types at full size.
// Frame: sheet as geometry.hpp; probes in the part's own frame (fixture/layout.hpp).
// Range and errors: plain values. Guarantee: nothing in here depends on the clock or on a writer.
// Source: line types and widths ISO 128-2 (group 0.5), lettering ISO 3098-1, dimensions ISO 129-1.
#pragma once

#include "purgewright/drawing/geometry.hpp"
#include "purgewright/fixture/layout.hpp"

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::drawing {

// What a line means; ISO 128-2 types in the table below.
enum class Line { visible, hidden, centre, cutting, hatch, dimension, thread, phantom, frame };

struct LineStyle {
  std::string_view layer;       // its layer in DXF
  std::string_view iso_number;  // of ISO 128-2
  double width;                 // mm
  std::array<double, 6> dashes; // mm, dash and gap in turn; all 0 for a continuous line
  int dash_count;
};
const LineStyle &style_of(Line);
// Factor on the dashes that lets a line of this length begin and end with a long dash.
double dash_factor(const LineStyle &, double length);
double length_of(const Curve &);
inline constexpr std::array<Line, 9> all_lines{Line::visible, Line::hidden,  Line::centre,
                                               Line::cutting, Line::hatch,   Line::dimension,
                                               Line::thread,  Line::phantom, Line::frame};

struct Stroke {
  Line line = Line::visible;
  Curve curve;
};

// One line of lettering; `at` is the left end of its base line. Height is that of capitals.
struct Text {
  Point at;
  double height = 3.5;
  bool upright = false; // reads upwards, to be read from the right
  std::string content;
};

// Filled triangle with its tip on what it points at.
struct Arrow {
  Point tip;
  Point direction; // unit, from the tail to the tip
};

// What a test finds on the solid to measure a dimension again.
enum class Probe {
  distance, // between two points of the surface, along `along`
  diameter, // of the round face whose axis runs along `along` through `from`, holding `to`
  radius,   // the same
  axes,     // between the axes of round faces through `from` and `to`, along `along`
  offset,   // between a point of the surface and an axis, along `along`
  angle,    // of a cone, not measured by distance
  none      // no geometry in the solid: threads, finishes, corner radii of tools
};

enum class DimensionKind { linear, leader, note };

struct Dimension {
  std::string feature; // the layout's name of it: "end-plug.spigot_radius"
  DimensionKind kind = DimensionKind::linear;
  Probe probe = Probe::none;
  fixture::Length value{};                    // as the layout has it
  double shown = 0.0;                         // the number as printed, in the sheet's unit
  double last_digit = 0.0;                    // one step of it
  std::size_t number_at = 0, number_size = 0; // where lines[0] says it
  fixture::Position from, to;
  std::array<double, 3> along{};
  std::vector<std::string> lines; // the text, line by line
  // Placed geometry.
  Point first, second, line_at; // linear: measured points and a point of the dimension line
  bool upright = false;
  double scale = 1.0; // of its view
  std::vector<Stroke> strokes;
  std::vector<Arrow> arrows;
  std::vector<Text> texts;
  Box box; // of all its texts and frames
};

// A view as drawn.
struct View {
  std::string name;
  Box box; // of its outline, dimensions apart
  double scale = 1.0;
  std::vector<Stroke> strokes;
};

enum class Unit { millimetre, inch };

struct Sheet {
  std::string name; // file name without its ending: "end-plug", "chamber-body-2"
  std::string part;
  std::string title;
  Unit unit = Unit::millimetre;
  double scale = 1.0;               // of its views, but for those that have their own
  double width = 0.0, height = 0.0; // trimmed sheet
  Box frame;                        // border of the drawing space
  std::vector<View> views;
  std::vector<Dimension> dimensions;
  std::vector<Stroke> strokes; // frame, title block, section marks
  std::vector<Text> texts;
  std::vector<Arrow> arrows;
  std::vector<Box> reserved;        // title block, notes and captions: nothing else may stand in them
  std::vector<std::string> clashes; // features that found no free place; none on a good sheet
};

inline constexpr double arrow_length = 3.0; // about the height of the lettering
inline constexpr double arrow_half_angle = 10.0 * std::numbers::pi / 180.0;
inline constexpr double letter_height = 3.5; // dimensions
inline constexpr double small_letters = 2.5; // notes, title block

} // namespace purgewright::drawing
