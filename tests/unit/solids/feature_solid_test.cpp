// Each kind of feature alone: solid, closed form and numbers worked by hand say the same.
#include "purgewright/solids/kernel/measure.hpp"
#include "purgewright/solids/parts.hpp"

#include <catch2/catch.hpp>

using namespace purgewright;
using namespace purgewright::fixture;
using units::millimetres;
using units::pi;

namespace {

constexpr Length mm(double length) {
  return millimetres(length);
}

Part block_with(const Feature &cut) {
  return {.id = "trial", .features = {BlockBody{{{}, mm(-20), {}}, {mm(60), mm(20), mm(30)}}, cut}};
}
Part shaft_with(const Feature &cut) {
  return {.id = "trial",
          .features = {
              TurnedBody{.steps = {{.name = "shaft", .end_x = mm(40), .radius = mm(15)},
                                   {.name = "end", .end_x = mm(50), .radius = mm(10), .chamfer = mm(1)}}},
              cut}};
}

// Against the solid; `by_hand` in mm3 is what the cut takes.
void agree(const Part &part, double by_hand) {
  const auto solid = solids::build_part(part);
  CHECK(solids::kernel::is_one_closed_solid(solid));
  CHECK(units::ratio(solids::kernel::volume(solid), metal(part)) == Approx(1.0).epsilon(1e-9));
  CHECK(volume(part.features.back()).value() * 1e9 == Approx(by_hand).epsilon(1e-9));
}

} // namespace

TEST_CASE("turned body: two cylinders less the ring of a chamfer") {
  // The chamfer's triangle 1 x 1 turns with its centroid at radius 10 - 1/3 (Pappus).
  const double by_hand = pi * (225 * 40 + 100 * 10) - 0.5 * 2 * pi * (10 - 1.0 / 3.0);
  CHECK(volume(shaft_with(Flat{}).features.front()).value() * 1e9 == Approx(by_hand).epsilon(1e-12));
}

TEST_CASE("blind hole with counterbore and drill point, in a pattern") {
  const Hole hole{
      .name = "hole",
      .mouth = {mm(10), mm(-10), mm(30)},
      .steps = {{.name = "counterbore", .radius = mm(5), .depth = mm(4)},
                {.name = "pilot", .radius = mm(3), .depth = mm(20)}},
      .end = HoleEnd::point,
      .pattern = {.columns = 3, .rows = 2, .column_step = {mm(20), {}, {}}, .row_step = {{}, mm(20), {}}}};
  const double point = 3 / std::tan(units::radians(59 * pi / 180).value());
  agree(block_with(hole), 6 * pi * (25 * 4 + 9 * 16 + 9 * point / 3));
}

Hole blind_bore(Length radius) {
  const Hole bore{.name = "bore",
                  .into = toward_plus_x,
                  .steps = {{.name = "bore", .radius = radius, .depth = mm(30)}},
                  .end = HoleEnd::flat};
  return bore;
}

TEST_CASE("hole alike from both ends") {
  const Hole hole{.name = "gallery",
                  .mouth = {{}, {}, mm(15)},
                  .into = toward_plus_x,
                  .steps = {{.name = "port", .radius = mm(5), .depth = mm(10)},
                            {.name = "passage", .radius = mm(3), .depth = mm(60)}},
                  .end = HoleEnd::alike};
  agree(block_with(hole), pi * (2 * 25 * 10 + 9 * 40));
}

TEST_CASE("radial hole that crosses a bore of its own size takes Archimedes' sixteen thirds less") {
  const Hole bore = blind_bore(mm(5));
  Part part = shaft_with(bore);
  Hole side;
  side.name = "side";
  side.mouth = {mm(15), {}, mm(15)};
  side.steps.push_back({.name = "side", .radius = mm(4), .depth = mm(15)});
  side.end = HoleEnd::crossing;
  side.crossed_radius = mm(5);
  side.round_mouth = mm(15);
  side.pattern = {.around = 3};
  part.features.push_back(side);
  const auto solid = solids::build_part(part);
  CHECK(units::ratio(solids::kernel::volume(solid), metal(part)) == Approx(1.0).epsilon(1e-9));
  Hole equal{
      .steps = {{.radius = mm(4), .depth = mm(15)}}, .end = HoleEnd::crossing, .crossed_radius = mm(4)};
  CHECK(volume(equal).value() * 1e9 == Approx(pi * 16 * 15 - 8.0 * 64 / 3.0).epsilon(1e-9));
}

TEST_CASE("pocket with rounded corners and a broken edge") {
  const Pocket pocket{.name = "pocket",
                      .centre = {mm(30), {}, mm(30)},
                      .length = mm(30),
                      .width = mm(20),
                      .corner_radius = mm(4),
                      .depth = mm(10),
                      .edge_break = mm(0.5)};
  const double plan = 30 * 20 - (4 - pi) * 16;
  // A triangle of leg 0.5 along the straights, and turned once round corners with its centroid beyond the
  // arc.
  const double broken = 0.125 * (2 * 22 + 2 * 12) + 0.125 * 2 * pi * (4 + 0.5 / 3);
  agree(block_with(pocket), plan * 10 + broken);
}

TEST_CASE("groove in a shaft and in a bore, flat on a shaft") {
  agree(shaft_with(RadialGroove{.name = "groove",
                                .start_x = mm(20),
                                .width = mm(3),
                                .bottom_radius = mm(13),
                                .surface_radius = mm(15)}),
        pi * (225 - 169) * 3);
  const Hole bore = blind_bore(mm(8));
  Part bored = shaft_with(bore);
  bored.features.push_back(RadialGroove{
      .name = "groove", .start_x = mm(10), .width = mm(3), .bottom_radius = mm(10), .surface_radius = mm(8)});
  agree(bored, pi * (100 - 64) * 3);
  const double segment = 225 * std::acos(12.0 / 15) - 12 * 9; // half chord 9 of 15 and 12
  agree(shaft_with(
            Flat{.name = "flat", .from_axis = mm(12), .round_radius = mm(15), .from_x = {}, .to_x = mm(40)}),
        segment * 40);
}

TEST_CASE("set-ups follow from the features") {
  const auto count = [](const Part &part) { return setups(part).count(); };
  Hole bore{.name = "bore", .into = toward_plus_x};
  bore.steps.push_back({.name = "bore", .radius = mm(8), .depth = mm(30)});
  CHECK(count(shaft_with(bore)) == 2); // in the lathe
  CHECK(count(shaft_with(Flat{.name = "flat", .from_axis = mm(12), .round_radius = mm(15)})) == 3);
  bore.mouth = {mm(10), {}, mm(30)};
  bore.into = toward_minus_z;
  CHECK(count(block_with(bore)) == 1); // right through
}
