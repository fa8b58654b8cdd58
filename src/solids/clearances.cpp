#include "purgewright/solids/clearances.hpp"

#include "access_bodies.hpp"
#include "purgewright/fixture/cavity.hpp"
#include "purgewright/solids/kernel/ray.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>
#include <iterator>
#include <limits>
#include <utility>

namespace purgewright::solids {
namespace {

using fixture::Approach;
using kernel::Bounds;
using kernel::Line;
using kernel::Solid;
using units::Length;

using Names = std::initializer_list<std::string_view>;

constexpr Length far_away = units::metres(std::numeric_limits<double>::infinity());

Bounds box_of(const Solid &solid) {
  return kernel::bounding_box(solid);
}

Bounds box_of(const Line &line) {
  return {
      {std::min(line.from.x, line.to.x), std::min(line.from.y, line.to.y), std::min(line.from.z, line.to.z)},
      {std::max(line.from.x, line.to.x), std::max(line.from.y, line.to.y), std::max(line.from.z, line.to.z)}};
}

bool among(std::string_view name, Names names) {
  return std::ranges::find(names, name) != names.end();
}

// Least distance from a body to the parts chosen, or `known` where that is less; nearest boxes first, so that
// most are never measured.
template <class Body, class Chosen>
Length to_parts(const Body &body, const std::vector<Standing> &parts, Length known, Chosen &&chosen) {
  struct Near {
    Length least;
    const kernel::Located *part;
  };
  const Bounds box = box_of(body);
  std::vector<Near> near;
  for (const Standing &part : parts) {
    if (chosen(part.name)) {
      near.push_back({kernel::apart(box, part.at.box), &part.at});
    }
  }
  std::ranges::stable_sort(near, {}, [](const Near &n) { return n.least; });
  Length found = known;
  for (const auto &[least, part] : near) {
    if (least >= found) {
      break;
    }
    found = kernel::distance_below(found, body, *part);
  }
  return found;
}

// The parts with the cover pushed back.
std::vector<Standing> opened(std::vector<Standing> parts, const fixture::SlotCover &cover) {
  const auto at = fixture::open_cover(cover);
  for (Standing &part : parts) {
    if (part.name == ids::slot_cover) {
      part.at = kernel::placed(part.at, {.offset = {at.x - cover.placement.x, at.y - cover.placement.y,
                                                    at.z - cover.placement.z}});
    }
  }
  return parts;
}

// The parts with the tube whole: it turns in the fixture, so a vent may be on any side and gives no tool
// room.
std::vector<Standing> without_vents(std::vector<Standing> parts, job::Job job) {
  job.tube.vent.count = 0;
  for (Standing &part : parts) {
    if (part.name == "tube") {
      part.at = kernel::located(build_tube(job));
    }
  }
  return parts;
}

const kernel::Located &part_of(const std::vector<Standing> &parts, std::string_view name) {
  const auto found = std::ranges::find(parts, name, &Standing::name);
  if (found == parts.end()) {
    throw kernel::SolidError(std::string(name), "find part", "", "no such part in the assembly");
  }
  return found->at;
}

// The seated cap touches the pin, and the tube is drawn back: only the tips can run into the pin on the way.
Length loading_room(const job::Cap &cap, const fixture::LoadedCap &load, const std::vector<Standing> &parts) {
  Length found = far_away;
  for (const Solid &swept : lowered_cap(cap, load.top)) {
    found = to_parts(swept, parts, found, [](std::string_view name) {
      return fixture::is_chamber_wall(name) || among(name, {ids::slot_cover, ids::chamber_end_plate});
    });
  }
  for (const auto &tip : {load.inner_tip, load.outer_tip}) {
    found = to_parts(as_solid(tip), parts, found, [](std::string_view name) {
      return fixture::is_chamber_wall(name) ||
             among(name, {ids::slot_cover, ids::chamber_end_plate, ids::backing_pin});
    });
  }
  return found;
}

// Through the notches of stands and stop, beside everything else.
Length sliding_room(const fixture::Turned &tube, const std::vector<Standing> &parts) {
  const Length through = to_parts(axis_of(tube), parts, far_away, [](std::string_view name) {
    return among(name, {ids::cradle_stand, ids::axial_stop});
  });
  return to_parts(as_solid(tube), parts, through - tube.radius, [](std::string_view name) {
    return among(name, {ids::base_plate, ids::tail_foot, ids::gas_port_block, ids::slot_cover});
  });
}

// The part drawn back through the chamber, then the wiper's plate on it before the front stand.
Length leaving_room(const fixture::AccessTools &tools, const std::vector<Standing> &parts) {
  const Length beside = to_parts(as_solid(tools.leaving), parts, far_away,
                                 [](std::string_view name) { return fixture::is_chamber_wall(name); });
  const auto plate =
      kernel::placed(part_of(parts, ids::wiper_plate), {.offset = {-tools.plate_back, {}, {}}});
  return to_parts(plate.solid, parts, beside,
                  [](std::string_view name) { return name == ids::cradle_stand; });
}

// The end plug and what is screwed to it, which turns and comes out with it.
bool of_plug(std::string_view name) {
  return among(name, {ids::end_plug, ids::plug_bush, ids::plug_knob});
}

Length turned_room(const fixture::Turned &turned, const std::vector<Standing> &parts) {
  return to_parts(as_solid(turned), parts, far_away, [](std::string_view name) {
    return !of_plug(name) && !among(name, {"tube", "cap", ids::purge_lance, ids::spindle, ids::index_collar});
  });
}

Length torch_room(const std::vector<Solid> &torch, const std::vector<Standing> &parts) {
  Length found = far_away;
  for (const Solid &piece : torch) {
    found = to_parts(piece, parts, found, [](std::string_view name) {
      return fixture::is_chamber_wall(name) ||
             among(name, {ids::slot_mask, ids::slot_cover, ids::chamber_end_plate});
    });
  }
  return found;
}

// ---- Screws, ports, valves: from a tool's axis

Length beside_parts(const Approach &tool, const std::vector<Standing> &parts, Length known) {
  const auto line = axis_of(tool);
  const auto is_own = [&](std::string_view name) {
    return name == tool.own[0] || name == tool.own[1] || (tool.own[0] == ids::end_plug && of_plug(name));
  };
  Length found =
      to_parts(line, parts, known + tool.radius, [&](std::string_view name) { return !is_own(name); });
  if (tool.through > Length{}) { // the hole's wall, of the part it goes through
    found = to_parts(line, parts, found, [&](std::string_view name) { return name == tool.own[1]; });
  }
  return found - tool.radius;
}

Length between(const Approach &a, const Approach &b, Length known) {
  const auto first = axis_of(a), second = axis_of(b);
  const Length both = a.radius + b.radius;
  return kernel::apart(box_of(first), box_of(second)) - both < known ? kernel::distance(first, second) - both
                                                                     : known;
}

Length least_room(const std::vector<Approach> &tools, const std::vector<Approach> &standing,
                  const std::vector<Standing> &parts, bool among_themselves) {
  Length found = far_away;
  for (std::size_t i = 0; i < tools.size(); ++i) {
    found = std::min(found, beside_parts(tools[i], parts, found));
    for (std::size_t k = i + 1; among_themselves && k < tools.size(); ++k) {
      found = std::min(found, between(tools[i], tools[k], found));
    }
    for (const Approach &other : standing) {
      found = std::min(found, between(tools[i], other, found));
    }
  }
  return found;
}

// The hole in line with the key is its own stand's axle's: a stand that the arm reaches stands in its way.
bool reaches_a_stand(const Bounds &arm, const std::vector<Standing> &parts) {
  return std::ranges::any_of(parts, [&](const Standing &part) {
    return part.name == ids::cradle_stand && part.at.box.least.x < arm.greatest.x &&
           arm.least.x < part.at.box.greatest.x;
  });
}

Length axle_room(const std::vector<Approach> &keys, const std::vector<Standing> &parts) {
  Length found = far_away;
  for (const Approach &key : keys) {
    if (reaches_a_stand(box_of(as_solid(key)), parts)) {
      return {};
    }
    found = to_parts(as_solid(key), parts, found, [](std::string_view name) {
      return among(name, {ids::base_plate, ids::tail_foot, ids::cradle_stand});
    });
  }
  return found;
}

// ---- Sight

// Where rays from the joint's top go: up, in the plane across the tube.
Bounds above_joint(const fixture::TorchBody &torch) {
  return {{{}, -far_away, torch.joint_radius}, {{}, far_away, far_away}};
}

// The angle between one at which a ray from the joint's top is clear and one at which it is blocked. Looked
// for round the expected angle first: two rays tell whether it lies there.
template <class Blocked>
double edge_of_sight(double clear, double blocked, double expected, Blocked &&is_blocked) {
  const double step = std::copysign(4.0 * sight_accuracy.value(), blocked - clear);
  if (!is_blocked(expected - step) && is_blocked(expected + step)) {
    clear = expected - step;
    blocked = expected + step;
  }
  while (std::abs(clear - blocked) > 0.5 * sight_accuracy.value()) {
    const double middle = 0.5 * (clear + blocked);
    (is_blocked(middle) ? blocked : clear) = middle;
  }
  return clear;
}

// Rays in the plane across the tube, leaning away from the torch by the angle; the window is expected to be
// this wide.
units::Angle sight_window(const fixture::TorchBody &torch, const std::vector<kernel::Target> &targets,
                          units::Angle expected) {
  constexpr Length eye = units::millimetres(400.0); // a welder's eye is nearer; nothing lies between
  const auto is_blocked = [&](double angle) {
    const kernel::Ray ray{{{}, {}, torch.joint_radius}, {0.0, -std::sin(angle), std::cos(angle)}, eye};
    return std::ranges::any_of(targets,
                               [&](const auto &target) { return target.first_hit(ray).has_value(); });
  };
  const double cup = std::atan2(torch.barrel_radius.value(), torch.stand_off.value()) - torch.tilt.value();
  const double within = cup + 0.5 * expected.value();
  if (is_blocked(within)) {
    return {};
  }
  const double rim = edge_of_sight(within, -torch.tilt.value(), cup, is_blocked);
  const double wall = edge_of_sight(within, 0.5 * units::pi, cup + expected.value(), is_blocked);
  return units::radians(wall - rim);
}

} // namespace

fixture::Clearances measure_clearances(const job::Job &job, const fixture::Layout &layout,
                                       const std::vector<Standing> &all) {
  const auto tools = fixture::access_tools(job, layout);
  // Bought parts are tools here, not obstacles: what must reach its place is a fitting, a valve, a key.
  std::vector<Standing> parts;
  std::ranges::copy_if(all, std::back_inserter(parts), [](const Standing &part) {
    return part.kind != PartKind::bought || part.name == ids::slot_mask;
  });
  parts = without_vents(std::move(parts), job);
  const auto open = opened(parts, layout.cover);
  const std::vector<Solid> torch{torch_barrel(tools.torch), torch_handle(tools.torch)};
  std::vector<kernel::Target> targets;
  for (const kernel::Located &part :
       {kernel::located(torch[0]), kernel::located(torch[1]),
        part_of(open, fixture::chamber_lid(layout.body.kind)), part_of(open, ids::slot_cover)}) {
    targets.emplace_back(part, above_joint(tools.torch));
  }
  if (layout.mask.present) {
    targets.emplace_back(part_of(open, ids::slot_mask), above_joint(tools.torch));
  }
  return {.loading = loading_room(job.cap, tools.cap, open),
          .sliding = sliding_room(tools.tube, open),
          .leaving = leaving_room(tools, parts),
          .withdrawing = turned_room(tools.withdrawn, parts),
          .turning = turned_room(tools.swing, parts),
          .torch = torch_room(torch, open),
          .sight = sight_window(tools.torch, targets, fixture::clearances(job, layout).sight),
          .screws = least_room(tools.keys, tools.valves, parts, false),
          .ports = least_room(tools.fittings, {}, parts, true),
          .valves = least_room(tools.valves, {}, parts, true),
          .axles = axle_room(tools.axle_keys, parts)};
}

Length tool_room(const fixture::Approach &tool, const std::vector<Standing> &parts) {
  return beside_parts(tool, parts, far_away);
}

namespace {

void never_more(std::string_view what, double measured, double promised, double slack, std::string_view unit,
                double scale) {
  if (measured >= promised - slack) { // written so that a value that is not a number is refused
    return;
  }
  throw kernel::SolidError("clearance", std::string(what), "",
                           fmt::format("the solids leave {:.6f} {}, the closed form promises {:.6f} {}",
                                       measured * scale, unit, promised * scale, unit));
}

} // namespace

void require_clearance_agreement(const fixture::Clearances &measured,
                                 const fixture::Clearances &closed_form) {
  struct Pair {
    std::string_view what;
    Length measured, promised;
  };
  const fixture::Clearances &m = measured, &c = closed_form;
  for (const auto &[what, found, promised] :
       std::array<Pair, 10>{{{"loading", m.loading, c.loading},
                             {"sliding", m.sliding, c.sliding},
                             {"leaving", m.leaving, c.leaving},
                             {"withdrawing", m.withdrawing, c.withdrawing},
                             {"turning", m.turning, c.turning},
                             {"torch", m.torch, c.torch},
                             {"screws", m.screws, c.screws},
                             {"ports", m.ports, c.ports},
                             {"valves", m.valves, c.valves},
                             {"axles", m.axles, c.axles}}}) {
    never_more(what, found.value(), promised.value(), clearance_agreement.value(), "mm", 1e3);
  }
  never_more("sight", m.sight.value(), c.sight.value(), 2.0 * sight_accuracy.value(), "deg",
             180.0 / units::pi);
}

} // namespace purgewright::solids
