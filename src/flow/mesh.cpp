#include "purgewright/flow/mesh.hpp"

#include "foam_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>
#include <stdexcept>
#include <utility>

namespace purgewright::flow {
namespace {

constexpr std::ptrdiff_t no_cell = -1;
constexpr std::size_t no_face = static_cast<std::size_t>(-1);

// Numbers below `count`, each once, from the middle on and far from those just before: so that the few faces
// a coarse mesh has for many openings lie evenly among them. Source: golden section, common practice.
std::vector<std::size_t> spread(std::size_t count) {
  std::vector<std::pair<double, std::size_t>> order;
  for (std::size_t i = 0; i < count; ++i) {
    const double share = (static_cast<double>(i) - 0.5 * static_cast<double>(count - 1)) / std::numbers::phi;
    order.emplace_back(std::abs(share - std::round(share)), i);
  }
  std::ranges::sort(order);
  std::vector<std::size_t> numbers(count);
  std::ranges::transform(order, numbers.begin(), &std::pair<double, std::size_t>::second);
  return numbers;
}

using Box = std::array<std::size_t, 3>; // of the grid, by x, y and z
using Corners = std::array<std::size_t, 4>;

// Numbering of boxes and of their corners, x fastest.
struct Counts {
  std::size_t x, y, z; // boxes

  explicit Counts(const Grid &grid)
      : x(grid.planes[0].size() - 1), y(grid.planes[1].size() - 1), z(grid.planes[2].size() - 1) {}
  std::size_t boxes() const { return x * y * z; }
  std::size_t box(const Box &at) const { return at[0] + x * (at[1] + y * at[2]); }
  std::size_t corner(std::size_t i, std::size_t j, std::size_t k) const {
    return i + (x + 1) * (j + (y + 1) * k);
  }
  std::size_t corner_step(std::size_t axis) const {
    return axis == 0 ? 1 : axis == 1 ? x + 1 : (x + 1) * (y + 1);
  }
  std::size_t along(std::size_t axis) const { return axis == 0 ? x : axis == 1 ? y : z; }
};

void require_rising(const Grid &grid) {
  for (const auto &planes : grid.planes) {
    if (planes.size() < 2 || std::ranges::adjacent_find(planes, std::greater_equal<>{}) != planes.end()) {
      throw std::invalid_argument("mesh: planes of a grid rise, and there are two at least");
    }
  }
}

double middle(const std::vector<double> &planes, std::size_t i) {
  return 0.5 * (planes[i] + planes[i + 1]);
}

double width(const std::vector<double> &planes, std::size_t i) {
  return planes[i + 1] - planes[i];
}

// Corners of the face of box (i, j, k) at the high end of an axis, seen from outside counterclockwise.
Corners high_face(const Counts &n, std::size_t axis, const Box &box) {
  const auto [i, j, k] = box;
  switch (axis) {
  case 0:
    return {n.corner(i + 1, j, k), n.corner(i + 1, j + 1, k), n.corner(i + 1, j + 1, k + 1),
            n.corner(i + 1, j, k + 1)};
  case 1:
    return {n.corner(i, j + 1, k), n.corner(i, j + 1, k + 1), n.corner(i + 1, j + 1, k + 1),
            n.corner(i + 1, j + 1, k)};
  default:
    return {n.corner(i, j, k + 1), n.corner(i + 1, j, k + 1), n.corner(i + 1, j + 1, k + 1),
            n.corner(i, j + 1, k + 1)};
  }
}

// The face at the low end, seen from outside as well.
Corners low_face(const Counts &n, std::size_t axis, const Box &box) {
  Corners corners = high_face(n, axis, box);
  for (std::size_t &corner : corners) {
    corner -= n.corner_step(axis);
  }
  std::reverse(std::next(corners.begin()), corners.end());
  return corners;
}

Box step(Box box, std::size_t axis, bool up) {
  box[axis] = up ? box[axis] + 1 : box[axis] - 1;
  return box;
}

Point middle_of(const Grid &grid, const Box &box) {
  return {middle(grid.planes[0], box[0]), middle(grid.planes[1], box[1]), middle(grid.planes[2], box[2])};
}

Point unit(std::size_t axis, double sign) {
  return {axis == 0 ? sign : 0.0, axis == 1 ? sign : 0.0, axis == 2 ? sign : 0.0};
}

double dot(const Point &a, const Point &b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

} // namespace

Point operator-(const Point &a, const Point &b) {
  return {a.x - b.x, a.y - b.y, a.z - b.z};
}

double length_of(const Point &a) {
  return std::sqrt(dot(a, a));
}

std::vector<double> planes_between(double least, double greatest, const std::vector<double> &wanted,
                                   double cell) {
  std::vector<double> fixed{least, greatest};
  for (const double place : wanted) {
    const bool inside = place > least && place < greatest;
    if (inside && std::ranges::all_of(fixed, [&](double f) { return std::abs(f - place) >= 0.5 * cell; })) {
      fixed.push_back(place);
    }
  }
  std::ranges::sort(fixed);
  std::vector<double> planes{least};
  for (std::size_t i = 1; i < fixed.size(); ++i) {
    const double from = fixed[i - 1], to = fixed[i];
    const double count = std::max(1.0, std::round((to - from) / cell));
    for (double part = 1.0; part < count; ++part) {
      planes.push_back(from + (to - from) * part / count);
    }
    planes.push_back(to);
  }
  return planes;
}

void extend_above(std::vector<double> &planes, double greatest, double growth) {
  double step = planes.back() - planes[planes.size() - 2];
  while (planes.back() < greatest) {
    step *= growth;
    planes.push_back(planes.back() + step);
  }
}

void extend_below(std::vector<double> &planes, double least, double growth) {
  std::vector<double> mirrored(planes.rbegin(), planes.rend());
  const auto negate = [](std::vector<double> &values) {
    std::ranges::transform(values, values.begin(), std::negate<>{});
  };
  negate(mirrored);
  extend_above(mirrored, -least, growth);
  negate(mirrored);
  planes.assign(mirrored.rbegin(), mirrored.rend());
}

Mesh::Mesh(const Grid &grid, MeshRules rules) : patches_(std::move(rules.patches)) {
  require_rising(grid);
  add_cells(grid, rules);
  if (centres_.empty()) {
    throw std::invalid_argument("mesh: no cell of the grid lies in gas");
  }
  add_faces(grid, rules);
}

void Mesh::add_cells(const Grid &grid, const MeshRules &rules) {
  const auto &[xs, ys, zs] = grid.planes;
  const Counts n(grid);
  numbers_.assign(n.boxes(), no_cell);
  for (std::size_t k = 0; k < n.z; ++k) {
    for (std::size_t j = 0; j < n.y; ++j) {
      for (std::size_t i = 0; i < n.x; ++i) {
        const Point centre = middle_of(grid, {i, j, k});
        const Matter matter = rules.at(centre);
        if (matter >= 0) {
          numbers_[n.box({i, j, k})] = static_cast<std::ptrdiff_t>(centres_.size());
          centres_.push_back(centre);
          matters_.push_back(matter);
          volumes_.push_back(width(xs, i) * width(ys, j) * width(zs, k));
        }
      }
    }
  }
  for (const double z : zs) {
    for (const double y : ys) {
      for (const double x : xs) {
        points_.push_back({x, y, z});
      }
    }
  }
}

void Mesh::add_faces(const Grid &grid, const MeshRules &rules) {
  const Counts n(grid);
  for (std::size_t k = 0; k < n.z; ++k) {
    for (std::size_t j = 0; j < n.y; ++j) {
      for (std::size_t i = 0; i < n.x; ++i) {
        for (std::size_t axis = 0; axis < 3 && numbers_[n.box({i, j, k})] != no_cell; ++axis) {
          add_side(grid, rules, {i, j, k}, axis, false);
          add_side(grid, rules, {i, j, k}, axis, true);
        }
      }
    }
  }
}

// One side of a cell: a face to the next cell, made by the lower of the two, or a face of the boundary.
void Mesh::add_side(const Grid &grid, const MeshRules &rules, const Box &box, std::size_t axis, bool high) {
  const Counts n(grid);
  const auto cell = static_cast<std::size_t>(numbers_[n.box(box)]);
  const bool inside = high ? box[axis] + 1 < n.along(axis) : box[axis] > 0;
  const Box next = inside ? step(box, axis, high) : box;
  const std::ptrdiff_t neighbour = inside ? numbers_[n.box(next)] : no_cell;
  Point centre = centres_[cell];
  (axis == 0 ? centre.x : axis == 1 ? centre.y : centre.z) = grid.planes[axis][box[axis] + (high ? 1 : 0)];
  if (neighbour != no_cell) {
    const auto other = static_cast<std::size_t>(neighbour);
    if (matters_[cell] == matters_[other] || rules.meet(matters_[cell], matters_[other], centre)) {
      if (high) {
        inner_.push_back({high_face(n, axis, box), cell, other});
      }
      return;
    }
  }
  const std::size_t a = (axis + 1) % 3, b = (axis + 2) % 3;
  BoundaryFace face{.centre = centre,
                    .normal = unit(axis, high ? 1.0 : -1.0),
                    .area = width(grid.planes[a], box[a]) * width(grid.planes[b], box[b]),
                    .cell = cell,
                    .gas = matters_[cell],
                    .beyond = inside ? rules.at(middle_of(grid, next)) : outside_grid};
  face.patch = rules.patch_of(face);
  boundary_.push_back(face);
  outer_.push_back({high ? high_face(n, axis, box) : low_face(n, axis, box), cell, 0});
}

double Mesh::area(std::size_t patch) const {
  double sum = 0.0;
  for (const BoundaryFace &face : boundary_) {
    sum += face.patch == patch ? face.area : 0.0;
  }
  return sum;
}

std::array<Point, 2> Mesh::ends(std::size_t boundary_face) const {
  const auto &corners = outer_.at(boundary_face).corners;
  std::array<Point, 2> ends{points_[corners[0]], points_[corners[0]]};
  for (const std::size_t corner : corners) {
    const Point &p = points_[corner];
    ends[0] = {std::min(ends[0].x, p.x), std::min(ends[0].y, p.y), std::min(ends[0].z, p.z)};
    ends[1] = {std::max(ends[1].x, p.x), std::max(ends[1].y, p.y), std::max(ends[1].z, p.z)};
  }
  return ends;
}

std::size_t Mesh::nearest_cell(const Point &place) const {
  const auto nearest =
      std::ranges::min_element(centres_, {}, [&](const Point &centre) { return length_of(centre - place); });
  return static_cast<std::size_t>(nearest - centres_.begin());
}

std::optional<std::size_t> Mesh::patch_named(std::string_view name) const {
  const auto found = std::ranges::find(patches_, name, &Patch::name);
  return found == patches_.end() ? std::nullopt
                                 : std::optional(static_cast<std::size_t>(found - patches_.begin()));
}

std::size_t Mesh::open(std::string name, const std::vector<Opening> &openings) {
  patches_.push_back({std::move(name), "patch"});
  const std::size_t patch = patches_.size() - 1;
  double wanted = 0.0;
  std::vector<std::vector<std::size_t>> near;
  for (const Opening &opening : openings) {
    wanted += opening.area;
    near.push_back(faces_near(opening));
  }
  double taken = 0.0;
  for (bool any = true; any;) {
    any = false;
    for (const std::size_t i : spread(openings.size())) {
      const std::size_t face = next_wall(near[i]);
      if (face == no_face) {
        continue;
      }
      const double with = taken + boundary_[face].area;
      if (taken > 0.0 && with - wanted > wanted - taken) {
        return patch;
      }
      boundary_[face].patch = patch;
      taken = with;
      any = true;
    }
  }
  if (taken <= 0.0) {
    throw std::invalid_argument(fmt::format(
        "mesh: no face of the mesh lies at the opening '{}'; take more cells", patches_[patch].name));
  }
  return patch;
}

// Nearest last.
std::vector<std::size_t> Mesh::faces_near(const Opening &opening) const {
  constexpr double least_cosine = 0.5; // 60 degrees
  std::vector<std::pair<double, std::size_t>> near;
  for (std::size_t i = 0; i < boundary_.size(); ++i) {
    const double distance = length_of(boundary_[i].centre - opening.mouth);
    if (distance <= opening.reach &&
        dot(boundary_[i].normal, opening.out) >= least_cosine * length_of(opening.out)) {
      near.emplace_back(distance, i);
    }
  }
  std::ranges::sort(near, std::greater_equal<>{});
  std::vector<std::size_t> faces(near.size());
  std::ranges::transform(near, faces.begin(), &std::pair<double, std::size_t>::second);
  return faces;
}

// Takes the nearest face that is still wall.
std::size_t Mesh::next_wall(std::vector<std::size_t> &near) const {
  while (!near.empty()) {
    const std::size_t face = near.back();
    near.pop_back();
    if (patches_[boundary_[face].patch].type == "wall") {
      return face;
    }
  }
  return no_face;
}

Mesh::Files Mesh::files() const {
  std::vector<std::size_t> used(points_.size(), 0), order;
  const auto mark = [&](const std::vector<Quad> &faces) {
    for (const Quad &face : faces) {
      for (const std::size_t corner : face.corners) {
        used[corner] = 1;
      }
    }
  };
  mark(inner_);
  mark(outer_);
  Files out;
  std::size_t count = 0;
  std::string list;
  for (std::size_t i = 0; i < points_.size(); ++i) {
    if (used[i] != 0) {
      used[i] = count++;
      list += fmt::format("({:.9g} {:.9g} {:.9g})\n", points_[i].x, points_[i].y, points_[i].z);
    }
  }
  out.points = foam_header("vectorField", "points", "constant/polyMesh") + foam_list(count, list);

  std::string faces, owners, neighbours, patches;
  const auto write_face = [&](const Quad &face) {
    const auto &c = face.corners;
    faces += fmt::format("4({} {} {} {})\n", used[c[0]], used[c[1]], used[c[2]], used[c[3]]);
    owners += fmt::format("{}\n", face.owner);
  };
  for (const Quad &face : inner_) {
    write_face(face);
    neighbours += fmt::format("{}\n", face.neighbour);
  }
  std::size_t written = inner_.size();
  for (std::size_t p = 0; p < patches_.size(); ++p) {
    std::size_t of_patch = 0;
    for (std::size_t i = 0; i < outer_.size(); ++i) {
      if (boundary_[i].patch == p) {
        write_face(outer_[i]);
        ++of_patch;
      }
    }
    patches += fmt::format("{}\n{{\n  type {};\n  nFaces {};\n  startFace {};\n}}\n", patches_[p].name,
                           patches_[p].type, of_patch, written);
    written += of_patch;
  }
  const auto labels = [&](std::string_view object, std::size_t entries, const std::string &text) {
    return foam_header("labelList", object, "constant/polyMesh") + foam_list(entries, text);
  };
  out.faces = foam_header("faceList", "faces", "constant/polyMesh") + foam_list(written, faces);
  out.owner = labels("owner", written, owners);
  out.neighbour = labels("neighbour", inner_.size(), neighbours);
  out.boundary =
      foam_header("polyBoundaryMesh", "boundary", "constant/polyMesh") + foam_list(patches_.size(), patches);
  return out;
}

} // namespace purgewright::flow
