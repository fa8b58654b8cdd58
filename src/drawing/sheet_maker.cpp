#include "sheet_maker.hpp"

#include "drawn_view.hpp"
#include "linear_shape.hpp"
#include "scales.hpp"

#include "purgewright/drawing/lettering.hpp"

#include <fmt/format.h>

#include <utility>

namespace purgewright::drawing {
namespace {

void add_text(Sheet &sheet, Placer &placer, Point middle, double height, const std::string &content) {
  const double width = text_width(content, height);
  sheet.texts.push_back({{middle.x - 0.5 * width, middle.y}, height, false, content});
  const Box box = text_box(sheet.texts.back()).grown(0.6);
  sheet.reserved.push_back(box);
  placer.reserve(box);
}

void add_stroke(Sheet &sheet, Placer &placer, Line line, const Curve &curve) {
  sheet.strokes.push_back({line, curve});
  placer.add_ink(sheet.strokes.back());
}

// One end of a cutting plane: a wide stroke outside the view, an arrow along the sight, the letter behind it.
void cut_end(Sheet &sheet, Placer &placer, const Mark &mark, Point end, Point outwards, Point sight) {
  constexpr double clear = 3.0, stroke = 7.0, tail = 8.0;
  const Point a = end + clear * outwards, b = a + stroke * outwards;
  add_stroke(sheet, placer, Line::cutting, Segment{a, b});
  const Point foot = b - tail * sight;
  add_stroke(sheet, placer, Line::dimension, Segment{foot, b});
  sheet.arrows.push_back({b, sight});
  const Point letter =
      foot - 1.5 * sight +
      Point{0.0, sight.y > 0.5 ? -caption_height : (sight.y < -0.5 ? 0.0 : -0.5 * caption_height)} -
      Point{3.0 * sight.x, 0.0};
  add_text(sheet, placer, letter, caption_height, mark.letter);
}

void add_marks(Sheet &sheet, Placer &placer, const Stand &stand) {
  for (const Mark &mark : stand.plan->marks) {
    if (mark.kind == Mark::Kind::detail) {
      const Point c = stand.paper(mark.a);
      const double radius = length(stand.paper(mark.b) - c);
      add_stroke(sheet, placer, Line::dimension, Arc{c, radius});
      continue;
    }
    const Looking &looking = stand.plan->looking;
    const Point a = stand.paper(mark.a), b = stand.paper(mark.b), sight = unit(looking(mark.look));
    const Point way = unit(b - a);
    cut_end(sheet, placer, mark, a, -1.0 * way, sight);
    cut_end(sheet, placer, mark, b, way, sight);
  }
}

void add_caption(Sheet &sheet, Placer &placer, const Stand &stand, double scale) {
  const ViewPlan &plan = *stand.plan;
  const bool own_scale = plan.to_scale && std::abs(stand.scale - scale) > 1e-9;
  std::string text = stand.moved && plan.caption.empty() ? plan.moved_caption : plan.caption;
  if (text.empty() && !own_scale) {
    return;
  }
  if (own_scale) {
    text += fmt::format("{}({})", text.empty() ? "" : " ", scale_text(stand.scale));
  }
  // The row of a moved view has room for its caption above the arrows of cutting planes.
  const double y = stand.box.greatest.y + plan.room.above + (stand.moved ? 0.5 : -caption_height - 1.5);
  sheet.texts.push_back(placer.place(Caption{text, caption_height, {stand.box.centre().x, y}}, stand));
  sheet.reserved.push_back(text_box(sheet.texts.back()));
}

using Wish = std::variant<const Linear *, const Callout *>;
struct Placing {
  Wish wish;
  const Stand *stand;
};

// Linear dimensions first, short ones before long ones, so that extension lines do not cross; then callouts.
std::vector<Placing> in_order(const std::vector<Stand> &stands) {
  std::vector<Placing> out, callouts;
  for (const Stand &stand : stands) {
    for (const Callout &wish : stand.plan->callouts) {
      // A datum has one direction to stand in, so it goes before everything.
      (wish.ornament == Ornament::datum ? out : callouts).push_back({&wish, &stand});
    }
  }
  for (const Stand &stand : stands) {
    const auto first = static_cast<std::ptrdiff_t>(out.size());
    for (const Linear &wish : stand.plan->linears) {
      out.push_back({&wish, &stand});
    }
    std::stable_sort(out.begin() + first, out.end(), [](const Placing &a, const Placing &b) {
      return std::get<const Linear *>(a.wish)->label.value < std::get<const Linear *>(b.wish)->label.value;
    });
  }
  out.insert(out.end(), callouts.begin(), callouts.end());
  return out;
}

// A dimension's lines may have to pass all others on its side.
void expect_extension_lines(Placer &placer, const Stand &stand) {
  const auto &wishes = stand.plan->linears;
  for (const Linear &wish : wishes) {
    const auto beside = std::count_if(wishes.begin(), wishes.end(),
                                      [&](const Linear &other) { return other.side == wish.side; });
    for (const Segment &line : extension_lines(wish, stand, static_cast<int>(beside) - 1)) {
      placer.expect(line);
    }
  }
}

// Callouts were placed one after another, the first without regard to the last: each again among all others,
// until none finds a better place.
void settle(const Placer &start, const std::vector<Placing> &order, std::vector<Dimension> &placed) {
  constexpr int rounds = 4;
  bool moved = true;
  for (int round = 0; moved && round < rounds; ++round) {
    moved = false;
    for (std::size_t i = 0; i < order.size(); ++i) {
      const auto *wish = std::get_if<const Callout *>(&order[i].wish);
      if (wish == nullptr) {
        continue;
      }
      Placer others = start;
      for (std::size_t k = 0; k < placed.size(); ++k) {
        if (k != i) {
          others.keep(placed[k]);
        }
      }
      Dimension better = others.best_place(**wish, *order[i].stand);
      moved = moved || length(better.box.least - placed[i].box.least) > 0.0;
      placed[i] = std::move(better);
    }
  }
}

// Places all wishes; those that clash go first in the next round.
void add_dimensions(Sheet &sheet, const Placer &start, const std::vector<Stand> &stands) {
  constexpr int rounds = 8;
  auto order = in_order(stands);
  for (int round = 0; round < rounds; ++round) {
    Placer placer = start;
    std::vector<Dimension> placed;
    std::vector<Placing> failed, fitted;
    for (const Placing &next : order) {
      const std::size_t before = placer.clashes().size();
      placed.push_back(
          std::visit([&](const auto *wish) { return placer.place(*wish, *next.stand); }, next.wish));
      (placer.clashes().size() > before ? failed : fitted).push_back(next);
    }
    if (round == 0 || placer.clashes().size() < sheet.clashes.size()) {
      sheet.clashes = placer.clashes();
      sheet.dimensions = std::move(placed);
    }
    if (failed.empty()) {
      settle(start, order, sheet.dimensions);
      return;
    }
    order = std::move(failed);
    order.insert(order.end(), fitted.begin(), fitted.end());
  }
}

// Frame, title block, notes and parts list.
Sheet blank_sheet(const TitleFields &fields, std::span<const ListRow> list, double scale) {
  const Paper &paper = fields.paper;
  Sheet sheet;
  sheet.part = fields.plan.name;
  sheet.title = fields.plan.title;
  sheet.name = fields.sheets > 1 ? fmt::format("{}-{}", fields.plan.name, fields.sheet) : fields.plan.name;
  sheet.unit = unit_of(fields.job);
  sheet.scale = scale;
  sheet.width = paper.width;
  sheet.height = paper.height;
  sheet.frame = paper.frame;
  add_frame_and_title(fields, list, sheet);
  return sheet;
}

Sheet filled(const TitleFields &fields, const Filling &filling, double scale, Spread spread) {
  Sheet sheet = blank_sheet(fields, filling.list, scale);
  sheet.texts.insert(sheet.texts.end(), filling.texts.begin(), filling.texts.end());
  Placer placer(sheet.frame.grown(-frame_air));
  for (const Box &box : sheet.reserved) {
    placer.reserve(box);
  }
  for (const Stroke &stroke : sheet.strokes) {
    placer.add_ink(stroke);
  }
  const auto stands = stand_up(filling.rows, filling.area, spread);
  for (const Stand &stand : stands) {
    sheet.views.push_back(drawn(stand));
    placer.add_view(stand.box);
    for (const Stroke &stroke : sheet.views.back().strokes) {
      placer.add_ink(stroke);
    }
  }
  for (const Stand &stand : stands) {
    add_marks(sheet, placer, stand);
  }
  for (const Stand &stand : stands) {
    add_caption(sheet, placer, stand, scale);
  }
  for (const Stand &stand : stands) {
    expect_extension_lines(placer, stand);
  }
  add_dimensions(sheet, placer, stands);
  return sheet;
}

} // namespace

// Views close together, apart when that leaves a text without a place.
Sheet make_sheet(const TitleFields &fields, const Filling &filling, double scale) {
  Sheet close = filled(fields, filling, scale, Spread::close);
  if (close.clashes.empty() || filling.rows.empty()) {
    return close;
  }
  Sheet wide = filled(fields, filling, scale, Spread::wide);
  return wide.clashes.size() < close.clashes.size() ? wide : close;
}

} // namespace purgewright::drawing
