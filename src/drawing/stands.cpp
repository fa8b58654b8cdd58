#include "stands.hpp"

namespace purgewright::drawing {
namespace {

constexpr double close_gap = 10.0; // between the rooms of neighbours

// Gap between `count` neighbours that leave `spare` free, and margin before the first.
struct Gaps {
  double margin, between;
};
Gaps gaps(double spare, std::size_t count, Spread spread) {
  const double even = spare / double(count + 1);
  const double between = spread == Spread::wide ? even : std::min(even, close_gap);
  return {0.5 * (spare - between * double(count - 1)), between};
}

Stand stand_of(const Entry &entry, double left, double top, const RowSize &size) {
  const ViewPlan &view = *entry.view;
  const Box box = view.box();
  const double middle = top - 0.5 * size.height() + 0.5 * (view.room.below - view.room.above);
  const Point origin{left + view.room.left - entry.scale * box.least.x,
                     view.floating ? middle - entry.scale * box.centre().y : top - size.up};
  Stand stand{&view, origin, entry.scale, {}, entry.moved};
  stand.box.include(stand.paper(box.least));
  stand.box.include(stand.paper(box.greatest));
  return stand;
}

} // namespace

std::vector<Stand> stand_up(const std::vector<Row> &rows, const Box &area, Spread spread) {
  std::vector<Stand> out;
  double used = 0.0;
  for (const Row &row : rows) {
    used += measure(row).height();
  }
  const Gaps down = gaps(area.height() - used, rows.size(), spread);
  double top = area.greatest.y - down.margin;
  for (const Row &row : rows) {
    const RowSize size = measure(row);
    const Gaps across = gaps(area.width() - size.width, row.size(), spread);
    double left = area.least.x + across.margin;
    for (const Entry &entry : row) {
      out.push_back(stand_of(entry, left, top, size));
      left += entry.scale * entry.view->box().width() + entry.view->room.left + entry.view->room.right +
              across.between;
    }
    top -= size.height() + down.between;
  }
  return out;
}

} // namespace purgewright::drawing
