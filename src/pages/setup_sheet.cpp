#include "purgewright/pages/setup_sheet.hpp"

#include "canvas.hpp"
#include "curves.hpp"
#include "joint_sketch.hpp"
#include "round_diagram.hpp"
#include "setup_words.hpp"

#include "purgewright/report/lines.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace purgewright::pages {
namespace {

using report::Findings;

struct Paper {
  double width, height;
};
constexpr Paper a4{210.0, 297.0}, letter{215.9, 279.4};
constexpr double margin = 9.0, gutter = 4.0;                  // mm
constexpr double largest = 10.5, smallest = 5.0, step = 0.25; // letters, points
constexpr Colour warning{0.99, 0.90, 0.62}, head{0.16, 0.20, 0.26}, alarm{0.72, 0.11, 0.09};

Paper paper_of(const job::Job &job) {
  const bool inch = job.shop.sheet == job::Sheet::letter || job.shop.sheet == job::Sheet::tabloid;
  return inch ? letter : a4;
}

// Colours of a titanium weld: EN ISO 9606-5:2000 (approval testing of welders, titanium), its text on
// coloration.
struct Swatch {
  std::string_view name;
  Colour colour;
  bool accepted;
};
constexpr std::array<Swatch, 7> swatches{{{"silver", {0.80, 0.81, 0.83}, true},
                                          {"straw", {0.90, 0.80, 0.52}, true},
                                          {"dark brown", {0.42, 0.27, 0.14}, false},
                                          {"purple", {0.45, 0.22, 0.50}, false},
                                          {"blue", {0.16, 0.30, 0.66}, false},
                                          {"grey", {0.52, 0.52, 0.52}, false},
                                          {"flaky white", {0.97, 0.97, 0.95}, false}}};

class Page {
 public:
  Page(Canvas &canvas, const Findings &f, const SheetMark &mark, Paper paper, double points)
      : canvas_(canvas), f_(f), mark_(mark), paper_(paper), points_(points), line_(line_height(points)) {}

  // The bench's page; returns where it ends.
  double compose();
  // The page behind it: why, and the plots.
  void compose_reasons();

 private:
  double width() const { return paper_.width - 2.0 * margin; }
  double foot() const { return paper_.height - margin - 2.0 * line_; }
  double header(double top);
  void pair(double y, std::string_view left, Letters of_left, std::string_view right, Letters of_right);
  std::string titles(checks::Status) const;
  double warn(double top);
  double band(double top, std::string_view text, Colour ground, Colour letters);
  double settings(double top);
  double gas_table(double top);
  void gas_head(double top, const std::array<double, 7> &at);
  double gas_line(double top, const GasRow &row, const std::array<double, 7> &at);
  double turns(double top);
  double turn_table(const Box &box, const std::vector<TurnRow> &rows, bool narrow, bool tapes);
  double lists(double top);
  double list(const Box &box, std::string_view title, const std::vector<std::string> &items, bool numbered);
  double colours(double top);
  double title(Point at, double width, std::string_view text);
  void footer();

  Canvas &canvas_;
  const Findings &f_;
  const SheetMark &mark_;
  Paper paper_;
  double points_, line_;
};

double Page::title(Point at, double width, std::string_view text) {
  const double height = line_ + 1.2;
  canvas_.fill(Box{at.x, at.y, width, height}, head);
  canvas_.text({at.x + 1.2, at.y + 0.5 * (height + capital_height(points_))}, text,
               {.points = points_, .bold = true, .colour = white});
  return at.y + height;
}

// Two texts on one line, the right one at most three tenths of it; each shrinks to the room it has.
void Page::pair(double y, std::string_view left, Letters of_left, std::string_view right, Letters of_right) {
  constexpr double right_share = 0.3;
  const auto fit = [this](std::string_view text, Letters &letters, double room) {
    const double wide = canvas_.text_width(text, letters);
    letters.points *= std::min(1.0, room / std::max(wide, 1e-9));
    return std::min(wide, room);
  };
  of_right.align = Align::right;
  const double taken = fit(right, of_right, right_share * width());
  fit(left, of_left, width() - taken - gutter);
  canvas_.text({margin, y}, left, of_left);
  canvas_.text({margin + width(), y}, right, of_right);
}

double Page::header(double top) {
  const auto &identity = f_.design.job.identity;
  double y = top + capital_height(2.0 * points_);
  pair(y, "SETUP SHEET  " + identity.name, {.points = 2.0 * points_, .bold = true},
       "revision " + identity.revision, {.points = 1.4 * points_, .bold = true});
  y += 1.4 * line_;
  pair(y, identity.title, {.points = points_ + 1.0}, "job " + mark_.job_sha256.substr(0, 16),
       {.points = points_, .colour = grey});
  y += line_;
  pair(y, work_line(f_), {.points = points_ - 0.5},
       identity.prepared_by.empty() ? "" : "prepared by " + identity.prepared_by, {.points = points_});
  return warn(y + 0.7 * line_);
}

// What a rule that does not pass says to the welder: what by how much, and, of a failing one, what cures it.
// Cautions about how parts are machined are none of his.
std::string Page::titles(checks::Status status) const {
  std::vector<std::string> words;
  for (const auto &rule : f_.rules) {
    const bool failing = status == checks::Status::fail;
    if (rule.status != status || (!failing && rule.id.starts_with("machining."))) {
      continue;
    }
    const std::string amount = report::against_limit(f_, rule);
    words.push_back(fmt::format("{}{}{}", rule.title, amount.empty() ? "" : ": " + amount,
                                failing && !rule.remedy.empty() ? "; to do: " + rule.remedy : ""));
  }
  return fmt::format("{}", fmt::join(words, ". "));
}

// Rules that fail stand above everything: such a design is not for the bench.
double Page::warn(double y) {
  if (const std::string failing = titles(checks::Status::fail); !failing.empty()) {
    y = band(y, "NOT FOR USE. Broken: " + failing, alarm, white) + 1.0;
  }
  if (const std::string doubtful = titles(checks::Status::caution); !doubtful.empty()) {
    y = band(y, "Caution, beyond its limit: " + doubtful, pale, black) + 1.0;
  }
  constexpr std::string_view first = "Argon displaces air without smell: ventilate, wear an oxygen monitor. "
                                     "Calculated, not measured. Follow your local "
                                     "code and your qualified procedure: they come before this sheet.";
  return band(y, first, warning, black) + 2.0;
}

double Page::band(double y, std::string_view text, Colour ground, Colour letters) {
  const Letters bold{.points = points_, .bold = true, .colour = letters, .align = Align::centre};
  const double height = canvas_.wrapped_height(width() - 4.0, text, bold) + 1.6;
  canvas_.fill(Box{margin, y, width(), height}, ground);
  canvas_.frame({margin, y, width(), height}, {.width = 0.3});
  canvas_.wrapped({margin + 2.0, y + 0.8}, width() - 4.0, text, bold);
  return y + height;
}

// Names and values in two columns, filled downwards.
double Page::settings(double top) {
  const double start = title({margin, top}, width(), "WELD   what to set before the first arc") + 0.6;
  const auto all = weld_settings(f_);
  const std::size_t rows = (all.size() + 1) / 2;
  const double column = 0.5 * (width() - gutter), name = 10.5 / 8.5 * 2.1 * points_ * 0.9;
  double end = start;
  for (std::size_t first = 0; first < all.size(); first += rows) {
    const double left = margin + (first == 0 ? 0.0 : column + gutter);
    double y = start;
    for (std::size_t i = first; i < std::min(first + rows, all.size()); ++i) {
      canvas_.wrapped({left, y}, name, all[i].name, {.points = points_ - 0.25, .bold = true});
      y += canvas_.wrapped({left + name, y}, column - name, all[i].value, {.points = points_ - 0.25}) + 0.4;
    }
    end = std::max(end, y);
  }
  return end + 1.2;
}

void Page::gas_head(double top, const std::array<double, 7> &at) {
  constexpr std::array<std::string_view, 6> names{"stage", "bore", "chamber", "torch", "time", "look for"};
  for (std::size_t i = 0; i < names.size(); ++i) {
    const bool centred = i > 0 && i < 5;
    canvas_.text({centred ? 0.5 * (at[i] + at[i + 1]) : at[i] + 1.0, top + line_}, names[i],
                 {.points = points_, .bold = true, .align = centred ? Align::centre : Align::left});
  }
}

double Page::gas_line(double top, const GasRow &row, const std::array<double, 7> &at) {
  const Letters plain{.points = points_ - 0.5};
  const Letters strong{.points = points_ + 0.5, .bold = true, .align = Align::centre};
  const double note = at[6] - at[5] - 2.0;
  const double height = std::max(1.5 * line_, canvas_.wrapped_height(note, row.look_for, plain) + 0.8);
  const double base = top + 0.5 * (height + capital_height(points_));
  canvas_.text({at[0] + 1.0, base}, row.stage, {.points = points_, .bold = true});
  const std::array<const std::string *, 4> cells{&row.bore, &row.chamber, &row.torch, &row.time};
  for (std::size_t i = 0; i < cells.size(); ++i) {
    canvas_.text({0.5 * (at[i + 1] + at[i + 2]), base}, *cells[i], strong);
  }
  canvas_.wrapped({at[5] + 1.0, top + 0.4}, note, row.look_for, plain);
  canvas_.line({at[0], top + height}, {at[6], top + height}, {.width = 0.15, .colour = grey});
  return top + height;
}

double Page::gas_table(double top) {
  const double left = margin;
  const std::array<double, 7> at{left,        left + 40.0,  left + 57.5,   left + 75.0,
                                 left + 92.5, left + 110.0, left + width()};
  double y = title({left, top}, width(), "GAS   settings in L/min | ft3/h");
  const double start = y;
  gas_head(y, at);
  y += line_ + 1.0;
  for (const GasRow &row : gas_rows(f_)) {
    y = gas_line(y, row, at);
  }
  for (std::size_t i = 1; i < 6; ++i) {
    canvas_.line({at[i], start}, {at[i], y}, {.width = 0.15, .colour = grey});
  }
  canvas_.frame({left, start, width(), y - start}, {.width = 0.3});
  return y + 2.0;
}

namespace {

// A column of the table of turns: its head, its text and how much of the width it takes.
struct TurnColumn {
  std::string_view head;
  std::string TurnRow::*text;
  double share;
};

// Two tables beside each other have no room for what only explains; spots have no tapes.
std::vector<TurnColumn> turn_columns(bool narrow, bool tapes) {
  std::vector<TurnColumn> columns{{"order", &TurnRow::name, 1.0}, {"collar, deg", &TurnRow::collar, 1.35}};
  if (tapes) {
    columns.push_back({"felt tapes", &TurnRow::tapes, 1.5});
  }
  columns.push_back({"arc", &TurnRow::arc, 0.9});
  columns.push_back({"HOLD", &TurnRow::hold, 0.9});
  if (!narrow) {
    columns.push_back({"joint before", &TurnRow::before, 1.15});
    columns.push_back({"pool reaches", &TurnRow::pool, 1.15});
  }
  return columns;
}

} // namespace

double Page::turn_table(const Box &box, const std::vector<TurnRow> &rows, bool narrow, bool tapes) {
  const auto columns = turn_columns(narrow, tapes);
  double shares = 0.0;
  for (const TurnColumn &column : columns) {
    shares += column.share;
  }
  const auto middles = [&](const auto &draw) {
    double left = box.x;
    for (const TurnColumn &column : columns) {
      const double wide = column.share / shares * box.width;
      draw(column, left + 0.5 * wide);
      left += wide;
    }
  };
  double y = box.y;
  middles([&](const TurnColumn &column, double middle) {
    canvas_.text({middle, y + line_}, column.head,
                 {.points = points_ - 0.5, .bold = true, .align = Align::centre});
  });
  y += line_ + 1.0;
  const double height = 1.28 * line_;
  for (const TurnRow &row : rows) {
    if (row.tack) {
      canvas_.fill(Box{box.x, y, box.width, height}, pale);
    }
    middles([&](const TurnColumn &column, double middle) {
      const bool hold = column.text == &TurnRow::hold, name = column.text == &TurnRow::name;
      canvas_.text(
          {middle, y + 0.5 * (height + capital_height(points_))}, row.*column.text,
          {.points = hold ? points_ + 0.5 : points_ - 0.25, .bold = hold || name, .align = Align::centre});
    });
    y += height;
    canvas_.line({box.x, y}, {box.right(), y}, {.width = 0.1, .colour = grey});
  }
  return y;
}

double Page::turns(double top) {
  constexpr std::size_t one_column = 13;
  const std::vector<TurnRow> rows = turn_rows(f_);
  const double diagram = 64.0, left = margin + diagram + gutter, wide = width() - diagram - gutter;
  double y = title({margin, top}, width(),
                   "TACKS AND RUNS   angles on the index collar; hold: torch and both circuits on");
  const double start = y;
  draw_round(canvas_, {margin, y, diagram, diagram}, f_, points_ - 1.0);
  const bool spots = f_.design.job.rotation.seam == job::Seam::spots;
  if (rows.size() <= one_column) {
    y = turn_table({left, y, wide, 0.0}, rows, false, !spots);
  } else {
    const std::size_t half = (rows.size() + 1) / 2;
    const auto middle = rows.begin() + static_cast<std::ptrdiff_t>(half);
    const double column = 0.5 * (wide - 2.0);
    y = std::max(turn_table({left, start, column, 0.0}, {rows.begin(), middle}, true, !spots),
                 turn_table({left + column + 2.0, start, column, 0.0}, {middle, rows.end()}, true, !spots));
  }
  const std::string note = fmt::format(
      "Drawn with the collar at 0; black: tacks, blue: {}, both in order{}. {} Hold: the longest, of a warm "
      "fixture. {} First arc to end of last hold: {}, {} a turn and preflows in it.",
      spots ? "spots" : "runs", spots ? "" : ", brown: tapes",
      spots ? "Arc: standing."
            : "Felt tapes: let those after 'over' pass, end at the last. Arc: standing, turning and easing "
              "off. "
              "Pool reaches: how wide before the foot answers.",
      pin_note(f_),
      units::shop_text(f_.design.heat.cycle.value(), units::Dimension::time, units::UnitSystem::metric, 3),
      units::shop_text(heat::Options{}.torch_move.value(), units::Dimension::time, units::UnitSystem::metric,
                       3));
  const Letters plain{.points = points_ - 0.5};
  y += 0.8;
  y += canvas_.wrapped({left, y}, wide, note, plain);
  return std::max(y, start + diagram + 1.0) + 1.5;
}

double Page::list(const Box &box, std::string_view heading, const std::vector<std::string> &items,
                  bool numbered) {
  double y = title({box.x, box.y}, box.width, heading) + 0.8;
  const double indent = 4.0;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const std::string mark = numbered ? fmt::format("{}", i + 1) : std::string("\u2022");
    canvas_.wrapped({box.x, y}, indent, mark, {.points = points_, .bold = true});
    y += canvas_.wrapped({box.x + indent, y}, box.width - indent, items[i], {.points = points_ - 0.25}) + 0.5;
  }
  return y;
}

double Page::colours(double top) {
  double y = title({margin, top}, width(), "COLOUR OF THE WELD") + 1.0;
  const double side = 13.0, patches = side * double(swatches.size());
  const double small = points_ - 1.5;
  for (std::size_t i = 0; i < swatches.size(); ++i) {
    const Box patch{margin + double(i) * side, y, side - 0.6, 4.0};
    canvas_.fill(patch, swatches[i].colour);
    canvas_.frame(patch, {.width = 0.15});
    canvas_.text({patch.x + 0.5 * patch.width, patch.bottom() + line_height(small)}, swatches[i].name,
                 {.points = small, .align = Align::centre});
  }
  const double under = y + 4.0 + line_height(small) + 1.2, accepted = margin + 2.0 * side;
  canvas_.line({margin, under}, {accepted - 0.6, under}, {.width = 0.6, .colour = {0.2, 0.55, 0.25}});
  canvas_.line({accepted, under}, {margin + patches - 0.6, under},
               {.width = 0.6, .colour = {0.72, 0.11, 0.09}});
  canvas_.wrapped({margin, under + 0.4}, 2.0 * side, "accepted", {.points = small, .bold = true});
  canvas_.wrapped({accepted, under + 0.4}, 5.0 * side, "not accepted", {.points = small, .bold = true});
  std::string words;
  for (const std::string &sentence : discoloured()) {
    words += (words.empty() ? "" : " ") + sentence;
  }
  const double left = margin + patches + 1.5;
  const double beside =
      y + canvas_.wrapped({left, y}, margin + width() - left, words, {.points = points_ - 0.75});
  return std::max(beside, under + 0.4 + line_height(small)) + 2.0;
}

double Page::lists(double top) {
  const double third = (width() - 2.0 * gutter) / 3.0;
  const double second = margin + third + gutter, last = second + third + gutter;
  const double steps =
      list({margin, top, third, 0.0}, "LOADING (order: common practice)", loading_steps(f_), true);
  const double out = list({second, top, third, 0.0}, "UNLOADING", unloading_steps(f_), true);
  const double stops = list({second, out + 1.0, third, 0.0}, "STOP WHEN", stop_conditions(f_), false);
  double careful = list({last, top, third, 0.0}, "CAUTION", cautions(f_), false);
  constexpr double sketch = 30.0; // mm
  careful = title({last, careful + 1.0}, third, "JOINT") + 0.8;
  draw_joint(canvas_, {last, careful, third, sketch}, f_, points_ - 1.0);
  careful += sketch;
  return std::max({steps, stops, careful}) + 1.5;
}

void Page::footer() {
  const double y = paper_.height - margin;
  canvas_.line({margin, y - 1.4 * line_}, {margin + width(), y - 1.4 * line_}, {.width = 0.3});
  const Letters small{.points = points_ - 1.5, .colour = grey};
  canvas_.text(
      {margin, y},
      fmt::format("purgewright {}; job SHA-256 {}; every number with formula and source in results.json",
                  mark_.tool_version, mark_.job_sha256),
      small);
}

double Page::compose() {
  double y = header(margin);
  y = settings(y);
  y = gas_table(y);
  y = turns(y);
  y = lists(y);
  y = colours(y);
  footer();
  return y;
}

void Page::compose_reasons() {
  double y = margin + capital_height(1.4 * points_);
  pair(y, "WHY  " + f_.design.job.identity.name, {.points = 1.4 * points_, .bold = true},
       "revision " + f_.design.job.identity.revision, {.points = points_ + 1.0, .bold = true});
  y = list({margin, y + line_, width(), 0.0}, "BEHIND THE NUMBERS", reasons(f_), false) + 2.0;
  const double height = 0.5 * (foot() - y - gutter);
  Plot heat = temperature_plot(f_), oxygen = oxygen_plot(f_);
  heat.points = oxygen.points = points_;
  draw(canvas_, {margin, y, width(), height}, heat);
  draw(canvas_, {margin, y + height + gutter, width(), height}, oxygen);
  footer();
}

// The largest letters with which everything for the bench stands on one page.
double fitting_points(const Findings &f, const SheetMark &mark, Paper paper) {
  for (double points = largest; points > smallest; points -= step) {
    Canvas trial(Format::pdf, paper.width, paper.height, "");
    const double room = paper.height - margin - 2.0 * line_height(points);
    if (Page(trial, f, mark, paper, points).compose() <= room) {
      return points;
    }
  }
  return smallest;
}

} // namespace

std::string setup_sheet_pdf(const Findings &findings, const SheetMark &mark) {
  const Paper paper = paper_of(findings.design.job);
  const double points = fitting_points(findings, mark, paper);
  Canvas canvas(Format::pdf, paper.width, paper.height, "Setup sheet " + findings.design.job.identity.name);
  Page(canvas, findings, mark, paper, points).compose();
  canvas.new_page();
  constexpr double of_reasons = 9.0; // points
  Page(canvas, findings, mark, paper, of_reasons).compose_reasons();
  return canvas.finish();
}

} // namespace purgewright::pages
