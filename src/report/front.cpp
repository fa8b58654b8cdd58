#include "purgewright/report/compare.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace purgewright::report {
namespace {

using Point = std::vector<double>; // smaller is better in each

double sense(std::size_t metric) {
  return metrics()[metric].better == Better::larger ? -1.0 : 1.0;
}

// Nothing for a design that fails a rule or does not have one of the metrics.
Point point_of(const ComparedDesign &design, std::span<const std::size_t> ranked) {
  Point point;
  for (const std::size_t metric : ranked) {
    const double value = sense(metric) * design.values[metric];
    if (design.rules.failing > 0 || !std::isfinite(value)) {
      return {};
    }
    point.push_back(value);
  }
  return point;
}

bool no_worse(const Point &one, const Point &other) {
  return std::ranges::equal(one, other, std::less_equal<>());
}

} // namespace

std::vector<std::size_t> front(const Comparison &c) {
  std::vector<Point> points;
  std::vector<std::size_t> order;
  for (std::size_t d = 0; d < c.designs.size(); ++d) {
    points.push_back(point_of(c.designs[d], c.ranked));
    if (!points.back().empty()) {
      order.push_back(d);
    }
  }
  // Whatever beats a design comes before it, so that only the front so far need be asked.
  std::ranges::stable_sort(order, {}, [&](std::size_t d) -> const Point & { return points[d]; });
  std::vector<std::size_t> found;
  for (const std::size_t d : order) {
    const bool beaten = std::ranges::any_of(found, [&](std::size_t better) {
      return no_worse(points[better], points[d]) && points[better] != points[d];
    });
    if (!beaten) {
      found.push_back(d);
    }
  }
  return found;
}

std::optional<std::size_t> rankable(std::string_view id) {
  const auto found = std::ranges::find(metrics(), id, &Metric::id);
  return found == metrics().end() || found->better == Better::neither
             ? std::nullopt
             : std::optional(static_cast<std::size_t>(found - metrics().begin()));
}

} // namespace purgewright::report
