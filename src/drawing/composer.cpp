#include "composer.hpp"

#include "linear_shape.hpp"
#include "scales.hpp"
#include "sheet_maker.hpp"
#include "steps_page.hpp"

#include <fmt/format.h>

#include <optional>
#include <utility>

namespace purgewright::drawing {

std::string scale_text(double factor) {
  for (const Scale &s : scales) {
    if (std::abs(s.factor - factor) < 1e-9) {
      return s.text;
    }
  }
  return factor >= 1.0 ? fmt::format("{:g}:1", factor) : fmt::format("1:{:g}", 1.0 / factor);
}

namespace {

constexpr double title_gap = 3.0;      // between the strip at the foot and the views
constexpr double list_gap = 6.0;       // between a view and the parts list beside it
constexpr double clear_of_marks = 4.0; // words, of the centring marks
constexpr double view_width = 120.0;   // least room that is worth a view beside the list

// What does not change while a plan is tried on one paper.
struct Task {
  const job::Job &job;
  const PartPlan &plan;
  const Issue &issue;
  Paper paper;
  // For the sizes of what stands at its foot.
  TitleFields any_sheet() const { return {job, paper, plan, issue, "10:1"}; }
};

Box views_area(const Task &task) {
  const Paper &paper = task.paper;
  Box area = paper.frame.grown(-frame_air);
  area.greatest.y -= stamp_height(paper, task.issue);
  area.least.y = paper.frame.least.y + foot_height(task.any_sheet()) + title_gap;
  return area;
}

Box beside_list(const Task &task) {
  Box area = views_area(task);
  area.greatest.x = task.paper.frame.greatest.x - title_width - list_gap;
  return area;
}

bool has_room_beside_list(const Task &task) {
  return beside_list(task).width() > view_width;
}

std::size_t clashes_of(const std::vector<Sheet> &sheets) {
  std::size_t sum = 0;
  for (const Sheet &sheet : sheets) {
    sum += sheet.clashes.size();
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

std::vector<Sheet> at_scale(const Task &task, const Scale &scale, const Dealt &dealt) {
  const Box whole = views_area(task);
  const auto lists = list_pages(task.any_sheet());
  const auto pages = steps_pages(task.plan.steps, whole.grown(-clear_of_marks));
  const int count = static_cast<int>(dealt.size() + lists.size() + pages.size());
  std::vector<Sheet> sheets;
  const auto add = [&](const Filling &filling) {
    const int number = static_cast<int>(sheets.size()) + 1;
    sheets.push_back(make_sheet({task.job, task.paper, task.plan, task.issue, scale.text, number, count},
                                filling, scale.factor));
  };
  for (const auto &rows : dealt) {
    add({rows, whole, {}, {}});
  }
  for (std::size_t i = 0; i < lists.size(); ++i) {
    const Box area = beside_list(task);
    const bool last = i + 1 == lists.size();
    add({last ? largest(task.plan.beside_list, area) : std::vector<Row>{}, area, lists[i], {}});
  }
  for (const StepsPage &page : pages) {
    add({{}, whole, {}, page});
  }
  return sheets;
}

// What is tried one after the other until every text finds a place: full size or larger on as few sheets as
// that takes, reductions only after that; a whole plan is reduced first.
struct Attempt {
  int sheets;
  bool reduced, complete;
};
std::vector<Attempt> attempts(bool whole) {
  constexpr int most_sheets = 6;
  std::vector<Attempt> out;
  for (const bool reduced : {false, true}) {
    for (int sheets = 1; sheets <= most_sheets; ++sheets) {
      for (const bool complete : {true, false}) {
        out.push_back({sheets, reduced, complete});
      }
    }
  }
  if (whole) {
    std::stable_sort(out.begin(), out.end(),
                     [](const Attempt &a, const Attempt &b) { return a.sheets < b.sheets; });
  }
  return out;
}

// Ways to deal the views at a scale, the plan's own rows first.
std::vector<Dealt> deals(const PartPlan &plan, double scale, const Box &area, const Attempt &attempt) {
  std::vector<Dealt> out;
  const auto add = [&](Packing packing) {
    if (auto dealt = deal(plan, scale, area, packing);
        dealt && static_cast<int>(dealt->size()) == attempt.sheets) {
      out.push_back(std::move(*dealt));
    }
  };
  if (attempt.complete) {
    add(Packing::as_planned);
    add(Packing::joined);
  } else {
    add(Packing::without_dispensable);
  }
  return out;
}

Dealt all_in_rows(const PartPlan &plan, double scale, double width) {
  Dealt out(1);
  for (const auto &views : plan.rows) {
    for (const Row &row : wrapped(views, scale, width)) {
      out.back().push_back(row);
    }
  }
  return out;
}

// Nothing is reduced below this size on paper, unless its sizes leave no room for more.
double readable_size(const PartPlan &plan) {
  return plan.whole ? 110.0 : 55.0;
}

// The first trial on which every text finds a place, else the one with the fewest that do not; nothing when
// no scale fits the paper at which the part is as large as this.
std::optional<std::vector<Sheet>> best_on(const Task &task, double readable) {
  const auto &[job, plan, issue, paper] = task;
  const Box area = views_area(task);
  std::optional<std::vector<Sheet>> best;
  constexpr int most_tries = 3; // an attempt
  const double size = largest_size(plan);
  for (const Attempt &attempt : attempts(plan.whole)) {
    int tried = 0;
    for (const Scale &scale : scales) {
      if ((scale.factor < 1.0) != attempt.reduced || (attempt.reduced && scale.factor * size < readable)) {
        continue;
      }
      for (const Dealt &dealt : deals(plan, scale.factor, area, attempt)) {
        if (++tried > most_tries) {
          break;
        }
        auto trial = at_scale(task, scale, dealt);
        if (!best || clashes_of(trial) < clashes_of(*best)) {
          best = std::move(trial);
        }
        if (clashes_of(*best) == 0) {
          return best;
        }
      }
    }
  }
  return best;
}

std::vector<Sheet> smallest_on(const Task &task) {
  const Scale &smallest = scales[std::size(scales) - 1];
  auto sheets = at_scale(task, smallest, all_in_rows(task.plan, smallest.factor, views_area(task).width()));
  sheets.front().clashes.emplace_back("sheet");
  return sheets;
}

// A caption stands above all dimensions of its view.
void give_room(PartPlan &plan) {
  constexpr double caption_room = 2.0 * caption_height;
  for (auto &row : plan.rows) {
    for (ViewPlan &view : row) {
      const auto above = std::count_if(view.linears.begin(), view.linears.end(),
                                       [](const Linear &wish) { return wish.side == Side::above; });
      if (!view.caption.empty()) {
        view.room.above = std::max(view.room.above, room_of(static_cast<std::size_t>(above)) + caption_room);
      }
    }
  }
}

// Outer sizes of an inch sheet that end in a nought drop it, and so go by the wider general tolerance, where
// ISO 2768-1 medium is as wide: plus-minus 0.3 mm over 30 mm. Holes keep the closer one.
void widen_outer_sizes(PartPlan &plan) {
  constexpr double wider_over = 30.0, thousandth = 0.001, hundredth = 0.01;
  for (auto &row : plan.rows) {
    for (ViewPlan &view : row) {
      for (Linear &wish : view.linears) {
        Label &label = wish.label;
        const std::size_t end = label.number_at + label.number_size;
        const bool general = !label.lines.empty() && label.lines[0].size() == end &&
                             std::abs(label.last_digit - thousandth) < 1e-9;
        if (wish.probe == Probe::distance && general && in_mm(label.value) > wider_over &&
            label.lines[0].back() == '0') {
          label.lines[0].pop_back();
          --label.number_size;
          label.last_digit = hundredth;
        }
      }
    }
  }
}

// What had to be reduced to fit whole, or to less than half, is smaller than it could be on larger paper.
bool worth_larger_paper(const PartPlan &plan, const std::vector<Sheet> &sheets) {
  constexpr double readable = 0.5;
  return sheets.front().scale < (plan.whole ? 1.0 : readable);
}

} // namespace

// A part that the shop's paper cannot show legibly goes on the next larger one.
std::vector<Sheet> compose(const job::Job &job, PartPlan plan, const Issue &issue) {
  const Paper paper = paper_of(job.shop.sheet), wider = paper_of(larger(job.shop.sheet));
  if (!plan.beside_list.empty() && !has_room_beside_list({job, plan, issue, paper})) {
    plan.rows.push_back(std::exchange(plan.beside_list, {}));
  }
  give_room(plan);
  if (unit_of(job) == Unit::inch) {
    widen_outer_sizes(plan);
  }
  const double readable = readable_size(plan);
  auto sheets = best_on({job, plan, issue, paper}, readable);
  if ((!sheets || clashes_of(*sheets) > 0 || worth_larger_paper(plan, *sheets)) && wider.name != paper.name) {
    auto more = best_on({job, plan, issue, wider}, readable);
    if (more && (!sheets || clashes_of(*more) < clashes_of(*sheets) ||
                 (clashes_of(*more) == clashes_of(*sheets) && worth_larger_paper(plan, *sheets) &&
                  more->front().scale > sheets->front().scale))) {
      sheets = std::move(more);
    }
  }
  if (!sheets) {
    sheets = best_on({job, plan, issue, wider}, 0.0);
  }
  return sheets ? std::move(*sheets) : smallest_on({job, plan, issue, wider});
}

} // namespace purgewright::drawing
