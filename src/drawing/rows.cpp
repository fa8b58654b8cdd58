#include "rows.hpp"

#include <algorithm>

namespace purgewright::drawing {

namespace {

constexpr double row_gap = 8.0; // that a growing view leaves free

double scale_of(const ViewPlan &view, double scale) {
  return view.scale > 0.0 ? view.scale : scale * view.enlarge;
}

double width_of(const Entry &entry) {
  const Room &room = entry.view->room;
  return entry.scale * entry.view->box().width() + room.left + room.right;
}

double height_of(const Entry &entry) {
  const Room &room = entry.view->room;
  return entry.scale * entry.view->box().height() + room.above + room.below;
}

// At most as large as views to scale.
void grow(Row &row, double scale, double width, double height) {
  for (Entry &entry : row) {
    if (entry.view->to_scale) {
      continue;
    }
    const Box box = entry.view->box();
    const double wider = entry.scale + std::max(0.0, width - measure(row).width) / box.width();
    const double higher = entry.scale + std::max(0.0, height - height_of(entry)) / box.height();
    entry.scale = std::max(entry.scale, std::min({wider, higher, scale}));
  }
}

void grow_pictorials(std::vector<Row> &rows, double scale, const Box &area) {
  for (Row &row : rows) {
    double others = 0.0;
    for (const Row &other : rows) {
      others += &other == &row ? 0.0 : measure(other).height() + row_gap;
    }
    grow(row, scale, area.width(), area.height() - others);
  }
}

} // namespace

RowSize measure(const Row &row) {
  RowSize size;
  double floating = 0.0;
  for (const Entry &entry : row) {
    const Box box = entry.view->box();
    const Room &room = entry.view->room;
    size.width += width_of(entry);
    if (entry.view->floating) {
      floating = std::max(floating, height_of(entry));
    } else {
      const double caption = entry.moved ? 2.0 * caption_height : 0.0;
      size.up = std::max(size.up, entry.scale * box.greatest.y + room.above + caption);
      size.down = std::max(size.down, -entry.scale * box.least.y + room.below);
    }
  }
  const double more = std::max(0.0, floating - size.height());
  size.up += 0.5 * more;
  size.down += 0.5 * more;
  return size;
}

std::vector<Row> wrapped(const std::vector<ViewPlan> &views, double scale, double width) {
  Row left;
  double whole = 0.0;
  for (const ViewPlan &view : views) {
    left.push_back({&view, scale_of(view, scale)});
    whole += width_of(left.back());
  }
  const bool fits = whole <= width;
  if (!fits) {
    std::stable_sort(left.begin(), left.end(),
                     [](const Entry &a, const Entry &b) { return width_of(a) > width_of(b); });
  }
  std::vector<Row> rows(1);
  double used = 0.0;
  for (std::size_t i = 0; i < left.size(); ++i) {
    Entry &entry = left[i];
    if (!rows.back().empty() && used + width_of(entry) > width) {
      rows.emplace_back();
      used = 0.0;
    }
    entry.moved = !fits && i > 0;
    rows.back().push_back(entry);
    used += width_of(entry);
  }
  return rows;
}

namespace {

// What its neighbours explain stays with them; a view with a caption, a detail and a pictorial view stand
// anywhere.
std::vector<Row> pieces_of(const Row &row) {
  const auto alone = [](const Entry &e) { return e.view->floating || e.moved; };
  const bool explained = std::any_of(row.begin(), row.end(),
                                     [&](const Entry &e) { return !alone(e) && e.view->caption.empty(); });
  std::vector<Row> out(1);
  for (const Entry &entry : row) {
    if (alone(entry) || !explained) {
      out.push_back({entry});
    } else {
      out.front().push_back(entry);
    }
  }
  std::erase_if(out, [](const Row &piece) { return piece.empty(); });
  return out;
}

// Side by side as far as the width goes.
std::vector<Row> joined(const std::vector<Row> &rows, double width, bool dispensable) {
  std::vector<Row> out(1);
  for (const Row &row : rows) {
    for (const Row &piece : pieces_of(row)) {
      if (!dispensable && piece.front().view->dispensable) {
        continue;
      }
      if (!out.back().empty() && measure(out.back()).width + measure(piece).width > width) {
        out.emplace_back();
      }
      out.back().insert(out.back().end(), piece.begin(), piece.end());
    }
  }
  return out;
}

std::vector<Row> rows_of(const PartPlan &plan, double scale, double width) {
  std::vector<Row> out;
  for (const auto &views : plan.rows) {
    const auto rows = wrapped(views, scale, width);
    out.insert(out.end(), rows.begin(), rows.end());
  }
  return out;
}

} // namespace

std::optional<Dealt> deal(const PartPlan &plan, double scale, const Box &area, Packing packing) {
  std::vector<Row> rows = rows_of(plan, scale, area.width());
  if (packing != Packing::as_planned) {
    rows = joined(rows, area.width(), packing == Packing::joined);
  }
  Dealt out(1);
  double used = 0.0;
  for (const Row &row : rows) {
    const RowSize size = measure(row);
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
  for (auto &sheet : out) {
    grow_pictorials(sheet, scale, area);
  }
  return out;
}

std::vector<Row> largest(const std::vector<ViewPlan> &views, const Box &area) {
  constexpr double small = 0.01, full_size = 1.0;
  std::vector<Row> rows;
  if (!views.empty()) {
    rows = wrapped(views, small, area.width());
    grow_pictorials(rows, full_size, area);
  }
  return rows;
}

} // namespace purgewright::drawing
