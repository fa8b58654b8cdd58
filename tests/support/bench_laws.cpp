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
  laws.more(mm(s.notch_radius) - 0.5 * mm(job.tube.outside_diameter_most()), 1.0,
            "tube clear of the stand's notch");
}

void stand_laws(const fixture::CradleStand &s, Laws &laws) {
  const double y = mm(s.roller_y), z = mm(s.roller_z), axle = 0.5 * mm(s.axle_screw->major);
  laws.more(0.5 * mm(s.width) - y - axle, web, "metal beside an axle");
  laws.more(mm(s.z_max) - z - axle, web, "metal over an axle");
  laws.more(z - mm(s.z_min) - axle, web, "metal under an axle");
  laws.more(std::hypot(y, z) - mm(s.notch_radius) - axle, web, "metal between axle and notch");
  laws.more(-mm(s.z_min) - mm(s.notch_radius), web, "metal under the notch");
  const double foot = 0.5 * mm(s.foot_screw->major), drilled = mm(s.foot_tapping.radius);
  const double top = mm(s.z_min) + mm(s.foot_tapping.depth) + point(drilled);
  laws.more(0.5 * mm(s.thickness) - foot, web, "metal beside a stand's foot screw");
  laws.more(0.5 * mm(s.width) - mm(s.foot_y) - foot, web, "metal outside a stand's foot screw");
  laws.more(mm(s.z_max) - top, web, "metal over a stand's foot screw");
  if (std::abs(mm(s.foot_y) - y) < foot + axle + web) {
    laws.more(z - axle - top, web, "metal between foot screw and axle");
  }
  const double inner = std::max(0.0, mm(s.foot_y) - foot);
  if (inner < mm(s.notch_radius)) {
    laws.more(-std::sqrt(mm(s.notch_radius) * mm(s.notch_radius) - inner * inner) - top, web,
              "metal between foot screw and notch");
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
      if (h.name == other.name && h.name == "rear stand slot" && std::abs(h.y - other.y) < rounding) {
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
    laws.more(-std::hypot(mm(b.stand_screws[i].x) - foot_x, mm(b.stand_screws[i].y) - foot_y), 0.0,
              "stand's screws meet the base plate's slots");
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
  laws.more(-0.5 * mm(l.stand.width) - high, 1.0, "gas-port block beside the stands");
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
  base_laws(layout, laws);
  standing_laws(job, layout, laws);
  cover_laws(layout, laws);
}

} // namespace purgewright::test
