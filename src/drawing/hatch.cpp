#include "hatch.hpp"

namespace purgewright::drawing {
namespace {

Point turned(Point p, double c, double s) {
  return {c * p.x + s * p.y, -s * p.x + c * p.y};
}

} // namespace

std::vector<Segment> hatch(const std::vector<Loop> &loops, double spacing, double angle) {
  const double c = std::cos(angle), s = std::sin(angle);
  std::vector<Segment> edges;
  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (const Loop &loop : loops) {
    for (std::size_t i = 0; i < loop.size(); ++i) {
      edges.push_back({turned(loop[i], c, s), turned(loop[(i + 1) % loop.size()], c, s)});
      low = std::min(low, edges.back().a.y);
      high = std::max(high, edges.back().a.y);
    }
  }
  std::vector<Segment> out;
  constexpr double off_grid = 0.37; // of the spacing: lines do not fall on corners of round sizes
  for (double y = (std::floor(low / spacing) + off_grid) * spacing; y < high; y += spacing) {
    std::vector<double> cuts;
    for (const Segment &e : edges) {
      if ((e.a.y <= y) != (e.b.y <= y)) {
        cuts.push_back(e.a.x + (y - e.a.y) / (e.b.y - e.a.y) * (e.b.x - e.a.x));
      }
    }
    std::sort(cuts.begin(), cuts.end());
    for (std::size_t i = 0; i + 1 < cuts.size(); i += 2) {
      if (cuts[i + 1] - cuts[i] > 1e-6) {
        out.push_back({turned({cuts[i], y}, c, -s), turned({cuts[i + 1], y}, c, -s)});
      }
    }
  }
  return out;
}

std::vector<Segment> clipped(const Segment &segment, const Arc &circle) {
  const Point d = segment.b - segment.a, f = segment.a - circle.centre;
  const double a = dot(d, d), b = 2.0 * dot(f, d), c = dot(f, f) - circle.radius * circle.radius;
  const double root = b * b - 4.0 * a * c;
  if (a == 0.0 || root <= 0.0) {
    return {};
  }
  const double low = std::max(0.0, (-b - std::sqrt(root)) / (2.0 * a));
  const double high = std::min(1.0, (-b + std::sqrt(root)) / (2.0 * a));
  if (high - low <= 1e-9) {
    return {};
  }
  return {{segment.a + low * d, segment.a + high * d}};
}

} // namespace purgewright::drawing
