#include "composer.hpp"

#include "linear_shape.hpp"
#include "scales.hpp"
#include "sheet_maker.hpp"

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

constexpr double title_gap = 3.0;    // between the strip at the foot and the views
constexpr double list_gap = 6.0;     // between a view and the parts list beside it
constexpr double view_width = 120.0; // least room that is worth a view beside the list

Box views_area(const Paper &paper, const PartPlan &plan) {
  Box area = paper.frame.grown(-frame_air);
  area.least.y = paper.frame.least.y + foot_height(paper, plan) + title_gap;
  return area;
}

Box beside_list(const Paper &paper, const PartPlan &plan) {
  Box area = views_area(paper, plan);
  area.greatest.x = paper.frame.greatest.x - title_width - list_gap;
  return area;
}

bool has_room_beside_list(const Paper &paper, const PartPlan &plan) {
  return beside_list(paper, plan).width() > view_width;
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

// What does not change while a plan is tried on one paper.
struct Task {
  const job::Job &job;
  const PartPlan &plan;
  const Issue &issue;
  Paper paper;
};

std::vector<Sheet> at_scale(const Task &task, const Scale &scale, const Dealt &dealt) {
  const auto &[job, plan, issue, paper] = task;
  const std::size_t a_sheet = list_rows(paper);
  const std::size_t lists = (plan.list.size() + a_sheet - 1) / a_sheet;
  const int count = static_cast<int>(dealt.size() + lists);
  std::vector<Sheet> sheets;
  const auto add = [&](const Filling &filling) {
    const int number = static_cast<int>(sheets.size()) + 1;
    sheets.push_back(make_sheet({task.job, task.paper, task.plan, task.issue, scale.text, number, count},
                                filling, scale.factor));
  };
  for (const auto &rows : dealt) {
    add({rows, views_area(paper, plan), {}});
  }
  for (std::size_t i = 0; i < lists; ++i) {
    const auto list = std::span(plan.list).subspan(i * a_sheet);
    const Box area = beside_list(paper, plan);
    const bool last = i + 1 == lists;
    add({last ? largest(plan.beside_list, area) : std::vector<Row>{}, area,
         list.first(std::min(a_sheet, list.size()))});
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

// The first trial on which every text finds a place, else the one with the fewest that do not; nothing when
// no readable scale fits the paper.
std::optional<std::vector<Sheet>> best_on(const Task &task) {
  const auto &[job, plan, issue, paper] = task;
  const Box area = views_area(paper, plan);
  std::optional<std::vector<Sheet>> best;
  const double readable = plan.whole ? 110.0 : 55.0; // nothing is reduced below this size on paper
  constexpr int most_tries = 3;                      // an attempt
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
  auto sheets = at_scale(task, smallest,
                         all_in_rows(task.plan, smallest.factor, views_area(task.paper, task.plan).width()));
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

} // namespace

// A part that the shop's paper cannot show legibly goes on the next larger one.
std::vector<Sheet> compose(const job::Job &job, PartPlan plan, const Issue &issue) {
  const Paper paper = paper_of(job.shop.sheet), wider = paper_of(larger(job.shop.sheet));
  if (!plan.beside_list.empty() && !has_room_beside_list(paper, plan)) {
    plan.rows.push_back(std::exchange(plan.beside_list, {}));
  }
  give_room(plan);
  auto sheets = best_on({job, plan, issue, paper});
  if ((!sheets || clashes_of(*sheets) > 0) && wider.name != paper.name) {
    auto more = best_on({job, plan, issue, wider});
    if (more && (!sheets || clashes_of(*more) < clashes_of(*sheets))) {
      sheets = std::move(more);
    }
  }
  return sheets ? std::move(*sheets) : smallest_on({job, plan, issue, wider});
}

} // namespace purgewright::drawing
