#include "composer.hpp"

#include "hatch.hpp"
#include "placement.hpp"
#include "rows.hpp"

#include "purgewright/drawing/lettering.hpp"

#include <fmt/format.h>

#include <span>
#include <utility>

namespace purgewright::drawing {
namespace {

struct Scale {
  double factor;
  const char *text;
};
constexpr Scale scales[] = {{10, "10:1"}, {5, "5:1"},   {2, "2:1"},   {1, "1:1"},
                            {0.5, "1:2"}, {0.2, "1:5"}, {0.1, "1:10"}};

constexpr double axis_overrun = 3.0;
constexpr double title_gap = 3.0; // between the strip at the foot and the views

std::string scale_text(double factor) {
  for (const Scale &s : scales) {
    if (std::abs(s.factor - factor) < 1e-9) {
      return s.text;
    }
  }
  return factor >= 1.0 ? fmt::format("{:g}:1", factor) : fmt::format("1:{:g}", 1.0 / factor);
}

Curve on_paper(const Curve &curve, const Stand &stand) {
  if (const auto *s = std::get_if<Segment>(&curve)) {
    return Segment{stand.paper(s->a), stand.paper(s->b)};
  }
  Arc arc = std::get<Arc>(curve);
  arc.centre = stand.paper(arc.centre);
  arc.radius *= stand.scale;
  return arc;
}

void add_curve(View &view, Line line, const Curve &paper, const std::optional<Arc> &clip) {
  if (!clip) {
    view.strokes.push_back({line, paper});
    return;
  }
  for (const Segment &chord : chords(paper, 0.02)) {
    for (const Segment &piece : clipped(chord, *clip)) {
      view.strokes.push_back({line, piece});
    }
  }
}

View drawn(const Stand &stand) {
  const ViewPlan &plan = *stand.plan;
  View view{plan.name, stand.box, stand.scale, {}};
  std::optional<Arc> clip;
  if (plan.clip) {
    clip = std::get<Arc>(on_paper(*plan.clip, stand));
    view.strokes.push_back({Line::dimension, *clip});
  }
  for (const Hatching &hatching : plan.hatched) {
    std::vector<Loop> loops = hatching.loops;
    for (Loop &loop : loops) {
      for (Point &p : loop) {
        p = stand.paper(p);
      }
    }
    for (const Segment &s : hatch(loops, hatching.spacing, hatching.angle)) {
      add_curve(view, Line::hatch, s, clip);
    }
  }
  for (const Stroke &stroke : plan.strokes) {
    add_curve(view, stroke.line, on_paper(stroke.curve, stand), clip);
  }
  for (const auto &[a, b] : plan.axes) {
    const Point p = stand.paper(a), q = stand.paper(b);
    const Point more = axis_overrun * unit(q - p);
    add_curve(view, Line::centre, Segment{p - more, q + more}, clip);
  }
  return view;
}

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

// Stands of the views of one sheet, rows spread over the area.
std::vector<Stand> stand_up(const std::vector<Row> &rows, double scale, const Box &area) {
  std::vector<Stand> out;
  double used = 0.0;
  for (const Row &row : rows) {
    used += measure(row, scale).height();
  }
  const double spare = (area.height() - used) / double(rows.size() + 1);
  double y = area.greatest.y;
  for (const Row &row : rows) {
    const RowSize size = measure(row, scale);
    y -= spare;
    const double beside = (area.width() - size.width) / double(row.size() + 1);
    double x = area.least.x;
    for (const auto &[view, moved] : row) {
      const Box box = view->box();
      const double s = scale_of(*view, scale);
      x += beside + view->room.left;
      const double middle = y - 0.5 * size.height() + 0.5 * (view->room.below - view->room.above);
      const Point origin{x - s * box.least.x, view->floating ? middle - s * box.centre().y : y - size.up};
      Stand stand{view, origin, s, {}, moved};
      stand.box.include(stand.paper(box.least));
      stand.box.include(stand.paper(box.greatest));
      out.push_back(stand);
      x += s * box.width() + view->room.right;
    }
    y -= size.height();
  }
  return out;
}

void add_captions(Sheet &sheet, Placer &placer, const Stand &stand, double scale) {
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
  add_text(sheet, placer, {stand.box.centre().x, y}, caption_height, text);
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
      return;
    }
    order = std::move(failed);
    order.insert(order.end(), fitted.begin(), fitted.end());
  }
}

// Frame, title block and notes.
Sheet blank_sheet(const Paper &paper, const TitleFields &fields) {
  Sheet sheet;
  sheet.part = fields.plan.name;
  sheet.title = fields.plan.title;
  sheet.name = fields.sheets > 1 ? fmt::format("{}-{}", fields.plan.name, fields.sheet) : fields.plan.name;
  sheet.unit = fields.job.shop.unit_system == units::UnitSystem::inch ? Unit::inch : Unit::millimetre;
  sheet.width = paper.width;
  sheet.height = paper.height;
  sheet.frame = paper.frame;
  add_frame_and_title(paper, fields, sheet);
  return sheet;
}

Sheet one_sheet(const job::Job &job, const PartPlan &plan, const std::vector<Row> &rows, double scale,
                const TitleFields &fields) {
  const Paper paper = paper_of(job.shop.sheet);
  Sheet sheet = blank_sheet(paper, fields);
  Box area = paper.frame.grown(-2.0);
  Placer placer(area);
  for (const Box &box : sheet.reserved) {
    placer.reserve(box);
  }
  for (const Stroke &stroke : sheet.strokes) {
    placer.add_ink(stroke);
  }
  area.least.y = paper.frame.least.y + foot_height(paper, plan) + title_gap;
  const auto stands = stand_up(rows, scale, area);
  for (const Stand &stand : stands) {
    sheet.views.push_back(drawn(stand));
    placer.add_view(stand.box);
    for (const Stroke &stroke : sheet.views.back().strokes) {
      placer.add_ink(stroke);
    }
    add_captions(sheet, placer, stand, scale);
  }
  for (const Stand &stand : stands) {
    add_marks(sheet, placer, stand);
  }
  add_dimensions(sheet, placer, stands);
  return sheet;
}

int clashes_of(const std::vector<Sheet> &sheets) {
  int sum = 0;
  for (const Sheet &sheet : sheets) {
    sum += static_cast<int>(sheet.clashes.size());
  }
  return sum;
}

// Longest side of any view at full size.
double largest_size(const PartPlan &plan) {
  double size = 0.0;
  for (const auto &row : plan.rows) {
    for (const ViewPlan &view : row) {
      size = std::max({size, view.box().width(), view.box().height()});
    }
  }
  return size;
}

std::vector<Sheet> at_scale(const job::Job &job, const PartPlan &plan, const Issue &issue, const Scale &scale,
                            const Dealt &dealt) {
  const Paper paper = paper_of(job.shop.sheet);
  const std::size_t a_sheet = list_rows(paper);
  const std::size_t lists = (plan.list.size() + a_sheet - 1) / a_sheet;
  const int count = static_cast<int>(dealt.size() + lists);
  std::vector<Sheet> sheets;
  const auto fields = [&] {
    return TitleFields{job, plan, issue, scale.text, static_cast<int>(sheets.size()) + 1, count};
  };
  for (const auto &rows : dealt) {
    sheets.push_back(one_sheet(job, plan, rows, scale.factor, fields()));
  }
  for (std::size_t i = 0; i < lists; ++i) {
    sheets.push_back(blank_sheet(paper, fields()));
    const auto rows = std::span(plan.list).subspan(i * a_sheet);
    add_list(paper, rows.first(std::min(a_sheet, rows.size())), sheets.back());
  }
  return sheets;
}

// Full size or larger on as few sheets as that takes, reductions only after that; a whole plan is reduced
// first.
struct Attempt {
  int sheets;
  bool reduced;
};
std::vector<Attempt> attempts(bool whole) {
  constexpr int most_sheets = 6;
  std::vector<Attempt> out;
  for (const bool reduced : {false, true}) {
    for (int sheets = 1; sheets <= most_sheets; ++sheets) {
      out.push_back({sheets, reduced});
    }
  }
  if (whole) {
    std::stable_sort(out.begin(), out.end(),
                     [](const Attempt &a, const Attempt &b) { return a.sheets < b.sheets; });
  }
  return out;
}

} // namespace

std::vector<Sheet> compose(const job::Job &job, const PartPlan &plan, const Issue &issue) {
  const Paper paper = paper_of(job.shop.sheet);
  Box area = paper.frame.grown(-2.0);
  area.least.y = paper.frame.least.y + foot_height(paper, plan) + title_gap;
  std::optional<std::vector<Sheet>> best;
  constexpr double readable = 55.0; // no part is reduced below this size on paper
  const double size = largest_size(plan);
  constexpr int most_tries = 2; // scales an attempt
  for (const auto &[sheets, reduced] : attempts(plan.whole)) {
    int tried = 0;
    for (const Scale &scale : scales) {
      if ((scale.factor < 1.0) != reduced || tried == most_tries ||
          (reduced && scale.factor * size < readable)) {
        continue;
      }
      const auto dealt = deal(plan, scale.factor, area, sheets);
      if (!dealt) {
        continue;
      }
      ++tried;
      auto trial = at_scale(job, plan, issue, scale, *dealt);
      const int clashes = clashes_of(trial);
      if (!best || clashes < clashes_of(*best)) {
        best = std::move(trial);
      }
      if (clashes == 0) {
        return std::move(*best);
      }
    }
  }
  if (!best) { // nothing fits: smallest scale
    Dealt dealt(1);
    for (const auto &views : plan.rows) {
      for (const Row &row : wrapped(views, scales[std::size(scales) - 1].factor, area.width())) {
        dealt.back().push_back(row);
      }
    }
    best = at_scale(job, plan, issue, scales[std::size(scales) - 1], dealt);
    best->front().clashes.emplace_back("sheet");
  }
  return std::move(*best);
}

} // namespace purgewright::drawing
