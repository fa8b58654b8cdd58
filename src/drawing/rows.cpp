#include "rows.hpp"

#include <algorithm>

namespace purgewright::drawing {

double scale_of(const ViewPlan &view, double scale) {
  return view.scale > 0.0 ? view.scale : scale * view.enlarge;
}

namespace {

double width_of(const ViewPlan &view, double scale) {
  return scale_of(view, scale) * view.box().width() + view.room.left + view.room.right;
}

} // namespace

RowSize measure(const Row &row, double scale) {
  RowSize size;
  double floating = 0.0;
  for (const auto &[view, moved] : row) {
    const Box box = view->box();
    const double s = scale_of(*view, scale);
    size.width += width_of(*view, scale);
    if (view->floating) {
      floating = std::max(floating, s * box.height() + view->room.above + view->room.below);
    } else {
      const double caption = moved ? 2.0 * caption_height : 0.0;
      size.up = std::max(size.up, s * box.greatest.y + view->room.above + caption);
      size.down = std::max(size.down, -s * box.least.y + view->room.below);
    }
  }
  const double more = std::max(0.0, floating - size.height());
  size.up += 0.5 * more;
  size.down += 0.5 * more;
  return size;
}

std::vector<Row> wrapped(const std::vector<ViewPlan> &views, double scale, double width) {
  std::vector<const ViewPlan *> left;
  double whole = 0.0;
  for (const ViewPlan &view : views) {
    left.push_back(&view);
    whole += width_of(view, scale);
  }
  if (whole > width) {
    std::stable_sort(left.begin(), left.end(),
                     [&](const auto *a, const auto *b) { return width_of(*a, scale) > width_of(*b, scale); });
  }
  std::vector<Row> rows(1);
  double used = 0.0;
  for (const ViewPlan *view : left) {
    if (!rows.back().empty() && used + width_of(*view, scale) > width) {
      rows.emplace_back();
      used = 0.0;
    }
    rows.back().push_back({view, whole > width && view != left.front()});
    used += width_of(*view, scale);
  }
  return rows;
}

std::optional<Dealt> deal(const PartPlan &plan, double scale, const Box &area, int sheets) {
  Dealt out(1);
  double used = 0.0;
  for (const auto &views : plan.rows) {
    for (const Row &row : wrapped(views, scale, area.width())) {
      const RowSize size = measure(row, scale);
      if (size.width > area.width() || size.height() > area.height()) {
        return std::nullopt;
      }
      if (used + size.height() > area.height()) {
        out.emplace_back();
        used = 0.0;
      }
      out.back().push_back(row);
      used += size.height();
    }
  }
  return static_cast<int>(out.size()) == sheets ? std::optional(out) : std::nullopt;
}

} // namespace purgewright::drawing
