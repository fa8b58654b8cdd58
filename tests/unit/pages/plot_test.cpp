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
