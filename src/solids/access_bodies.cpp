#include "access_bodies.hpp"

#include "purgewright/fixture/volumes.hpp"
#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/cutters.hpp"
#include "purgewright/solids/kernel/primitives.hpp"

#include <cmath>

namespace purgewright::solids {

using kernel::Direction;
using kernel::Point;
using kernel::Solid;
using units::Length;

namespace {

Point corner(const fixture::Position &at) {
  return {at.x, at.y, at.z};
}

// Along the torch's axis from the joint's top, and across it towards the handle.
struct TorchFrame {
  Direction along, across;
  Point at(const fixture::TorchBody &torch, Length from_joint) const {
    return {{}, from_joint * along.y, torch.joint_radius + from_joint * along.z};
  }
};

TorchFrame frame_of(const fixture::TorchBody &torch) {
  const double sine = std::sin(torch.tilt.value()), cosine = std::cos(torch.tilt.value());
  return {{0.0, sine, cosine}, {0.0, cosine, -sine}};
}

// A dome's outline seen from above is the segment of its sphere's greatest circle ahead of the joint.
Solid dome_column(const job::Cap &cap, Length top) {
  const Length sphere = fixture::dome_sphere(cap);
  const Length centre = cap.dome_height - sphere;
  const Solid round = kernel::cylinder({{centre, {}, {}}, kernel::along_z}, sphere, top);
  const Length over = kernel::cutter_overshoot;
  const Length wide = sphere + over;
  return kernel::cut(round, {kernel::box({centre - wide, -wide, -over}, {{}, wide, top + over})});
}

} // namespace

Solid as_solid(const fixture::Box &box) {
  return kernel::box(corner(box.least), corner(box.greatest));
}

Solid as_solid(const fixture::Turned &turned) {
  return kernel::cylinder({{turned.x_min, {}, {}}, kernel::along_x}, turned.radius,
                          turned.x_max - turned.x_min);
}

Solid as_solid(const fixture::Approach &tool) {
  const bool forward = tool.toward == fixture::Toward::plus_x;
  return kernel::cylinder({corner(tool.from), forward ? kernel::along_x : kernel::against_x}, tool.radius,
                          tool.length);
}

kernel::Line axis_of(const fixture::Approach &tool) {
  Point end = corner(tool.from);
  const bool upright = tool.toward == fixture::Toward::plus_z || tool.toward == fixture::Toward::minus_z;
  const bool forward = tool.toward == fixture::Toward::plus_x || tool.toward == fixture::Toward::plus_z;
  Length &moving = upright ? end.z : end.x;
  moving += forward ? tool.length : -tool.length;
  return {corner(tool.from), end};
}

kernel::Line axis_of(const fixture::Turned &turned) {
  return {{turned.x_min, {}, {}}, {turned.x_max, {}, {}}};
}

std::vector<Solid> lowered_cap(const job::Cap &cap, Length top) {
  const Length rim = 0.5 * cap.diameter;
  if (cap.shape == job::CapShape::domed) {
    return {dome_column(cap, top)};
  }
  std::vector<Solid> swept{kernel::box({{}, -rim, {}}, {cap.thickness, rim, top})};
  if (cap.shape == job::CapShape::spigot) {
    const Length spigot = 0.5 * cap.spigot_diameter;
    swept.push_back(kernel::box({-cap.spigot_length, -spigot, {}}, {{}, spigot, top}));
  }
  return swept;
}

Solid torch_barrel(const fixture::TorchBody &torch) {
  const TorchFrame frame = frame_of(torch);
  return kernel::cylinder({frame.at(torch, torch.stand_off), frame.along}, torch.barrel_radius,
                          torch.barrel_length);
}

Solid torch_handle(const fixture::TorchBody &torch) {
  const TorchFrame frame = frame_of(torch);
  return kernel::cylinder({frame.at(torch, torch.stand_off + torch.handle_from_mouth), frame.across},
                          torch.handle_radius, torch.handle_length);
}

} // namespace purgewright::solids
