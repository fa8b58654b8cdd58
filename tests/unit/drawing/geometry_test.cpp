#include "drawing/hatch.hpp"
#include "drawing/paper.hpp"

#include "purgewright/drawing/sheet.hpp"

#include <catch2/catch.hpp>

using namespace purgewright;
using namespace purgewright::drawing;

TEST_CASE("a segment crosses a box when it passes through its inside") {
  const Box box{{0, 0}, {10, 5}};
  CHECK(crosses({{-1, 2}, {11, 2}}, box));
  CHECK(crosses({{2, 1}, {3, 2}}, box)); // wholly inside
  CHECK(crosses({{-1, -1}, {11, 6}}, box));
  CHECK_FALSE(crosses({{-1, 6}, {11, 6}}, box));
  CHECK_FALSE(crosses({{-1, 0}, {11, 0}}, box)); // along its edge
  CHECK_FALSE(crosses({{-3, 2}, {2, -3}}, box)); // past its corner
}

TEST_CASE("chords stay as near to their arc as asked and end on it") {
  const Arc circle{{1, 2}, 20.0};
  for (const Segment &s : chords(circle, 0.01)) {
    CHECK(length(s.a - circle.centre) == Approx(20.0));
    CHECK(20.0 - length(0.5 * (s.a + s.b) - circle.centre) < 0.0101);
  }
}

TEST_CASE("the box of an arc is the least one round its chords") {
  for (int i = 0; i < 40; ++i) {
    const Arc arc{{1, 2}, 20.0, 0.37 * i - 3.0, full_turn * (i + 1) / 40.0};
    Box round;
    for (const Segment &s : chords(arc, 1e-5)) {
      round.include(s.a);
      round.include(s.b);
    }
    const Box box = box_of(arc);
    INFO("start " << arc.start << ", sweep " << arc.sweep);
    CHECK(length(box.least - round.least) < 1e-4);
    CHECK(length(box.greatest - round.greatest) < 1e-4);
  }
  const Box line = box_of(Segment{{4, 1}, {2, 3}});
  CHECK(line.least.x == 2.0);
  CHECK(line.greatest.y == 3.0);
}

TEST_CASE("hatching fills a frame and leaves its hole free") {
  const std::vector<Loop> ring{{{0, 0}, {20, 0}, {20, 20}, {0, 20}}, {{5, 5}, {15, 5}, {15, 15}, {5, 15}}};
  const double spacing = 0.5;
  double area = 0.0;
  for (const Segment &s : hatch(ring, spacing, 0.25 * std::numbers::pi)) {
    const Point middle = 0.5 * (s.a + s.b);
    CHECK_FALSE((middle.x > 5.0 && middle.x < 15.0 && middle.y > 5.0 && middle.y < 15.0));
    area += spacing * length(s.b - s.a);
  }
  CHECK(area == Approx(300.0).epsilon(0.02));
}

// ISO 216 and ISO 5457: A3 420 x 297, A4 210 x 297, filing margin 20, others 10. ANSI sizes A and B.
TEST_CASE("sheets have the sizes and margins of their standard") {
  const Paper a3 = paper_of(job::Sheet::a3), tabloid = paper_of(job::Sheet::tabloid);
  CHECK(a3.width == 420.0);
  CHECK(a3.height == 297.0);
  CHECK(a3.frame.least.x == 20.0);
  CHECK(a3.frame.least.y == 10.0);
  CHECK(a3.width - a3.frame.greatest.x == 10.0);
  CHECK(tabloid.width == Approx(17.0 * 25.4));
  CHECK(tabloid.height == Approx(11.0 * 25.4));
}

// ISO 128-2, group 0.5: wide lines 0.5 mm, narrow ones 0.25 mm.
TEST_CASE("lines have the widths of their group") {
  CHECK(style_of(Line::visible).width == 0.5);
  for (const Line narrow : {Line::hidden, Line::centre, Line::dimension, Line::thread}) {
    CHECK(style_of(narrow).width == 0.25);
  }
  CHECK(style_of(Line::visible).dash_count == 0);
  CHECK(style_of(Line::hidden).dash_count == 2);
  CHECK(style_of(Line::centre).dash_count == 4);
}
