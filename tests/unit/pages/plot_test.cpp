#include "pages/plot.hpp"

#include <catch2/catch.hpp>

using namespace purgewright::pages;

TEST_CASE("Marks of a plain axis are round numbers inside it") {
  CHECK(ticks({"", 0.0, 10.0}, 5) == std::vector<double>{0.0, 2.0, 4.0, 6.0, 8.0, 10.0});
  CHECK(ticks({"", 0.0, 190.0}, 4) == std::vector<double>{0.0, 50.0, 100.0, 150.0});
  CHECK(ticks({"", 3.0, 9.0}, 3) == std::vector<double>{4.0, 6.0, 8.0});
  CHECK(ticks({"", 0.0, 0.02}, 2).back() == Approx(0.02));
}

TEST_CASE("Marks of a logarithmic axis are powers of ten inside it") {
  CHECK(ticks({"", 1.0, 3e5, true}, 4).size() == 6);
  CHECK(ticks({"", 2.0, 900.0, true}, 4) == std::vector<double>{10.0, 100.0});
}

TEST_CASE("A limit's name stands where no curve runs through it, as far right as may be") {
  const Box frame{0.0, 0.0, 100.0, 50.0}, line{1.0, 30.0, 98.0, 0.0}, size{0.0, 0.0, 20.0, 3.0};
  CHECK(free_place(size, line, frame, {}).right() == Approx(99.0));
  CHECK(free_place(size, line, frame, {}).bottom() < 30.0); // over the line
  // A curve just over the line on its whole length: the name goes under it.
  CHECK(free_place(size, line, frame, {{{0.0, 28.0}, {100.0, 28.0}}}).y > 30.0);
  // Curves over and under the right half: the name goes to the left of them.
  const Box left =
      free_place(size, line, frame, {{{60.0, 28.0}, {100.0, 28.0}}, {{60.0, 32.0}, {100.0, 32.0}}});
  CHECK(left.right() <= 60.0);
  CHECK(left.right() > 50.0);
  // Never outside the frame, even at its edge.
  CHECK(free_place(size, {1.0, 1.0, 98.0, 0.0}, frame, {}).y > 1.0);
}
