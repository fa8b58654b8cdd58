#include "joint_sketch.hpp"

#include "setup_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace purgewright::pages {
namespace {

using units::Dimension;

constexpr Colour tube_colour{0.80, 0.83, 0.87}, cap_colour{0.66, 0.72, 0.80}, pool_colour{0.95, 0.62, 0.20};
constexpr Pen outline{.width = 0.3}, thin{.width = 0.15};

class Sketch {
 public:
  Sketch(Canvas &canvas, const Box &box, const report::Findings &f, double points)
      : canvas_(canvas), box_(box), f_(f), job_(f.design.job), points_(points) {}

  void draw() {
    along();
    across();
  }

 private:
  std::string size(units::Length length) const {
    return units::shop_text(length.value(), Dimension::length, job_.shop.unit_system, 3);
  }

  void label(Point at, std::string_view text, Align align) {
    canvas_.text(at, text, {.points = points_, .align = align});
  }

  // Seen from the side: tube from the left, cap to the right, the electrode over the joint.
  void along() {
    const double wide = 0.60 * box_.width, line = line_height(points_);
    const double wall = job_.tube.wall.value(), cap = job_.cap.thickness.value();
    constexpr double metal_share = 0.26, cap_share = 0.22;
    const double scale = std::min(metal_share * box_.height / wall, cap_share * wide / cap);
    const double joint = box_.x + 0.62 * wide, top = box_.y + 0.52 * box_.height;
    const double bottom = box_.bottom() - line - 1.0, thick = scale * wall, rim = scale * cap;
    const Box tube{box_.x + 1.0, top, joint - box_.x - 1.0, thick}, plate{joint, top, rim, bottom - top};
    canvas_.fill(tube, tube_colour);
    canvas_.frame(tube, outline);
    canvas_.fill(plate, cap_colour);
    canvas_.frame(plate, outline);
    const double half = 0.5 * scale * std::min(f_.design.heat.pool_width, f_.design.heat.pool_target).value();
    pool({joint, top}, std::min(half, rim), thick);
    electrode({joint, top}, line);
    label({tube.x + 1.0, top + 0.5 * (thick + capital_height(points_))}, "tube " + size(job_.tube.wall),
          Align::left);
    label({joint + rim + 0.8, bottom - 1.0}, "cap " + size(job_.cap.thickness), Align::left);
    label({box_.x + 1.0, box_.bottom() - 0.8}, "aim at the joint, both edges in one pool", Align::left);
  }

  // Half a round on the joint, as deep as the wall.
  void pool(Point joint, double half, double deep) {
    std::vector<Point> round;
    constexpr int steps = 16;
    for (int i = 0; i <= steps; ++i) {
      const double angle = units::pi * i / steps;
      round.push_back({joint.x + half * std::cos(angle), joint.y + deep * std::sin(angle)});
    }
    canvas_.fill(round, pool_colour);
    canvas_.path(round, thin);
  }

  void electrode(Point joint, double line) {
    constexpr double arc = 2.6, tip = 4.0, half = 1.1; // mm on the page
    const double end = joint.y - arc;
    const std::vector<Point> tungsten{{joint.x, end},
                                      {joint.x + half, end - tip},
                                      {joint.x + half, box_.y + 1.0},
                                      {joint.x - half, box_.y + 1.0},
                                      {joint.x - half, end - tip}};
    canvas_.fill(tungsten, grey);
    canvas_.line({joint.x + 2.2, joint.y}, {joint.x + 2.2, end}, thin);
    for (const double y : {joint.y, end}) {
      canvas_.line({joint.x + 1.4, y}, {joint.x + 3.0, y}, thin);
    }
    label({joint.x + 3.6, joint.y - 0.5 * arc + 0.5 * capital_height(points_)}, "arc " + arc_length(f_),
          Align::left);
    label({joint.x - half - 0.8, box_.y + line}, "tungsten", Align::right);
  }

  // Seen along the tube, looking at the cap: the torch leans over what is welded.
  void across() {
    const double left = box_.x + 0.66 * box_.width, wide = box_.right() - left;
    const double line = line_height(points_);
    const Point top{left + 0.5 * wide, box_.y + 0.52 * box_.height};
    const double radius = std::min(0.36 * wide, 0.5 * (box_.bottom() - line - 0.5 - top.y));
    const Point centre{top.x, top.y + radius};
    canvas_.disc(centre, radius, cap_colour);
    canvas_.arc(centre, radius, 0.0, 2.0 * units::pi, outline);
    const bool clockwise = job_.rotation.direction == job::Direction::clockwise;
    const double lean = (clockwise ? -1.0 : 1.0) * job_.torch.tilt.value();
    constexpr double gap = 1.5, length = 9.0; // mm on the page
    const double reach = std::min(length, top.y - box_.y - line - gap);
    const Point along{std::sin(lean), -std::cos(lean)};
    const Point tip{top.x + gap * along.x, top.y + gap * along.y};
    canvas_.line(tip, {tip.x + reach * along.x, tip.y + reach * along.y}, {.width = 1.6, .colour = grey});
    canvas_.line(top, {top.x, top.y - gap - reach}, {.width = 0.15, .dashes = {1.0, 0.8}});
    label({top.x, box_.y + 0.8 * line}, fmt::format("{:.0f}\u00b0", units::to_degrees(job_.torch.tilt)),
          clockwise ? Align::right : Align::left);
    turn(centre, radius, clockwise);
    label({top.x, box_.bottom() - 0.8}, "looking at the cap", Align::centre);
  }

  // The tube turns against the weld's sense.
  void turn(Point centre, double radius, bool clockwise) {
    constexpr double inner = 0.62, from = 0.25 * units::pi, arrow = 1.6;
    canvas_.arc(centre, inner * radius, from, units::pi - from, thin);
    const double end = clockwise ? from : units::pi - from;
    const Point at{centre.x + inner * radius * std::cos(end), centre.y + inner * radius * std::sin(end)};
    const double way = clockwise ? 1.0 : -1.0; // of x there
    canvas_.fill(std::vector<Point>{{at.x + 0.6 * way, at.y - 0.9},
                                    {at.x - arrow * way, at.y - 0.2},
                                    {at.x - 0.1 * way, at.y + arrow}},
                 black);
    label({centre.x, centre.y + 0.5 * capital_height(points_)}, "turn", Align::centre);
  }

  Canvas &canvas_;
  Box box_;
  const report::Findings &f_;
  const job::Job &job_;
  double points_;
};

} // namespace

void draw_joint(Canvas &canvas, const Box &box, const report::Findings &f, double points) {
  Sketch(canvas, box, f, points).draw();
}

} // namespace purgewright::pages
