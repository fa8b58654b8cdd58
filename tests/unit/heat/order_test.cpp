#include "purgewright/heat/order.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace purgewright;
using namespace purgewright::heat;

namespace {

job::Job turning(int tacks, int runs, double overlap, double start, job::Direction direction) {
  job::Job job;
  job.tube.outside_diameter = units::millimetres(20.0);
  job.rotation.tacks = tacks;
  job.rotation.runs = runs;
  job.rotation.overlap = units::degrees(overlap);
  job.rotation.start_angle = units::degrees(start);
  job.rotation.direction = direction;
  return job;
}

constexpr auto left = job::Direction::counterclockwise;
constexpr auto right = job::Direction::clockwise;

} // namespace

TEST_CASE("Tacks: first, opposite, then between", "[unit][heat]") {
  CHECK(tack_order(1) == std::vector<int>{0});
  CHECK(tack_order(2) == std::vector<int>{0, 1});
  CHECK(tack_order(3) == std::vector<int>{0, 1, 2});
  CHECK(tack_order(4) == std::vector<int>{0, 2, 1, 3});
  CHECK(tack_order(6) == std::vector<int>{0, 3, 1, 4, 2, 5});
  CHECK(tack_order(8) == std::vector<int>{0, 4, 2, 6, 1, 5, 3, 7});
  CHECK_THROWS_AS(tack_order(0), std::domain_error);
}

TEST_CASE("Any count of tacks is an order of all places, even counts in opposite pairs", "[unit][heat]") {
  for (int count = 1; count <= 24; ++count) {
    auto order = tack_order(count);
    for (std::size_t i = 1; count % 2 == 0 && i < order.size(); i += 2) {
      CAPTURE(count, i);
      CHECK((order[i] - order[i - 1] + count) % count == count / 2);
    }
    std::sort(order.begin(), order.end());
    for (int place = 0; place < count; ++place) {
      REQUIRE(order[std::size_t(place)] == place);
    }
  }
}

TEST_CASE("A tack is its length long and sits about its place", "[unit][heat]") {
  const auto passes = tack_passes(turning(4, 4, 10.0, 30.0, left), units::millimetres(3.0));
  REQUIRE(passes.size() == 4);
  CHECK(passes[0].extent().value() == Approx(0.3)); // 3 mm on a radius of 10 mm
  CHECK(units::to_degrees(0.5 * (passes[0].start + passes[0].end)) == Approx(30.0));
  CHECK(units::to_degrees(0.5 * (passes[1].start + passes[1].end)) == Approx(210.0));
}

TEST_CASE("Runs overlap the end of the one before and close the joint", "[unit][heat]") {
  const auto passes = run_passes(turning(4, 4, 10.0, 30.0, left));
  REQUIRE(passes.size() == 4);
  const double start[] = {30.0, 110.0, 200.0, 290.0}, end[] = {120.0, 210.0, 300.0, 400.0};
  for (std::size_t i = 0; i < 4; ++i) {
    CHECK(units::to_degrees(passes[i].start) == Approx(start[i]));
    CHECK(units::to_degrees(passes[i].end) == Approx(end[i]));
  }
  const auto single = run_passes(turning(2, 1, 10.0, 0.0, left));
  CHECK(units::to_degrees(single.at(0).extent()) == Approx(370.0));
}

TEST_CASE("Clockwise mirrors counterclockwise", "[unit][heat]") {
  const auto there = run_passes(turning(4, 3, 12.0, 0.0, left));
  const auto back = run_passes(turning(4, 3, 12.0, 0.0, right));
  for (std::size_t i = 0; i < there.size(); ++i) {
    CHECK(there[i].start == -back[i].start);
    CHECK(there[i].end == -back[i].end);
    CHECK(there[i].extent() == back[i].extent());
  }
}
