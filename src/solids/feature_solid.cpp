// The solid of a list of features: the body, then every cut in one operation.
#include "purgewright/solids/parts.hpp"

#include "tools.hpp"

#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/chamfer.hpp"
#include "purgewright/solids/kernel/cutters.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::solids {
namespace {

using Profile = std::vector<ProfilePoint>;

Point point(const fixture::Position &p) {
  return {p.x, p.y, p.z};
}
kernel::Direction direction(const fixture::Direction &d) {
  return {d.x, d.y, d.z};
}

// A step lower than what the kernel tells apart is none.
void add(Profile &profile, Length axial, Length radial) {
  const auto apart = [](Length a, Length b) {
    return std::abs(units::ratio(a - b, kernel::smallest_size)) >= 1.0;
  };
  if (profile.empty() || apart(profile.back().axial, axial) || apart(profile.back().radial, radial)) {
    profile.push_back({axial, radial});
  }
}

Solid body(const fixture::BlockBody &block) {
  return kernel::box(point(block.least), point(block.greatest));
}

Solid body(const fixture::TurnedBody &turned) {
  Profile contour{{turned.start_x, Length{}}};
  Length from = turned.start_x;
  for (const auto &step : turned.steps) {
    add(contour, from, step.radius);
    if (step.chamfer > Length{}) {
      add(contour, step.end_x - step.chamfer, step.radius);
    }
    add(contour, step.end_x, step.radius - step.chamfer);
    from = step.end_x;
  }
  add(contour, from, Length{});
  return kernel::revolve({{}, kernel::along_x}, contour);
}

// Corners of the steps before the last, seen from the mouth inwards; starts outside the metal.
Profile mouth_profile(const fixture::Hole &hole) {
  const Length over = kernel::cutter_overshoot, first = hole.steps.front().radius, leg = hole.lead_in;
  Profile profile{{-over, Length{}}};
  add(profile, -over, leg > Length{} ? first + leg + over : first); // the cone goes on outside
  if (leg > Length{}) {
    add(profile, leg, first);
  }
  for (std::size_t i = 0; i + 1 < hole.steps.size(); ++i) {
    const auto &step = hole.steps[i];
    const Length next = hole.steps[i + 1].radius;
    add(profile, step.depth, step.radius);
    add(profile, step.depth + (step.drilled ? step_length(step.radius, next) : Length{}), next);
  }
  return profile;
}

Profile hole_profile(const fixture::Hole &hole) {
  constexpr double into_crossed =
      0.8; // of the way from its wall to its axis left out: clear of other holes there
  Profile profile = mouth_profile(hole);
  const auto &last = hole.steps.back();
  const auto end_at = [&](Length depth) {
    add(profile, depth, last.radius);
    add(profile, depth, Length{});
  };
  switch (hole.end) {
  case fixture::HoleEnd::open:
    end_at(last.depth + kernel::cutter_overshoot);
    break;
  case fixture::HoleEnd::flat:
    end_at(last.depth);
    break;
  case fixture::HoleEnd::point:
    add(profile, last.depth, last.radius);
    add(profile, last.depth + step_length(last.radius, Length{}), Length{});
    break;
  case fixture::HoleEnd::crossing:
    end_at(last.depth -
           into_crossed * units::sqrt(units::square(hole.crossed_radius) - units::square(last.radius)));
    break;
  case fixture::HoleEnd::alike:
    for (const ProfilePoint &corner : Profile(profile.rbegin(), profile.rend())) {
      profile.push_back({last.depth - corner.axial, corner.radial});
    }
    break;
  }
  return profile;
}

struct Tools {
  std::vector<Solid> solids;

  void operator()(const fixture::BlockBody &) {}
  void operator()(const fixture::TurnedBody &) {}
  void operator()(const fixture::Hole &hole) {
    const Profile profile = hole_profile(hole);
    for (int i = 0; i < hole.pattern.count(); ++i) {
      const fixture::HoleAt at = fixture::copy_of(hole, i);
      solids.push_back(kernel::revolve({point(at.mouth), direction(at.into)}, profile));
    }
  }
  void operator()(const fixture::Pocket &pocket) {
    const Length over = kernel::cutter_overshoot;
    const kernel::Frame face{point(pocket.centre), direction(pocket.into), direction(pocket.across)};
    solids.push_back(kernel::rounded_rectangle_prism(
        kernel::advanced(face, -over), {pocket.length, pocket.width, pocket.corner_radius},
        pocket.depth + over + (pocket.through ? over : Length{})));
  }
  void operator()(const fixture::RadialGroove &groove) {
    const bool in_shaft = groove.bottom_radius < groove.surface_radius;
    const Length surface = groove.surface_radius + (in_shaft ? 1.0 : -1.0) * kernel::cutter_overshoot;
    const Length outer = std::max(groove.bottom_radius, surface),
                 inner = std::min(groove.bottom_radius, surface);
    const Length end = groove.start_x + groove.width;
    solids.push_back(
        kernel::revolve({{}, kernel::along_x},
                        {{groove.start_x, inner}, {groove.start_x, outer}, {end, outer}, {end, inner}}));
  }
  void operator()(const fixture::Flat &flat) {
    const Length half = flat.round_radius + kernel::cutter_overshoot;
    const Length low = flat.from_axis, high = half;
    const kernel::Frame face{{0.5 * (flat.from_x + flat.to_x), flat.toward.y * low, flat.toward.z * low},
                             direction(flat.toward),
                             kernel::along_x};
    solids.push_back(
        kernel::rounded_rectangle_prism(face, {flat.to_x - flat.from_x, 2.0 * half, {}}, high - low));
  }
};

// Where the edge of a pocket's mouth lies.
kernel::EdgeBox mouth_of(const fixture::Pocket &pocket) {
  const auto half = [&](double into, double across) { // of the two directions in the face
    const double other = 1.0 - std::abs(into) - std::abs(across);
    return 0.5 * (std::abs(across) * pocket.length + other * pocket.width);
  };
  const Length x = half(pocket.into.x, pocket.across.x), y = half(pocket.into.y, pocket.across.y),
               z = half(pocket.into.z, pocket.across.z);
  const auto &c = pocket.centre;
  return {{c.x - x, c.y - y, c.z - z}, {c.x + x, c.y + y, c.z + z}};
}

// Last: later cuts through a chamfer are the frailest operation there is.
Solid break_edges(const fixture::Part &part, Solid solid) {
  for (const auto &feature : part.features) {
    if (const auto *pocket = std::get_if<fixture::Pocket>(&feature);
        pocket != nullptr && pocket->edge_break > Length{}) {
      solid = kernel::chamfer_edges(solid, mouth_of(*pocket), pocket->edge_break);
    }
  }
  return solid;
}

} // namespace

Solid build_part(const fixture::Part &part) {
  return kernel::in_part(std::string(part.id), [&] {
    Tools tools;
    for (const auto &feature : part.features) {
      std::visit(tools, feature);
    }
    const auto &first = part.features.front();
    const auto *block = std::get_if<fixture::BlockBody>(&first);
    const Solid stock = block != nullptr ? body(*block) : body(std::get<fixture::TurnedBody>(first));
    return break_edges(part, tools.solids.empty() ? stock : kernel::cut(stock, tools.solids));
  });
}

} // namespace purgewright::solids
