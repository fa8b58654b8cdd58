#include "callout_shape.hpp"

#include "purgewright/drawing/lettering.hpp"

namespace purgewright::drawing {
namespace {

constexpr double line_pitch = 1.6; // of the letter height
constexpr double shoulder = 3.0;
constexpr double frame_height = 2.0 * letter_height;
constexpr double frame_air = 1.5; // beside the text of a cell
constexpr double rough_left = 1.7, rough_text = 3.4, rough_height = 6.2;

constexpr double balloon_radius = 5.0, dot_radius = 0.5; // ISO 6433: circles of one size, leader with a dot

std::vector<std::string> cells(const std::string &text) {
  std::vector<std::string> out{""};
  for (const char c : text) {
    if (c == '|') {
      out.emplace_back();
    } else {
      out.back() += c;
    }
  }
  return out;
}

double block_width(const Callout &wish) {
  double width = 0.0;
  if (wish.ornament == Ornament::balloon) {
    return 2.0 * balloon_radius;
  }
  if (wish.ornament == Ornament::tolerance_frame || wish.ornament == Ornament::datum) {
    for (const auto &cell : cells(wish.label.lines[0])) {
      width += std::max(frame_height, text_width(cell, letter_height) + 2.0 * frame_air);
    }
    return width;
  }
  for (const auto &line : wish.label.lines) {
    width = std::max(width, text_width(line, letter_height));
  }
  return wish.ornament == Ornament::roughness ? rough_left + rough_text + width + 0.5 : width;
}

void stroke(Dimension &out, Point a, Point b) {
  out.strokes.push_back({Line::dimension, Segment{a, b}});
}

// Text lines about the height of `at`, its left end.
void add_lines(Dimension &out, const Callout &wish, Point at) {
  const double pitch = line_pitch * letter_height;
  const double count = double(wish.label.lines.size());
  double y = at.y + 0.5 * (count - 1.0) * pitch - 0.5 * letter_height;
  for (const auto &line : wish.label.lines) {
    out.texts.push_back({{at.x, y}, letter_height, false, line});
    out.box.include(text_box(out.texts.back()));
    y -= pitch;
  }
}

void add_roughness(Dimension &out, const Callout &wish, Point at, double width) {
  const Point base = at + Point{rough_left, 0.0};
  stroke(out, base, base + Point{-1.6, 2.8});
  stroke(out, base, base + Point{rough_height / std::numbers::sqrt3, rough_height});
  stroke(out, base + Point{-1.6, 2.8}, base + Point{1.6, 2.8});
  stroke(out, base + Point{rough_height / std::numbers::sqrt3, rough_height},
         at + Point{width, rough_height});
  out.texts.push_back({base + Point{rough_text, 1.6}, letter_height, false, wish.label.lines[0]});
  out.box.include(at);
  out.box.include(at + Point{width, rough_height + 0.2});
}

void add_frame(Dimension &out, const Callout &wish, Point at) {
  const double half = 0.5 * frame_height;
  double x = at.x;
  for (const auto &cell : cells(wish.label.lines[0])) {
    const double text = text_width(cell, letter_height);
    const double width = std::max(frame_height, text + 2.0 * frame_air);
    stroke(out, {x, at.y - half}, {x, at.y + half});
    out.texts.push_back({{x + 0.5 * (width - text), at.y - 0.5 * letter_height}, letter_height, false, cell});
    x += width;
  }
  stroke(out, {x, at.y - half}, {x, at.y + half});
  stroke(out, {at.x, at.y - half}, {x, at.y - half});
  stroke(out, {at.x, at.y + half}, {x, at.y + half});
  out.box = {{at.x, at.y - half}, {x, at.y + half}};
}

void add_balloon(Dimension &out, const Callout &wish, Point tip, Point centre) {
  out.strokes.push_back({Line::dimension, Arc{centre, balloon_radius}});
  out.strokes.push_back({Line::visible, Arc{tip, dot_radius}});
  const double width = text_width(wish.label.lines[0], letter_height);
  out.texts.push_back(
      {centre - Point{0.5 * width, 0.5 * letter_height}, letter_height, false, wish.label.lines[0]});
  out.box = {centre - Point{balloon_radius, balloon_radius}, centre + Point{balloon_radius, balloon_radius}};
}

Dimension unplaced(const Callout &wish) {
  Dimension out = described(wish.feature, wish.label, wish.probe);
  out.kind = DimensionKind::leader;
  out.from = position(wish.tip);
  out.to = position(wish.surface);
  out.along = {wish.axis.x, wish.axis.y, wish.axis.z};
  return out;
}

} // namespace

std::vector<LeaderWay> leader_ways(const Callout &wish) {
  constexpr int directions = 24;
  constexpr double per_length = 0.25, off_direction = 8.0, backwards = 30.0, along_lines = 3.0;
  std::vector<LeaderWay> ways;
  for (const double reach : {7.0, 10.0, 14.0, 18.0, 23.0, 28.0, 34.0, 41.0, 49.0, 58.0, 68.0, 80.0}) {
    for (int i = 0; i < directions; ++i) {
      const double angle = full_turn * i / directions;
      double cost = per_length * reach;
      if (wish.towards) {
        const double along = std::cos(angle - *wish.towards);
        cost += off_direction * (1.0 - along) + (along < -0.05 ? backwards : 0.0);
      }
      const bool square = i % (directions / 4) == 0;
      if (wish.ornament == Ornament::datum) {
        const bool on_surface = wish.towards && std::cos(angle - *wish.towards) > 0.99;
        cost += square && on_surface ? 0.0 : 500.0; // stands square on its surface
      } else {
        cost += square ? along_lines : 0.0;
      }
      ways.push_back({angle, reach, cost});
    }
  }
  std::stable_sort(ways.begin(), ways.end(), [](const auto &a, const auto &b) { return a.cost < b.cost; });
  return ways;
}

Dimension callout_shape(const Callout &wish, const Stand &stand, const LeaderWay &way) {
  Dimension out = unplaced(wish);
  const Point direction = polar(1.0, way.angle);
  const Point tip = stand.paper(wish.tip) + wish.radius * stand.scale * direction;
  const Point elbow = tip + way.length * direction;
  const double width = block_width(wish);
  const bool rightward = direction.x > -1e-9;
  const bool straight = wish.ornament == Ornament::datum || wish.ornament == Ornament::balloon; // no bend
  const double run = straight ? 0.0 : shoulder;
  const Point end = elbow + Point{rightward ? run : -run, 0.0};
  Point at = rightward ? end + Point{0.8, 0.0} : end - Point{width + 0.8, 0.0};
  stroke(out, tip, elbow);
  if (!straight) {
    stroke(out, elbow, end);
    out.arrows.push_back({tip, -1.0 * direction});
  }
  switch (wish.ornament) {
  case Ornament::roughness:
    at = rightward ? end : end - Point{width, 0.0};
    add_roughness(out, wish, at, width);
    stroke(out, end, rightward ? at + Point{rough_left, 0.0} : at + Point{rough_left, 0.0});
    break;
  case Ornament::tolerance_frame:
    add_frame(out, wish, rightward ? end : end - Point{width, 0.0});
    break;
  case Ornament::balloon:
    add_balloon(out, wish, tip, elbow + balloon_radius * direction);
    break;
  case Ornament::datum: {
    // Triangle with its base on the surface, letter box centred on the leader.
    out.arrows.push_back({tip + arrow_length * direction, direction});
    const double half = 0.5 * frame_height;
    const Point centre = elbow + half * direction;
    add_frame(out, wish, centre - Point{0.5 * width, 0.0});
    break;
  }
  default:
    add_lines(out, wish, at);
  }
  return out;
}

} // namespace purgewright::drawing
