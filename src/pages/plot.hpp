// A plot in a box: axes with round numbers, curves with their names beside them, limits, shaded spans.
//
// Units: the axes' own, said in their titles; the box in mm. Frame: as canvas.hpp. Range: `most` above
// `least`, and both above 0 on a logarithmic axis; values outside are cut off at the frame. Errors: none.
// Guarantee: same plot, same bytes. Source: none. Private to pages.
#pragma once

#include "canvas.hpp"

#include <string>
#include <vector>

namespace purgewright::pages {

struct Axis {
  std::string title;
  double least = 0.0, most = 1.0;
  bool logarithmic = false;
};

struct Curve {
  std::string name;
  std::vector<Point> points; // in the axes' units
  Pen pen;
};

struct Level { // a limit across the plot
  std::string name;
  double value = 0.0;
  Pen pen;
};

struct Span { // of x
  std::string name;
  double from = 0.0, to = 0.0;
  Colour colour;
};

struct Plot {
  std::string title;
  Axis x{}, y{};
  std::vector<Curve> curves{};
  std::vector<Level> levels{};
  std::vector<Span> spans{};
  double points = 7.0; // size of its letters
};

// A place for a name of this size over or under a level line, within the frame: the rightmost where no curve
// runs through it, or else the one that least of the curves runs through. All in mm on the paper, y
// downwards.
Box free_place(const Box &size, const Box &line, const Box &frame,
               const std::vector<std::vector<Point>> &curves);

// Round numbers along an axis: about `wished` of them, powers of ten when it is logarithmic.
std::vector<double> ticks(const Axis &, int wished);

void draw(Canvas &, const Box &, const Plot &);

} // namespace purgewright::pages
