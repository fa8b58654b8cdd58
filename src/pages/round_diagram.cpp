#include "round_diagram.hpp"

#include "purgewright/report/bench_numbers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace purgewright::pages {
namespace {

using units::pi;

constexpr Colour tack_colour{0.15, 0.15, 0.15}, run_colour{0.10, 0.32, 0.65}, metal{0.88, 0.89, 0.91},
    felt_colour{0.45, 0.27, 0.10};
constexpr std::size_t most_labels = 12; // runs whose start angles still find room

// Collar angle, counterclockwise from the top, on the paper.
Point on(Point centre, double radius, double angle) {
  return {centre.x - radius * std::sin(angle), centre.y - radius * std::cos(angle)};
}

class Round {
 public:
  Round(Canvas &canvas, const Box &box, const report::Findings &f, double points)
      : canvas_(canvas), f_(f),
        points_(points), centre_{box.x + 0.5 * box.width, box.y + 0.5 * box.height + 3.0},
        outer_(0.5 * std::min(box.width, box.height) - 7.5), ring_(outer_ - 6.0) {}

  void draw() {
    canvas_.disc(centre_, ring_, metal);
    canvas_.arc(centre_, ring_, 0.0, 2.0 * pi, {.width = 0.5});
    ticks();
    const auto &plan = f_.design.heat;
    for (std::size_t i = 0; i < plan.runs.size(); ++i) {
      run(i, plan.runs[i].pass);
    }
    for (std::size_t i = 0; i < plan.tacks.size(); ++i) {
      tack(i, plan.tacks[i].pass);
    }
    torch();
    sense();
  }

 private:
  void ticks() {
    for (int i = 0; i < 36; ++i) {
      const double angle = i * pi / 18.0, length = i % 9 == 0 ? 2.0 : 0.9;
      canvas_.line(on(centre_, ring_, angle), on(centre_, ring_ - length, angle),
                   {.width = 0.2, .colour = grey});
    }
  }

  void run(std::size_t number, const fixture::Pass &pass) {
    const double radius = ring_ + (number % 2 == 0 ? 2.6 : 4.8);
    const double from = pass.start.value(), to = pass.end.value();
    if (from == to) {
      spot(number, from);
      return;
    }
    const bool forward = to >= from;
    // The canvas turns clockwise from +X; the collar counterclockwise from the top.
    const auto screen = [](double angle) { return -0.5 * pi - angle; };
    canvas_.arc(centre_, radius, screen(std::max(from, to)), screen(std::min(from, to)),
                {.width = 0.9, .colour = run_colour});
    canvas_.line(on(centre_, ring_ - 0.6, from), on(centre_, radius + 1.1, from),
                 {.width = 0.5, .colour = run_colour});
    arrow(radius, to, forward);
    tape(number, to);
    const double middle = 0.5 * (from + to);
    badge(on(centre_, radius, middle), 1.9, fmt::format("{}", number + 1), white, run_colour, run_colour);
    if (f_.design.heat.runs.size() <= most_labels) {
      label(from, radius);
    }
  }

  void spot(std::size_t number, double angle) {
    canvas_.line(on(centre_, ring_ - 0.6, angle), on(centre_, ring_ + 1.6, angle),
                 {.width = 0.5, .colour = run_colour});
    canvas_.disc(on(centre_, ring_, angle), 1.1, run_colour);
    badge(on(centre_, ring_ + 3.6, angle), 1.9, fmt::format("{}", number + 1), white, run_colour, run_colour);
  }

  void label(double angle, double) {
    const Point at = on(centre_, outer_ + 3.2, angle);
    canvas_.text({at.x, at.y + 0.5 * capital_height(points_)},
                 report::collar_degrees(units::radians(angle)) + "\u00b0",
                 {.points = points_, .colour = run_colour, .align = Align::centre});
  }

  // Its name only where it stands clear of the start angles' labels.
  void tape(std::size_t number, double angle) {
    constexpr double half = 1.3, thick = 0.5, clear = 5.0; // mm
    const double turn = thick / ring_;
    canvas_.fill(
        std::vector<Point>{on(centre_, ring_ - half, angle - turn), on(centre_, ring_ + half, angle - turn),
                           on(centre_, ring_ + half, angle + turn), on(centre_, ring_ - half, angle + turn)},
        felt_colour);
    const double radius = outer_ + 3.2;
    const Point at = on(centre_, radius, angle);
    const auto &runs = f_.design.heat.runs;
    const bool free = runs.size() <= most_labels && std::ranges::all_of(runs, [&](const heat::Weld &run) {
                        const Point other = on(centre_, radius, run.pass.start.value());
                        return std::hypot(at.x - other.x, at.y - other.y) > clear;
                      });
    if (free) {
      canvas_.text({at.x, at.y + 0.5 * capital_height(points_)}, fmt::format("T{}", number + 1),
                   {.points = points_, .bold = true, .colour = felt_colour, .align = Align::centre});
    }
  }

  void arrow(double radius, double at, bool forward) {
    const double back = (forward ? -1.0 : 1.0) * 2.2 / radius;
    canvas_.fill(std::vector<Point>{on(centre_, radius, at), on(centre_, radius + 1.1, at + back),
                                    on(centre_, radius - 1.1, at + back)},
                 run_colour);
  }

  void tack(std::size_t number, const fixture::Pass &pass) {
    const double angle = 0.5 * (pass.start + pass.end).value();
    canvas_.disc(on(centre_, ring_, angle), 0.9, tack_colour);
    badge(on(centre_, ring_ - 4.6, angle), 2.0, fmt::format("{}", number + 1), tack_colour, tack_colour,
          white);
  }

  void badge(Point at, double radius, const std::string &text, Colour inside, Colour rim, Colour letters) {
    canvas_.disc(at, radius, rim);
    canvas_.disc(at, radius - 0.35, inside);
    canvas_.text({at.x, at.y + 0.5 * capital_height(points_)}, text,
                 {.points = points_, .bold = true, .colour = letters, .align = Align::centre});
  }

  // A cup over the top of the joint.
  void torch() {
    const Point tip = on(centre_, outer_ + 5.2, 0.0);
    canvas_.fill(std::vector<Point>{{tip.x - 1.6, tip.y - 2.8}, {tip.x + 1.6, tip.y - 2.8}, {tip.x, tip.y}},
                 grey);
    canvas_.text({tip.x + 3.0, tip.y - 1.0}, "torch", {.points = points_, .colour = grey});
  }

  void sense() {
    const Letters small{.points = points_, .align = Align::centre};
    canvas_.text({centre_.x, centre_.y - 0.2 * line_height(points_)}, "looking", small);
    canvas_.text({centre_.x, centre_.y + 0.8 * line_height(points_)}, "at the cap", small);
  }

  Canvas &canvas_;
  const report::Findings &f_;
  double points_;
  Point centre_;
  double outer_, ring_;
};

} // namespace

void draw_round(Canvas &canvas, const Box &box, const report::Findings &f, double points) {
  Round(canvas, box, f, points).draw();
}

} // namespace purgewright::pages
