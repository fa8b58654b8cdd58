// The solver's settings give what is known of two flows; known_flows.yaml has the sources.
#include "reference/flow/solved.hpp"
#include "support/paths.hpp"

#include "purgewright/gas/bounds.hpp"

#include <yaml-cpp/yaml.h>

#include <cmath>

using namespace purgewright;
using namespace purgewright::flow;

namespace {

YAML::Node entry(const std::string &id) {
  const YAML::Node node =
      YAML::LoadFile(test::project_file("tests/reference/flow/known_flows.yaml"))["entries"][id];
  REQUIRE(node.IsDefined());
  return node;
}

Mesh plain_box(const Grid &grid) {
  enum : std::size_t { walls, cut };
  return {grid,
          {.at = [](const Point &) { return 0; },
           .meet = [](Matter, Matter, const Point &) { return false; },
           .patches = {{"walls", "wall"}, {"cut", "symmetryPlane"}},
           .patch_of = [=](const BoundaryFace &face) { return face.normal.y < 0.0 ? cut : walls; }}};
}

// ---- lock exchange
constexpr double channel = 1.0, height = 0.1, fine = 0.005; // m

// One cell wide; its two sides are cut planes, which the walls' slip makes of the second one.
Problem lock(const Mesh &mesh) {
  Problem problem{.mesh = &mesh,
                  .air = {},
                  .boundaries = {{.patch = "walls", .bounds = Bounds::smooth_wall},
                                 {.patch = "cut", .bounds = Bounds::cut}},
                  .probes = {},
                  .duration = 1.2,
                  .level = 0.0};
  for (std::size_t cell = 0; cell < mesh.cells(); ++cell) {
    problem.air.push_back(mesh.centre(cell).x < 0.5 * channel ? 0.0 : 1.0);
  }
  return problem;
}

// When each probe of a row first sees the other gas.
double speed_of_front(const solving::Course &course, std::size_t from, const std::vector<double> &places,
                      bool falls) {
  std::vector<double> times;
  for (std::size_t i = 0; i < places.size(); ++i) {
    std::size_t at = 0;
    while (at + 1 < course.times.size() && (course.air[at][from + i] > 0.5) == falls) {
      ++at;
    }
    REQUIRE(at + 1 < course.times.size());
    times.push_back(course.times[at]);
  }
  return (places.back() - places.front()) / (times.back() - times.front());
}

// ---- dilution: the first probe at the outlet, then one in each cell
double air_inside(const Mesh &mesh, const std::vector<double> &air) {
  double sum = 0.0;
  for (std::size_t cell = 0; cell < mesh.cells(); ++cell) {
    sum += mesh.volume(cell) * air[cell + 1];
  }
  return sum;
}

double gone_by_outlet(const solving::Course &course, double flow) {
  double sum = flow * course.times.front() * course.air.front().front();
  for (std::size_t i = 1; i < course.times.size(); ++i) {
    sum += flow * (course.times[i] - course.times[i - 1]) * course.air[i].front();
  }
  return sum;
}

} // namespace

TEST_CASE("Argon and air of a lock run as fast as they are known to", "[reference][flow]") {
  if (!solving::solver_is_there()) {
    return;
  }
  const Mesh mesh = plain_box(
      {{planes_between(0.0, channel, {}, fine), {0.0, fine}, planes_between(0.0, height, {}, fine)}});
  Problem problem = lock(mesh);
  std::vector<double> ways;
  for (double way = 0.1; way < 0.26; way += 0.05) { // beyond the start, short of the end wall
    ways.push_back(way);
  }
  for (const double way : ways) {
    problem.probes.push_back({"heavy", {0.5 * channel + way, 0.5 * fine, 0.5 * fine}});
  }
  for (const double way : ways) {
    problem.probes.push_back({"light", {0.5 * channel - way, 0.5 * fine, height - 0.5 * fine}});
  }
  const solving::Course course = solving::solve(problem);
  const double ratio = gas::density(gas::Species::air, gas::shop_temperature) /
                       gas::density(gas::Species::argon, gas::shop_temperature);
  const double scale = std::sqrt(gas::standard_gravity * (1.0 - ratio) * height);
  const double heavy = speed_of_front(course, 0, ways, true) / scale;
  const double light = speed_of_front(course, ways.size(), ways, false) / scale;
  INFO("heavy " << heavy << ", light " << light);
  const YAML::Node known = entry("lock_exchange_light_front");
  CHECK(light == Approx(known["values"]["froude"].as<double>()).epsilon(known["tolerance"].as<double>()));
  const YAML::Node bounds = entry("lock_exchange_heavy_front")["values"];
  CHECK(heavy >= bounds["least"].as<double>());
  CHECK(heavy <= bounds["most"].as<double>());
}

TEST_CASE("A small space that a jet stirs is diluted by the law of stirred vessels", "[reference][flow]") {
  if (!solving::solver_is_there()) {
    return;
  }
  constexpr double side = 0.04, cell = 0.004,
                   hole = 0.0025;    // m; what comes in is little beside what goes round
  constexpr double first_air = 0.01; // so little that it does not layer
  constexpr double jet = 2.0;        // m/s: turns the space over many times a change
  const double low = 0.5 * (side - hole), high = 0.5 * (side + hole);
  Mesh mesh = plain_box({{planes_between(0.0, side, {}, cell), planes_between(0.0, 0.5 * side, {hole}, cell),
                          planes_between(0.0, side, {low, high}, cell)}});
  mesh.open("inlet", {{{0.0, 0.0, 0.5 * side}, {-1.0, 0.0, 0.0}, hole * hole, cell}});
  mesh.open("outlet", {{{0.0, 0.5 * side, side}, {0.0, 0.0, 1.0}, cell * cell, 2.0 * cell}});
  REQUIRE(mesh.area(*mesh.patch_named("inlet")) == Approx(hole * hole));
  const double flow = jet * hole * hole, volume = 0.5 * side * side * side;
  const YAML::Node known = entry("dilution");
  const double changes = known["values"]["volume_changes"].as<double>();
  Problem problem{.mesh = &mesh,
                  .air = std::vector<double>(mesh.cells(), first_air),
                  .boundaries = {{.patch = "walls"},
                                 {.patch = "cut", .bounds = Bounds::cut},
                                 {.patch = "inlet", .bounds = Bounds::inlet, .flow = flow},
                                 {.patch = "outlet", .bounds = Bounds::open}},
                  .probes = {},
                  .duration = changes * volume / flow,
                  .level = side};
  problem.probes = {{"outlet", mesh.centre(mesh.nearest_cell({0.0, 0.5 * side, side}))}};
  for (std::size_t i = 0; i < mesh.cells(); ++i) {
    problem.probes.push_back({"inside", mesh.centre(i)});
  }
  const solving::Course course = solving::solve(problem);
  const double tolerance = known["tolerance"].as<double>();
  CHECK(course.air.back().front() / first_air ==
        Approx(known["values"]["left"].as<double>()).epsilon(tolerance));
  CHECK(gone_by_outlet(course, flow) + air_inside(mesh, course.air.back()) ==
        Approx(first_air * volume).epsilon(tolerance));
}
