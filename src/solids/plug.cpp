// end-plug and purge-lance.
#include "purgewright/solids/parts.hpp"

#include "tools.hpp"

#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/cutters.hpp"

#include <cmath>

namespace purgewright::solids {
namespace {

using fixture::EndPlug;
using fixture::PlugPassage;

// Outer contour from the rear face's axis to the front's, the O-ring groove cut in.
std::vector<ProfilePoint> outside(const EndPlug &plug) {
  const auto &seal = plug.seal;
  const Length groove_end = seal.groove_start + seal.groove_width;
  std::vector<ProfilePoint> contour{{plug.rear_x(), plug.shoulder_radius},
                                    {Length{}, plug.shoulder_radius},
                                    {Length{}, plug.spigot_radius},
                                    {seal.groove_start, plug.spigot_radius},
                                    {seal.groove_start, seal.groove_radius},
                                    {groove_end, seal.groove_radius},
                                    {groove_end, plug.spigot_radius},
                                    {plug.spigot_length - plug.edge_break, plug.spigot_radius},
                                    {plug.spigot_length, plug.spigot_radius - plug.edge_break}};
  if (plug.nose_length > Length{}) {
    const Length tip = plug.spigot_length + plug.nose_length;
    const Length step = plug.nose_radius - contour.back().radial;
    if (std::abs(units::ratio(step, kernel::smallest_size)) >= 1.0) { // a lower step is no step to the kernel
      contour.push_back({plug.spigot_length, plug.nose_radius});
    }
    contour.push_back({tip - plug.edge_break, plug.nose_radius});
    contour.push_back({tip, plug.nose_radius - plug.edge_break});
  }
  return contour;
}

// The gas way as the contour of the metal: from the blind end back to the rear face.
std::vector<ProfilePoint> blind_way(const EndPlug &plug, const PlugPassage &way) {
  const Length port_end = plug.rear_x() + way.port_depth;
  return {{plug.spigot_length + plug.nose_length, Length{}},
          {way.end_x + step_length(way.radius, Length{}), Length{}},
          {way.end_x, way.radius},
          {port_end + step_length(way.port_radius, way.radius), way.radius},
          {port_end, way.port_radius},
          {plug.rear_x(), way.port_radius}};
}

// The gas way of a plug with two, as a tool from the rear face through the spigot face.
Solid open_way(const EndPlug &plug, const PlugPassage &way) {
  const Length through = plug.spigot_length - plug.rear_x();
  const Length beyond = through + kernel::cutter_overshoot;
  const Length seat = through - way.seat_depth;
  auto profile = port_profile(Length{}, Length{}, way.port_radius, way.port_depth, way.radius,
                              way.seat_depth > Length{} ? seat : beyond);
  if (way.seat_depth > Length{}) {
    profile.push_back({seat, way.seat_radius});
    profile.push_back({beyond, way.seat_radius});
  }
  profile.push_back({beyond, Length{}});
  return kernel::revolve({{plug.rear_x(), {}, way.z}, kernel::along_x}, profile);
}

std::vector<Solid> side_holes(const EndPlug &plug) {
  constexpr double start_share = 0.8; // of the passage's radius: inside it, yet clear of the neighbours
  std::vector<Solid> tools;
  const Length start = start_share * plug.inlet.radius;
  const Length length = plug.nose_radius + kernel::cutter_overshoot - start;
  for (int row = 0; row < plug.side_rows; ++row) {
    const Length x = plug.side_first_x + double(row) * plug.side_pitch;
    for (int hole = 0; hole < plug.side_holes_per_row; ++hole) {
      const double angle = 2.0 * units::pi * hole / plug.side_holes_per_row;
      const double y = std::sin(angle);
      const double z = std::cos(angle);
      tools.push_back(
          kernel::cylinder({{x, y * start, z * start}, {0.0, y, z}}, plug.side_hole_radius, length));
    }
  }
  return tools;
}

} // namespace

Solid build_end_plug(const fixture::Layout &layout) {
  const auto &plug = layout.plug;
  return kernel::in_part("end-plug", [&] {
    auto contour = outside(plug);
    if (plug.has_exhaust) {
      contour.push_back({plug.spigot_length, Length{}});
      contour.push_back({plug.rear_x(), Length{}});
      return kernel::cut(kernel::revolve({{}, kernel::along_x}, contour),
                         {open_way(plug, plug.inlet), open_way(plug, plug.exhaust)});
    }
    for (const auto &corner : blind_way(plug, plug.inlet)) {
      contour.push_back(corner);
    }
    return kernel::cut(kernel::revolve({{}, kernel::along_x}, contour), side_holes(plug));
  });
}

Solid build_lance(const fixture::Layout &layout) {
  const auto &lance = layout.lance;
  return kernel::in_part("purge-lance", [&] {
    return kernel::revolve({{}, kernel::along_x}, {{Length{}, lance.inside_radius},
                                                   {Length{}, lance.outside_radius},
                                                   {lance.length, lance.outside_radius},
                                                   {lance.length, lance.inside_radius}});
  });
}

} // namespace purgewright::solids
