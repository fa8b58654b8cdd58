// How a plan's views share rows, and rows share sheets, at a scale.
//
// Units: millimetres on paper. Frame: none. Range and errors: none. Guarantee: same plan, same rows.
// Source: common practice, no source.
#pragma once

#include "view.hpp"

#include <optional>
#include <vector>

namespace purgewright::drawing {

inline constexpr double caption_height = 5.0;

struct Entry {
  const ViewPlan *view;
  double scale = 1.0;
  bool moved = false; // out of the row that its plan gives it
};
using Row = std::vector<Entry>;

// Height of a row above and below its common horizontal, and its width, on paper.
struct RowSize {
  double up = 0.0, down = 0.0, width = 0.0;
  double height() const { return up + down; }
};
RowSize measure(const Row &);

// Rows no wider than the area: what does not fit moves to a row below, the widest view keeps the first one.
std::vector<Row> wrapped(const std::vector<ViewPlan> &, double scale, double width);

// Rows of each sheet; nothing when a row is larger than a sheet. Pictorial views, which have no scale of
// their own, grow into what room is left.
enum class Packing {
  as_planned,
  joined, // rows share a shelf where they fit side by side
  without_dispensable
};
using Dealt = std::vector<std::vector<Row>>;
std::optional<Dealt> deal(const PartPlan &, double scale, const Box &area, Packing);

// A row of pictorial views as large as the area takes them, full size at most.
std::vector<Row> largest(const std::vector<ViewPlan> &, const Box &area);

} // namespace purgewright::drawing
