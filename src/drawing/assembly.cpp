// The assembly: a section along the tube's axis, a pictorial view, a balloon on every part that is seen, a
// parts list, the order in which it goes together.
#include "part_plans.hpp"

#include "hatch.hpp"
#include "solid_views.hpp"

#include "purgewright/fixture/assembly_order.hpp"
#include "purgewright/fixture/family.hpp"
#include "purgewright/fixture/parts_list.hpp"
#include "purgewright/solids/kernel/placed.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <set>
#include <stdexcept>

namespace purgewright::drawing {
namespace {

using solids::Part;
using solids::kernel::Solid;

std::vector<solids::kernel::Placement> places_of(const Part &part) {
  std::vector<solids::kernel::Placement> out{part.place};
  out.insert(out.end(), part.more_places.begin(), part.more_places.end());
  return out;
}

// Shafts and screws are not hatched along their axes (ISO 128-3).
bool hatched(const Part &part) {
  return part.kind != solids::PartKind::bought && part.name != ids::backing_pin;
}

// Neighbours differ: by direction, then by distance of the lines.
Hatching hatching_of(std::size_t index, std::vector<Loop> loops) {
  constexpr double spacings[] = {2.5, 1.8, 3.2};
  return {std::move(loops), (index % 2 == 0 ? 0.25 : 0.75) * std::numbers::pi, spacings[(index / 2) % 3]};
}

// Middle of the longest line inside the face, where a dot surely lies on the part.
Point spot_in(const std::vector<Loop> &loops) {
  constexpr double fine = 0.7;
  Segment longest{};
  for (const double angle : {0.25 * std::numbers::pi, 0.75 * std::numbers::pi}) {
    for (const Segment &s : hatch(loops, fine, angle)) {
      longest = length(s.b - s.a) > length(longest.b - longest.a) ? s : longest;
    }
  }
  return 0.5 * (longest.a + longest.b);
}

Callout balloon(int item, Vec tip) {
  Callout out = note(fmt::format("balloon.{}", item), tip, {fmt::format("{}", item)});
  out.ornament = Ornament::balloon;
  return out;
}

// A part without an item is an internal fault.
int number_of(const std::vector<fixture::Item> &items, const Part &part) {
  const auto *item = fixture::find_item(items, part.name);
  if (item == nullptr) {
    throw std::logic_error(part.name + " stands in no parts list");
  }
  return item->number;
}

// The backing pin lies so that the plane cuts its contact ring beside the grooves across it, and is seen to
// touch the cap.
Solid as_cut(const Part &part) {
  return part.name == ids::backing_pin ? solids::kernel::placed(part.solid, {.axis = solids::kernel::along_x,
                                                                             .angle = units::degrees(45.0)})
                                       : part.solid;
}

// Items that got their balloon are added to `shown`.
ViewPlan section(const Inputs &in, const std::vector<fixture::Item> &items, std::set<int> &shown) {
  ViewPlan view;
  view.name = "section";
  view.caption = "Section through the tube's axis";
  view.simplified = true;
  view.looking = from_front;
  view.room = {20, 20, 34, 30};
  for (std::size_t i = 0; i < in.assembly.parts.size(); ++i) {
    const Part &part = in.assembly.parts[i];
    const int item = number_of(items, part);
    for (const auto &place : places_of(part)) {
      const auto face = solids::kernel::in_part(
          part.name, [&] { return cut_face(solids::kernel::placed(as_cut(part), place), view.looking, {}); });
      if (face.loops.empty()) {
        continue;
      }
      for (const Curve &edge : face.edges) {
        view.strokes.push_back({Line::visible, edge});
      }
      if (hatched(part)) {
        view.hatched.push_back(hatching_of(i, face.loops));
      }
      if (shown.insert(item).second) {
        const Point spot = spot_in(face.loops);
        view.callouts.push_back(balloon(item, {spot.x, 0, spot.y}));
      }
    }
  }
  view.axis({in_mm(-in.job.tube.length), 0, 0}, {0, 0, 0});
  return view;
}

ViewPlan overview(const Inputs &in, const std::vector<fixture::Item> &items, std::set<int> &shown) {
  ViewPlan view;
  view.name = "pictorial";
  view.simplified = true;
  view.floating = true;
  view.to_scale = false;
  view.enlarge = 0.5;
  view.room = {30, 30, 24, 24};
  std::vector<Solid> placed_solids;
  std::vector<int> numbers;
  for (const Part &part : in.assembly.parts) {
    for (const auto &place : places_of(part)) {
      placed_solids.push_back(solids::kernel::placed(part.solid, place));
      numbers.push_back(number_of(items, part));
    }
  }
  const auto curves =
      solids::kernel::in_part("assembly", [&] { return pictorial(placed_solids, Insides::closed); });
  for (std::size_t i = 0; i < curves.size(); ++i) {
    const Segment *longest = nullptr;
    for (const Curve &curve : curves[i]) {
      view.strokes.push_back({Line::visible, curve});
      const auto *s = std::get_if<Segment>(&curve);
      if (s != nullptr && (longest == nullptr || length(s->b - s->a) > length(longest->b - longest->a))) {
        longest = s;
      }
    }
    if (longest != nullptr && shown.insert(numbers[i]).second) {
      const Point spot = 0.5 * (longest->a + longest->b);
      view.callouts.push_back(balloon(numbers[i], {spot.x, 0, spot.y}));
    }
  }
  return view;
}

std::vector<ListRow> list_of(const Inputs &in, const std::vector<fixture::Item> &items) {
  std::vector<ListRow> out;
  for (const fixture::Item &item : items) {
    ListRow row{item.number, item.quantity, item.title, item.material, ""};
    switch (item.kind) {
    case fixture::ItemKind::made:
      row.number = fixture::drawing_number(in.job, item.id);
      break;
    case fixture::ItemKind::workpiece:
      row.number = "workpiece";
      break;
    case fixture::ItemKind::bought:
      row.material = item.size;
    }
    out.push_back(std::move(row));
  }
  return out;
}

} // namespace

PartPlan plan_assembly(const Inputs &in) {
  PartPlan plan;
  plan.name = assembly_sheet;
  plan.title = "Purge fixture";
  plan.document = "Assembly";
  plan.material = "see parts list";
  plan.whole = true;
  for (const auto &row : fixture::part_metals(in.job, in.layout, in.volumes)) {
    plan.mass_kg += row.count * row.mass().value();
  }
  const auto items = fixture::parts_list(in.job, in.layout, in.volumes);
  std::set<int> shown;
  plan.rows.emplace_back();
  plan.rows.back().push_back(section(in, items, shown));
  plan.beside_list.push_back(overview(in, items, shown));
  plan.list = list_of(in, items);
  for (const std::string &step : fixture::assembly_order(in.job, in.layout)) {
    plan.steps.push_back(fixture::numbered(step, items));
  }
  plan.notes = {
      "Mass is that of the made parts. Items without a balloon are hidden here; the list names them.",
      "Argon displaces air without smell or warning: ventilate, wear an oxygen monitor, follow the local "
      "code."};
  return plan;
}

} // namespace purgewright::drawing
