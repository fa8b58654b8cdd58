#include "part_plans.hpp"

#include "purgewright/fixture/family.hpp"
#include "purgewright/fixture/figures.hpp"
#include "purgewright/fixture/tolerances.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <utility>

namespace purgewright::drawing {
namespace {

const solids::Part &part_of(const solids::Assembly &assembly, std::string_view name) {
  for (const auto &part : assembly.parts) {
    if (part.name == name) {
      return part;
    }
  }
  throw solids::kernel::SolidError(std::string(name), "drawing", "", "no such part in the assembly");
}

// What the part is cut from, as the parts list has it: length with the allowance to face both ends.
std::string stock_text(const Inputs &in, const fixture::PartMetal &part) {
  const auto &stock = part.stock;
  const auto number = [&](fixture::Length length) { return in.labels.number(length); };
  if (part.name == ids::purge_lance) {
    const auto &lance = in.layout.lance;
    return fmt::format("tube ⌀{} × {}, {} long", number(2.0 * lance.outside_radius),
                       number(lance.outside_radius - lance.inside_radius), number(stock.length));
  }
  return stock.shape == fixture::StockShape::round
             ? fmt::format("bar ⌀{} × {}", number(stock.thickness), number(stock.length))
             : fmt::format("flat {} × {} × {}", number(stock.thickness), number(stock.width),
                           number(stock.length));
}

} // namespace

const solids::kernel::Solid &Inputs::solid(std::string_view part) const {
  return part_of(assembly, part).solid;
}

PartPlan started_plan(const Inputs &in, std::string_view part) {
  PartPlan plan;
  plan.name = part;
  plan.title = part_of(in.assembly, part).title;
  bool flat = false;
  for (const auto &row : fixture::part_metals(in.job, in.layout, in.volumes)) {
    if (row.name == part) {
      plan.material = row.metal->title;
      plan.mass_kg = row.mass().value();
      plan.stock = stock_text(in, row);
      flat = row.stock.shape == fixture::StockShape::flat;
    }
  }
  const bool inch = in.labels.unit() == Unit::inch;
  plan.notes = {inch ? "Break all edges .004 to .012; inside corners R .012 max; deburr cross holes."
                     : "Break all edges 0.1 to 0.3; inside corners R 0.3 max; deburr cross holes.",
                "Clean oil-free for argon service: degrease, rinse, dry, bag."};
  if (flat) {
    plan.notes.push_back(fmt::format("Holes of a pattern ±{} to each other.",
                                     in.labels.number(fixture::tolerances::hole_pattern)));
  }
  if (!in.job.family.empty() && fixture::shared_in_family(part)) {
    plan.notes.push_back(
        fmt::format("Common to {}: made once.", fmt::join(fixture::family_names(in.job), ", ")));
  }
  return plan;
}

std::string plate_note(const Inputs &in, fixture::Length thickness) {
  return fmt::format("Plate {} thick; thickness and faces as bought where the stock is that thick.",
                     in.labels.number(thickness));
}

CutFace cut_of(const Inputs &in, std::string_view part, const Looking &looking, Vec through) {
  if (!in.draw) {
    return {};
  }
  auto face =
      solids::kernel::in_part(std::string(part), [&] { return cut_face(in.solid(part), looking, through); });
  if (face.loops.empty()) {
    throw solids::kernel::SolidError(std::string(part), "section", "", "the plane misses the part");
  }
  return face;
}

void add_cut(ViewPlan &view, const CutFace &face) {
  for (const Curve &edge : face.edges) {
    view.strokes.push_back({Line::visible, edge});
  }
  if (!face.loops.empty()) {
    view.hatched.push_back({face.loops});
  }
}

ViewPlan pictorial_view(const Inputs &in, std::string_view part) {
  ViewPlan view;
  view.name = "pictorial";
  view.floating = true;
  view.to_scale = false;
  view.dispensable = true;
  view.enlarge = 0.5;
  view.room = {6.0, 6.0, 12.0, 6.0};
  if (!in.draw) {
    return view;
  }
  const auto curves = solids::kernel::in_part(
      std::string(part), [&] { return pictorial(std::span(&in.solid(part), 1), Insides::drawn); });
  for (const Curve &curve : curves.front()) {
    view.strokes.push_back({Line::visible, curve});
  }
  return view;
}

void add_left_view(const Inputs &in, std::vector<ViewPlan> &row, ViewPlan view) {
  const bool first = in.job.shop.projection == job::Projection::first;
  row.insert(first ? row.end() : row.begin(), std::move(view));
}

void add_right_view(const Inputs &in, std::vector<ViewPlan> &row, ViewPlan view) {
  const bool first = in.job.shop.projection == job::Projection::first;
  row.insert(first ? row.begin() : row.end(), std::move(view));
}

void add_top_row(const Inputs &in, PartPlan &plan, std::vector<ViewPlan> row) {
  const bool first = in.job.shop.projection == job::Projection::first;
  plan.rows.insert(first ? plan.rows.end() : plan.rows.begin(), std::move(row));
}

ViewPlan face_from_left(const Rectangle &yz) {
  const auto [y0, y1, z0, z1] = yz;
  ViewPlan view;
  view.name = "from-left";
  view.moved_caption = "View from the left";
  view.looking = from_left;
  view.outline(Line::visible, {{0, y0, z0}, {0, y1, z0}, {0, y1, z1}, {0, y0, z1}});
  view.axis({0, 0, z0}, {0, 0, z1});
  return view;
}

ViewPlan face_from_above(const Rectangle &xy) {
  const auto [x0, x1, y0, y1] = xy;
  ViewPlan view;
  view.name = "from-above";
  view.looking = from_above;
  view.outline(Line::visible, {{x0, y0, 0}, {x1, y0, 0}, {x1, y1, 0}, {x0, y1, 0}});
  view.axis({x0, 0, 0}, {x1, 0, 0});
  return view;
}

void thread_end_on(ViewPlan &view, Vec centre, double major_radius) {
  constexpr double start = 0.05 * std::numbers::pi; // the open quarter is off the centre lines
  view.circle(Line::thread, centre, major_radius, 0.5 * std::numbers::pi + start, 0.75 * full_turn);
}

void thread_cut(ViewPlan &view, Vec mouth, Vec inwards, Vec across, double major_radius, double depth,
                double drill_radius) {
  const Vec end = mouth + depth * inwards;
  for (const double side : {-1.0, 1.0}) {
    view.line(Line::thread, mouth + side * major_radius * across, end + side * major_radius * across);
    view.line(Line::visible, end + side * drill_radius * across, end + side * major_radius * across);
  }
  view.line(Line::visible, end - drill_radius * across, end + drill_radius * across);
}

void tapped_end_on(ViewPlan &view, Vec centre, fixture::Length major, fixture::Length drill_radius) {
  view.circle(Line::visible, centre, in_mm(drill_radius));
  thread_end_on(view, centre, 0.5 * in_mm(major));
  view.centre_mark(centre, 0.5 * in_mm(major));
}

void rounded_outline(ViewPlan &view, const RoundedOutline &outline) {
  const auto [x0, x1, half, r] = outline;
  view.line(Line::visible, {x0 + r, -half, 0}, {x1 - r, -half, 0});
  view.line(Line::visible, {x0 + r, half, 0}, {x1 - r, half, 0});
  view.line(Line::visible, {x0, -half + r, 0}, {x0, half - r, 0});
  view.line(Line::visible, {x1, -half + r, 0}, {x1, half - r, 0});
  // Arcs are given as the viewer sees them; from below, +y is down.
  constexpr double quarter = 0.25 * full_turn;
  const double y = view.looking.up.y * (half - r);
  view.circle(Line::visible, {x1 - r, y, 0}, r, 0, quarter);
  view.circle(Line::visible, {x0 + r, y, 0}, r, quarter, quarter);
  view.circle(Line::visible, {x0 + r, -y, 0}, r, 2 * quarter, quarter);
  view.circle(Line::visible, {x1 - r, -y, 0}, r, 3 * quarter, quarter);
}

void hole_end_on(ViewPlan &view, Vec centre, fixture::Length radius) {
  view.circle(Line::visible, centre, in_mm(radius));
  view.centre_mark(centre, in_mm(radius));
}

Callout note(std::string feature, Vec tip, std::vector<std::string> lines) {
  Callout out;
  out.feature = std::move(feature);
  out.tip = tip;
  out.label = Labels::text(std::move(lines));
  return out;
}

Callout roughness(std::string feature, Vec tip, const Labels &labels, double ra) {
  Callout out = note(std::move(feature), tip, {labels.roughness(ra)});
  out.ornament = Ornament::roughness;
  return out;
}

Callout frame(std::string feature, Vec tip, std::string cells) {
  Callout out = note(std::move(feature), tip, {std::move(cells)});
  out.ornament = Ornament::tolerance_frame;
  return out;
}

Callout datum(Vec tip, std::string letter, double direction) {
  Callout out = note(fmt::format("datum.{}", letter), tip, {letter});
  out.ornament = Ornament::datum;
  out.towards = direction;
  return out;
}

Callout datum_of_pair(Vec hole, fixture::Length radius, std::string letter, double direction) {
  Callout out = datum(hole, std::move(letter), direction);
  out.radius = in_mm(radius);
  return out;
}

std::string position_cells(const Labels &n, fixture::Length width, std::string_view datum) {
  return fmt::format("⌖|{}|{}", n.zone(width), datum);
}

Callout bore(std::string feature, Label label, Vec tip, Vec axis, double towards) {
  Callout out = note(std::move(feature), tip, {});
  out.label = std::move(label);
  out.probe = Probe::diameter;
  out.surface = tip;
  out.axis = axis;
  out.towards = towards;
  return out;
}

Callout chamfer(std::string feature, const Labels &labels, fixture::Length leg, Vec tip, double towards) {
  Callout out = note(std::move(feature), tip, {});
  out.label = labels.size(leg, "", " × 45°");
  out.towards = towards;
  return out;
}

Callout hole_note(std::string feature, Label label, Vec centre, fixture::Length radius, Vec axis,
                  double towards) {
  Callout out = bore(std::move(feature), std::move(label), centre, axis, towards);
  // A point of the wall across the axis.
  const Vec across = std::abs(axis.x) > 0.5 ? Vec{0, 1, 0} : Vec{1, 0, 0};
  out.surface = centre + in_mm(radius) * across;
  out.radius = in_mm(radius);
  return out;
}

Label counterbored(const Labels &n, int count, fixture::Length clearance_radius,
                   fixture::Length counterbore_radius, fixture::Length depth) {
  Label label = n.diameter(clearance_radius, count > 1 ? fmt::format("{}× ", count) : "", " through");
  label.lines.push_back(fmt::format("⌴⌀{} ↧{}", n.number(2.0 * counterbore_radius), n.number(depth)));
  return label;
}

std::string through_thread(const standards::Screw &screw, int count) {
  return fmt::format("{}× {} through", count, screw.callout);
}

Label reamed(const Labels &n, int count, fixture::Length radius, Dowel dowel) {
  const char fit =
      dowel == Dowel::slides ? fixture::tolerances::dowel_slides : fixture::tolerances::dowel_tapped_in;
  Label label = n.fitted(radius, fit, fixture::tolerances::dowel_hole);
  label.put_before(fmt::format("{}× ream ", count));
  return label;
}

} // namespace purgewright::drawing
