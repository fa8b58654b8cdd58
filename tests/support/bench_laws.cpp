#include "support/laws.hpp"

#include <algorithm>

namespace purgewright::test {
namespace {

using fixture::Layout;
using job::Job;

void roller_laws(const Job &job, const fixture::CradleStand &s, Laws &laws) {
  const double tube = 0.5 * mm(job.tube.outside_diameter), roller = 0.5 * mm(s.bearing->outside_diameter);
  const double y = mm(s.roller_y), z = mm(s.roller_z);
  laws.more(-std::abs(std::hypot(y, z) - tube - roller), 0.0, "rollers touch the tube");
  laws.more(y - roller, 0.5, "the two rollers beside each other");
  laws.more(z - roller - mm(s.z_min), 0.5, "rollers clear of the base plate");
  laws.more(mm(s.axle_screw->major), mm(s.bearing->bore), "axle fills the bearing");
  laws.more(mm(s.bearing->bore), mm(s.axle_screw->major), "axle enters the bearing");
  const double from_notch = std::min(-mm(s.notch_floor), std::hypot(0.5 * mm(s.notch_width), mm(s.z_max)));
  laws.more(from_notch - 0.5 * mm(job.tube.outside_diameter_most()), 1.0, "tube clear of the stand's notch");
  constexpr double rolls_off = 30.0,
                   jams = 60.0; // degrees of either roller from vertical; common practice, no source
  const double angle = std::atan2(y, -z) * 180.0 / 3.14159265358979323846;
  laws.more(angle, rolls_off, "rollers keep the tube from rolling off");
  laws.more(jams - angle, 0.0, "the tube does not jam between the rollers");
}

void stand_laws(const fixture::CradleStand &s, Laws &laws) {
  const double y = mm(s.roller_y), z = mm(s.roller_z), axle = 0.5 * mm(s.axle_screw->major);
  laws.more(0.5 * mm(s.width) - y - axle, web, "metal beside an axle");
  laws.more(mm(s.z_max) - z - axle, web, "metal over an axle");
  laws.more(z - mm(s.z_min) - axle, web, "metal under an axle");
  laws.more(y - 0.5 * mm(s.notch_width) - axle, web, "metal between axle and notch");
  laws.more(mm(s.notch_floor - s.z_min), web, "metal under the notch");
  laws.more(mm(s.z_max - s.notch_floor), mm(s.notch_corner), "notch as deep as its corners");
  laws.more(0.5 * mm(s.notch_width), mm(s.notch_corner), "notch as wide as its corners");
  const double foot = 0.5 * mm(s.foot_screw->major), drilled = mm(s.foot_tapping.radius);
  const double top = mm(s.z_min) + mm(s.foot_tapping.depth) + point(drilled);
  laws.more(0.5 * mm(s.thickness) - foot, web, "metal beside a stand's foot screw");
  laws.more(0.5 * mm(s.width) - mm(s.foot_y) - foot, web, "metal outside a stand's foot screw");
  laws.more(mm(s.z_max) - top, web, "metal over a stand's foot screw");
  if (std::abs(mm(s.foot_y) - y) < foot + axle + web) {
    laws.more(z - axle - top, web, "metal between foot screw and axle");
  }
  if (mm(s.foot_y) - foot < 0.5 * mm(s.notch_width)) {
    laws.more(mm(s.notch_floor) - top, web, "metal between foot screw and notch");
  }
}

void placement_laws(const Job &job, const Layout &l, Laws &laws) {
  const auto &s = l.stand;
  const double rear = mm(s.placements[0].x), front = mm(s.placements[1].x);
  const double roller = mm(s.washer) + mm(s.bearing->width) + mm(s.axle_screw->head_height);
  laws.more(mm(l.body.x_min) - front - roller, 1.0, "front rollers clear of the chamber");
  laws.more(rear - mm(s.thickness) + mm(job.tube.length), 1.0, "rear stand clear of the plug's shoulder");
  laws.more(front - mm(s.thickness) - rear - roller, 10.0, "fingers between the stands");
}

void dowel_laws(const Layout &l, Laws &laws) {
  const auto &s = l.stand;
  const double radius = mm(s.dowel.radius), top = mm(s.z_min) + mm(s.dowel.depth) + point(radius);
  laws.more(0.5 * mm(s.thickness) - radius, web, "metal beside a stand's dowel");
  laws.more(mm(s.foot_y) - 0.5 * mm(s.foot_screw->major) - radius, web,
            "metal between a stand's dowel and foot screw");
  laws.more(mm(s.notch_floor) - top, web, "metal between a stand's dowel and notch");
  for (const auto &dowel : l.body.dowels) {
    const double y = std::abs(mm(dowel.y)), own = mm(l.body.dowel.radius);
    laws.more(0.5 * mm(l.body.width) - y - own, web, "metal beside a body's dowel");
    for (const auto &screw : l.body.base_screws) {
      laws.more(std::hypot(mm(screw.x - dowel.x), mm(screw.y - dowel.y)) - own -
                    0.5 * mm(l.body.base_screw->major),
                web, "metal between a body's dowel and base screw");
    }
    laws.more(std::hypot(mm(dowel.x - l.body.inlet_x), y) - own - mm(l.body.inlet_radius), web,
              "metal between a body's dowel and inlet");
    laws.more(y - mm(l.body.plenum.radius) - own, web, "metal between a body's dowel and plenum");
  }
}

void collar_laws(const Job &job, const Layout &l, Laws &laws) {
  const auto &c = l.collar;
  laws.more(mm(c.inner_radius) - 0.5 * mm(job.tube.outside_diameter_most()), 0.0,
            "collar passes the largest tube");
  laws.more(mm(c.clamp_from_axis) - mm(c.inner_radius) - mm(c.counterbore_radius), web,
            "collar: metal inside the head");
  laws.more(mm(c.outer_radius) - mm(c.clamp_from_axis) - mm(c.counterbore_radius), web,
            "collar: metal outside the head");
  laws.more(mm(c.width) - mm(c.clamp_x) - mm(c.counterbore_radius), web, "collar: metal ahead of the head");
  laws.more(mm(c.clamp_x) - mm(c.counterbore_radius) - mm(c.run_mark), 0.5, "collar: marks behind the head");
  const double shallowest = std::sqrt(std::pow(mm(c.outer_radius), 2) -
                                      std::pow(mm(c.clamp_from_axis) + mm(c.counterbore_radius), 2));
  laws.more(shallowest - mm(c.seat), 0.5, "collar: the head's seat lies within the rim");
  laws.more(static_cast<double>(c.mark_count), 1.0, "collar has marks");
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
}

void stop_laws(const Job &job, const Layout &l, Laws &laws) {
  const auto &s = l.stop;
  if (!s.present) {
    return;
  }
  const auto &c = l.collar;
  const double from_axis = std::hypot(mm(s.plunger_y), mm(s.plunger_z)),
               thread = 0.5 * mm(s.plunger_thread->major);
  laws.more(mm(s.notch_radius) - 0.5 * mm(job.tube.outside_diameter_most()), 1.0,
            "tube clear of the stop's notch");
  laws.more(from_axis - thread - mm(s.notch_radius), web, "metal between plunger and notch");
  laws.more(from_axis - mm(c.inner_radius), 2.0, "plunger's ball on the collar, inside");
  laws.more(mm(c.outer_radius) - from_axis, 2.0, "plunger's ball on the collar, outside");
  laws.more(0.5 * mm(s.width) - mm(c.outer_radius), 3.0, "stop's edge seen beside the collar");
  const double foot = 0.5 * mm(s.foot_screw->major),
               top = mm(s.z_min) + mm(s.foot_tapping.depth) + point(mm(s.foot_tapping.radius));
  laws.more(0.5 * mm(s.width) - mm(s.foot_y) - foot, web, "metal outside a stop's foot screw");
  if (std::abs(mm(s.foot_y) - mm(s.plunger_y)) < foot + thread + web) {
    laws.more(mm(s.plunger_z) - thread - top, web, "metal between a stop's foot screw and plunger");
  }
  laws.more(-std::hypot(mm(s.notch_radius), 0.0) - top, web, "metal between a stop's foot screw and notch");
  const double rear_roller = mm(l.stand.placements[0].x) + mm(l.stand.washer) + mm(l.stand.bearing->width) +
                             mm(l.stand.axle_screw->head_height);
  laws.more(mm(s.placement.x) - mm(s.thickness) - rear_roller, 20.0, "hand between rear stand and stop");
  laws.more(mm(c.placement.x) - mm(s.placement.x), 0.5, "stop clear of the collar");
}

struct Hole {
  double x, y, radius;
  std::string_view name;
};

// Every opening of the base plate; a slot as its two ends.
std::vector<Hole> holes(const fixture::BasePlate &b) {
  std::vector<Hole> all{{mm(b.inlet_x), 0.0, mm(b.inlet_radius), "inlet"}};
  const auto add = [&](const auto &places, units::Length radius, std::string_view name) {
    for (const auto &at : places) {
      all.push_back({mm(at.x), mm(at.y), mm(radius), name});
    }
  };
  add(b.chamber_screws, b.chamber_screw_radius, "chamber screw");
  add(b.block_screws, b.block_tap_radius, "block screw");
  add(b.feet, b.foot_tap_radius, "foot");
  for (std::size_t i = 0; i < b.stand_screws.size(); ++i) {
    const double x = mm(b.stand_screws[i].x), y = mm(b.stand_screws[i].y), r = mm(b.stand_slot_radius);
    const double half = i < 2 ? 0.5 * mm(b.rear_travel) : 0.0; // the rear pair is slotted
    for (double at = x - half; at <= x + half + rounding; at += std::max(half, 1.0)) {
      all.push_back({at, y, r, i < 2 ? "rear stand slot" : "front stand screw"});
    }
  }
  add(b.dowels, b.dowel_radius, "dowel");
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
void standing_laws(const Job &job, const Layout &l, Laws &laws) {
  const auto &b = l.base;
  for (std::size_t i = 0; i < 4; ++i) {
    laws.more(-std::hypot(mm(b.chamber_screws[i].x - l.body.base_screws[i].x),
                          mm(b.chamber_screws[i].y - l.body.base_screws[i].y)),
              0.0, "chamber's screws meet the base plate's holes");
    const auto &place = l.stand.placements[i / 2];
    const double foot_x = mm(place.x) - 0.5 * mm(l.stand.thickness),
                 foot_y = (i % 2 == 0 ? -1.0 : 1.0) * mm(l.stand.foot_y);
    const double travel = i < 2 ? 0.5 * mm(b.rear_travel) : 0.0; // the rear pair is slotted
    laws.more(travel - std::abs(mm(b.stand_screws[i].x) - foot_x), 0.0,
              "stand's screws meet the base plate's slots");
    laws.more(-std::abs(mm(b.stand_screws[i].y) - foot_y), 0.0, "stand's screws meet the base plate's slots");
  }
  for (std::size_t i = 0; i < 2; ++i) {
    laws.more(-std::hypot(mm(b.block_screws[i].x - l.block.placement.x - l.block.mounts[i].x),
                          mm(b.block_screws[i].y - l.block.placement.y - l.block.mounts[i].y)),
              0.0, "block's screws meet the base plate's holes");
  }
  laws.more(mm(b.inlet_radius), 0.5 * mm(job.gas.port_thread->fitting_width),
            "fitting passes the base plate");
  const double low = mm(l.block.placement.y) - 0.5 * mm(l.block.width), high = low + mm(l.block.width);
  laws.more(low - mm(b.y_min), 0.0, "gas-port block on the plate, -y");
  laws.more(-0.5 * mm(l.body.width) - high, 1.0, "gas-port block beside the chamber");
  laws.more(-0.5 * std::max(mm(l.stand.width), mm(l.stop.width)) - high, 1.0,
            "gas-port block beside stands and stop");
  laws.more(mm(b.y_max) - 0.5 * std::max(mm(l.body.width), mm(l.stand.width)), 0.0,
            "chamber and stands on the plate");
  laws.more(mm(b.x_max - l.body.x_max), 0.0, "chamber on the plate, ahead");
  laws.more(mm(l.stand.placements[0].x) - mm(l.stand.thickness) - mm(b.x_min), 0.0,
            "rear stand on the plate");
  for (const auto &z : {l.base.placement.z, l.stand.z_min, l.block.placement.z}) {
    laws.more(-std::abs(mm(z - l.body.z_min)), 0.0, "all on one plane");
  }
}

void cover_laws(const Layout &l, Laws &laws) {
  const auto &c = l.cover;
  const auto &slot = l.body.slot;
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
  laws.more(-std::abs(mm(c.placement.z - l.body.z_max)), 0.0, "cover on the chamber's top");
}

} // namespace

void judge_bench(const Job &job, const Layout &layout, Laws &laws) {
  roller_laws(job, layout.stand, laws);
  stand_laws(layout.stand, laws);
  placement_laws(job, layout, laws);
  dowel_laws(layout, laws);
  collar_laws(job, layout, laws);
  stop_laws(job, layout, laws);
  base_laws(layout, laws);
  standing_laws(job, layout, laws);
  cover_laws(layout, laws);
}

} // namespace purgewright::test
