#include "purgewright/flow/mesh.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <regex>
#include <sstream>

using namespace purgewright::flow;

namespace {

Matter everywhere(const Point &) {
  return 0;
}

Mesh box(const Grid &grid, std::function<Matter(const Point &)> at = everywhere) {
  return {grid,
          {.at = std::move(at),
           .meet = [](Matter, Matter, const Point &) { return false; },
           .patches = {{"walls", "wall"}, {"middle", "symmetryPlane"}},
           .patch_of =
               [](const BoundaryFace &face) {
                 return static_cast<std::size_t>(face.beyond == outside_grid && face.normal.y < 0.0 ? 1 : 0);
               }}};
}

Grid cube(double cell) {
  const auto planes = planes_between(0.0, 1.0, {}, cell);
  return {{planes, planes, planes}};
}

double sum(const Mesh &mesh) {
  double total = 0.0;
  for (std::size_t cell = 0; cell < mesh.cells(); ++cell) {
    total += mesh.volume(cell);
  }
  return total;
}

// The numbers of one of polyMesh's lists of labels.
std::vector<long> labels(const std::string &text) {
  std::istringstream rest(text.substr(text.find("\n(\n") + 3));
  std::vector<long> numbers;
  for (long number = 0; rest >> number;) {
    numbers.push_back(number);
  }
  return numbers;
}

struct Quad {
  std::vector<std::size_t> corners;
};

std::vector<Point> points_of(const std::string &text) {
  std::vector<Point> points;
  const std::regex one(R"(\n\(([-0-9.e+]+) ([-0-9.e+]+) ([-0-9.e+]+)\))");
  for (auto it = std::sregex_iterator(text.begin(), text.end(), one); it != std::sregex_iterator(); ++it) {
    points.push_back({std::stod((*it)[1]), std::stod((*it)[2]), std::stod((*it)[3])});
  }
  return points;
}

std::vector<Quad> faces_of(const std::string &text) {
  std::vector<Quad> faces;
  const std::regex one(R"(4\((\d+) (\d+) (\d+) (\d+)\))");
  for (auto it = std::sregex_iterator(text.begin(), text.end(), one); it != std::sregex_iterator(); ++it) {
    faces.push_back(
        {{std::stoul((*it)[1]), std::stoul((*it)[2]), std::stoul((*it)[3]), std::stoul((*it)[4])}});
  }
  return faces;
}

Point cross(const Point &a, const Point &b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}

double dot(const Point &a, const Point &b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

// A U of gas: what a solver reads must still be closed round every cell.
Matter u_of_gas(const Point &p) {
  return p.x > 0.4 && p.x < 0.6 && p.z > 0.3 ? -1 : 0;
}

} // namespace

TEST_CASE("planes lie on the wanted places, about a cell apart") {
  const auto planes = planes_between(-1.0, 2.0, {0.0, 0.01, 1.3}, 0.25);
  CHECK(planes.front() == -1.0);
  CHECK(planes.back() == 2.0);
  CHECK(std::ranges::count(planes, 0.0) == 1);
  CHECK(std::ranges::count(planes, 1.3) == 1);
  CHECK(std::ranges::count(planes, 0.01) == 0); // too near to the one before
  for (std::size_t i = 1; i < planes.size(); ++i) {
    CHECK(planes[i] - planes[i - 1] > 0.12);
    CHECK(planes[i] - planes[i - 1] < 0.38);
  }
}

TEST_CASE("planes beyond an end grow away from it on either side") {
  std::vector<double> planes{0.0, 0.1, 0.2};
  extend_above(planes, 1.0, 1.5);
  extend_below(planes, -1.0, 1.5);
  CHECK(std::ranges::is_sorted(planes));
  CHECK(planes.back() >= 1.0);
  CHECK(planes.front() <= -1.0);
  CHECK(planes.back() + planes.front() == Approx(0.2)); // mirror images about 0.1
}

TEST_CASE("a box of gas is a closed mesh whose cells and faces add up") {
  const Mesh mesh = box(cube(0.25));
  CHECK(mesh.cells() == 64);
  CHECK(sum(mesh) == Approx(1.0));
  CHECK(mesh.area(0) == Approx(5.0));
  CHECK(mesh.area(1) == Approx(1.0));
}

TEST_CASE("every cell is closed, faces look out of their owner and stand in OpenFOAM's order") {
  const Mesh mesh = box(cube(0.1), u_of_gas);
  const auto files = mesh.files();
  const auto points = points_of(files.points);
  const auto faces = faces_of(files.faces);
  const auto owners = labels(files.owner), neighbours = labels(files.neighbour);
  REQUIRE(faces.size() == owners.size());
  REQUIRE(neighbours.size() < owners.size());
  std::vector<Point> closed(mesh.cells());
  for (std::size_t f = 0; f < faces.size(); ++f) {
    const auto &c = faces[f].corners;
    const Point twice = cross(points.at(c[2]) - points.at(c[0]), points.at(c[3]) - points.at(c[1]));
    const Point area{0.5 * twice.x, 0.5 * twice.y, 0.5 * twice.z};
    const auto add = [&](long cell, double sign) {
      Point &total = closed.at(static_cast<std::size_t>(cell));
      total = {total.x + sign * area.x, total.y + sign * area.y, total.z + sign * area.z};
    };
    const Point owner = mesh.centre(static_cast<std::size_t>(owners[f]));
    CHECK(dot(area, points[c[0]] - owner) > 0.0);
    add(owners[f], 1.0);
    if (f < neighbours.size()) {
      CHECK(owners[f] < neighbours[f]);
      add(neighbours[f], -1.0);
      if (f > 0) {
        CHECK(std::pair(owners[f - 1], neighbours[f - 1]) < std::pair(owners[f], neighbours[f]));
      }
    }
  }
  for (const Point &total : closed) {
    CHECK(length_of(total) < 1e-12);
  }
}

TEST_CASE("gas of two spaces meets only where it is let") {
  const auto halves = [](const Point &p) { return p.z < 0.5 ? 0 : 1; };
  const auto joined = [&](bool open) {
    const Mesh mesh(cube(0.25), {.at = halves,
                                 .meet = [&](Matter, Matter, const Point &p) { return open && p.x < 0.5; },
                                 .patches = {{"walls", "wall"}},
                                 .patch_of = [](const BoundaryFace &) { return std::size_t{0}; }});
    return mesh.area(0);
  };
  CHECK(joined(false) == Approx(8.0)); // both sides of the plane between them
  CHECK(joined(true) == Approx(7.0));
}

TEST_CASE("an opening takes the faces nearest to it that come nearest to its area") {
  Mesh mesh = box(cube(0.1));
  const std::size_t patch = mesh.open("hole", {{{0.5, 0.5, 1.0}, {0.0, 0.0, 1.0}, 0.052, 0.5}});
  CHECK(mesh.area(patch) == Approx(0.05));
  for (const BoundaryFace &face : mesh.boundary()) {
    if (face.patch == patch) {
      CHECK(face.normal.z == 1.0);
      CHECK(length_of(face.centre - Point{0.5, 0.5, 1.0}) < 0.2);
    }
  }
  CHECK(mesh.patch_named("hole") == patch);
  CHECK_THROWS_AS(mesh.open("nowhere", {{{0.5, 0.5, 0.5}, {0.0, 0.0, 1.0}, 0.05, 0.1}}),
                  std::invalid_argument);
}

TEST_CASE("where faces are too coarse for many openings their area is kept, not their number") {
  Mesh mesh = box(cube(0.25));
  std::vector<Mesh::Opening> holes;
  for (int i = 0; i < 20; ++i) {
    holes.push_back({{0.025 + 0.05 * i, 0.5, 0.0}, {0.0, 0.0, -1.0}, 0.01, 0.3});
  }
  CHECK(mesh.area(mesh.open("field", holes)) == Approx(0.2).margin(0.5 * 0.0625));
}

TEST_CASE("a grid without gas or with planes out of order is refused") {
  CHECK_THROWS_AS(box(cube(0.5), [](const Point &) { return -1; }), std::invalid_argument);
  CHECK_THROWS_AS(box({{std::vector{0.0, 1.0}, std::vector{0.0, 0.0}, std::vector{0.0, 1.0}}}),
                  std::invalid_argument);
}
