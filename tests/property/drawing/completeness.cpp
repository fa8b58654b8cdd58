// No length may change without a sheet saying so.
#include "sheet_faults.hpp"

#include "drawing/part_plans.hpp"
#include "support/layout_lengths.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <span>

namespace purgewright::test {

using namespace drawing;

namespace {

std::string words_of(const Inputs &in) {
  std::string out;
  for (const PartPlan &plan : plans(in)) {
    out += plan.stock + "\n";
    for (const auto &row : plan.rows) {
      for (const ViewPlan &view : row) {
        for (const Linear &linear : view.linears) {
          out += fmt::format("{} {}\n", linear.feature, fmt::join(linear.label.lines, "/"));
        }
        for (const Callout &callout : view.callouts) {
          out += fmt::format("{} {}\n", callout.feature, fmt::join(callout.label.lines, "/"));
        }
      }
    }
    for (const auto &note : plan.notes) {
      out += note + "\n";
    }
  }
  return out;
}

// Lengths that no part's sheet may show: places in the assembly, needs, and copies of a symmetric pattern,
// whose other half is checked.
std::set<const fixture::Length *> not_of_a_part(const fixture::Layout &l) {
  std::set<const fixture::Length *> out;
  const auto position = [&](const fixture::Position &p) { out.insert({&p.x, &p.y, &p.z}); };
  for (const auto *place :
       {&l.end_plate.placement, &l.wiper.placement, &l.pin.placement, &l.plug.placement, &l.lance.placement,
        &l.block.placement, &l.collar.placement, &l.stop.placement, &l.base.placement, &l.cover.placement,
        &l.stand.placements[0], &l.stand.placements[1], &l.stand.placements[2], &l.tail_foot.placement,
        &l.spindle.placement, &l.clamp_bar.placements[0], &l.clamp_bar.placements[1]}) {
    position(*place);
  }
  out.insert({&l.body.slot_needs.x_min, &l.body.slot_needs.x_max, &l.body.slot_needs.width, &l.stand.washer,
              &l.stop.room, &l.stop.room_needed, &l.cover.travel, &l.cradle.missing, &l.cradle.radius,
              &l.cradle.radius_most, &l.cradle.rear_x, &l.body.z_min, &l.wiper.sealed_radius, &l.wiper.room,
              &l.body.plates.sides.first.z, &l.end_plate.meter.at.x, &l.end_plate.meter.at.z});
  const auto &s = l.stop;
  out.insert({&l.base.guide.x, &l.base.guide.y, &l.base.guide.z}); // its slots' middle, on the chain line
  out.insert({&s.rod_length, &s.preload, &s.stroke, &s.spring_wire, &s.spring_mean, &s.spring_free,
              &s.spring_solid});
  const auto patterns = [&](const auto &...arrays) {
    const auto each = [&](const auto &array) {
      for (const auto &p : array) {
        position(p);
      }
    };
    (each(arrays), ...);
  };
  patterns(l.wiper.knobs, l.plenum_cover.screws, l.plenum_cover.dowels, l.body.end_screws, l.body.base_screws,
           l.body.dowels, l.end_plate.screws, l.base.chamber_screws, l.base.block_screws, l.base.stand_screws,
           l.base.stop_screws, l.base.dowels, l.base.feet, l.block.mounts, l.tail_foot.stand_screws,
           l.tail_foot.feet, l.body.plates.knobs, l.body.plates.dowels);
  return out;
}

// Zero where this plug's kind or ways do without them; what two ways share is said once.
void add_absent_of_plug(const fixture::EndPlug &p, std::set<const fixture::Length *> &out) {
  const auto absent = [&](const auto &...lengths) {
    ((lengths == fixture::Length{} ? void(out.insert(&lengths)) : void()), ...);
  };
  absent(p.spigot_radius, p.spigot_length, p.edge_break, p.nose_length, p.side_first_x, p.side_pitch,
         p.return_radius, p.return_end_x, p.cross_x, p.cross_radius, p.cross_wide, p.cross_narrow,
         p.cup_radius, p.cup_length, p.shank_radius, p.thread_pitch, p.hub_radius, p.flange_length,
         p.bush_length, p.bush_flange, p.knob_radius, p.knob_length, p.flats_across, p.flats_length,
         p.inlet.z, p.inlet.seat_radius, p.inlet.seat_depth);
  const auto &e = p.exhaust;
  out.insert({&e.seat_radius, &e.seat_depth});
  if (!p.has_exhaust) {
    out.insert({&e.z, &e.port_radius, &e.port_depth, &e.radius, &e.end_x});
  }
  if (p.ways == fixture::GasWays::beside) { // through to the spigot face
    out.insert({&p.inlet.end_x, &e.end_x});
  }
  if (!(p.nose_length > fixture::Length{})) {
    out.insert({&p.nose_radius, &p.side_hole_radius});
    if (p.ways == fixture::GasWays::one) {
      out.insert(&p.inlet.end_x);
    }
  }
  if (p.ways ==
      fixture::GasWays::concentric) { // from the return to the seat's end, on the cross drilling's axis
    out.insert({&p.inlet.seat_depth, &e.end_x});
  }
  if (p.kind == fixture::PlugKind::expanding) { // its seal is the sleeve, hub and bush bear its sizes
    out.insert({&p.seal.groove_radius, &p.seal.groove_width, &p.bush_length});
  }
  if (p.side_rows < 2) {
    out.insert(&p.side_pitch);
  }
}

// Further lengths that a layout holds but this one's parts do not have.
void add_absent(const fixture::Layout &l, std::set<const fixture::Length *> &out) {
  add_absent_of_plug(l.plug, out);
  const auto &mask = l.mask; // cut by hand from the sheet that the parts list names, after the words there
  out.insert({&mask.x_min, &mask.x_max, &mask.width, &mask.thickness, &mask.window.x_min, &mask.window.x_max,
              &mask.window.width, &mask.window.corner_radius, &mask.window.edge_break});
  if (const auto &foot = l.tail_foot; !foot.present) {
    out.insert({&foot.length, &foot.width, &foot.thickness, &foot.stand_tap_radius, &foot.foot_tap_radius});
  }
  if (const auto &s = l.spindle; !s.present) {
    out.insert({&s.radius, &s.length, &s.seat_radius, &s.seat_depth, &s.bore_radius, &s.screw_from_front});
  }
  if (!l.lance.present) {
    out.insert({&l.lance.outside_radius, &l.lance.inside_radius, &l.lance.length});
  }
  if (!l.stop.present) {
    const auto &s = l.stop;
    out.insert({&s.thickness, &s.width, &s.z_min, &s.z_max, &s.notch_radius, &s.rod_radius, &s.rod_y,
                &s.foot.y, &s.foot.radius, &s.foot.width, &s.foot.height, &s.foot.corner,
                &l.base.stop_travel});
  }
  const auto &plates = l.body.plates;
  if (l.body.kind == fixture::ChamberKind::block) {
    out.insert({&plates.thickness, &plates.gasket, &plates.walls_start, &plates.sides.pitch,
                &plates.sides.first.x, &plates.sides.first.y, &plates.side_tapping.radius,
                &plates.side_tapping.depth});
  } else { // where the rear plate stands; it is as thick as every plate
    out.insert({&l.body.x_min, &l.body.cavity_start});
  }
  if (l.pin.contact_outer_radius == l.pin.shank_radius) { // no head stands out of the shank
    out.insert(&l.pin.head_length);
  }
  const auto marks = std::span(l.collar.marks).first(l.collar.mark_count);
  if (std::ranges::all_of(marks, &fixture::IndexMark::run)) { // spots stand where the tacks do
    out.insert(&l.collar.tack_mark);
  }
  if (l.body.diffuser.columns < 2) {
    out.insert(&l.body.diffuser.x_pitch);
  }
  if (l.body.diffuser.rows < 2) {
    out.insert(&l.body.diffuser.y_pitch);
  }
  for (std::size_t i = 2; i < l.block.outlet_x.size(); ++i) { // the pitch is that of the first two
    out.insert(&l.block.outlet_x[i]);
  }
  if (l.block.outlets < 2) {
    out.insert(&l.block.outlet_x[1]);
  }
  if (l.cover.exits < 1) {
    out.insert(&l.cover.exit_radius);
  }
  if (l.cover.exits < 2) {
    out.insert(&l.cover.exit_pitch);
  }
  if (!(l.block.spot_depth > fixture::Length{})) {
    out.insert({&l.block.spot_radius, &l.block.spot_depth});
  }
}

} // namespace

Silence silent_lengths(const DrawnJob &drawn_job) {
  const auto &[job, layout, volumes, assembly, sheets] = drawn_job;
  const Unit unit = job.shop.unit_system == units::UnitSystem::inch ? Unit::inch : Unit::millimetre;
  fixture::Layout changed = layout;
  const Inputs in{job, changed, volumes, assembly, Labels(unit), false};
  const std::string before = words_of(in);
  auto skipped = not_of_a_part(changed);
  add_absent(changed, skipped);
  Silence out;
  int index = 0;
  for_each_length(changed, [&](fixture::Length &length) {
    ++index;
    if (skipped.contains(&length)) {
      return;
    }
    const fixture::Length kept = length;
    length = kept + units::millimetres(0.25);
    if (words_of(in) == before) {
      out.faults.push_back(fmt::format("length {} of the layout, {} mm", index, units::to_millimetres(kept)));
    }
    length = kept;
    ++out.asked;
  });
  return out;
}

} // namespace purgewright::test
