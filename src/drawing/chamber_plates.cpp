// chamber-top, -side, -floor and -rear: plates drawn from their features, each on the face its holes start
// in. Lengths run from the front end, heights from the underside or the axis of the bore.
#include "feature_views.hpp"

#include "purgewright/fixture/cavity.hpp"
#include "purgewright/fixture/screw_joint.hpp"
#include "purgewright/fixture/tolerances.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

namespace purgewright::drawing {
namespace {

using fixture::BlockBody;
using fixture::Hole;
using fixture::Length;
using fixture::Part;
using fixture::Pocket;
namespace tolerances = fixture::tolerances;

constexpr double gasketed = 3.2; // under a soft sheet

const BlockBody &body_of(const Part &part) {
  return std::get<BlockBody>(part.features.front());
}

const Pocket &pocket_of(const Part &part) {
  return std::get<Pocket>(*std::ranges::find_if(
      part.features, [](const auto &feature) { return std::holds_alternative<Pocket>(feature); }));
}

std::string id(const Part &part, std::string_view size) {
  return fmt::format("{}.{}", part.id, size);
}

Vec corner(const Part &part, double x, double y, double z) { // 0: least, 1: greatest
  const Vec a = vec(body_of(part).least), b = vec(body_of(part).greatest);
  return {a.x + x * (b.x - a.x), a.y + y * (b.y - a.y), a.z + z * (b.z - a.z)};
}

Vec copy(const Hole &hole, int column, int row) {
  return vec(copy_of(hole, (row * hole.pattern.columns + column) * hole.pattern.around).mouth);
}

ViewPlan face(const Part &part, std::string name, std::string caption, const Looking &looking) {
  ViewPlan view;
  view.name = std::move(name);
  view.caption = std::move(caption);
  view.looking = looking;
  view.room = {34, 46, 34, 30};
  const Vec right = corner(part, 1, 1, 1) - corner(part, 0, 0, 0);
  const Vec a = corner(part, 0, 0, 0);
  const Vec along{right.x * std::abs(looking.right.x), right.y * std::abs(looking.right.y),
                  right.z * std::abs(looking.right.z)};
  const Vec up{right.x * std::abs(looking.up.x), right.y * std::abs(looking.up.y),
               right.z * std::abs(looking.up.z)};
  view.outline(Line::visible, {a, a + along, a + along + up, a + up});
  return view;
}

// The one beside the main view.
ViewPlan end_face(const Part &part, std::string name, std::string moved, const Looking &looking) {
  ViewPlan view = face(part, std::move(name), "", looking);
  view.moved_caption = std::move(moved);
  view.room = {26, 40, 30, 26};
  const Vec low = corner(part, 0.5, 0.5, 0), high = corner(part, 0.5, 0.5, 1);
  view.axis(low, high);
  return view;
}

void all_end_on(ViewPlan &view, const Hole &hole) {
  for (int i = 0; i < hole.pattern.count(); ++i) {
    hole_end_on(view, hole, copy_of(hole, i));
  }
}

// A note on a hole seen end on.
void add_note(ViewPlan &view, const Part &part, const Hole &hole, Vec at, std::vector<std::string> lines,
              double towards) {
  Callout out = note(id(part, hole.name), at, std::move(lines));
  out.radius = std::max(in_mm(hole.steps.front().radius), 0.5 * in_mm(hole.thread.major));
  out.towards = towards;
  view.callouts.push_back(std::move(out));
}

std::vector<std::string> tapped_lines(const Inputs &in, const Hole &hole, const standards::Screw &screw) {
  const auto &step = hole.steps.front();
  return in.labels.tapped(screw, hole.pattern.count(), hole.thread.depth, {step.radius, step.depth});
}

Callout bored(const Part &part, const Hole &hole, Label label, Vec at, double towards) {
  const auto &last = hole.steps.back();
  const Vec in = vec(hole.into);
  const Vec side = std::abs(in.x) > 0.5 ? Vec{0, 1, 0} : Vec{1, 0, 0};
  const Length before = hole.steps.size() > 1 ? hole.steps.front().depth : Length{};
  Callout out = hole_note(id(part, hole.name), std::move(label), at, last.radius, in, towards);
  out.surface = at + in_mm(last.radius) * side + 0.5 * in_mm(before + last.depth) * in;
  out.radius = in_mm(hole.steps.front().radius);
  return out;
}

void add_counterbored(ViewPlan &view, const Inputs &in, const Part &part, const Hole &hole, Vec at,
                      double towards) {
  view.callouts.push_back(bored(part, hole,
                                counterbored(in.labels, hole.pattern.count(), hole.steps.back().radius,
                                             hole.steps.front().radius, hole.steps.front().depth),
                                at, towards));
}

void add_reamed(ViewPlan &view, const Inputs &in, const Part &part, const Hole &hole, Vec at, double towards,
                Dowel fit = Dowel::tapped_in) {
  Label label = reamed(in.labels, hole.pattern.count(), hole.steps.front().radius, fit);
  label.lines.push_back(hole.end == fixture::HoleEnd::open
                            ? "through"
                            : fmt::format("↧{}", in.labels.number(hole.steps.front().depth)));
  view.callouts.push_back(bored(part, hole, std::move(label), at, towards));
}

Linear linear(const Part &part, std::string_view size, Vec a, Vec b, Side side, Label label,
              Probe probe = Probe::distance) {
  return {id(part, size), a, b, side, std::move(label), probe};
}

// Of a row of columns: from the front end to the nearest, and their pitch.
void add_columns(ViewPlan &view, const Inputs &in, const Part &part, const Hole &hole, Side side, int row,
                 Vec front) {
  const auto &p = hole.pattern;
  const Vec last = copy(hole, p.columns - 1, row);
  view.linears.push_back(linear(part, fmt::format("{}.x", hole.name), last, front, side,
                                in.labels.size(units::millimetres(front.x - last.x)), Probe::offset));
  if (p.columns > 1) {
    view.linears.push_back(
        linear(part, fmt::format("{}.pitch", hole.name), copy(hole, p.columns - 2, row), last, side,
               in.labels.size(p.column_step.x, p.columns > 2 ? fmt::format("{}× ", p.columns - 1) : ""),
               Probe::axes));
  }
}

void add_pair(ViewPlan &view, const Inputs &in, const Part &part, const Hole &hole, Side side,
              int column = 0) {
  view.linears.push_back(linear(
      part, fmt::format("{}.y", hole.name), copy(hole, column, 0), copy(hole, column, hole.pattern.rows - 1),
      side, in.labels.size(double(hole.pattern.rows - 1) * hole.pattern.row_step.y), Probe::axes));
}

void add_corner_radius(ViewPlan &view, const Inputs &in, const Part &part, const Pocket &pocket, double z,
                       double towards) {
  const double r = in_mm(pocket.corner_radius), inwards = r * (1.0 - std::sqrt(0.5));
  const Vec c = vec(pocket.centre);
  Callout out =
      note(id(part, fmt::format("{}.corner_radius", pocket.name)),
           {c.x - 0.5 * in_mm(pocket.length) + inwards, 0.5 * in_mm(pocket.width) - inwards, z}, {});
  out.label = in.labels.size(pocket.corner_radius, "4× R");
  out.probe = Probe::radius;
  out.surface = out.tip;
  out.axis = {0, 0, 1};
  out.towards = towards;
  view.callouts.push_back(out);
}

RoundedOutline outline_of(const Pocket &pocket, double grown = 0.0) {
  const double x = in_mm(pocket.centre.x), half = 0.5 * in_mm(pocket.length);
  return {x - half - grown, x + half + grown, 0.5 * in_mm(pocket.width) + grown,
          in_mm(pocket.corner_radius) + grown};
}

void add_face_roughness(ViewPlan &view, const Inputs &in, const Part &part, Vec at, double towards) {
  view.callouts.push_back(roughness(id(part, "face.roughness"), at, in.labels, gasketed));
  view.callouts.back().towards = towards;
}

PartPlan plan_of(const Inputs &in, const Part &part, ViewPlan main, std::vector<ViewPlan> above) {
  PartPlan plan = started_plan(in, part.id);
  plan.rows.emplace_back();
  plan.rows.back().push_back(std::move(main));
  if (!above.empty()) {
    add_top_row(in, plan, std::move(above));
  }
  return plan;
}

std::string thickness_note(const Inputs &in) {
  return plate_note(in, in.layout.body.plates.thickness);
}

std::string gasket_note(const Inputs &in) {
  return fmt::format("Template for its gaskets, silicone sheet {} thick, 60 Shore A.",
                     in.labels.number(in.layout.gasket));
}

// ---- Top
ViewPlan top_from_above(const Inputs &in, const Part &part) {
  const auto &n = in.labels;
  const Pocket &slot = pocket_of(part);
  const Hole &screws = hole(part, "side_screws");
  ViewPlan view = face(part, "from-above", "View from above", from_above);
  const double edge = in_mm(slot.edge_break);
  const auto inner = outline_of(slot);
  rounded_outline(view, inner);
  rounded_outline(view, outline_of(slot, edge));
  view.axis(corner(part, 0, 0.5, 1), corner(part, 1, 0.5, 1));
  all_end_on(view, screws);
  const double wall = -2.0 * edge; // height of a point of the slot's straight wall
  const Vec front = corner(part, 1, 1, 1), rear = corner(part, 0, 0, 1);
  const Vec s0{inner.x_min, 0, wall}, s1{inner.x_max, 0, wall};
  view.linears = {linear(part, "length", corner(part, 0, 0, 1), corner(part, 1, 0, 1), Side::below,
                         n.size(body_of(part).greatest.x - body_of(part).least.x)),
                  linear(part, "slot.x_max", s1, {front.x, 0, 0}, Side::below,
                         n.size(units::millimetres(front.x - s1.x))),
                  linear(part, "slot.length", s0, s1, Side::below, n.size(slot.length)),
                  linear(part, "width", {front.x, rear.y, 0}, front, Side::right,
                         n.plus_minus(in.layout.body.width, tolerances::cover_seat)),
                  linear(part, "slot.width", {s1.x - inner.corner, -inner.half_width, wall},
                         {s1.x - inner.corner, inner.half_width, wall}, Side::right, n.size(slot.width))};
  add_columns(view, in, part, screws, Side::above, 1, front);
  add_pair(view, in, part, screws, Side::left);
  add_counterbored(view, in, part, screws, copy(screws, screws.pattern.columns - 1, 1), up_right);
  add_corner_radius(view, in, part, slot, wall, up_left);
  view.callouts.push_back(chamfer(id(part, "slot.edge_break"), n, slot.edge_break,
                                  {0.5 * (s0.x + s1.x), inner.half_width + 0.5 * edge, 0}, up_left));
  view.callouts.back().label.lines[0] += " all round";
  return view;
}

// Of top and floor: tapped holes of the end plate, `z` from the edge that is at `from`.
void add_end_screws(ViewPlan &view, const Inputs &in, const Part &part, const Hole &screws) {
  all_end_on(view, screws);
  add_pair(view, in, part, screws, Side::below);
}

void add_end_screws_height(ViewPlan &view, const Inputs &in, const Part &part, const Hole &screws,
                           double from) {
  const Vec at = copy(screws, 0, screws.pattern.rows - 1);
  const Vec edge{at.x, corner(part, 0, 1, 0).y, corner(part, 0, 0, from).z};
  view.linears.push_back(linear(part, fmt::format("{}.z", screws.name), at, edge, Side::right,
                                in.labels.size(units::millimetres(std::abs(edge.z - at.z))), Probe::offset));
}

ViewPlan top_front(const Inputs &in, const Part &part) {
  const Hole &screws = hole(part, "front_screws");
  ViewPlan view = end_face(part, "from-right", "", from_right);
  view.caption = "View from the right"; // beside a view from above it is none of that view's row
  add_end_screws(view, in, part, screws);
  add_end_screws_height(view, in, part, screws, 1);
  const Vec a = corner(part, 1, 0, 0), b = corner(part, 1, 0, 1);
  view.linears.push_back(
      linear(part, "thickness", a, b, Side::left, in.labels.size(in.layout.body.plates.thickness)));
  auto lines = tapped_lines(in, screws, *in.layout.body.end_screw);
  lines.push_back("and 2 alike in the rear end");
  add_note(view, part, screws, copy(screws, 0, 1), std::move(lines), up_right);
  return view;
}

// ---- Side
ViewPlan side_from_front(const Inputs &in, const Part &part) {
  const auto &body = body_of(part);
  ViewPlan view = face(part, "from-front", "", from_front);
  view.linears = {linear(part, "length", corner(part, 0, 0, 0), corner(part, 1, 0, 0), Side::below,
                         in.labels.size(body.greatest.x - body.least.x)),
                  linear(part, "height", corner(part, 0, 0, 0), corner(part, 0, 0, 1), Side::left,
                         in.labels.size(body.greatest.z - body.least.z))};
  return view;
}

ViewPlan side_from_above(const Inputs &in, const Part &part) {
  const Hole &screws = hole(part, "top_screws");
  ViewPlan view = face(part, "from-above", "View from above", from_above);
  view.axis(corner(part, 0, 0.5, 1), corner(part, 1, 0.5, 1));
  all_end_on(view, screws);
  add_columns(view, in, part, screws, Side::above, 0, corner(part, 1, 1, 1));
  view.linears.push_back(linear(part, "thickness", corner(part, 0, 0, 1), corner(part, 0, 1, 1), Side::left,
                                in.labels.size(in.layout.body.plates.thickness)));
  auto lines = tapped_lines(in, screws, *in.layout.body.end_screw);
  lines.push_back("and as many alike in the lower edge");
  add_note(view, part, screws, copy(screws, screws.pattern.columns - 1, 0), std::move(lines), down_right);
  return view;
}

// ---- Floor
void add_plenum(ViewPlan &view, const Inputs &in, const Part &part) {
  const Pocket &plenum = pocket_of(part);
  const auto shape = outline_of(plenum);
  const double z = 0.5 * in_mm(plenum.depth);
  rounded_outline(view, shape);
  view.linears.push_back(linear(part, "plenum.width", {shape.x_min + shape.corner, -shape.half_width, z},
                                {shape.x_min + shape.corner, shape.half_width, z}, Side::left,
                                in.labels.size(plenum.width)));
  add_corner_radius(view, in, part, plenum, z, down_left);
}

void add_diffuser(ViewPlan &view, const Inputs &in, const Part &part, Vec front) {
  const auto &n = in.labels;
  const Hole &field = hole(part, "diffuser");
  const auto &p = field.pattern;
  for (int i = 0; i < p.count(); ++i) {
    view.circle(Line::visible, vec(copy_of(field, i).mouth), in_mm(field.steps.front().radius));
  }
  const double beyond = 2.0 * in_mm(field.steps.front().radius) - 2.0;
  for (int row = 0; row < p.rows; ++row) {
    view.axis(copy(field, 0, row) - Vec{beyond, 0, 0}, copy(field, p.columns - 1, row) + Vec{beyond, 0, 0});
  }
  add_columns(view, in, part, field, Side::above, 0, front);
  if (p.rows > 1) {
    view.linears.push_back(linear(part, "diffuser.y_pitch", copy(field, 0, 0), copy(field, 0, 1), Side::left,
                                  n.size(p.row_step.y, fmt::format("{}× ", p.rows - 1)), Probe::axes));
  }
  Label label = n.diameter(field.steps.front().radius, fmt::format("{}× ", p.count()), " through");
  view.callouts.push_back(
      bored(part, field, std::move(label), copy(field, p.columns - 1, p.rows - 1), down_right));
}

void add_base_dowels(ViewPlan &view, const Inputs &in, const Part &part) {
  const auto &n = in.labels;
  const Hole &dowels = hole(part, "dowels");
  const Vec first = copy(dowels, 0, 0), second = copy(dowels, 0, 1), front = corner(part, 1, 0, 0);
  all_end_on(view, dowels);
  view.linears.push_back(linear(part, "dowels.x", first, front, Side::above,
                                n.size(in.layout.body.x_max - dowels.mouth.x), Probe::offset));
  view.linears.push_back(linear(part, "dowels.y", first, second, Side::left,
                                n.plus_minus(dowels.pattern.row_step.y, tolerances::dowel_position),
                                Probe::axes));
  add_reamed(view, in, part, dowels, second, down_left);
  view.callouts.push_back(datum_of_pair(first, dowels.steps.front().radius, "B", downwards));
}

ViewPlan floor_from_below(const Inputs &in, const Part &part) {
  const auto &body = in.layout.body;
  const Hole &base = hole(part, "base_screws"), &sides = hole(part, "side_screws");
  ViewPlan view = face(part, "from-below", "View from below", from_below);
  const Vec front = corner(part, 1, 1, 0);
  view.axis(corner(part, 0, 0.5, 0), corner(part, 1, 0.5, 0));
  all_end_on(view, base);
  all_end_on(view, sides);
  add_columns(view, in, part, base, Side::below, 1, front);
  add_columns(view, in, part, sides, Side::below, 1, front);
  view.linears.push_back(
      linear(part, "width", {front.x, -front.y, 0}, front, Side::right, in.labels.size(body.width)));
  add_pair(view, in, part, sides, Side::right);
  if (!in_line(base.mouth.y, hole(part, "dowels").mouth.y)) {
    add_pair(view, in, part, base, Side::right);
  }
  add_base_dowels(view, in, part);
  add_plenum(view, in, part);
  add_diffuser(view, in, part, corner(part, 1, 0, 0));
  add_note(view, part, base, copy(base, 1, 0), tapped_lines(in, base, *body.base_screw), up_right);
  add_counterbored(view, in, part, sides, copy(sides, sides.pattern.columns - 1, 1), down_right);
  return view;
}

void floor_beyond(ViewPlan &view, const Part &part) {
  const Pocket &plenum = pocket_of(part);
  const auto shape = outline_of(plenum);
  const double top = in_mm(plenum.depth);
  for (const double x : {shape.x_min + shape.corner, shape.x_max - shape.corner}) {
    view.line(Line::visible, {x, 0, 0}, {x, 0, top});
  }
  view.line(Line::visible, {shape.x_min, 0, 0}, {shape.x_max, 0, 0});
  const Hole &inlet = hole(part, "inlet"), &field = hole(part, "diffuser");
  const double z = in_mm(inlet.mouth.z), x = in_mm(inlet.mouth.x - inlet.steps.front().depth);
  view.line(Line::visible, {x, 0, z - in_mm(inlet.steps.front().radius)},
            {x, 0, z + in_mm(inlet.steps.front().radius)});
  thread_cut(view, vec(inlet.mouth), {-1, 0, 0}, {0, 0, 1}, 0.5 * in_mm(inlet.thread.major),
             in_mm(inlet.thread.depth), in_mm(inlet.steps.front().radius));
  view.axis({x - 2.0, 0, z}, vec(inlet.mouth));
  const double height = top + in_mm(field.steps.front().depth), r = in_mm(field.steps.front().radius);
  for (int column = 0; column < field.pattern.columns; ++column) {
    const double at = copy(field, column, 0).x;
    for (const double end : {top, height}) {
      view.line(Line::visible, {at - r, 0, end}, {at + r, 0, end});
    }
  }
}

ViewPlan floor_section(const Inputs &in, const Part &part) {
  const auto &n = in.labels;
  const auto &block = body_of(part);
  const Pocket &plenum = pocket_of(part);
  const Hole &inlet = hole(part, "inlet");
  ViewPlan view;
  view.name = "section";
  view.caption = "A-A";
  view.looking = from_front;
  view.room = {34, 40, 34, 40};
  add_cut(view, cut_of(in, part.id, view.looking));
  floor_beyond(view, part);
  const auto shape = outline_of(plenum);
  const Vec rear = corner(part, 0, 0.5, 0), front = corner(part, 1, 0.5, 0);
  view.linears = {
      linear(part, "length", rear, front, Side::below, n.size(block.greatest.x - block.least.x)),
      linear(part, "plenum.x_max", {shape.x_max, 0, 0}, front, Side::below,
             n.size(units::millimetres(front.x - shape.x_max))),
      linear(part, "plenum.length", {shape.x_min, 0, 0}, {shape.x_max, 0, 0}, Side::below,
             n.size(plenum.length)),
      linear(part, "height", rear, corner(part, 0, 0.5, 1), Side::left,
             n.size(block.greatest.z - block.least.z)),
      linear(part, "plenum.depth", {shape.x_min, 0, 0}, {shape.x_min, 0, in_mm(plenum.depth)}, Side::left,
             n.size(plenum.depth)),
      linear(part, "inlet.z", vec(inlet.mouth), front, Side::right, n.size(inlet.mouth.z), Probe::offset)};
  const auto &port = *in.job.gas.port_thread;
  view.callouts.push_back(
      note(id(part, "inlet"), vec(inlet.mouth) - Vec{0, 0, in_mm(inlet.steps.front().radius)},
           {fmt::format("{} ↧{}", port.callout, n.number(inlet.thread.depth)),
            fmt::format("drill ⌀{} into plenum", n.number(2.0 * inlet.steps.front().radius))}));
  view.callouts.back().towards = down_right;
  add_face_roughness(view, in, part, corner(part, 0, 0.5, 1) + Vec{3.0, 0, 0}, up_left);
  return view;
}

// Dowels and screws of the rear plate; the front end has the same screws.
ViewPlan floor_rear(const Inputs &in, const Part &part) {
  const auto &n = in.labels;
  const Hole &screws = hole(part, "rear_screws"), &dowels = hole(part, "rear_dowels");
  ViewPlan view = end_face(part, "from-left", "View from the left", from_left);
  view.room = {26, 40, 40, 30};
  all_end_on(view, dowels);
  add_end_screws(view, in, part, screws); // their height is the dowels'
  const Vec first = copy(dowels, 0, 0), second = copy(dowels, 0, 1);
  view.linears.push_back(linear(part, "rear_dowels.y", first, second, Side::above,
                                n.plus_minus(dowels.pattern.row_step.y, tolerances::dowel_position),
                                Probe::axes));
  view.linears.push_back(linear(part, "rear_dowels.z", {first.x, corner(part, 0, 0, 0).y, 0}, first,
                                Side::left, n.plus_minus(dowels.mouth.z, tolerances::rear_dowels),
                                Probe::offset));
  add_reamed(view, in, part, dowels, second, up_left);
  view.callouts.push_back(
      frame(id(part, "rear_dowels.position"), first, position_cells(n, 2.0 * tolerances::rear_dowels, "B")));
  view.callouts.back().radius = in_mm(dowels.steps.front().radius);
  view.callouts.back().towards = up_right;
  auto lines = tapped_lines(in, screws, *in.layout.body.end_screw);
  lines.push_back("and 2 alike in the front end");
  add_note(view, part, screws, copy(screws, 0, 0), std::move(lines), down_right);
  view.marks.push_back({Mark::Kind::cut, "A", corner(part, 0, 0.5, 0), corner(part, 0, 0.5, 1), {0, 1, 0}});
  return view;
}

// ---- Rear plate
void add_rear_holes(ViewPlan &view, const Inputs &in, const Part &part) {
  const auto &n = in.labels;
  const Hole &screws = hole(part, "screws"), &knobs = hole(part, "knobs"), &dowels = hole(part, "dowels");
  const auto heights = [&](const Hole &holes, Side side) {
    view.linears.push_back(linear(part, fmt::format("{}.z.top", holes.name), {}, copy(holes, 1, 0), side,
                                  n.size(holes.mouth.z + holes.pattern.column_step.z), Probe::axes));
    view.linears.push_back(linear(part, fmt::format("{}.z.bottom", holes.name), copy(holes, 0, 0), {}, side,
                                  n.size(-holes.mouth.z), Probe::axes));
  };
  all_end_on(view, screws);
  all_end_on(view, dowels);
  all_end_on(view, knobs);
  heights(screws, Side::right);
  heights(knobs, Side::right);
  add_pair(view, in, part, screws, Side::below);
  const Vec first = copy(dowels, 0, 0), second = copy(dowels, 0, 1);
  view.linears.push_back(linear(part, "dowels.y", first, second, Side::below,
                                n.plus_minus(dowels.pattern.row_step.y, tolerances::dowel_position),
                                Probe::axes));
  view.linears.push_back(linear(part, "dowels.z", first, {}, Side::left,
                                n.plus_minus(-dowels.mouth.z, tolerances::rear_opening), Probe::axes));
  add_counterbored(view, in, part, screws, copy(screws, 1, 0), up_right);
  std::vector<std::string> lines{through_thread(*in.layout.body.end_screw, knobs.pattern.count()),
                                 fmt::format("drill ⌀{}", n.number(2.0 * knobs.steps.front().radius)),
                                 "in line with the screws"};
  add_note(view, part, knobs, copy(knobs, 1, 1), std::move(lines), up_left);
  add_reamed(view, in, part, dowels, second, down_left, Dowel::slides);
  view.callouts.push_back(datum_of_pair(first, dowels.steps.front().radius, "B", downwards));
}

ViewPlan rear_from_left(const Inputs &in, const Part &part) {
  const auto &n = in.labels;
  const auto &block = body_of(part);
  const Hole &opening = hole(part, "opening");
  ViewPlan view = face(part, "from-left", "", from_left);
  view.room = {40, 50, 40, 40};
  hole_end_on(view, opening, copy_of(opening, 0));
  view.axis(corner(part, 0, 0.5, 0), corner(part, 0, 0.5, 1));
  view.axis({0, -0.5 * in_mm(in.layout.body.width), 0}, {0, 0.5 * in_mm(in.layout.body.width), 0});
  const Vec low = corner(part, 0, 1, 0), high = corner(part, 0, 1, 1);
  view.linears = {linear(part, "width", corner(part, 0, 0, 0), low, Side::below,
                         n.size(units::millimetres(low.y - corner(part, 0, 0, 0).y))),
                  linear(part, "bottom", low, {}, Side::left, n.size(-block.least.z), Probe::offset),
                  linear(part, "z_max", {}, high, Side::left, n.size(block.greatest.z), Probe::offset)};
  add_rear_holes(view, in, part);
  const Length radius = opening.steps.front().radius;
  Label size = n.plus_minus(2.0 * radius, 2.0 * tolerances::opening_radius, "⌀");
  size.lines[0] += " through";
  view.callouts.push_back(bored(part, opening, std::move(size), {}, up_right));
  view.callouts.push_back(
      frame(id(part, "opening.position"), {}, position_cells(n, 2.0 * tolerances::rear_opening, "B")));
  view.callouts.back().radius = in_mm(radius);
  view.callouts.back().towards = down_right;
  return view;
}

} // namespace

PartPlan plan_chamber_top(const Inputs &in) {
  const Part part = fixture::feature_part(in.layout, ids::chamber_top);
  PartPlan plan = plan_of(in, part, top_from_above(in, part), {});
  add_right_view(in, plan.rows.back(), top_front(in, part));
  plan.notes.push_back(thickness_note(in));
  plan.notes.push_back(
      "Symmetric about the plane through axis and slot; screws alike in both ends. Ends square "
      "to the faces: floor, top and sides milled to length together.");
  return plan;
}

PartPlan plan_chamber_side(const Inputs &in) {
  const Part part = fixture::feature_part(in.layout, ids::chamber_side);
  PartPlan plan = plan_of(in, part, side_from_front(in, part), {side_from_above(in, part)});
  plan.notes.push_back(thickness_note(in) + " Both alike.");
  plan.notes.push_back("Ends and edges square: floor, top and sides milled to length together.");
  plan.notes.push_back(gasket_note(in));
  return plan;
}

PartPlan plan_chamber_floor(const Inputs &in) {
  const Part part = fixture::feature_part(in.layout, ids::chamber_floor);
  PartPlan plan = plan_of(in, part, floor_section(in, part),
                          {floor_from_below(in, part), pictorial_view(in, ids::chamber_floor)});
  add_left_view(in, plan.rows[plan.rows.size() > 1 && plan.rows[0].front().name != "section" ? 1 : 0],
                floor_rear(in, part));
  plan.notes.push_back(
      "Symmetric about plane A-A. Datum B is the plane amid the two dowel holes of the underside.");
  plan.notes.push_back("Drill points 118°. Countersink thread mouths 90° to the major diameter.");
  return plan;
}

PartPlan plan_chamber_rear(const Inputs &in) {
  const Part part = fixture::feature_part(in.layout, ids::chamber_rear);
  PartPlan plan = plan_of(in, part, rear_from_left(in, part), {});
  plan.notes.push_back(thickness_note(in) + " Counterbores in the face shown.");
  plan.notes.push_back(
      "Symmetric about the vertical chain line. Datum B is the plane amid the two dowel holes.");
  plan.notes.push_back(gasket_note(in));
  return plan;
}

} // namespace purgewright::drawing
