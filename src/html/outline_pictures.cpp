#include "html/outline_pictures.hpp"

#include "html/markup.hpp"

#include "purgewright/fixture/cavity.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <limits>
#include <span>
#include <variant>

namespace purgewright::html {
namespace {

using fixture::Disc;
using fixture::Outline;
using fixture::Polygon;
using report::ComparedDesign;
using report::Comparison;

// Which ones stand side by side, and how large on paper. mm.
constexpr double widest = 88.0;    // two beside each other within a page's margins; one on a telephone
constexpr double margin = 1.0;     // that an edge's line needs
constexpr double least_bar = 12.0; // a bar shorter than that is no measure
constexpr std::array reductions{1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0}; // ISO 5455

struct Frame {
  double left = std::numeric_limits<double>::infinity(), right = -left, low = left, high = -left;
  double width() const { return right - left; }
  double height() const { return high - low; }
  void include(double across, double up) {
    left = std::min(left, across);
    right = std::max(right, across);
    low = std::min(low, up);
    high = std::max(high, up);
  }
};

double mm(units::Length length) {
  return units::to_millimetres(length);
}

void include(const Polygon &polygon, Frame &frame) {
  for (const auto &point : polygon) {
    frame.include(mm(point.across), mm(point.up));
  }
}

void include(const Disc &disc, Frame &frame) {
  const double x = mm(disc.centre.across), z = mm(disc.centre.up), r = mm(disc.radius);
  frame.include(x - r, z - r);
  frame.include(x + r, z + r);
}

Frame side_frame(const ComparedDesign &design) {
  Frame frame;
  for (const Outline &outline : design.outlines) {
    include(outline.side, frame);
  }
  return frame;
}

Frame end_frame(const ComparedDesign &design) {
  Frame frame;
  for (const Outline &outline : design.outlines) {
    std::visit([&](const auto &end) { include(end, frame); }, outline.end);
  }
  return frame;
}

// What an outline is drawn as.
std::string_view kind_of(std::string_view part) {
  constexpr std::array<std::string_view, 5> chamber{ids::chamber_end_plate, ids::wiper_plate,
                                                    ids::plenum_cover, ids::slot_cover, ids::backing_pin};
  constexpr std::array<std::string_view, 7> turning{ids::end_plug,    ids::plug_bush, ids::plug_knob,
                                                    ids::purge_lance, ids::spindle,   ids::index_collar,
                                                    "ball-bearing"};
  if (part == "tube" || part == "cap") {
    return "workpiece";
  }
  if (fixture::is_chamber_wall(part) || std::ranges::find(chamber, part) != chamber.end()) {
    return "chamber";
  }
  return std::ranges::find(turning, part) != turning.end() ? "turning" : "bench";
}

// Up is down on a screen.
std::string shape(std::string_view part, const Polygon &polygon) {
  std::string path;
  for (const auto &point : polygon) {
    path += fmt::format("{}{:.3f} {:.3f}", path.empty() ? 'M' : 'L', mm(point.across), -mm(point.up));
  }
  return fmt::format("<path data-part=\"{}\" class=\"{}\" d=\"{}Z\"/>", safe(part), kind_of(part), path);
}

std::string shape(std::string_view part, const Disc &disc) {
  return fmt::format("<circle data-part=\"{}\" class=\"{}\" cx=\"{:.3f}\" cy=\"{:.3f}\" r=\"{:.3f}\"/>",
                     safe(part), kind_of(part), mm(disc.centre.across), -mm(disc.centre.up), mm(disc.radius));
}

struct Sizes {
  double reduction = 1.0;
  units::UnitSystem system = units::UnitSystem::metric;
  std::string words(double length_mm) const {
    return units::shop_text(units::millimetres(length_mm).value(), units::Dimension::length, system);
  }
};

std::string picture(const Frame &frame, const Sizes &sizes, std::string_view words,
                    const std::string &shapes) {
  const double edge = margin * sizes.reduction;
  const double width = frame.width() + 2.0 * edge, height = frame.height() + 2.0 * edge;
  return fmt::format(
      "<svg role=\"img\" aria-label=\"{}: {} wide, {} high\" width=\"{:.3f}mm\" height=\"{:.3f}mm\" "
      "viewBox=\"{:.3f} {:.3f} {:.3f} {:.3f}\">{}</svg>\n",
      safe(words), sizes.words(frame.width()), sizes.words(frame.height()), width / sizes.reduction,
      height / sizes.reduction, frame.left - edge, -frame.high - edge, width, height, shapes);
}

// What one looks for lies on top.
std::vector<Outline> in_order(std::vector<Outline> outlines) {
  constexpr std::array<std::string_view, 4> kinds{"bench", "chamber", "turning", "workpiece"};
  std::ranges::stable_sort(outlines, {}, [&](const Outline &outline) {
    return std::ranges::find(kinds, kind_of(outline.part)) - kinds.begin();
  });
  return outlines;
}

std::string pictures(const ComparedDesign &design, const Sizes &sizes) {
  std::string side, end;
  for (const Outline &outline : in_order(design.outlines)) {
    side += shape(outline.part, outline.side);
    end += std::visit([&](const auto &seen) { return shape(outline.part, seen); }, outline.end);
  }
  return fmt::format("<figure class=\"outline\">\n{}{}<figcaption>{}</figcaption></figure>\n",
                     picture(side_frame(design), sizes, design.name + " from the side", side),
                     picture(end_frame(design), sizes, design.name + " from the cap's end", end),
                     safe(design.name));
}

double reduction_for(const Comparison &c) {
  double most = 0.0;
  for (const ComparedDesign &design : c.designs) {
    if (!design.outlines.empty()) {
      most = std::max({most, side_frame(design).width(), end_frame(design).width()});
    }
  }
  const auto *const fits =
      std::ranges::find_if(reductions, [&](double by) { return most / by + 2.0 * margin <= widest; });
  return fits == reductions.end() ? reductions.back() : *fits;
}

// A round length in the job's unit.
std::string bar(const Sizes &sizes) {
  constexpr std::array metric{10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0};
  constexpr double inch = 25.4;
  constexpr std::array inches{0.5 * inch,  inch,        2.0 * inch,  5.0 * inch,
                              10.0 * inch, 20.0 * inch, 50.0 * inch, 100.0 * inch};
  const std::span<const double> all = sizes.system == units::UnitSystem::metric
                                          ? std::span<const double>(metric)
                                          : std::span<const double>(inches);
  const auto fits =
      std::ranges::find_if(all, [&](double length) { return length / sizes.reduction >= least_bar; });
  const double length = fits == all.end() ? all.back() : *fits, on_paper = length / sizes.reduction;
  return fmt::format(
      "<p class=\"scale\"><svg role=\"img\" aria-label=\"a bar of {0}\" width=\"{1:.3f}mm\" height=\"3mm\" "
      "viewBox=\"0 0 {1:.3f} 3\"><path d=\"M0 0V3M0 1.5H{1:.3f}M{1:.3f} 0V3\"/></svg> {0}, "
      "1:{2:g} on paper printed at full size</p>\n",
      sizes.words(length), on_paper, sizes.reduction);
}

} // namespace

std::string outline_section(const Comparison &c) {
  const Sizes sizes{reduction_for(c), c.unit_system};
  std::string drawn;
  std::size_t count = 0;
  for (const ComparedDesign &design : c.designs) {
    if (!design.outlines.empty()) {
      drawn += pictures(design, sizes);
      ++count;
    }
  }
  if (drawn.empty()) {
    return {};
  }
  const std::string few = c.designs.size() > report::most_drawn
                              ? fmt::format(" {} of the {} designs, spread evenly.", count, c.designs.size())
                              : std::string();
  return fmt::format(
      "<section id=\"outlines\" aria-labelledby=\"outlines-head\">\n<h2 id=\"outlines-head\">How large they "
      "are</h2>\n<p>All to one scale, from the side and from the cap's end; tube and cap are filled.{}</p>\n"
      "{}<div class=\"outlines\">\n{}</div>\n</section>\n",
      few, bar(sizes), drawn);
}

} // namespace purgewright::html
