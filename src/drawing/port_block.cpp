// gas-port-block: section along the gallery, view from above, inlet face. Lengths run from the inlet face,
// heights from the bottom face.
#include "feature_views.hpp"

#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

namespace purgewright::drawing {
namespace {

using fixture::Length;
using fixture::PortBlock;

constexpr double sealing = 1.6;

ViewPlan section(const Inputs &in, const fixture::Part &part) {
  const PortBlock &block = in.layout.block;
  const fixture::Hole &ports = hole(part, "gallery"), &outlets = hole(part, "outlet");
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "section";
  view.caption = "A-A";
  view.looking = from_front;
  view.room = {40, 40, 34, 30};
  add_cut(view, cut_of(in, ids::gas_port_block, view.looking));
  const double length = in_mm(block.length), height = in_mm(block.height), axis = in_mm(block.gallery_z);
  hole_cut(view, ports, copy_of(ports, 0));
  for (int i = 0; i < outlets.pattern.count(); ++i) {
    hole_cut(view, outlets, copy_of(outlets, i));
  }
  view.linears = {
      {"gas-port-block.length", {0, 0, 0}, {length, 0, 0}, Side::below, n.size(block.length)},
      {"gas-port-block.gallery_z",
       {0, 0, 0},
       {0, 0, axis},
       Side::left,
       n.size(block.gallery_z),
       Probe::offset},
      {"gas-port-block.height", {0, 0, 0}, {0, 0, height}, Side::left, n.size(block.height)},
  };
  const double first = in_mm(block.outlet_x[0]);
  const double gallery = in_mm(block.gallery_radius), passage = in_mm(block.passage_radius);
  view.callouts.push_back(bore("gas-port-block.gallery_radius",
                               n.diameter(block.gallery_radius, "drill ", " through"),
                               {first + 2.0 * passage, 0, axis - gallery}, {1, 0, 0}, down_right));
  view.callouts.push_back(
      bore("gas-port-block.passage_radius",
           n.diameter(block.passage_radius, fmt::format("{}× drill ", block.outlets), " to gallery"),
           {first + passage, 0,
            axis + 0.5 * (gallery + in_mm(block.height - block.gallery_z) -
                          in_mm(block.port.depth + block.spot_depth))},
           {0, 0, 1}, up_right));
  view.callouts.push_back(note("gas-port-block.port",
                               {1.5 + in_mm(block.spot_depth), 0, axis - in_mm(block.port.radius)},
                               thread_lines(n, ports, block.outlets + 2)));
  view.callouts.back().towards = down_left;
  if (block.spot_depth > Length{}) {
    const double r = 0.5 * in_mm(block.spot_radius + block.port.radius);
    view.callouts.push_back(roughness("gas-port-block.spot.roughness",
                                      {first + r, 0, height - in_mm(block.spot_depth)}, n, sealing));
    view.callouts.back().towards = up_right;
    view.callouts.back().label.lines[0] += fmt::format(" ({}×)", block.outlets + 2);
  }
  return view;
}

ViewPlan top_view(const Inputs &in, const fixture::Part &part) {
  const PortBlock &block = in.layout.block;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "from-above";
  view.caption = "View from above";
  view.looking = from_above;
  view.room = {16, 40, 30, 26};
  const double length = in_mm(block.length), half = 0.5 * in_mm(block.width), top = in_mm(block.height);
  view.outline(Line::visible, {{0, -half, top}, {length, -half, top}, {length, half, top}, {0, half, top}});
  const auto outlet = [&](int i) { return Vec{in_mm(block.outlet_x[static_cast<std::size_t>(i)]), 0, top}; };
  const fixture::Hole &outlets = hole(part, "outlet");
  for (int i = 0; i < outlets.pattern.count(); ++i) {
    hole_end_on(view, outlets, copy_of(outlets, i));
  }
  for (const auto &at : block.mounts) {
    const Vec c{in_mm(at.x), in_mm(at.y), top};
    hole_end_on(view, c, block.mount_counterbore_radius);
    view.circle(Line::visible, c, in_mm(block.mount_radius));
  }
  const auto mount = [&](std::size_t i) {
    return Vec{in_mm(block.mounts[i].x), in_mm(block.mounts[i].y), top};
  };
  view.linears = {
      {"gas-port-block.outlet_x",
       {0, -half, top},
       outlet(0),
       Side::below,
       n.size(block.outlet_x[0]),
       Probe::offset},
      {"gas-port-block.mounts.x",
       {0, half, top},
       mount(0),
       Side::above,
       n.size(block.mounts[0].x),
       Probe::offset},
      {"gas-port-block.mounts.y", mount(1), mount(0), Side::right,
       n.size(block.mounts[0].y - block.mounts[1].y), Probe::axes},
      {"gas-port-block.width", {length, -half, top}, {length, half, top}, Side::right, n.size(block.width)},
  };
  if (block.outlets > 1) {
    view.linears.push_back({"gas-port-block.outlet_pitch", outlet(0), outlet(1), Side::below,
                            n.size(block.outlet_x[1] - block.outlet_x[0],
                                   block.outlets > 2 ? fmt::format("{}× ", block.outlets - 1) : ""),
                            Probe::axes});
  }
  Callout mounts = hole_note(
      "gas-port-block.mounts",
      counterbored(n, 2, block.mount_radius, block.mount_counterbore_radius, block.mount_counterbore_depth),
      mount(0), block.mount_radius, {0, 0, 1}, up_right);
  mounts.surface = {in_mm(block.mounts[0].x + block.mount_radius), in_mm(block.mounts[0].y), 1.0};
  mounts.radius = in_mm(block.mount_counterbore_radius);
  view.callouts.push_back(mounts);
  return view;
}

ViewPlan inlet_face(const Inputs &in, const fixture::Part &part) {
  const PortBlock &block = in.layout.block;
  const double half = 0.5 * in_mm(block.width), height = in_mm(block.height);
  ViewPlan view = face_from_left({-half, half, 0, height});
  view.room = {18, 18, 26, 26};
  const fixture::Hole &inlet = hole(part, "gallery");
  hole_end_on(view, inlet, copy_of(inlet, 0));
  view.marks.push_back({Mark::Kind::cut, "A", {0, 0, 0}, {0, 0, height}, {0, 1, 0}});
  return view;
}

} // namespace

PartPlan plan_port_block(const Inputs &in) {
  PartPlan plan = started_plan(in, ids::gas_port_block);
  const fixture::Part part = fixture::feature_part(in.layout, ids::gas_port_block);
  plan.rows.emplace_back();
  plan.rows.back().push_back(section(in, part));
  add_left_view(in, plan.rows.back(), inlet_face(in, part));
  add_top_row(in, plan, {top_view(in, part), pictorial_view(in, ids::gas_port_block)});
  plan.notes.push_back("Both ends of the gallery and all outlets alike. Symmetric about plane A-A.");
  plan.notes.push_back("Drill points 118°. Countersink thread mouths 90° to the major diameter.");
  return plan;
}

} // namespace purgewright::drawing
