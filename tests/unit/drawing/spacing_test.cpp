// Lines that run beside each other nearer than 0.7 mm on paper (ISO 128-2, from memory).
#include "drawing/spacing.hpp"

#include <catch2/catch.hpp>

using namespace purgewright::drawing;

namespace {

Stroke line(double y, double from, double to, Line type = Line::visible) {
  return {type, Segment{{from, y}, {to, y}}};
}

std::size_t left(std::vector<Stroke> strokes, double small = least_line_distance) {
  leave_out_close_lines(strokes, small);
  return strokes.size();
}

} // namespace

TEST_CASE("of two visible lines nearer than 0.7 mm one is left out, the shorter") {
  CHECK(left({line(0.0, 0, 20), line(0.69, 0, 20)}) == 1);
  CHECK(left({line(0.0, 0, 20), line(0.71, 0, 20)}) == 2);
  std::vector<Stroke> strokes{line(0.5, 2, 8), line(0.0, 0, 20)};
  leave_out_close_lines(strokes, least_line_distance);
  REQUIRE(strokes.size() == 1);
  CHECK(std::get<Segment>(strokes[0].curve).b.x == 20.0);
}

TEST_CASE("lines end to end, ones that hardly pass each other and other types stay") {
  CHECK(left({line(0.0, 0, 20), line(0.5, 20, 40)}) == 2);
  CHECK(left({line(0.0, 0, 20), line(0.5, 18, 40)}) == 2);
  CHECK(left({line(0.0, 0, 20), line(0.5, 0, 20, Line::thread)}) == 2);
}

TEST_CASE("circles round one centre thin out like lines") {
  const auto circle = [](double radius) { return Stroke{Line::visible, Arc{{5, 5}, radius}}; };
  CHECK(left({circle(10), circle(10.5)}) == 1);
  CHECK(left({circle(10), circle(11)}) == 2);
}

TEST_CASE("a form that is not small stays however it is reduced") {
  CHECK(left({line(0.0, 0, 20), line(0.5, 0, 20)}, 0.4) == 2);
}

TEST_CASE("a long line that runs beside another for a stretch ends where that begins") {
  std::vector<Stroke> strokes{line(0.0, 0, 20), line(0.5, 18, 36)};
  leave_out_close_lines(strokes, least_line_distance);
  REQUIRE(strokes.size() == 2);
  const auto &cut = std::get<Segment>(strokes[1].curve);
  CHECK(cut.a.x == Approx(20.0));
  CHECK(cut.b.x == Approx(36.0));
  const auto &whole = std::get<Segment>(strokes[0].curve);
  CHECK(whole.b.x == Approx(20.0));
}
