// A castellated mesh: the cells of a grid of boxes that lie in gas, as OpenFOAM's polyMesh.
//
// Units: metres, bare numbers; areas of one half of a symmetric space where the grid is halved.
// Frame: the caller's; the joint's in flow cases.
// Range and errors: std::invalid_argument for an axis with fewer than two planes or planes out of order, for
// a grid without a cell in gas, and for an opening that finds no face. Guarantee: cells in order of x, then
// y, then z; faces as OpenFOAM wants them, those between two cells by owner and neighbour, the others patch
// after patch, each seen from its owner's outside; same input, same bytes. Source: OpenFOAM user guide, mesh
// description (polyMesh).
#pragma once

#include <array>
#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::flow {

struct Point {
  double x = 0.0, y = 0.0, z = 0.0;
};
Point operator-(const Point &, const Point &);
double length_of(const Point &);

struct Grid {
  std::array<std::vector<double>, 3> planes; // by axis, rising
};

// Planes from `least` to `greatest`, cells about `cell` long, on every place of `wanted` that is no nearer
// than half a cell to one before it in the list.
std::vector<double> planes_between(double least, double greatest, const std::vector<double> &wanted,
                                   double cell);
// Further planes beyond either end, each cell `growth` times the one before, until `least` or `greatest` is
// reached.
void extend_below(std::vector<double> &planes, double least, double growth);
void extend_above(std::vector<double> &planes, double greatest, double growth);

// What stands at a place: below zero metal of some kind, from zero on gas of some space.
using Matter = int;
inline constexpr Matter outside_grid = -1000;

struct BoundaryFace {
  Point centre{}, normal{}; // out of the gas
  double area = 0.0;
  std::size_t cell = 0;
  Matter gas = 0, beyond = 0; // outside_grid at the grid's end
  std::size_t patch = 0;
};

struct Patch {
  std::string name, type; // "wall", "patch", "symmetryPlane", "empty"
};

struct MeshRules {
  std::function<Matter(const Point &)> at;
  // Whether two spaces of different gas meet in a face there; gas of one space always does.
  std::function<bool(Matter, Matter, const Point &)> meet;
  std::vector<Patch> patches;
  std::function<std::size_t(const BoundaryFace &)> patch_of;
};

class Mesh {
 public:
  Mesh(const Grid &, MeshRules);

  std::size_t cells() const { return centres_.size(); }
  const Point &centre(std::size_t cell) const { return centres_[cell]; }
  Matter matter(std::size_t cell) const { return matters_[cell]; }
  double volume(std::size_t cell) const { return volumes_[cell]; }
  double area(std::size_t patch) const;
  const std::vector<BoundaryFace> &boundary() const { return boundary_; }
  std::array<Point, 2> ends(std::size_t boundary_face) const; // its corners of least and greatest coordinates
  std::size_t nearest_cell(const Point &) const;

  const std::vector<Patch> &patches() const { return patches_; }
  std::optional<std::size_t> patch_named(std::string_view) const;

  // A further patch of faces that were wall: those nearest to the openings' mouths whose outward normal lies
  // within 60 degrees of `out` and that are no farther than `reach`, as many as make the area of all best and
  // at least one. Where cells are too coarse for each opening to have its own, some go without: the speed of
  // what comes in is kept rather than the number of streams.
  struct Opening {
    Point mouth{}, out{};
    double area = 0.0, reach = 0.0;
  };
  std::size_t open(std::string name, const std::vector<Opening> &);

  // Files of constant/polyMesh.
  struct Files {
    std::string points, faces, owner, neighbour, boundary;
  };
  Files files() const;

 private:
  struct Quad {
    std::array<std::size_t, 4> corners{};
    std::size_t owner = 0, neighbour = 0;
  };
  std::vector<std::size_t> faces_near(const Opening &) const;
  std::size_t next_wall(std::vector<std::size_t> &near) const;
  void add_cells(const Grid &, const MeshRules &);
  void add_faces(const Grid &, const MeshRules &);
  void add_side(const Grid &, const MeshRules &, const std::array<std::size_t, 3> &box, std::size_t axis,
                bool high);

  std::vector<Patch> patches_;
  std::vector<Point> points_, centres_;
  std::vector<double> volumes_;
  std::vector<Matter> matters_;
  std::vector<std::ptrdiff_t> numbers_; // by box of the grid; -1 where there is no cell
  std::vector<Quad> inner_, outer_;     // outer_ beside boundary_
  std::vector<BoundaryFace> boundary_;
};

} // namespace purgewright::flow
