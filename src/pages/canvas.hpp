// A page to draw on: lines, areas, lettering, wrapped text. PDF and SVG by cairo, lettering by pango.
//
// Units: millimetres; letter sizes in points, angles in radians. Frame: origin at the page's upper left
// corner, Y down; angles clockwise from +X, as that frame makes them. Errors: std::runtime_error when cairo
// cannot go on, letters::FontError when no installed font has a character. Guarantee: same calls, same bytes;
// the page has no date but 1970. One thread. Source: cairo 1.16, pango 1.50; font DejaVu Sans Condensed
// (Debian fonts-dejavu-extra), else the system's sans serif. Private to pages.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::pages {

struct Colour {
  double red = 0.0, green = 0.0, blue = 0.0, alpha = 1.0;
};
inline constexpr Colour black{}, white{1, 1, 1}, grey{0.45, 0.45, 0.45}, pale{0.93, 0.93, 0.93};

struct Point {
  double x = 0.0, y = 0.0;
};

struct Box {
  double x = 0.0, y = 0.0, width = 0.0, height = 0.0;
  double right() const { return x + width; }
  double bottom() const { return y + height; }
};

enum class Align { left, centre, right };

struct Letters {
  double points = 8.0;
  bool bold = false;
  Colour colour = black;
  Align align = Align::left;
};

struct Pen {
  double width = 0.25;
  Colour colour = black;
  std::vector<double> dashes = {};
};

enum class Format { pdf, svg };

class Canvas {
 public:
  Canvas(Format, double width, double height, std::string title);
  ~Canvas();
  Canvas(const Canvas &) = delete;
  Canvas &operator=(const Canvas &) = delete;

  // One line; `at` is the left end, middle or right end of its base line. Returns its width.
  double text(Point at, std::string_view, const Letters &);
  double text_width(std::string_view, const Letters &) const;
  // Lines broken to a width, from the top of `at` down; returns their height.
  double wrapped(Point at, double width, std::string_view, const Letters &);
  double wrapped_height(double width, std::string_view, const Letters &) const;

  void line(Point a, Point b, const Pen &);
  void path(const std::vector<Point> &, const Pen &); // open
  void arc(Point centre, double radius, double from, double to, const Pen &);
  void fill(const Box &, Colour);
  void fill(const std::vector<Point> &, Colour); // closed
  void frame(const Box &, const Pen &);
  void disc(Point centre, double radius, Colour);
  void clip(const Box &);
  void unclip();

  void new_page();      // of the same size; PDF alone
  std::string finish(); // the file's bytes

 private:
  struct State;
  std::unique_ptr<State> state_;
};

// Height of capitals and of a line of text, mm.
double capital_height(double points);
double line_height(double points);

} // namespace purgewright::pages
