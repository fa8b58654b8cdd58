#include "gas_space.hpp"

#include "purgewright/fixture/cavity.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace purgewright::flow {
namespace {

using std::numbers::pi;

// Room over the chamber that is meshed, and how its cells grow: common practice, no source.
constexpr double room_height = 0.06, room_margin = 0.02, room_growth = 1.25;
// How far an opening's faces may lie from where it is drilled.
constexpr double reach_in_radii = 2.0, reach_in_cells = 2.0;

bool has_room(Stage stage) {
  return !is_prepurge(stage);
}

// ---- openings
struct Mouth {
  Point at, out; // out of the gas
  double radius = 0.0, area = 0.0;
};

double circle(units::Length radius) {
  return pi * radius.value() * radius.value();
}

Mouth round_mouth(const Point &at, const Point &out, units::Length radius) {
  return {at, out, radius.value(), circle(radius)};
}

// Those of the half with y >= 0; what lies on its plane is cut in two.
std::vector<Mesh::Opening> halved(const std::vector<Mouth> &mouths, double cell) {
  constexpr double on_plane = 1e-9;
  std::vector<Mesh::Opening> half;
  for (const Mouth &mouth : mouths) {
    const double reach = reach_in_radii * mouth.radius + reach_in_cells * cell;
    if (std::abs(mouth.at.y) <= on_plane) {
      half.push_back({mouth.at, mouth.out, 0.5 * mouth.area, reach});
    } else if (mouth.at.y > 0.0) {
      half.push_back({mouth.at, mouth.out, mouth.area, reach});
    }
  }
  return half;
}

// Vents round the tube, the first one at the top or at the bottom; `sign` 1 where the gas is inside the tube.
std::vector<Mouth> vents(const job::Tube &tube, double radius, bool below, double sign) {
  std::vector<Mouth> mouths;
  for (int hole = 0; hole < tube.vent.count; ++hole) {
    const double angle = 2.0 * pi * hole / tube.vent.count + (below ? pi : 0.0);
    const Point radial{0.0, std::sin(angle), std::cos(angle)};
    mouths.push_back(round_mouth({-tube.vent.from_joint.value(), radius * radial.y, radius * radial.z},
                                 {0.0, sign * radial.y, sign * radial.z}, 0.5 * tube.vent.diameter));
  }
  return mouths;
}

// The nose's side holes, or the lance's mouth.
std::vector<Mouth> bore_inlets(const fixture::Layout &layout) {
  const auto &lance = layout.lance;
  if (lance.present) {
    return {round_mouth({(lance.placement.x + lance.length).value(), 0.0, lance.placement.z.value()},
                        {-1.0, 0.0, 0.0}, lance.inside_radius)};
  }
  const auto &plug = layout.plug;
  std::vector<Mouth> mouths;
  if (plug.nose_length == units::Length{}) { // the one mouth of the way, in the spigot's face
    return {round_mouth({(plug.placement.x + plug.spigot_length).value(), 0.0, plug.inlet.z.value()},
                        {-1.0, 0.0, 0.0}, plug.side_hole_radius)};
  }
  for (int row = 0; row < plug.side_rows; ++row) {
    for (int i = 0; i < plug.side_holes_per_row; ++i) {
      const double angle = 2.0 * pi * i / plug.side_holes_per_row, r = plug.nose_radius.value();
      const Point radial{0.0, std::sin(angle), std::cos(angle)};
      const auto x = plug.placement.x + plug.side_first_x + double(row) * plug.side_pitch;
      mouths.push_back(round_mouth({x.value(), r * radial.y, r * radial.z}, {0.0, -radial.y, -radial.z},
                                   plug.side_hole_radius));
    }
  }
  return mouths;
}

// Vents, or the plug's return in the spigot's face: a bore beside the lance or the ring round it.
std::vector<Mouth> bore_outlets(const job::Job &job, const fixture::Layout &layout, bool below) {
  const auto &plug = layout.plug;
  if (!plug.has_exhaust) {
    return vents(job.tube, 0.5 * job.tube.inside_diameter.value(), below, 1.0);
  }
  const double face = (plug.placement.x + plug.spigot_length).value(), turned_over = below ? -1.0 : 1.0;
  if (plug.ways == fixture::GasWays::concentric) {
    return {{{face, 0.0, layout.lance.placement.z.value()},
             {-1.0, 0.0, 0.0},
             plug.return_radius.value(),
             circle(plug.return_radius) - circle(layout.lance.outside_radius)}};
  }
  return {
      round_mouth({face, 0.0, turned_over * plug.exhaust.z.value()}, {-1.0, 0.0, 0.0}, plug.exhaust.radius)};
}

std::vector<Mouth> diffuser_mouths(const fixture::ChamberBody &body) {
  const auto &diffuser = body.diffuser;
  std::vector<Mouth> mouths;
  for (int row = 0; row < diffuser.rows; ++row) {
    const double y = diffuser.y_of(row).value(), floor = cavity_floor(body, diffuser.y_of(row)).value();
    for (int column = 0; column < diffuser.columns; ++column) {
      mouths.push_back(
          round_mouth({diffuser.x_of(column).value(), y, floor}, {0.0, 0.0, -1.0}, diffuser.hole_radius));
    }
  }
  return mouths;
}

std::vector<Mouth> cover_exits(const fixture::SlotCover &cover, double top) {
  std::vector<Mouth> mouths;
  for (int i = 0; i < cover.exits; ++i) {
    const auto x = cover.placement.x + (i - 0.5 * (cover.exits - 1)) * cover.exit_pitch;
    mouths.push_back(round_mouth({x.value(), 0.0, top}, {0.0, 0.0, 1.0}, cover.exit_radius));
  }
  return mouths;
}

// ---- meshes
Mesh bore_mesh(const Shapes &shapes, double cell) {
  const auto [from, to] = shapes.bore_ends();
  const double radius = shapes.bore_radius();
  const Grid grid{{planes_between(from, to, shapes.bore_steps(), cell), planes_between(0.0, radius, {}, cell),
                   planes_between(-radius, radius, {0.0}, cell)}};
  return {grid,
          {.at = [&](const Point &p) { return shapes.bore_at(p); },
           .meet = [](Matter, Matter, const Point &) { return false; },
           .patches = {{patch::walls, "wall"}, {patch::middle, "symmetryPlane"}},
           .patch_of =
               [](const BoundaryFace &face) {
                 const bool cut = face.beyond == outside_grid && face.normal.y < 0.0;
                 return static_cast<std::size_t>(cut ? 1 : 0);
               }}};
}

Grid chamber_grid(const Shapes &shapes, Stage stage, double cell) {
  const auto [from, to] = shapes.chamber_ends();
  const double radius = shapes.widest_radius();
  Grid grid{{planes_between(from, to, shapes.chamber_steps(), cell),
             planes_between(0.0, radius, {shapes.slot_half_width()}, cell),
             planes_between(-radius, shapes.top(), shapes.heights(), cell)}};
  if (has_room(stage)) {
    extend_below(grid.planes[0], from - room_margin, room_growth);
    extend_above(grid.planes[0], to + room_margin, room_growth);
    extend_above(grid.planes[1], radius + room_margin, room_growth);
    extend_above(grid.planes[2], shapes.top() + room_height, room_growth);
  }
  return grid;
}

Mesh chamber_mesh(const Shapes &shapes, Stage stage, double cell) {
  enum : std::size_t { walls, middle, joint, room };
  return {chamber_grid(shapes, stage, cell),
          {.at =
               [&](const Point &p) {
                 const Matter found = shapes.chamber_at(p, stage == Stage::torch);
                 return found == matter::room && !has_room(stage) ? matter::metal : found;
               },
           .meet = [&](Matter, Matter, const Point &p) { return shapes.in_opening(p); },
           .patches = {{patch::walls, "wall"},
                       {patch::middle, "symmetryPlane"},
                       {patch::joint, "wall"},
                       {patch::room, "patch"}},
           .patch_of =
               [&](const BoundaryFace &face) {
                 if (face.beyond == outside_grid) {
                   return face.normal.y < 0.0 ? middle : face.gas == matter::room ? room : walls;
                 }
                 return face.beyond == matter::workpiece && shapes.at_joint(face.centre) ? joint : walls;
               }}};
}

// ---- probes, each in the cell next to its place
class Probes {
 public:
  explicit Probes(const Mesh &mesh) : mesh_(mesh) {}
  void add(std::string name, const Point &place) {
    probes_.push_back({std::move(name), mesh_.centre(mesh_.nearest_cell(place))});
  }
  std::vector<Probe> take() { return std::move(probes_); }

 private:
  const Mesh &mesh_;
  std::vector<Probe> probes_;
};

std::vector<Probe> bore_probes(const Mesh &mesh, const Shapes &shapes, const std::vector<Mouth> &outlets) {
  const double r = shapes.bore_radius();
  Probes probes(mesh);
  probes.add("joint_top", {0.0, 0.0, r});
  probes.add("joint_side", {0.0, r, 0.0});
  probes.add("joint_bottom", {0.0, 0.0, -r});
  probes.add("cap_middle", {shapes.bore_ends().second, 0.0, 0.0});
  probes.add("outlet", outlets.front().at);
  return probes.take();
}

std::vector<Probe> chamber_probes(const Mesh &mesh, const Shapes &shapes, const fixture::Layout &layout) {
  const double r = shapes.tube_radius();
  const auto &meter = layout.end_plate.meter.at;
  Probes probes(mesh);
  probes.add("joint_top", {0.0, 0.0, r});
  probes.add("joint_side", {0.0, r, 0.0});
  probes.add("joint_bottom", {0.0, 0.0, -r});
  probes.add("meter", {shapes.chamber_ends().second, std::abs(meter.y.value()), meter.z.value()});
  probes.add("slot", {0.0, 0.0, shapes.top()});
  return probes.take();
}

// ---- the two spaces
double total(const std::vector<Mouth> &mouths) {
  double area = 0.0;
  for (const Mouth &mouth : mouths) {
    area += mouth.area;
  }
  return area;
}

// An outlet's faces are as many as let the gas out no faster than it comes in: how narrow the hole is changes
// nothing inside two diameters of it, but would make every step of the solver as short as its stream is fast.
std::vector<Mesh::Opening> outlets_for(const std::vector<Mouth> &outlets, double inlet_area, double cell) {
  std::vector<Mesh::Opening> half = halved(outlets, cell);
  const double wider = std::max(1.0, inlet_area / total(outlets));
  for (Mesh::Opening &opening : half) {
    opening.area *= wider;
    opening.reach *= std::sqrt(wider);
  }
  return half;
}

GasSpace bore_space(const Subject &s, Stage stage, const Shapes &shapes, double cell) {
  GasSpace space{.mesh = bore_mesh(shapes, cell)};
  const auto inlets = bore_inlets(s.layout);
  const auto outlets = bore_outlets(s.job, s.layout, stage == Stage::bore_outlet_below);
  space.mesh.open("plug", halved(inlets, cell));
  space.mesh.open(patch::outlet, outlets_for(outlets, total(inlets), cell));
  space.outlet_area = total(outlets);
  space.inlets.push_back({"plug", s.purge.bore.prepurge.value(), total(inlets)});
  space.probes = bore_probes(space.mesh, shapes, outlets);
  space.level = outlets.front().at.z;
  return space;
}

bool vent_in_chamber(const Subject &s) {
  return s.job.tube.vent.count > 0 && -s.job.tube.vent.from_joint > s.layout.body.cavity_start;
}

GasSpace chamber_space(const Subject &s, Stage stage, const Shapes &shapes, double cell) {
  GasSpace space{.mesh = chamber_mesh(shapes, stage, cell), .level = shapes.top()};
  const bool purging = stage == Stage::prepurge;
  const auto add_inlet = [&](std::string name, const std::vector<Mouth> &mouths, units::VolumeFlow flow,
                             Brings brings = Brings::purge_gas) {
    space.mesh.open(name, halved(mouths, cell));
    space.inlets.push_back({std::move(name), flow.value(), total(mouths), brings});
  };
  const auto &chamber = s.purge.chamber;
  const auto &bore = s.purge.bore;
  add_inlet("diffuser", diffuser_mouths(s.layout.body), purging ? chamber.prepurge : chamber.welding);
  if (vent_in_chamber(s)) {
    add_inlet("vent", vents(s.job.tube, shapes.tube_radius(), false, -1.0),
              purging ? bore.prepurge : bore.welding,
              purging ? Brings::air_of_stirred_bore : Brings::purge_gas);
  }
  if (stage == Stage::torch) {
    add_inlet("cup",
              {round_mouth({0.0, 0.0, shapes.cup_mouth()}, {0.0, 0.0, 1.0}, 0.5 * s.job.torch.cup_bore)},
              s.job.torch.gas_flow);
  }
  if (purging) {
    double inlet_area = 0.0;
    for (const Inlet &inlet : space.inlets) {
      inlet_area += inlet.area;
    }
    const auto exits = cover_exits(s.layout.cover, shapes.top());
    space.outlet_area = total(exits);
    space.mesh.open(patch::outlet, outlets_for(exits, inlet_area, cell));
  }
  space.probes = chamber_probes(space.mesh, shapes, s.layout);
  return space;
}

} // namespace

GasSpace gas_space(const Subject &s, const Choice &choice) {
  const Shapes shapes(s.job, s.layout);
  const bool bore = is_bore(choice.stage);
  const double half = 0.5 * (bore ? s.volumes.bore_gas : s.volumes.chamber_gas).value();
  const double cell = std::cbrt(half / static_cast<double>(choice.cells));
  return bore ? bore_space(s, choice.stage, shapes, cell) : chamber_space(s, choice.stage, shapes, cell);
}

} // namespace purgewright::flow
