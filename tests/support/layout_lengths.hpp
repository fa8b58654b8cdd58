// Visits every length of a layout, so that a test can list, compare or scale them all.
//
// Guarantee: a length added to a struct of lengths alone does not slip by: its size is asserted here.
#pragma once

#include "purgewright/fixture/layout.hpp"

#include <type_traits>
#include <vector>

namespace purgewright::test {

namespace lengths_of {

using namespace fixture;
template <class T> constexpr std::size_t count = sizeof(T) / sizeof(Length);

template <class P, class F> void position(P &p, F &f) {
  static_assert(count<Position> == 3);
  f(p.x), f(p.y), f(p.z);
}
template <class D, class F> void drilling(D &d, F &f) {
  static_assert(count<Drilling> == 2);
  f(d.radius), f(d.depth);
}
template <class B, class F> void chamber_spaces(B &b, F &f) {
  static_assert(count<Slot> == 5 && count<SlotNeeds> == 3 && count<Plenum> == 5);
  f(b.slot.x_min), f(b.slot.x_max), f(b.slot.width), f(b.slot.corner_radius), f(b.slot.edge_break);
  f(b.slot_needs.x_min), f(b.slot_needs.x_max), f(b.slot_needs.width);
  f(b.plenum.x_min), f(b.plenum.x_max), f(b.plenum.width), f(b.plenum.corner_radius), f(b.plenum.ceiling);
  f(b.diffuser.hole_radius), f(b.diffuser.x_first), f(b.diffuser.x_pitch), f(b.diffuser.y_pitch);
}
template <class P, class F> void plates(P &p, F &f) {
  f(p.thickness), f(p.gasket), f(p.walls_start), f(p.sides.pitch);
  position(p.sides.first, f), drilling(p.side_tapping, f);
  for (auto &at : p.knobs) {
    position(at, f);
  }
  for (auto &at : p.dowels) {
    position(at, f);
  }
}
template <class B, class F> void body(B &b, F &f) {
  f(b.x_min), f(b.x_max), f(b.width), f(b.z_min), f(b.bottom), f(b.z_max);
  f(b.cavity_radius), f(b.cavity_start), f(b.opening_radius), f(b.inlet_z), f(b.inlet_radius);
  chamber_spaces(b, f);
  drilling(b.end_tapping, f), drilling(b.base_tapping, f), drilling(b.dowel, f);
  for (auto &p : b.dowels) {
    position(p, f);
  }
  for (auto &p : b.end_screws) {
    position(p, f);
  }
  for (auto &p : b.base_screws) {
    position(p, f);
  }
  plates(b.plates, f);
}
template <class W, class F> void wiper(W &w, F &f) {
  position(w.placement, f);
  f(w.width), f(w.z_max), f(w.thickness), f(w.sealed_radius), f(w.hole_radius), f(w.plate_thickness),
      f(w.plate_hole_radius), f(w.clearance_radius), f(w.room);
  for (auto &p : w.knobs) {
    position(p, f);
  }
}
template <class C, class F> void plenum_cover(C &c, F &f) {
  static_assert(count<PlenumCover> == 4 + 4 * 3 + 1 + 2 * 3 + 1);
  f(c.x_min), f(c.x_max), f(c.width), f(c.thickness), f(c.screw_radius), f(c.dowel_radius);
  for (auto &p : c.screws) {
    position(p, f);
  }
  for (auto &p : c.dowels) {
    position(p, f);
  }
}
template <class E, class F> void end_plate(E &e, F &f) {
  position(e.placement, f);
  f(e.thickness), f(e.width), f(e.z_min), f(e.z_max), f(e.pin_bore_radius);
  position(e.meter.at, f);
  f(e.meter.radius);
  for (auto &p : e.screws) {
    position(p, f);
  }
  f(e.screw_clearance_radius), f(e.counterbore_radius), f(e.counterbore_depth);
  f(e.clamp_x), f(e.clamp_clearance_radius), f(e.clamp_tap_radius), f(e.clamp_tap_top_z);
}
template <class P, class F> void pin(P &p, F &f) {
  static_assert(count<BackingPin> == 10);
  position(p.placement, f);
  f(p.contact_outer_radius), f(p.contact_inner_radius), f(p.relief_depth), f(p.groove_width);
  f(p.head_length), f(p.shank_radius), f(p.length);
}
template <class P, class F> void passage(P &p, F &f) {
  f(p.z), f(p.port_radius), f(p.port_depth), f(p.radius), f(p.end_x), f(p.seat_radius), f(p.seat_depth);
}
template <class P, class F> void plug(P &p, F &f) {
  position(p.placement, f);
  f(p.shoulder_radius), f(p.shoulder_length), f(p.spigot_radius), f(p.spigot_length), f(p.edge_break);
  f(p.seal.groove_radius), f(p.seal.groove_start), f(p.seal.groove_width);
  passage(p.inlet, f), passage(p.exhaust, f);
  f(p.nose_radius), f(p.nose_length), f(p.side_hole_radius), f(p.side_first_x), f(p.side_pitch);
  f(p.return_radius), f(p.return_end_x), f(p.cross_x), f(p.cross_radius), f(p.cross_wide), f(p.cross_narrow),
      f(p.cup_radius), f(p.cup_length);
  f(p.shank_radius), f(p.thread_pitch), f(p.hub_radius), f(p.flange_length), f(p.bush_length),
      f(p.bush_flange);
  f(p.knob_radius), f(p.knob_length), f(p.flats_across), f(p.flats_length);
}
template <class P, class F> void foot(P &p, F &f) {
  f(p.y), f(p.radius), f(p.width), f(p.height), f(p.corner);
}
template <class S, class F> void stand(S &s, F &f) {
  for (auto &p : s.placements) {
    position(p, f);
  }
  f(s.thickness), f(s.width), f(s.z_min), f(s.z_max), f(s.notch_width), f(s.notch_floor), f(s.notch_corner),
      f(s.axle_radius), f(s.roller_y), f(s.roller_z), f(s.washer);
  foot(s.foot, f), drilling(s.dowel, f);
}
template <class C, class F> void collar(C &c, F &f) {
  position(c.placement, f);
  f(c.width), f(c.inner_radius), f(c.outer_radius), f(c.slit), f(c.clamp_x), f(c.clamp_from_axis),
      f(c.clamp_clearance_radius), f(c.clamp_tap_radius), f(c.counterbore_radius), f(c.seat), f(c.mark_width),
      f(c.mark_depth), f(c.run_mark), f(c.tack_mark), f(c.lead_x), f(c.lead_tap_radius);
}
template <class S, class F> void stop(S &s, F &f) {
  f(s.room), f(s.room_needed);
  position(s.placement, f);
  f(s.thickness), f(s.width), f(s.z_min), f(s.z_max), f(s.notch_radius), f(s.rod_radius), f(s.rod_y);
  f(s.rod_length), f(s.preload), f(s.stroke), f(s.spring_wire), f(s.spring_mean), f(s.spring_free),
      f(s.spring_solid);
  foot(s.foot, f);
}
template <class B, class F> void clamp_bar(B &b, F &f) {
  for (auto &p : b.placements) {
    position(p, f);
  }
  f(b.length), f(b.width), f(b.thickness), f(b.screw_y), f(b.tap_radius);
}
template <class S, class F> void spindle(S &s, F &f) {
  position(s.placement, f);
  f(s.radius), f(s.length), f(s.seat_radius), f(s.seat_depth), f(s.bore_radius), f(s.screw_from_front);
}
template <class T, class F> void tail(T &t, F &f) {
  position(t.placement, f);
  f(t.length), f(t.width), f(t.thickness), f(t.stand_tap_radius), f(t.foot_tap_radius);
  for (auto &p : t.stand_screws) {
    position(p, f);
  }
  for (auto &p : t.feet) {
    position(p, f);
  }
}
template <class B, class F> void base(B &b, F &f) {
  position(b.placement, f);
  f(b.x_min), f(b.x_max), f(b.y_min), f(b.y_max), f(b.thickness), f(b.chamber_screw_radius),
      f(b.block_tap_radius), f(b.stand_slot_radius), f(b.stand_tap_radius), f(b.rear_travel),
      f(b.foot_tap_radius);
  for (auto *places : {b.chamber_screws.data(), b.stand_screws.data(), b.feet.data()}) {
    for (std::size_t i = 0; i < b.feet.size(); ++i) {
      position(places[i], f);
    }
  }
  position(b.guide, f);
  f(b.guide_radius), f(b.stop_travel), f(b.dowel_radius);
  for (auto &p : b.dowels) {
    position(p, f);
  }
  for (auto &p : b.stop_screws) {
    position(p, f);
  }
  for (auto &p : b.block_screws) {
    position(p, f);
  }
}
template <class M, class F> void mask(M &m, F &f) {
  f(m.x_min), f(m.x_max), f(m.width), f(m.thickness);
  f(m.window.x_min), f(m.window.x_max), f(m.window.width), f(m.window.corner_radius), f(m.window.edge_break);
}

template <class C, class F> void cover(C &c, F &f) {
  position(c.placement, f);
  f(c.length), f(c.width), f(c.thickness), f(c.lip), f(c.channel_width), f(c.exit_radius), f(c.exit_pitch),
      f(c.travel);
}
template <class B, class F> void block(B &b, F &f) {
  position(b.placement, f);
  f(b.length), f(b.width), f(b.height), f(b.gallery_z), f(b.gallery_radius);
  drilling(b.port, f);
  f(b.spot_radius), f(b.spot_depth), f(b.passage_radius);
  for (auto &x : b.outlet_x) {
    f(x);
  }
  for (auto &p : b.mounts) {
    position(p, f);
  }
  f(b.mount_radius), f(b.mount_counterbore_radius), f(b.mount_counterbore_depth);
}

} // namespace lengths_of

// Calls f with every length, in one order; L is Layout or const Layout.
template <class L, class F> void for_each_length(L &layout, F f) {
  static_assert(std::is_same_v<std::remove_const_t<L>, fixture::Layout>);
  lengths_of::body(layout.body, f);
  f(layout.gasket);
  lengths_of::wiper(layout.wiper, f);
  lengths_of::plenum_cover(layout.plenum_cover, f);
  lengths_of::end_plate(layout.end_plate, f);
  lengths_of::pin(layout.pin, f);
  lengths_of::plug(layout.plug, f);
  lengths_of::position(layout.lance.placement, f);
  f(layout.lance.outside_radius), f(layout.lance.inside_radius), f(layout.lance.length);
  lengths_of::block(layout.block, f);
  lengths_of::stand(layout.stand, f);
  lengths_of::collar(layout.collar, f);
  lengths_of::stop(layout.stop, f);
  lengths_of::spindle(layout.spindle, f);
  lengths_of::tail(layout.tail_foot, f);
  lengths_of::clamp_bar(layout.clamp_bar, f);
  lengths_of::base(layout.base, f);
  f(layout.cradle.missing), f(layout.cradle.radius), f(layout.cradle.radius_most), f(layout.cradle.rear_x);
  lengths_of::mask(layout.mask, f);
  lengths_of::cover(layout.cover, f);
}

// Every length in metres, and every count.
inline std::vector<double> numbers(const fixture::Layout &layout) {
  std::vector<double> all;
  for_each_length(layout, [&](const units::Length &length) { all.push_back(length.value()); });
  for (const int count : {layout.body.diffuser.columns, layout.body.diffuser.rows,
                          layout.plug.side_holes_per_row, layout.plug.side_rows, layout.block.outlets}) {
    all.push_back(count);
  }
  return all;
}

} // namespace purgewright::test
