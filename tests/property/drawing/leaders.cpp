#include "sheet_faults.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace purgewright::test {

using namespace drawing;

namespace {

std::vector<Segment> straight(const Dimension &d) {
  std::vector<Segment> out;
  for (const Stroke &stroke : d.strokes) {
    if (const auto *s = std::get_if<Segment>(&stroke.curve)) {
      out.push_back(*s);
    }
  }
  return out;
}

// Leaders proper: the line from the tip to its bend, not the frame or the roughness sign behind it.
std::optional<Segment> leader_of(const Dimension &d) {
  if (d.kind != DimensionKind::leader || d.strokes.empty()) {
    return std::nullopt;
  }
  const auto *s = std::get_if<Segment>(&d.strokes.front().curve);
  return s == nullptr ? std::nullopt : std::optional(*s);
}

bool meet(const Segment &leader, const Dimension &other) {
  return std::ranges::any_of(straight(other), [&](const Segment &s) { return cross(leader, s); });
}

// Round features that a straight line enters and leaves.
bool passes_through(const Segment &s, const Arc &circle) {
  constexpr double touch = 0.2; // mm
  const Point way = s.b - s.a;
  const double along = std::clamp(dot(circle.centre - s.a, way) / dot(way, way), 0.0, 1.0);
  return length(circle.centre - s.a) > circle.radius + touch &&
         length(circle.centre - s.b) > circle.radius + touch &&
         length(circle.centre - (s.a + along * way)) < circle.radius - touch;
}

} // namespace

std::vector<std::string> tangled_leaders(const Sheet &sheet) {
  std::vector<std::string> faults;
  for (std::size_t i = 0; i < sheet.dimensions.size(); ++i) {
    const auto leader = leader_of(sheet.dimensions[i]);
    if (!leader) {
      continue;
    }
    const std::string &name = sheet.dimensions[i].feature;
    for (std::size_t k = 0; k < sheet.dimensions.size(); ++k) {
      const Dimension &other = sheet.dimensions[k];
      const auto its = leader_of(other);
      if (k != i && its && !(k < i && cross(*leader, *its)) && meet(*leader, other)) { // a pair is told once
        faults.push_back(fmt::format("{}: {} crosses that of {}", sheet.name, name, other.feature));
      }
    }
    for (const View &view : sheet.views) {
      for (const Stroke &stroke : view.strokes) {
        const auto *circle = std::get_if<Arc>(&stroke.curve);
        if (stroke.line == Line::visible && circle != nullptr && circle->is_circle() &&
            passes_through(*leader, *circle)) {
          faults.push_back(fmt::format("{}: {} passes through a round feature", sheet.name, name));
        }
      }
    }
  }
  return faults;
}

} // namespace purgewright::test
