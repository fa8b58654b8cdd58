#include "placement.hpp"

#include "callout_shape.hpp"
#include "linear_shape.hpp"

#include "purgewright/drawing/lettering.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace purgewright::drawing {
namespace {

constexpr double clash = 1000.0;         // more than any sum of soft costs
constexpr double curve_deviation = 0.05; // chords of curves as obstacles
constexpr double close_by = 6.0;         // cost of standing nearer than that
constexpr double air = 0.5;              // free space round a text
constexpr double wide_air = 1.5;         // more of it, so that texts read apart
constexpr double caption_air = 0.6;
constexpr double parallel_distance = 6.0; // between dimension lines side by side

} // namespace

void Ink::add(const Segment &s) {
  const std::size_t index = segments_.size();
  segments_.push_back(s);
  const int pieces = std::max(1, static_cast<int>(length(s.b - s.a) / cell));
  std::set<long> keys;
  for (int i = 0; i < pieces; ++i) {
    Box box;
    box.include(s.a + (double(i) / pieces) * (s.b - s.a));
    box.include(s.a + (double(i + 1) / pieces) * (s.b - s.a));
    for (int x = int(std::floor(box.least.x / cell)); x <= int(std::floor(box.greatest.x / cell)); ++x) {
      for (int y = int(std::floor(box.least.y / cell)); y <= int(std::floor(box.greatest.y / cell)); ++y) {
        keys.insert(key(x, y));
      }
    }
  }
  for (const long k : keys) {
    cells_[k].push_back(index);
  }
}

template <class Visit> void Ink::visit(const Box &box, Visit &&visit) const {
  for (int x = int(std::floor(box.least.x / cell)); x <= int(std::floor(box.greatest.x / cell)); ++x) {
    for (int y = int(std::floor(box.least.y / cell)); y <= int(std::floor(box.greatest.y / cell)); ++y) {
      const auto found = cells_.find(key(x, y));
      if (found == cells_.end()) {
        continue;
      }
      for (const std::size_t index : found->second) {
        if (!visit(index)) {
          return;
        }
      }
    }
  }
}

bool Ink::touches(const Box &box) const {
  bool hit = false;
  visit(box, [&](std::size_t i) { return !(hit = hit || crosses(segments_[i], box)); });
  return hit;
}

int Ink::crossings(const Segment &s) const {
  std::set<std::size_t> hit;
  const int pieces = std::max(1, static_cast<int>(length(s.b - s.a) / cell));
  for (int p = 0; p < pieces; ++p) {
    Box box;
    box.include(s.a + (double(p) / pieces) * (s.b - s.a));
    box.include(s.a + (double(p + 1) / pieces) * (s.b - s.a));
    visit(box, [&](std::size_t i) {
      if (cross(segments_[i], s)) {
        hit.insert(i);
      }
      return true;
    });
  }
  return static_cast<int>(hit.size());
}

int Ink::alongside(const Segment &s) const {
  constexpr double beside = 0.7, shortest = 1.0, slope = 0.09; // mm, mm, sine of 5 degrees
  const double run = length(s.b - s.a);
  if (run < shortest) {
    return 0;
  }
  const Point way = unit(s.b - s.a), left = turned_left(way);
  Box box;
  box.include(s.a);
  box.include(s.b);
  std::set<std::size_t> hit;
  visit(box.grown(beside), [&](std::size_t i) {
    const Segment &other = segments_[i];
    const Point a = other.a - s.a, b = other.b - s.a, along = b - a;
    if (std::abs(dot(along, left)) <= slope * length(along) && std::abs(dot(a, left)) < beside &&
        std::abs(dot(b, left)) < beside) {
      const double from = std::min(dot(a, way), dot(b, way)), to = std::max(dot(a, way), dot(b, way));
      if (std::min(to, run) - std::max(from, 0.0) > shortest) {
        hit.insert(i);
      }
    }
    return true;
  });
  return static_cast<int>(hit.size());
}

void Placer::add_ink(const Stroke &stroke) {
  for (const Segment &s : chords(stroke.curve, curve_deviation)) {
    outlines_.add(s);
  }
  const auto *arc = std::get_if<Arc>(&stroke.curve);
  if (stroke.line == Line::visible && arc != nullptr && arc->is_circle()) {
    features_.push_back(*arc);
  }
}

// Circles that the line passes through from outside to outside.
int Placer::features_crossed(const Segment &s) const {
  constexpr double touch = 0.1; // mm
  const Point way = s.b - s.a;
  const double squared = way.x * way.x + way.y * way.y;
  return static_cast<int>(std::ranges::count_if(features_, [&](const Arc &circle) {
    const Point from = circle.centre - s.a;
    const double along =
        squared > 0.0 ? std::clamp((from.x * way.x + from.y * way.y) / squared, 0.0, 1.0) : 0.0;
    const double clear = circle.radius + touch;
    return length(circle.centre - s.a) > clear && length(circle.centre - s.b) > clear &&
           length(circle.centre - (s.a + along * way)) < circle.radius;
  }));
}

double Placer::text_cost(const Box &text, const Box &own_view) const {
  constexpr double inside_view = 6.0, in_other_view = 40.0, by_other_view = 15.0, apart = 3.0;
  const Box box = text.grown(air);
  double cost = area_.contains(box) ? 0.0 : clash;
  for (const Box &other : taken_) {
    cost += overlap(box, other) ? clash : 0.0;
  }
  cost += outlines_.touches(box) || dimension_ink_.touches(box) ? clash : 0.0;
  for (const Box &view : views_) {
    const bool own = view.least.x == own_view.least.x && view.least.y == own_view.least.y;
    if (overlap(box, view)) {
      cost += own ? inside_view : in_other_view;
    } else if (!own && overlap(box.grown(apart), view)) {
      cost += by_other_view;
    }
  }
  return cost;
}

int Placer::close_texts(const Box &text) const {
  const Box box = text.grown(wide_air);
  return static_cast<int>(
      std::count_if(taken_.begin(), taken_.end(), [&](const Box &other) { return overlap(box, other); }));
}

double Placer::stroke_cost(const Segment &s, const Box &own_view) const {
  constexpr double per_dimension_line = 9.0, per_outline = 0.8, through_view = 25.0;
  Box ends;
  ends.include(s.a);
  ends.include(s.b);
  double cost = area_.contains(ends) ? 0.0 : clash;
  for (const Box &text : taken_) {
    cost += crosses(s, text) ? clash : 0.0;
  }
  for (const Box &view : views_) {
    cost += crosses(s, view) ? through_view : 0.0;
  }
  cost -= crosses(s, own_view) ? through_view : 0.0;
  return cost + per_dimension_line * dimension_ink_.crossings(s) + per_outline * outlines_.crossings(s);
}

double Placer::parallel_cost(const Segment &s) const {
  const bool upright = std::abs(s.a.x - s.b.x) < 1e-6;
  const auto across = [&](Point p) { return upright ? p.x : p.y; };
  const auto along = [&](Point p) { return upright ? p.y : p.x; };
  double cost = 0.0;
  for (const Segment &other : dimension_lines_) {
    const bool other_upright = std::abs(other.a.x - other.b.x) < 1e-6;
    if (upright != other_upright || std::abs(across(other.a) - across(s.a)) >= parallel_distance) {
      continue;
    }
    const double low = std::max(std::min(along(s.a), along(s.b)), std::min(along(other.a), along(other.b)));
    const double high = std::min(std::max(along(s.a), along(s.b)), std::max(along(other.a), along(other.b)));
    cost += high - low > 0.1 ? clash : 0.0;
  }
  return cost;
}

void Placer::judge(Trial &trial, const Box &own_view) const {
  // An extension line may pass the holes of its row, a leader may not.
  constexpr double per_feature = 60.0, per_leader = 60.0, per_line_beside = 30.0;
  trial.cost += text_cost(trial.dimension.box, own_view);
  for (const Stroke &stroke : trial.dimension.strokes) {
    if (const auto *s = std::get_if<Segment>(&stroke.curve)) {
      trial.cost += stroke_cost(*s, own_view) + per_leader * leaders_.crossings(*s);
      trial.cost += trial.linear
                        ? 0.0
                        : per_feature * features_crossed(*s) + per_line_beside * dimension_ink_.alongside(*s);
    }
  }
  // Dimension lines stand in ranks anyway; notes are to read apart.
  constexpr double on_expected = 12.0;
  if (trial.linear) {
    trial.cost += parallel_cost(trial.line) + (expected_.touches(trial.dimension.box) ? on_expected : 0.0);
  } else {
    trial.cost += close_by * close_texts(trial.dimension.box);
  }
}

Dimension Placer::keep(Trial &&trial) {
  if (trial.cost >= clash) {
    clashes_.push_back(trial.dimension.feature);
  }
  if (trial.linear) {
    dimension_lines_.push_back(trial.line);
  }
  keep(trial.dimension);
  return std::move(trial.dimension);
}

void Placer::keep(const Dimension &placed) {
  taken_.push_back(placed.box);
  for (const Stroke &stroke : placed.strokes) {
    for (const Segment &s : chords(stroke.curve, curve_deviation)) {
      dimension_ink_.add(s);
      if (placed.kind == DimensionKind::leader) {
        leaders_.add(s);
      }
    }
  }
}

Dimension Placer::place(const Linear &wish, const Stand &stand) {
  constexpr double per_level = 3.0, text_beside = 5.0, per_away = 0.6;
  std::optional<Trial> best;
  for (int level = 0; level < linear_levels; ++level) {
    for (const TextPlace &text : text_places) {
      auto shape = linear_shape(wish, stand, level, text);
      if (!shape) {
        continue;
      }
      Trial trial{std::move(shape->dimension),
                  per_level * level + (text.side == TextSide::middle ? 0.0 : text_beside) +
                      per_away * text.away,
                  shape->line, true};
      judge(trial, stand.box);
      if (!best || trial.cost < best->cost) {
        best = std::move(trial);
      }
    }
    if (best && best->cost < per_level * (level + 1)) {
      break;
    }
  }
  return keep(std::move(*best));
}

Dimension Placer::place(const Callout &wish, const Stand &stand) {
  return keep(best(wish, stand));
}

Dimension Placer::best_place(const Callout &wish, const Stand &stand) const {
  return best(wish, stand).dimension;
}

Placer::Trial Placer::best(const Callout &wish, const Stand &stand) const {
  std::optional<Trial> best;
  for (const LeaderWay &way : leader_ways(wish)) {
    if (best && best->cost <= way.cost) {
      continue;
    }
    Trial trial{callout_shape(wish, stand, way), way.cost, {}, false};
    judge(trial, stand.box);
    if (!best || trial.cost < best->cost) {
      best = std::move(trial);
    }
  }
  return std::move(*best);
}

// Beside its first place, or lower, down to the view.
Text Placer::place(const Caption &wish, const Stand &stand) {
  constexpr double step = 5.0, per_aside = 0.2, per_down = 2.0; // sideways rather than down among dimensions
  const double width = text_width(wish.content, wish.height);
  const double aside = 0.5 * stand.box.width() + stand.plan->room.right;
  std::optional<std::pair<double, Text>> best;
  const double lowest = std::min(wish.middle.y, stand.box.greatest.y + 0.5 * step);
  for (double y = wish.middle.y; y >= lowest; y -= 0.5 * step) {
    for (double away = 0.0; away <= aside; away += step) {
      for (const double x : {away, -away}) {
        const Text text{{wish.middle.x + x - 0.5 * width, y}, wish.height, false, wish.content};
        const double cost =
            per_aside * away + per_down * (wish.middle.y - y) + text_cost(text_box(text), stand.box);
        if (!best || cost < best->first) {
          best = {cost, text};
        }
      }
    }
  }
  if (best->first >= clash) {
    clashes_.push_back("caption " + wish.content);
  }
  reserve(text_box(best->second).grown(caption_air));
  return best->second;
}

} // namespace purgewright::drawing
