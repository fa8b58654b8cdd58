#include "support/layout_laws.hpp"

#include "support/laws.hpp"

#include "purgewright/fixture/screw_joint.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::test {
namespace {

using fixture::Layout;
using job::Job;

// Chord of circle a at distance b.
double root(double a, double b) {
  return std::sqrt(a * a - b * b);
}

void slot_laws(const Job &job, const fixture::ChamberBody &b, Laws &laws) {
  const double half = 0.5 * mm(b.slot.width);
  const double broken = mm(b.slot.edge_break);
  laws.more(mm(b.slot.x_min - b.cavity_start), 0.0, "slot starts within the cavity");
  laws.more(mm(b.x_max - b.slot.x_max) - broken, web, "metal between slot and +X face");
  laws.more(0.5 * mm(b.width) - half - broken, web, "metal beside the slot");
  laws.more(mm(b.cavity_radius) - half, rounding, "slot's walls end in the cavity, not at its tangent");
  laws.more(half - mm(b.slot.corner_radius), 0.0, "corner radius within the width");
  laws.more(0.5 * mm(b.slot.length()) - mm(b.slot.corner_radius), 0.0, "corner radius within the length");
  laws.more(mm(b.z_max - b.cavity_radius), mm(job.fixture.wall), "metal over the cavity");
}

void cavity_laws(const Job &job, const fixture::ChamberBody &b, Laws &laws) {
  const double wall = mm(job.fixture.wall);
  const double half = 0.5 * mm(b.width);
  const double cavity = mm(b.cavity_radius), opening = mm(b.opening_radius);
  laws.more(half - cavity, wall, "metal beside the cavity");
  laws.more(-mm(b.plenum.ceiling) - cavity, wall, "metal between cavity and plenum");
  laws.more(half - 0.5 * mm(b.plenum.width), wall, "metal beside the plenum");
  laws.more(mm(b.plenum.x_min - b.x_min), web, "metal behind the plenum");
  laws.more(cavity - opening, 0.0, "rear opening no wider than the cavity");
  laws.more(mm(b.cavity_start - b.x_min), wall, "rear wall");
  const double widest = 0.5 * std::max(mm(job.tube.outside_diameter_most()), mm(job.cap.diameter));
  laws.more(opening - widest, 1.0, "tube and cap pass the rear opening");
  laws.more(opening - 0.5 * mm(job.tube.outside_diameter) - mm(job.weld.bead_height), 1.0,
            "bead passes the rear opening");
  laws.more(cavity - widest, mm(job.fixture.radial_clearance), "gas round tube and cap");
  laws.more(mm(b.x_max - job.cap.reach()), mm(job.fixture.end_clearance), "gas before the end plate");
}

// A slot the user has made too small fails rules of its own; what hangs on its size is then not judged here.
bool slot_suffices(const fixture::ChamberBody &b) {
  return b.slot.width >= b.slot_needs.width && b.slot.x_min <= b.slot_needs.x_min &&
         b.slot.x_max >= b.slot_needs.x_max;
}

void diffuser_laws(const fixture::ChamberBody &b, Laws &laws) {
  const auto &d = b.diffuser;
  const double r = mm(d.hole_radius);
  const double y = std::abs(mm(d.y_of(d.rows - 1)));
  const double first = mm(d.x_first), last = mm(d.x_of(d.columns - 1));
  laws.more(0.5 * mm(b.plenum.width) - y - r, rounding, "diffuser holes meet the plenum");
  laws.more(mm(b.cavity_radius) - y - r, rounding, "diffuser holes meet the cavity");
  laws.more(first - r - mm(b.plenum.x_min), 0.0, "first diffuser hole in the plenum's ceiling");
  laws.more(mm(b.plenum.x_max) - last - r, 0.0, "last diffuser hole in the plenum's ceiling");
  laws.more(mm(b.x_max) - last - r, web, "last diffuser hole inside the block");
  if (d.columns > 1) {
    laws.more(mm(d.x_pitch) - 2.0 * r, web, "web between diffuser columns");
  }
  if (d.rows > 1) {
    laws.more(mm(d.y_pitch) - 2.0 * r, web, "web between diffuser rows");
  }
  if (!slot_suffices(b)) {
    return;
  }
  laws.more(mm(-b.slot.x_min), rounding, "joint under the slot, behind");
  laws.more(mm(b.slot.x_max), rounding, "joint under the slot, ahead");
  laws.more(first - r - mm(b.slot.x_min), 0.0, "diffuser under the slot, behind");
  laws.more(mm(b.slot.x_max) - last - r, 0.0, "diffuser under the slot, ahead");
}

void inlet_laws(const Job &job, const fixture::ChamberBody &b, Laws &laws) {
  const double r = mm(b.inlet_radius), corner = mm(b.plenum.corner_radius);
  const auto &port = *job.gas.port_thread;
  laws.more(0.5 * mm(b.plenum.width) - corner - r, 0.0, "inlet ends in the plenum's flat end wall");
  laws.more(mm(b.plenum.ceiling - b.inlet_z) - r, 0.0, "inlet under the plenum's ceiling");
  laws.more(mm(b.inlet_z - b.bottom) - r, 0.0, "inlet over the block's underside");
  laws.more(0.5 * mm(b.plenum.length()) - corner, 0.0, "plenum as long as its corners");
  laws.more(-mm(b.inlet_z) - mm(b.z_max) - 0.5 * mm(port.fitting_width), 0.0,
            "inlet's fitting under the end plate");
  laws.more(mm(b.inlet_z - b.z_min) - 0.5 * mm(port.fitting_width), 0.0,
            "inlet's fitting over the base plate");
  laws.more(0.5 * mm(b.width), 0.5 * mm(port.fitting_width), "inlet's fitting within the block's width");
  if (slot_suffices(b)) {
    laws.more(mm(b.x_max - b.plenum.x_max), mm(port.full_thread), "metal that holds the inlet's thread");
  }
}

// Holes of the end faces' screws, along X from either face.
void end_screw_laws(const fixture::ChamberBody &b, Laws &laws) {
  const double r = mm(b.end_tapping.radius), major = 0.5 * mm(b.end_screw->major);
  const double deep = mm(b.end_tapping.depth) + point(r);
  laws.more(mm(b.length()) - 2.0 * deep, web, "metal between the end screws of both faces");
  for (const auto &at : b.end_screws) {
    const double y = std::abs(mm(at.y)), z = mm(at.z);
    laws.more(0.5 * mm(b.width) - y - major, web, "metal beside an end screw");
    laws.more(mm(b.z_max) - z - major, web, "metal over an end screw");
    laws.more(z - mm(b.bottom) - major, web, "metal under an end screw");
    laws.more(std::hypot(y, z) - mm(b.cavity_radius) - major, web, "metal between end screw and cavity");
    const double above = z - mm(b.plenum.ceiling), beside = y - 0.5 * mm(b.plenum.width);
    laws.more(std::max(above, beside) - major, web, "metal between end screw and plenum");
    if (z > 0.0 && mm(b.slot.x_max) > mm(b.x_max) - deep) {
      laws.more(y - 0.5 * mm(b.slot.width) - major, web, "metal between end screw and slot");
    }
    laws.more(std::hypot(y, z - mm(b.inlet_z)) - mm(b.inlet_radius) - major, web,
              "metal between end screw and inlet");
  }
}

// Of plates: holes that cross in top and floor keep metal between them.
void plates_laws(const fixture::ChamberBody &b, Laws &laws) {
  if (b.kind == fixture::ChamberKind::block) {
    return;
  }
  const auto &p = b.plates;
  const double sunk = 0.5 * mm(b.end_screw->counterbore_diameter);
  const double deep = mm(b.end_tapping.depth) + point(mm(b.end_tapping.radius));
  for (int i = 0; i < p.sides.count; ++i) {
    const double x = mm(p.sides.first.x) + i * mm(p.sides.pitch), y = mm(p.sides.first.y);
    laws.more(x - mm(p.walls_start) - deep - sunk, web, "metal between side screw and rear screw");
    laws.more(mm(b.x_max) - x - deep - sunk, web, "metal between side screw and end screw");
    for (const auto &at : b.base_screws) {
      laws.more(std::hypot(x - mm(at.x), y - std::abs(mm(at.y))) - sunk - mm(b.base_tapping.radius), web,
                "metal between side screw and base screw");
    }
    for (const auto &at : b.dowels) {
      laws.more(std::hypot(x - mm(at.x), y - std::abs(mm(at.y))) - sunk - mm(b.dowel.radius), web,
                "metal between side screw and dowel");
    }
  }
  laws.more(mm(p.sides.first.y) - sunk - 0.5 * mm(b.slot.width) - mm(b.slot.edge_break), web,
            "metal between side screw and slot");
  const double tapped = mm(p.side_tapping.depth) + point(mm(p.side_tapping.radius));
  laws.more(mm(b.z_max - p.thickness + b.cavity_radius) - 2.0 * mm(p.gasket) - 2.0 * tapped, web,
            "metal between the screws of a side's edges");
  const double dowel_y = mm(p.dowels[1].y), dowel_z = mm(p.dowels[1].z), r = mm(b.dowel.radius);
  laws.more(dowel_y - r - 0.5 * mm(b.plenum.width), web, "metal between rear dowel and plenum");
  laws.more(-mm(b.cavity_radius) - dowel_z - r, web, "metal over a rear dowel");
  laws.more(mm(b.plenum.x_min - p.walls_start), web, "metal of the floor behind the plenum");
  laws.more(mm(b.slot.x_min - p.walls_start) - mm(b.slot.edge_break), web,
            "metal of the top behind the slot");
  for (const auto &knob : p.knobs) {
    for (const auto &screw : b.end_screws) {
      laws.more(std::hypot(mm(knob.y - screw.y), mm(knob.z - screw.z)) - sunk - mm(b.end_tapping.radius), web,
                "metal between a knob's thread and a counterbore");
    }
  }
}

// Holes of the base's screws, upwards from the bottom face.
void base_screw_laws(const fixture::ChamberBody &b, Laws &laws) {
  const double r = mm(b.base_tapping.radius), major = 0.5 * mm(b.base_screw->major);
  const double top = mm(b.bottom) + mm(b.base_tapping.depth) + point(r);
  for (const auto &at : b.base_screws) {
    const double y = std::abs(mm(at.y));
    laws.more(0.5 * mm(b.width) - y - major, web, "metal beside a base screw");
    laws.more(mm(at.x - b.foot_start()) - major, web, "metal behind a base screw");
    laws.more(mm(b.x_max - at.x) - major, web, "metal ahead of a base screw");
    laws.more(y - 0.5 * mm(b.plenum.width) - major, web, "metal between base screw and plenum");
    // The hole's inner edge under the cavity's wall.
    const double inner = std::max(0.0, y - major);
    if (inner < mm(b.cavity_radius) && mm(at.x) + major > mm(b.cavity_start)) {
      laws.more(-root(mm(b.cavity_radius), inner) - top, web, "metal between base screw and cavity");
    }
    for (const auto &end : b.end_screws) {
      const double over = mm(end.z) - 0.5 * mm(b.end_screw->major) - top;
      const double beside = std::abs(y - std::abs(mm(end.y))) - major - 0.5 * mm(b.end_screw->major);
      laws.more(std::max(over, beside), web, "metal between base screw and end screw");
    }
  }
}

// Pins as long as the list has them end within the plates that they set.
void dowel_laws(const Layout &l, Laws &laws) {
  const auto &b = l.body;
  const double base = mm(l.base.thickness);
  laws.more(base - (mm(fixture::dowel_length(b)) - mm(b.dowel.depth) - mm(b.bottom - b.z_min)), 0.0,
            "chamber's dowel ends in the base plate");
  laws.more(base - (mm(fixture::dowel_length(l.stand)) - mm(l.stand.dowel.depth)), 0.0,
            "stand's dowel ends in the base plate");
  if (b.kind == fixture::ChamberKind::plates) {
    const double out = mm(fixture::rear_dowel_length(b)) - mm(b.dowel.depth) - mm(b.plates.gasket);
    laws.more(mm(b.plates.thickness) - out, 0.0, "rear dowel ends in the rear plate");
    laws.more(out, 4.0, "rear dowel holds in the rear plate");
  }
}

void end_plate_laws(const Layout &l, Laws &laws) {
  const auto &p = l.end_plate;
  const auto &b = l.body;
  laws.more(mm(l.gasket), 0.5, "gasket under the end plate");
  laws.more(0.5 * mm(p.width) - mm(b.cavity_radius), 3.0, "gasket beside the cavity");
  laws.more(mm(p.z_max - b.cavity_radius), 3.0, "gasket over the cavity");
  const double meter = std::hypot(mm(p.meter.at.y), mm(p.meter.at.z)), tap = mm(p.meter.radius);
  laws.more(mm(b.cavity_radius) - meter - tap, 0.0, "meter's port opens into the cavity");
  laws.more(meter - tap - mm(p.pin_bore_radius), web, "metal between meter's port and pin");
  laws.more(mm(p.thickness - p.counterbore_depth), 2.0, "metal under the end screws' heads");
  // The cover slides over both plates: its float is less than this, their tolerance ISO 2768-m.
  laws.more(0.5 * mm(b.width - p.width), 0.5, "end plate is narrower than the cover's way");
  laws.more(mm(b.z_max - p.z_max), 0.5, "end plate lies under the cover's way");
  laws.more(0.5 * mm(b.width - l.wiper.width), 0.5, "wiper plate is narrower than the cover's way");
  laws.more(mm(b.z_max - l.wiper.z_max), 0.5, "wiper plate lies under the cover's way");
  // Down to the pin's tapped hole: a drill's reach, room for a tap's shank, metal on either side.
  const double deep = mm(p.z_max - p.clamp_tap_top_z), wide = 2.0 * mm(p.clamp_clearance_radius);
  // Or the way is as wide as the plate bears, to the grid, and machining.drill_depth says what is left.
  const double widest = mm(p.thickness) - 2.0 * 1.5 - 0.8;
  laws.more(std::max(10.0 - deep / wide, wide - widest), 0.0, "drill reaches the pin's tapped hole");
  laws.more(deep > 20.0 ? wide : 6.0, 5.0, "tap's shank passes down to its hole");
  laws.more(0.5 * (mm(p.thickness) - wide), web, "metal beside the way to the pin's tapped hole");
  for (const auto &at : p.screws) {
    const double y = std::abs(mm(at.y)), z = mm(at.z);
    laws.more(std::hypot(y, z) - mm(b.cavity_radius) - mm(p.screw_clearance_radius), 0.5,
              "gasket between screw hole and cavity");
    laws.more(std::hypot(y - mm(p.meter.at.y), z - mm(p.meter.at.z)) - tap - mm(p.counterbore_radius), web,
              "metal between meter's port and counterbore");
    laws.more(0.5 * mm(p.width) - y - mm(p.counterbore_radius), web, "metal beside a counterbore");
    laws.more(mm(p.z_max) - z - mm(p.counterbore_radius), web, "metal over a counterbore");
    laws.more(z - mm(p.z_min) - mm(p.counterbore_radius), web, "metal under a counterbore");
    laws.more(y - mm(p.clamp_clearance_radius) - mm(p.counterbore_radius), web,
              "metal between clamp and counterbore");
  }
  laws.more(mm(p.clamp_x) - mm(p.clamp_clearance_radius), web, "metal before the clamp");
  laws.more(mm(p.thickness - p.clamp_x) - mm(p.clamp_clearance_radius), web, "metal behind the clamp");
  laws.more(mm(p.z_max - p.clamp_tap_top_z), 0.0, "clamp's thread ends below the plate's top");
  laws.more(mm(p.clamp_tap_top_z - p.pin_bore_radius), 4.0, "clamp's thread above the pin");
}

void closure_laws(const Job &job, const Layout &l, Laws &laws) {
  const auto &w = l.wiper;
  const auto &b = l.body;
  const double turns =
      l.spindle_in_chamber(job) ? mm(l.cradle.radius) : 0.5 * mm(job.tube.outside_diameter_least());
  laws.more(turns - mm(w.hole_radius), 0.2, "wiper presses");
  laws.more(mm(w.hole_radius), 0.5, "wiper has a hole");
  laws.more(mm(w.plate_hole_radius) - mm(w.hole_radius), 1.0, "wiper's lip");
  laws.more(-std::abs(mm(w.placement.x + w.thickness - b.x_min)), 0.0, "wiper on the chamber's rear face");
  laws.more(0.5 * mm(w.width) - mm(w.plate_hole_radius), 3.0, "wiper's plate beside its hole");
  for (const auto &knob : w.knobs) {
    const double y = std::abs(mm(knob.y)), z = std::abs(mm(knob.z)), r = mm(w.clearance_radius);
    laws.more(std::hypot(y, z) - mm(w.plate_hole_radius) - r, 1.0, "metal between knob and hole");
    laws.more(std::min(0.5 * mm(w.width) - y, mm(w.z_max) - z) - r, web, "metal outside a knob");
    if (l.spindle.present) { // either comes out before what turns, or beside it
      const double behind = mm(w.placement.x - w.plate_thickness - l.spindle.placement.x),
                   out = mm(fixture::wiper_joint(l).engagement() + w.knob->head_height),
                   beside = std::hypot(y, z) - 0.5 * mm(w.knob->head_diameter) - mm(l.spindle.radius);
      laws.more(std::max(behind - out, beside), 0.8, "wiper's screws come out beside the spindle");
    }
  }
  const auto &c = l.plenum_cover;
  laws.more(-std::abs(mm(b.bottom - b.z_min - l.gasket - c.thickness)), 0.0, "chamber stands on its cover");
  for (std::size_t i = 0; i < c.screws.size(); ++i) {
    laws.more(-std::hypot(mm(c.screws[i].x - b.base_screws[i].x), mm(c.screws[i].y - b.base_screws[i].y)),
              0.0, "base screws pass the plenum cover");
  }
}

void pin_laws(const Job &job, const Layout &l, Laws &laws) {
  const auto &pin = l.pin;
  const double outer = mm(pin.contact_outer_radius), inner = mm(pin.contact_inner_radius);
  laws.more(0.5 * mm(job.tube.inside_diameter) - outer, 0.3, "pin's ring inside the tube's bore");
  laws.more(outer - inner, 0.2, "pin's ring has a width");
  laws.more(inner, 0.3, "pin's face is relieved inside the ring");
  laws.more(inner - 0.5 * mm(pin.groove_width), 0.0, "pin's grooves cross the ring whole");
  laws.more(mm(l.end_plate.pin_bore_radius - pin.shank_radius), 0.0, "pin enters the end plate");
  const double x = mm(pin.placement.x);
  laws.more(x + mm(pin.length) - mm(l.end_plate.placement.x) - mm(l.end_plate.thickness), 5.0,
            "pin can be held behind the plate");
  if (pin.contact_outer_radius > pin.shank_radius) {
    laws.more(mm(l.body.x_max) - x - mm(pin.head_length), 0.0, "pin's head inside the cavity");
  }
  if (job.cap.shape == job::CapShape::domed) {
    const double rim = 0.5 * mm(job.cap.diameter), height = mm(job.cap.dome_height);
    const double sphere = (rim * rim + height * height) / (2.0 * height);
    const double touch = std::hypot(x - (height - sphere), inner);
    laws.more(-std::abs(touch - sphere), 0.0, "pin's inner edge on the dome");
    laws.more(x + mm(pin.relief_depth) - height, 0.1, "dome's apex clear of the pin's relief");
    laws.more(rim - inner, 0.0, "pin's ring on the dome");
    return;
  }
  laws.more(-std::abs(x - mm(job.cap.thickness)), 0.0, "pin's ring on the cap's face");
  laws.more(0.5 * mm(job.cap.diameter) - outer, 0.0, "pin's ring on the cap");
}

// A port's way lies in metal, behind the stop face and in what enters the bore.
void passage_laws(const fixture::EndPlug &p, const fixture::PlugPassage &way, Laws &laws) {
  const double off = std::abs(mm(way.z)), port = mm(way.port_radius);
  const double body = mm(p.kind == fixture::PlugKind::expanding ? p.shank_radius : p.shoulder_radius);
  laws.more(body - off - port, web, "metal beside the plug's port");
  laws.more(mm(way.port_radius - way.radius), rounding, "passage narrower than its port");
  laws.more(mm(way.end_x - p.rear_x()) - mm(way.port_depth) - point(port) + point(mm(way.radius)), 0.0,
            "passage behind the port");
  if (p.kind == fixture::PlugKind::bore_ring && p.ways != fixture::GasWays::concentric) {
    const double groove = mm(p.seal.groove_radius), port_end = mm(p.rear_x() + way.port_depth);
    laws.more(groove - off - mm(way.radius), web, "metal between passage and groove");
    const bool under_groove = port_end + point(port) - point(mm(way.radius)) > mm(p.seal.groove_start);
    laws.more((under_groove ? groove : mm(p.spigot_radius)) - off - port, web,
              "metal between port drill and spigot or groove");
    laws.more(mm(p.spigot_radius) - off - mm(way.seat_radius), web, "metal beside the lance's seat");
  }
}

// O-ring in its groove, or the sleeve between bush and flange.
void seal_laws(const Job &job, const fixture::EndPlug &p, Laws &laws) {
  const auto &s = p.seal;
  if (p.kind == fixture::PlugKind::expanding) {
    laws.more(mm(p.spigot_radius - s.groove_radius), 1.5, "rubber round the hub");
    laws.more(mm(p.spigot_length - s.groove_start - s.groove_width), 2.0, "flange ahead of the sleeve");
    laws.more(mm(p.knob_radius - p.shank_radius), 5.0, "knob to hold beyond the shank");
    laws.more(mm(p.shoulder_length - p.bush_flange - p.knob_length - p.flats_length), -rounding,
              "flats of the shank behind the knob");
    const double width = 0.5 * mm(p.flats_across),
                 chord = std::sqrt(std::pow(mm(p.shank_radius), 2) - width * width);
    laws.more(chord, 2.5, "flats wide enough for a spanner");
    laws.more(width - mm(p.inlet.port_radius), 1.0, "metal between port and flat");
    return;
  }
  const bool cup = p.kind == fixture::PlugKind::cup;
  const double surface = mm(cup ? p.cup_radius : p.spigot_radius),
               end = mm(cup ? p.cup_length : p.spigot_length);
  laws.more(std::abs(surface - mm(s.groove_radius)), 0.5, "depth of the groove");
  laws.more(mm(s.groove_start), 1.0, "land behind the groove");
  laws.more(end - mm(s.groove_start + s.groove_width + p.edge_break), 1.0, "land ahead of the groove");
  laws.more(mm(s.groove_width - s.ring->section), 0.0, "ring fits its groove's width");
  laws.more(s.squeeze_least, 0.0, "some squeeze at the worst tolerances");
  if (cup) {
    laws.more(surface - 0.5 * mm(job.tube.outside_diameter_most()), 0.005, "cup goes over the largest tube");
    laws.more(mm(p.shoulder_radius - s.groove_radius), web, "metal round the cup's groove");
  }
}

void nose_laws(const fixture::EndPlug &p, Laws &laws) {
  laws.more(mm(p.spigot_radius - p.nose_radius), 0.3, "nose narrower than the spigot");
  laws.more(mm(p.nose_radius - p.inlet.radius), web, "nose's wall");
  laws.more(mm(p.side_first_x - p.side_hole_radius - p.spigot_length), 0.0, "side holes beyond the spigot");
  const double last = mm(p.side_first_x) + (p.side_rows - 1) * mm(p.side_pitch) + mm(p.side_hole_radius);
  laws.more(mm(p.inlet.end_x) - last, 0.0, "side holes meet the passage's full bore");
  laws.more(mm(p.side_pitch) - 2.0 * mm(p.side_hole_radius), 0.3, "web between rows of side holes");
  const double arc = 2.0 * mm(p.inlet.radius) * std::sin(units::pi / p.side_holes_per_row);
  laws.more(arc - 2.0 * mm(p.side_hole_radius), 0.3, "web between side holes round the passage");
  const double tip = mm(p.spigot_length + p.nose_length - p.inlet.end_x) - point(mm(p.inlet.radius));
  laws.more(tip, web, "metal ahead of the blind passage");
}

void plug_laws(const Job &job, const Layout &l, Laws &laws) {
  const auto &p = l.plug;
  laws.more(0.5 * mm(job.tube.inside_diameter_least()) - mm(p.spigot_radius), 0.005,
            "plug enters the smallest bore");
  laws.more(mm(p.shoulder_radius) - 0.5 * mm(job.tube.outside_diameter_most()), 0.5,
            "shoulder stops on the tube's end");
  seal_laws(job, p, laws);
  passage_laws(p, p.inlet, laws);
  if (p.has_exhaust) {
    passage_laws(p, p.exhaust, laws);
    laws.more(mm(p.exhaust.z), rounding, "return leaves above");
    laws.more(mm(p.exhaust.z - p.inlet.z) - 2.0 * mm(p.inlet.port_radius), web,
              "metal between the two ports");
    laws.more(mm(p.exhaust.z - p.inlet.z), mm(p.port->fitting_width), "two fittings beside each other");
  }
  if (p.nose_length > fixture::Length{}) {
    nose_laws(p, laws);
  }
  const double free = mm(job.tube.length) - mm(p.spigot_length + p.nose_length) - mm(job.cap.spigot_length);
  laws.more(free, 1.5, "plug's nose clear of the cap");
  if (job.tube.vent.count > 0) {
    const double vent_end = mm(job.tube.vent.from_joint) + 0.5 * mm(job.tube.vent.diameter);
    laws.more(mm(job.tube.length) - mm(p.spigot_length) - vent_end, 0.0, "vent clear of the plug's spigot");
  }
}

void lance_laws(const Job &job, const Layout &l, Laws &laws) {
  if (!l.lance.present) {
    return;
  }
  const auto &p = l.plug;
  const double end = mm(l.lance.placement.x + l.lance.length), outer = mm(l.lance.outside_radius);
  laws.more(-mm(job.cap.spigot_length) - end, 1.0, "lance ends before the cap");
  laws.more(mm(l.lance.outside_radius - l.lance.inside_radius), 0.18, "lance's wall");
  laws.more(0.5 * mm(job.tube.inside_diameter_least()) - std::abs(mm(l.lance.placement.z)) - outer, 0.0,
            "lance inside the tube");
  if (p.ways == fixture::GasWays::concentric) {
    laws.more(mm(p.return_radius) - outer, 0.3, "return round the lance");
    const double round = p.kind == fixture::PlugKind::cup ? 0.5 * mm(job.tube.inside_diameter_least())
                                                          : mm(p.seal.groove_radius) - web;
    laws.more(round - mm(p.return_radius), 0.0, "return within tube or groove");
    laws.more(mm(p.return_end_x - p.inlet.end_x), 3.0, "lance's seat behind the return");
    laws.more(mm(p.cross_x - p.return_end_x), mm(p.exhaust.radius), "cross drilling meets the return");
    laws.more(-mm(p.cross_x) - 0.5 * mm(p.cross_screw->major), 0.3, "cross drilling behind the stop face");
    // M5 x 5 (ISO 4026), 0.5 mm under the rim.
    laws.more(mm(p.shoulder_radius - p.exhaust.z - p.exhaust.radius) - 5.0 - 0.5, 0.5,
              "set screw of the cross drilling clear of the exhaust");
  } else {
    laws.more(mm(p.exhaust.z - p.exhaust.radius) - mm(l.lance.placement.z) - outer, 0.0,
              "lance clear of the exhaust");
  }
}

void mount_laws(const fixture::PortBlock &b, Laws &laws) {
  for (const auto &at : b.mounts) {
    const double x = mm(at.x), y = std::abs(mm(at.y));
    const double bore = mm(b.mount_radius), sunk = mm(b.mount_counterbore_radius);
    laws.more(y - bore - mm(b.gallery_radius), web, "metal between mounting hole and gallery");
    laws.more(0.5 * mm(b.width) - y - sunk, web, "metal beside a mounting counterbore");
    laws.more(x - mm(b.port.depth) - point(mm(b.port.radius)) > bore || y > mm(b.port.radius) + bore ? 1.0
                                                                                                     : -1.0,
              0.0, "mounting hole clear of the end ports");
    for (int i = 0; i < b.outlets; ++i) {
      const double apart = std::hypot(x - mm(b.outlet_x[static_cast<std::size_t>(i)]), y);
      laws.more(apart - mm(b.port.radius) - sunk, web, "metal between mounting counterbore and outlet");
      laws.more(apart - mm(b.spot_radius) - sunk, 0.0, "mounting counterbore clear of a spot face");
    }
  }
}

void block_laws(const Job &job, const Layout &l, Laws &laws) {
  const auto &b = l.block;
  const double wall = mm(job.fixture.wall), port = mm(b.port.radius);
  const double spot = mm(b.spot_depth), port_end = spot + mm(b.port.depth);
  laws.more(mm(b.gallery_z) - port, wall, "metal under the gallery's ports");
  laws.more(mm(b.height) - port_end - point(port) - mm(b.gallery_z) - mm(b.gallery_radius), wall,
            "metal between outlet port and gallery");
  laws.more(0.5 * mm(b.width) - port, wall, "metal beside the ports");
  laws.more(mm(b.gallery_z) - mm(b.spot_radius), 0.0, "inlet's spot face above the bottom");
  laws.more(mm(b.height) - mm(b.gallery_z) - mm(b.spot_radius), 0.0, "inlet's spot face below the top");
  laws.more(0.5 * mm(b.width) - mm(b.spot_radius), 0.0, "spot faces within the width");
  laws.more(mm(b.gallery_radius - b.passage_radius), rounding, "outlet passage narrower than the gallery");
  for (int i = 0; i < b.outlets; ++i) {
    const double x = mm(b.outlet_x[static_cast<std::size_t>(i)]);
    for (const double from_end : {x, mm(b.length) - x}) {
      laws.more(from_end - mm(b.passage_radius) - port_end - point(port) + point(mm(b.gallery_radius)), 0.0,
                "outlet passage meets the gallery's plain bore");
      laws.more(from_end - port, wall, "metal between outlet port and end face");
      // The outlet's drill point hangs over the inlet's port.
      laws.more(from_end - port_end > port ||
                        mm(b.height) - port_end - point(port) - mm(b.gallery_z) - port > 0.0
                    ? 1.0
                    : -1.0,
                0.0, "outlet port clear of the end ports");
    }
    if (i > 0) {
      laws.more(x - mm(b.outlet_x[static_cast<std::size_t>(i) - 1]), mm(job.gas.port_thread->fitting_width),
                "two fittings beside each other on the block");
    }
  }
  mount_laws(b, laws);
}

} // namespace

std::vector<std::string> broken_laws(const Job &job, const Layout &layout) {
  Laws laws;
  slot_laws(job, layout.body, laws);
  cavity_laws(job, layout.body, laws);
  diffuser_laws(layout.body, laws);
  inlet_laws(job, layout.body, laws);
  closure_laws(job, layout, laws);
  end_screw_laws(layout.body, laws);
  base_screw_laws(layout.body, laws);
  plates_laws(layout.body, laws);
  end_plate_laws(layout, laws);
  dowel_laws(layout, laws);
  pin_laws(job, layout, laws);
  plug_laws(job, layout, laws);
  lance_laws(job, layout, laws);
  block_laws(job, layout, laws);
  judge_bench(job, layout, laws);
  return laws.broken;
}

std::string lines(const std::vector<std::string> &sentences) {
  std::string text;
  for (const auto &sentence : sentences) {
    text += sentence + "\n";
  }
  return text;
}

} // namespace purgewright::test
