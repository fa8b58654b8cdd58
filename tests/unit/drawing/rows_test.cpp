#include "drawing/rows.hpp"

#include <catch2/catch.hpp>

using namespace purgewright::drawing;

namespace {

constexpr double room = 10.0; // on each side of every view
const Box area{{0, 0}, {200, 160}};

ViewPlan view(const char *name, double width, double height) {
  ViewPlan out;
  out.name = name;
  out.room = {room, room, room, room};
  out.outline(Line::visible, {{0, 0, 0}, {width, 0, 0}, {width, 0, height}, {0, 0, height}});
  return out;
}

ViewPlan pictorial(double width, double height) {
  ViewPlan out = view("pictorial", width, height);
  out.to_scale = false;
  out.floating = out.dispensable = true;
  out.enlarge = 0.5;
  return out;
}

ViewPlan captioned(ViewPlan plan) {
  plan.caption = plan.name;
  return plan;
}

} // namespace

TEST_CASE("rows share a sheet when they fit one above the other, else a shelf") {
  PartPlan plan;
  plan.rows = {{view("front", 60, 50)}, {captioned(view("top", 60, 50))}};
  REQUIRE(deal(plan, 1.0, area, Packing::as_planned));
  CHECK(deal(plan, 1.0, area, Packing::as_planned)->size() == 1);
  const Box low{{0, 0}, {200, 80}};
  CHECK(deal(plan, 1.0, low, Packing::as_planned)->size() == 2);
  const auto joined = deal(plan, 1.0, low, Packing::joined);
  REQUIRE(joined->size() == 1);
  CHECK(joined->front().front().size() == 2);
  CHECK_FALSE(deal(plan, 2.0, low, Packing::joined)); // larger than the sheet
}

TEST_CASE("views that their place explains stay together") {
  PartPlan plan;
  plan.rows = {{captioned(view("detail", 110, 30))}, {view("front", 40, 30), view("side", 20, 30)}};
  const auto dealt = deal(plan, 1.0, area, Packing::joined);
  REQUIRE(dealt->size() == 1);
  REQUIRE(dealt->front().size() == 2); // 130 + 60 + 40 would not fit 200
  CHECK(dealt->front().back().front().view->name == "front");
  CHECK(dealt->front().back().back().view->name == "side");
}

TEST_CASE("a pictorial view grows into free room up to the sheet's scale and is left out on request") {
  PartPlan plan;
  plan.rows = {{view("front", 60, 50), pictorial(60, 60)}};
  CHECK(deal(plan, 1.0, area, Packing::as_planned)->front().front().back().scale == Approx(1.0));
  const Box narrow{{0, 0}, {120, 160}}; // 80 for the front view leave 20 for the picture
  plan.rows.front().back().enlarge = 0.2;
  CHECK(deal(plan, 1.0, narrow, Packing::as_planned)->front().front().back().scale == Approx(20.0 / 60.0));
  CHECK(deal(plan, 1.0, narrow, Packing::without_dispensable)->front().front().size() == 1);
}
