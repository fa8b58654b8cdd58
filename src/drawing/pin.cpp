// backing-pin and purge-lance, both turned: section along the axis and end view. The pin's lengths run from
// its contact face, which is what the cap is pressed against.
#include "part_plans.hpp"

#include "purgewright/fixture/tolerances.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

namespace purgewright::drawing {
namespace {

using fixture::BackingPin;
using fixture::Length;
using units::millimetres;

constexpr double contact = 1.6;
constexpr Length face_runout = millimetres(0.05);

// The relief grooves lie along Y and Z, so the section runs half way between them.
const double half_root = std::sqrt(0.5);
const Looking between_grooves{{1, 0, 0}, {0, half_root, half_root}};

Vec at(double x, double r) {
  return {x, half_root * r, half_root * r};
}

ViewPlan pin_section(const Inputs &in) {
  const BackingPin &pin = in.layout.pin;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "section";
  view.caption = "A-A";
  view.looking = between_grooves;
  view.room = {46, 46, 36, 34};
  add_cut(view, cut_of(in, ids::backing_pin, view.looking));
  const double length = in_mm(pin.length), shank = in_mm(pin.shank_radius),
               outer = in_mm(pin.contact_outer_radius);
  const double inner = in_mm(pin.contact_inner_radius), relief = in_mm(pin.relief_depth),
               head = in_mm(pin.head_length);
  view.axis(at(0, 0), at(length, 0));
  view.line(Line::visible, at(0, -inner), at(0, inner));
  // Side walls of the groove that runs away from the viewer.
  const double half = 0.5 * in_mm(pin.groove_width);
  for (const double side : {-1.0, 1.0}) {
    view.line(Line::visible, at(0, side * half), at(relief, side * half));
  }
  view.linears = {
      {"backing-pin.length", at(0, -outer), at(length, -shank), Side::below, n.size(pin.length)},
      {"backing-pin.relief_depth", at(0, inner), at(relief, inner), Side::above, n.size(pin.relief_depth)},
      {"backing-pin.shank_radius", at(length, -shank), at(length, shank), Side::right,
       n.fitted(pin.shank_radius, 'f', fixture::tolerances::pin_shank)},
      {"backing-pin.contact_inner_radius", at(0, -inner), at(0, inner), Side::left,
       n.diameter(pin.contact_inner_radius)},
  };
  if (std::abs(outer - shank) > 1e-6) { // else the head is the shank's end
    view.linears.push_back(
        {"backing-pin.head_length", at(0, outer), at(head, outer), Side::above, n.size(pin.head_length)});
    view.linears.push_back({"backing-pin.contact_outer_radius", at(0, -outer), at(0, outer), Side::left,
                            n.diameter(pin.contact_outer_radius)});
  }
  view.callouts.push_back(datum(at(0.6 * length, -shank), "A", downwards));
  const double ring = 0.5 * (inner + outer);
  view.callouts.push_back(roughness("backing-pin.contact.roughness", at(0, ring), n, contact));
  view.callouts.back().towards = up_left;
  view.callouts.push_back(
      frame("backing-pin.contact.runout", at(0, -ring), fmt::format("↗|{}|A", n.zone(face_runout))));
  view.callouts.back().towards = down_left;
  view.callouts.push_back(roughness("backing-pin.shank.roughness", at(0.7 * length, shank), n, contact));
  view.callouts.back().towards = upwards;
  return view;
}

// The contact face: ring, relief and the two grooves across it.
ViewPlan contact_face(const Inputs &in) {
  const BackingPin &pin = in.layout.pin;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "from-left";
  view.moved_caption = "View from the left";
  view.looking = from_left;
  view.room = {16, 40, 36, 18};
  const double outer = in_mm(pin.contact_outer_radius), inner = in_mm(pin.contact_inner_radius),
               half = 0.5 * in_mm(pin.groove_width);
  const double outer_at = std::sqrt(outer * outer - half * half),
               inner_at = std::sqrt(inner * inner - half * half);
  const double inner_gap = std::asin(half / inner);
  constexpr double quarter = 0.25 * full_turn;
  view.circle(Line::visible, {}, outer);
  if (pin.shank_radius > pin.contact_outer_radius) {
    view.circle(Line::visible, {}, in_mm(pin.shank_radius));
  }
  for (int i = 0; i < 4; ++i) {
    view.circle(Line::visible, {}, inner, i * quarter + inner_gap, quarter - 2.0 * inner_gap);
    const double c = std::cos(i * quarter), s = std::sin(i * quarter);
    const auto turned = [&](double y, double z) { return Vec{0, c * y - s * z, s * y + c * z}; };
    view.line(Line::visible, turned(inner_at, half), turned(outer_at, half));
    view.line(Line::visible, turned(inner_at, -half), turned(outer_at, -half));
  }
  const double rim = std::max(outer, in_mm(pin.shank_radius));
  view.centre_mark({}, rim);
  view.linears.push_back({"backing-pin.groove_width",
                          {0, half, outer_at},
                          {0, -half, outer_at},
                          Side::above,
                          n.size(pin.groove_width)});
  view.callouts.push_back(
      note("backing-pin.grooves", {0, 0, -0.5 * (inner + outer)}, {"2 grooves across,", "depth as relief"}));
  view.callouts.back().towards = down_right;
  view.marks.push_back({Mark::Kind::cut,
                        "A",
                        {0, -half_root * rim, -half_root * rim},
                        {0, half_root * rim, half_root * rim},
                        {0, half_root, -half_root}});
  return view;
}

} // namespace

PartPlan plan_backing_pin(const Inputs &in) {
  PartPlan plan = started_plan(in, ids::backing_pin);
  plan.rows.emplace_back();
  plan.rows.back().push_back(pin_section(in));
  add_left_view(in, plan.rows.back(), contact_face(in));
  return plan;
}

} // namespace purgewright::drawing
