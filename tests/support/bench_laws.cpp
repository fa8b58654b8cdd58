#include "support/laws.hpp"

#include "purgewright/fixture/screw_joint.hpp"

#include <algorithm>

namespace purgewright::test {
namespace {

using fixture::Layout;
using job::Job;

void roller_laws(const Layout &l, Laws &laws) {
  const auto &s = l.stand;
  const double rolls = mm(l.cradle.radius), roller = 0.5 * mm(s.bearing->outside_diameter);
  const double y = mm(s.roller_y), z = mm(s.roller_z);
  laws.more(-std::abs(std::hypot(y, z) - rolls - roller), 0.0, "rollers touch what rolls");
  laws.more(y - roller, 0.5, "the two rollers beside each other");
  laws.more(z - roller - mm(s.z_min), 0.5, "rollers clear of the base plate");
  laws.more(mm(s.axle->shoulder), mm(s.bearing->bore), "axle fills the bearing");
  laws.more(mm(s.bearing->bore), mm(s.axle->shoulder), "axle enters the bearing");
  laws.more(mm(s.axle->length) - 2.0 * mm(s.washer) - mm(s.bearing->width), 0.0,
            "bearing and washers fit on the axle's shoulder");
  const double from_notch = std::min(-mm(s.notch_floor), std::hypot(0.5 * mm(s.notch_width), mm(s.z_max)));
  laws.more(from_notch - mm(l.cradle.radius_most), 1.0, "tube clear of the stand's notch");
  constexpr double rolls_off = 30.0,
                   jams = 60.0; // degrees of either roller from vertical; common practice, no source
  const double angle = std::atan2(y, -z) * 180.0 / 3.14159265358979323846;
  laws.more(angle, rolls_off, "rollers keep the tube from rolling off");
  laws.more(jams - angle, 0.0, "the tube does not jam between the rollers");
}

// Lugs beside the plate: the head turns clear of the plate and its rounded corner, on metal all round.
void foot_laws(const fixture::ScrewedFoot &f, double half_width, double thickness, double height,
               std::string_view of, Laws &laws) {
  const double hole = mm(f.radius), head = 0.5 * mm(f.screw->head_diameter), y = mm(f.y);
  laws.more(y - head - half_width - mm(f.corner), 0.25,
            fmt::format("{}: foot screw's head beside the plate", of));
  laws.more(0.5 * mm(f.width) - y - hole, web, fmt::format("{}: metal outside a foot screw", of));
  laws.more(0.5 * thickness - hole, web, fmt::format("{}: metal beside a foot screw", of));
  laws.more(0.5 * thickness - head, 0.0, fmt::format("{}: foot screw's head on the lug", of));
  laws.more(hole - 0.5 * mm(f.screw->major), 0.1, fmt::format("{}: foot screw passes its hole", of));
  laws.more(height - mm(f.height), mm(f.corner), fmt::format("{}: plate over its lugs", of));
}

// Under the base plate, threads in line with the lugs' holes; a levelling foot keeps clear of it.
void clamp_bar_laws(const Layout &l, Laws &laws) {
  const auto &bar = l.clamp_bar;
  const double levelling = 10.0; // mm, radius of a foot; common practice, no source
  laws.more(-std::abs(mm(bar.screw_y - l.stand.foot.y)), 0.0, "clamp bar's threads under the lugs' holes");
  laws.more(0.5 * mm(bar.width) - 0.5 * mm(l.stand.foot.screw->major), web,
            "clamp bar: metal beside a thread");
  laws.more(0.5 * mm(bar.length) - mm(bar.screw_y) - 0.5 * mm(l.stand.foot.screw->major), web,
            "clamp bar: metal outside a thread");
  laws.more(0.5 * mm(bar.width) - mm(l.base.stand_slot_radius), 2.0, "clamp bar on either side of a slot");
  laws.more(mm(bar.thickness), 1.5 * mm(l.stand.foot.screw->major), "clamp bar: thread for its screw");
  laws.more(static_cast<double>(bar.count), l.stop.present ? 2.0 : 1.0, "a clamp bar for all that slides");
  for (const auto &place : bar.places()) {
    laws.more(-std::abs(mm(place.z - l.base.placement.z + l.base.thickness)), 0.0,
              "clamp bar against the base plate");
  }
  for (const auto &foot : l.base.feet) {
    laws.more(std::abs(mm(foot.y)) - 0.5 * mm(bar.length), levelling,
              "clamp bar slides past a levelling foot");
  }
}

void stand_laws(const fixture::CradleStand &s, Laws &laws) {
  const double y = mm(s.roller_y), z = mm(s.roller_z), axle = 0.5 * mm(s.axle->thread);
  laws.more(0.5 * mm(s.width) - y - axle, web, "metal beside an axle");
  laws.more(mm(s.z_max) - z - axle, web, "metal over an axle");
  laws.more(z - mm(s.z_min) - axle, web, "metal under an axle");
  laws.more(y - 0.5 * mm(s.notch_width) - axle, web, "metal between axle and notch");
  laws.more(mm(s.notch_floor - s.z_min), web, "metal under the notch");
  laws.more(mm(s.z_max - s.notch_floor), mm(s.notch_corner), "notch as deep as its corners");
  laws.more(0.5 * mm(s.notch_width), mm(s.notch_corner), "notch as wide as its corners");
  foot_laws(s.foot, 0.5 * mm(s.width), mm(s.thickness), mm(s.z_max - s.z_min), "cradle stand", laws);
}

void placement_laws(const Job &job, const Layout &l, Laws &laws) {
  const auto &s = l.stand;
  const double rear = mm(s.placements[0].x), front = mm(s.placements[1].x);
  const double roller = mm(s.roller_reach());
  laws.more(mm(l.body.x_min - l.wiper.room) - front - roller, 1.0,
            "front rollers clear of the wiper's way out");
  laws.more(rear - mm(s.thickness) - mm(l.cradle.rear_x), 1.0, "rear stand under what rolls");
  if (l.cradle.kind == fixture::CradleKind::spindle) {
    laws.more(-mm(job.tube.length) - front - mm(s.axle->length), 0.5, "front rollers behind the tube's end");
    const auto &p = l.spindle;
    laws.more(-std::abs(mm(p.placement.x + p.rear_x() - l.cradle.rear_x)), 0.0, "spindle ends where it says");
    laws.more(mm(p.radius) - 0.5 * mm(job.tube.outside_diameter_most()), 0.3,
              "tube passes where its spindle rolls");
    laws.more(mm(p.radius - p.seat_radius), 2.0, "spindle's wall round the plug's head");
    laws.more(mm(p.seat_radius - l.plug.shoulder_radius), 0.02, "plug's head enters the spindle");
    laws.more(mm(p.seat_radius - p.bore_radius), 0.5, "spindle's floor behind the plug's head");
    const auto &ways = l.plug;
    const double off =
        ways.has_exhaust ? std::max(std::abs(mm(ways.inlet.z)), std::abs(mm(ways.exhaust.z))) : 0.0;
    laws.more(mm(p.bore_radius), off + 0.5 * mm(ways.port->fitting_width), "fittings in the spindle's bore");
  }
  laws.more(front - mm(s.thickness) - rear - roller, 10.0, "fingers between the stands");
}

void dowel_laws(const Layout &l, Laws &laws) {
  const auto &s = l.stand;
  const double radius = mm(s.dowel.radius), top = mm(s.z_min) + mm(s.dowel.depth) + point(radius);
  laws.more(0.5 * mm(s.thickness) - radius, web, "metal beside a stand's dowel");
  laws.more(mm(s.notch_floor) - top, web, "metal between a stand's dowel and notch");
  for (const auto &dowel : l.body.dowels) {
    const double y = std::abs(mm(dowel.y)), own = mm(l.body.dowel.radius);
    laws.more(0.5 * mm(l.body.width) - y - own, web, "metal beside a body's dowel");
    for (const auto &screw : l.body.base_screws) {
      laws.more(std::hypot(mm(screw.x - dowel.x), mm(screw.y - dowel.y)) - own -
                    0.5 * mm(l.body.base_screw->major),
                web, "metal between a body's dowel and base screw");
    }
    laws.more(y - 0.5 * mm(l.body.plenum.width) - own, web, "metal between a body's dowel and plenum");
  }
}

void collar_laws(const Layout &l, Laws &laws) {
  const auto &c = l.collar;
  laws.more(mm(c.inner_radius - l.cradle.radius_most), 0.0, "collar passes what rolls");
  laws.more(mm(c.clamp_from_axis) - mm(c.inner_radius) - mm(c.counterbore_radius), web,
            "collar: metal inside the head");
  laws.more(mm(c.outer_radius) - mm(c.clamp_from_axis) - mm(c.counterbore_radius), web,
            "collar: metal outside the head");
  laws.more(mm(c.clamp_x) - mm(c.counterbore_radius), web, "collar: metal behind the head");
  laws.more(mm(c.width - c.run_mark - c.clamp_x - c.counterbore_radius), 0.5,
            "collar: marks ahead of the head");
  const double shallowest = std::sqrt(std::pow(mm(c.outer_radius), 2) -
                                      std::pow(mm(c.clamp_from_axis) + mm(c.counterbore_radius), 2));
  laws.more(shallowest - mm(c.seat), 0.5, "collar: the head's seat lies within the rim");
  laws.more(static_cast<double>(c.mark_count), 1.0, "collar has marks");
  laws.more(mm(c.outer_radius - c.inner_radius) - mm(fixture::lead_joint(c).engagement()), 0.5,
            "collar: the work lead's screw ends short of what rolls");
  laws.more(-mm(l.body.z_min) - mm(c.outer_radius),
            mm(fixture::lead_joint(c).grip + c.lead_screw->head_height),
            "collar: the work lead's screw turns clear of the base plate");
  laws.more(mm(c.width) - mm(c.run_mark) - mm(c.lead_x) - mm(c.lead_tap_radius), 0.0,
            "collar: marks ahead of the work lead's screw");
  for (std::size_t i = 0; i < c.mark_count; ++i) {
    for (std::size_t k = i + 1; k <= c.mark_count; ++k) { // the last is the slit
      const bool slit = k == c.mark_count;
      const double angle = c.marks[i].angle.value() - (slit ? c.slit_angle : c.marks[k].angle).value();
      const double chord = 2.0 * mm(c.outer_radius) * std::abs(std::sin(0.5 * angle));
      laws.more(chord - mm(c.mark_width), slit ? 0.5 * (mm(c.slit) - mm(c.mark_width)) + 0.3 : 0.3,
                slit ? "collar's slit clear of a mark" : "two marks told apart");
    }
  }
  const double front = mm(l.stand.placements[1].x) - mm(l.stand.thickness);
  laws.more(front - mm(c.placement.x) - mm(c.width), 0.5, "collar clear of the front stand");
  laws.more(-mm(l.body.z_min) - mm(c.outer_radius), 1.0, "collar clear of the base plate");
  const double edge = mm(l.stand.z_max), rim = mm(c.outer_radius); // where the marks are read
  laws.more(rim - std::abs(edge), 0.5, "collar's rim passes the height of the front stand's ear");
  const double at = std::sqrt(rim * rim - edge * edge);
  laws.more(at - 0.5 * mm(l.stand.notch_width), 0.5, "marks are read on the ear, inside");
  laws.more(0.5 * mm(l.stand.width) - at, 0.5, "marks are read on the ear, outside");
}

void stop_laws(const Job &job, const Layout &l, Laws &laws) {
  const auto &s = l.stop;
  if (!s.present) {
    return;
  }
  const auto &c = l.collar;
  const double y = mm(s.rod_y), rod = mm(s.rod_radius);
  laws.more(mm(s.notch_radius - l.cradle.radius_most), 1.0, "tube clear of the stop's notch");
  laws.more(y - rod - mm(s.notch_radius), web, "metal between rod and notch");
  laws.more(0.5 * mm(s.width) - y - rod, web, "metal outside a rod");
  laws.more(mm(s.z_max) - rod, web, "metal over a rod");
  laws.more(y - mm(c.inner_radius), 2.0, "rod on the collar, inside");
  laws.more(mm(c.outer_radius) - y, 1.0, "rod on the collar, outside");
  laws.more(y - 0.5 * mm(s.rod->head_diameter) - 0.5 * mm(job.tube.outside_diameter), 0.5,
            "rod's head clear of the tube");
  laws.more(mm(s.spring_free - s.spring_solid - s.preload - s.stroke), 0.0,
            "spring not solid as the tube is drawn back");
  laws.more(mm(s.stroke) - mm(job.cap.spigot_length), 1.5, "stroke longer than the cap's spigot");
  laws.more(-std::abs(mm(s.placement.x + s.rod->head_height + s.spring_free - s.preload - c.placement.x)),
            0.0, "rods press the collar");
  foot_laws(s.foot, 0.5 * mm(s.width), mm(s.thickness), mm(s.z_max - s.z_min), "axial stop", laws);
  const double rear_roller = mm(l.stand.placements[0].x + l.stand.roller_reach());
  const double drawn = mm(s.preload + s.stroke + s.rod->thread_length);
  laws.more(mm(s.placement.x) - mm(s.thickness) - drawn - rear_roller, 1.0,
            "rods drawn back before the rear stand");
  laws.more(mm(c.placement.x) - mm(s.placement.x), 0.5, "stop clear of the collar");
}

// A third stand where the weight would lie behind the base plate's.
void tail_laws(const Job &job, const Layout &l, Laws &laws) {
  const auto &f = l.tail_foot;
  if (!f.present) {
    return;
  }
  const double x = mm(l.stand.placements[2].x);
  laws.more(mm(l.base.x_min) - mm(f.placement.x) - 0.5 * mm(f.length), 0.0,
            "tail foot beyond the base plate");
  laws.more(mm(l.tail_foot.placement.x), -mm(job.tube.length), "tail stand under the tube");
  laws.more(-std::abs(x - 0.5 * mm(l.stand.thickness) - mm(f.placement.x)), 0.0,
            "tail stand over its screws");
  for (const auto &screw : f.stand_screws) {
    laws.more(-std::abs(std::abs(mm(screw.y)) - mm(l.stand.foot.y)), 0.0, "tail stand over its screws");
    for (const auto &foot : f.feet) {
      laws.more(std::hypot(mm(foot.x - screw.x), mm(foot.y - screw.y)) - mm(f.foot_tap_radius) -
                    mm(f.stand_tap_radius),
                web, "metal between the tail foot's holes");
    }
  }
}

struct Hole {
  double x, y, radius;
  std::string_view name;
};

// Every opening of the base plate; a slot as its two ends.
std::vector<Hole> holes(const fixture::BasePlate &b) {
  std::vector<Hole> all;
  const auto add = [&](const auto &places, units::Length radius, std::string_view name) {
    for (const auto &at : places) {
      all.push_back({mm(at.x), mm(at.y), mm(radius), name});
    }
  };
  add(b.chamber_screws, b.chamber_screw_radius, "chamber screw");
  add(b.block_screws, b.block_tap_radius, "block screw");
  add(b.feet, b.foot_tap_radius, "foot");
  for (std::size_t i = 0; i < b.stand_screws.size(); ++i) {
    const double x = mm(b.stand_screws[i].x), y = mm(b.stand_screws[i].y);
    const double r = mm(i < 2 ? b.stand_slot_radius : b.stand_tap_radius);
    const double half = i < 2 ? 0.5 * mm(b.rear_travel) : 0.0; // the rear pair is slotted
    for (double at = x - half; at <= x + half + rounding; at += std::max(half, 1.0)) {
      all.push_back({at, y, r, i < 2 ? "rear stand slot" : "front stand screw"});
    }
  }
  add(b.dowels, b.dowel_radius, "dowel");
  for (const double along : {-0.5, 0.0, 0.5}) {
    all.push_back(
        {mm(b.guide.x) + along * mm(b.rear_travel), mm(b.guide.y), mm(b.guide_radius), "guide slot"});
  }
  if (b.stop_travel > units::Length{}) {
    for (const auto &at : b.stop_screws) {
      for (const double along : {-0.5, 0.0, 0.5}) {
        all.push_back({mm(at.x) + along * mm(b.stop_travel), mm(at.y), mm(b.stand_slot_radius), "stop slot"});
      }
    }
  }
  return all;
}

void base_laws(const Layout &l, Laws &laws) {
  const auto &b = l.base;
  const auto all = holes(b);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Hole &h = all[i];
    laws.more(h.x - mm(b.x_min) - h.radius, web, fmt::format("base plate: metal behind a {}", h.name));
    laws.more(mm(b.x_max) - h.x - h.radius, web, fmt::format("base plate: metal ahead of a {}", h.name));
    laws.more(h.y - mm(b.y_min) - h.radius, web, fmt::format("base plate: metal at -y of a {}", h.name));
    laws.more(mm(b.y_max) - h.y - h.radius, web, fmt::format("base plate: metal at +y of a {}", h.name));
    for (std::size_t k = i + 1; k < all.size(); ++k) {
      const Hole &other = all[k];
      if (h.name == other.name && h.name.ends_with("slot") && std::abs(h.y - other.y) < rounding) {
        continue; // one slot
      }
      laws.more(std::hypot(h.x - other.x, h.y - other.y) - h.radius - other.radius, web,
                fmt::format("base plate: metal between {} and {}", h.name, other.name));
    }
  }
}

// What stands on the plate stands over its screws, and on the plate.
void standing_laws(const Layout &l, Laws &laws) {
  const auto &b = l.base;
  for (std::size_t i = 0; i < 4; ++i) {
    laws.more(-std::hypot(mm(b.chamber_screws[i].x - l.body.base_screws[i].x),
                          mm(b.chamber_screws[i].y - l.body.base_screws[i].y)),
              0.0, "chamber's screws meet the base plate's holes");
    const auto &place = l.stand.placements[i / 2];
    const double foot_x = mm(place.x) - 0.5 * mm(l.stand.thickness),
                 foot_y = (i % 2 == 0 ? -1.0 : 1.0) * mm(l.stand.foot.y);
    const double travel = i < 2 ? 0.5 * mm(b.rear_travel) : 0.0; // the rear pair is slotted
    laws.more(travel - std::abs(mm(b.stand_screws[i].x) - foot_x), 0.0,
              "stand's screws meet the base plate's slots");
    laws.more(-std::abs(mm(b.stand_screws[i].y) - foot_y), 0.0, "stand's screws meet the base plate's slots");
  }
  laws.more(-std::hypot(mm(b.guide.x - b.stand_screws[0].x), mm(b.guide.y)), 0.0,
            "rear stand's dowel in its slot wherever its screws are in theirs");
  laws.more(mm(b.guide_radius - l.stand.dowel.radius), 0.015, "rear stand's dowel slides in its slot");
  for (std::size_t i = 0; i < 2; ++i) {
    laws.more(-std::hypot(mm(b.block_screws[i].x - l.block.placement.x - l.block.mounts[i].x),
                          mm(b.block_screws[i].y - l.block.placement.y - l.block.mounts[i].y)),
              0.0, "block's screws meet the base plate's holes");
  }
  const double low = mm(l.block.placement.y) - 0.5 * mm(l.block.width), high = low + mm(l.block.width);
  laws.more(low - mm(b.y_min), 0.0, "gas-port block on the plate, -y");
  laws.more(-0.5 * mm(l.body.width) - high, 1.0, "gas-port block beside the chamber");
  laws.more(-0.5 * mm(l.stand.foot.width) - high, 1.0, "gas-port block beside stands and stop");
  laws.more(mm(b.y_max) - 0.5 * std::max(mm(l.body.width), mm(l.stand.foot.width)), 0.0,
            "chamber and stands on the plate");
  laws.more(mm(b.x_max - l.body.x_max), 0.0, "chamber on the plate, ahead");
  laws.more(mm(l.stand.placements[0].x) - mm(l.stand.thickness) - mm(b.x_min), 0.0,
            "rear stand on the plate");
  for (const auto &z : {l.base.placement.z, l.stand.z_min, l.block.placement.z}) {
    laws.more(-std::abs(mm(z - l.body.z_min)), 0.0, "all on one plane");
  }
}

// Over the slot and on the chamber; the torch, the eye and the cover's exits find its window.
void mask_laws(const Layout &l, Laws &laws) {
  const auto &m = l.mask;
  const auto &slot = l.body.slot, &window = m.window;
  laws.more(mm(slot.x_min - m.x_min), 1.0, "mask over the slot, behind");
  laws.more(mm(m.x_max - slot.x_max), 1.0, "mask over the slot, ahead");
  laws.more(0.5 * mm(m.width - slot.width) - mm(slot.edge_break), 1.0, "mask over the slot, beside");
  laws.more(mm(l.body.width - m.width), 0.0, "mask between the cover's lips");
  laws.more(mm(l.body.x_max - m.x_max), 0.0, "mask on the chamber, ahead");
  laws.more(mm(m.x_min - l.body.x_min), 0.0, "mask on the chamber, behind");
  laws.more(mm(window.x_min - m.x_min), web, "mask's strip behind its window");
  laws.more(mm(m.x_max - window.x_max), web, "mask's strip ahead of its window");
  laws.more(mm(window.x_min - slot.x_min), 0.0, "window over the slot, behind");
  laws.more(mm(slot.x_max - window.x_max), 0.0, "window over the slot, ahead");
  laws.more(0.5 * mm(slot.width) - mm(window.width), 0.0, "a mask that leaves less than half of the slot");
  laws.more(mm(l.cover.lip - m.thickness), 2.0, "cover's lips reach past the mask");
}

void cover_laws(const Layout &l, Laws &laws) {
  const auto &c = l.cover;
  const auto &slot = l.opening();
  if (l.mask.present) {
    mask_laws(l, laws);
  }
  const double middle = mm(c.placement.x), half = 0.5 * mm(c.length), broken = mm(slot.edge_break);
  laws.more(mm(slot.x_min) - broken - (middle - half), 1.0, "cover over the slot, behind");
  laws.more(middle + half - mm(slot.x_max) - broken, 1.0, "cover over the slot, ahead");
  laws.more(mm(c.channel_width - l.body.width), 0.05, "cover slides on the chamber");
  laws.more(mm(c.channel_width - l.end_plate.width), 0.05, "cover slides on the end plate");
  laws.more(0.5 * mm(c.width - c.channel_width), web, "cover's lips");
  laws.more(mm(slot.x_min) - broken - (middle + half - mm(c.travel)), 0.0, "cover opens the slot whole");
  const double row = 0.5 * (c.exits - 1) * mm(c.exit_pitch) + mm(c.exit_radius);
  laws.more(0.5 * mm(slot.length()) - row, 0.0, "cover's exits over the slot");
  laws.more(0.5 * mm(slot.width) - mm(c.exit_radius), 0.0, "cover's exits within the slot's width");
  laws.more(mm(c.exit_pitch) - 2.0 * mm(c.exit_radius), web, "web between the cover's exits");
  laws.more(-std::abs(mm(c.placement.z - l.body.z_max - l.mask.thickness)), 0.0,
            "cover on the chamber's top, or on its mask");
}

} // namespace

void judge_bench(const Job &job, const Layout &layout, Laws &laws) {
  roller_laws(layout, laws);
  stand_laws(layout.stand, laws);
  placement_laws(job, layout, laws);
  dowel_laws(layout, laws);
  collar_laws(layout, laws);
  stop_laws(job, layout, laws);
  clamp_bar_laws(layout, laws);
  tail_laws(job, layout, laws);
  base_laws(layout, laws);
  standing_laws(layout, laws);
  cover_laws(layout, laws);
}

} // namespace purgewright::test
