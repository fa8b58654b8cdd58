#include "paper.hpp"

#include "purgewright/drawing/lettering.hpp"
#include "purgewright/fixture/family.hpp"

#include <fmt/format.h>

#include <array>

namespace purgewright::drawing {
namespace {

constexpr double tiny_letters = 1.8; // the least of ISO 3098
constexpr double note_pitch = 4.4;
constexpr double air = 1.2; // cell's edge to its text

void line(Sheet &sheet, Line type, Point a, Point b) {
  sheet.strokes.push_back({type, Segment{a, b}});
}

void rectangle(Sheet &sheet, Line type, const Box &b) {
  line(sheet, type, b.least, {b.greatest.x, b.least.y});
  line(sheet, type, {b.greatest.x, b.least.y}, b.greatest);
  line(sheet, type, b.greatest, {b.least.x, b.greatest.y});
  line(sheet, type, {b.least.x, b.greatest.y}, b.least);
}

// Largest of the ISO 3098 heights up to `height` at which the text fits; shrinks below the least one if it
// must.
double fitting_height(const std::string &text, double height, double width) {
  for (const double h : {7.0, 5.0, 3.5, 2.5}) {
    if (h <= height && text_width(text, h) <= width) {
      return h;
    }
  }
  return std::min(2.5, 2.5 * width / std::max(width, text_width(text, 2.5)));
}

// Where a text without room in one line breaks: at the blank nearest to its middle, else in the middle.
std::size_t break_of(const std::string &text) {
  const std::size_t middle = text.size() / 2;
  std::size_t at = std::string::npos;
  for (std::size_t i = text.find(' '); i != std::string::npos; i = text.find(' ', i + 1)) {
    if (at == std::string::npos ||
        std::max(i, middle) - std::min(i, middle) < std::max(at, middle) - std::min(at, middle)) {
      at = i;
    }
  }
  if (at != std::string::npos) {
    return at;
  }
  at = middle;
  while (at < text.size() && (text[at] & 0xC0) == 0x80) {
    ++at; // never within a character
  }
  return at;
}

void cell(Sheet &sheet, const Box &box, const std::string &label, const std::string &value, double height) {
  rectangle(sheet, Line::dimension, box);
  sheet.texts.push_back(
      {{box.least.x + air, box.greatest.y - air - tiny_letters}, tiny_letters, false, label});
  if (!value.empty()) {
    const double width = box.width() - 2.0 * air;
    const double h = fitting_height(value, height, width);
    const auto line = [&](const std::string &text, double letters, double up) {
      sheet.texts.push_back({{box.least.x + air, box.least.y + up}, letters, false, text});
    };
    if (h >= tiny_letters) {
      line(value, h, std::max(1.3, 0.32 * h));
      return;
    }
    const std::size_t at = break_of(value);
    const std::string first = value.substr(0, at), second = value.substr(value[at] == ' ' ? at + 1 : at);
    const double two =
        std::min({tiny_letters, fitting_height(first, height, width), fitting_height(second, height, width)});
    line(first, two, 1.0 + 1.45 * two);
    line(second, two, 1.0);
  }
}

// Truncated cone with its small end on the left; the circles of its end view stand right in first angle, left
// in third.
void projection_symbol(Sheet &sheet, const Box &box, job::Projection projection) {
  constexpr double big = 2.5, small = 1.25, cone = 5.0, apart = 8.0;
  const Point middle = box.centre() + Point{4.5, -1.0}; // clear of the cell's label
  const double side = projection == job::Projection::first ? 1.0 : -1.0;
  const Point body = middle - Point{0.5 * side * apart, 0.0},
              circles = middle + Point{0.5 * side * apart, 0.0};
  const double left = body.x - 0.5 * cone, right = body.x + 0.5 * cone;
  line(sheet, Line::visible, {left, body.y - small}, {left, body.y + small});
  line(sheet, Line::visible, {right, body.y - big}, {right, body.y + big});
  line(sheet, Line::visible, {left, body.y - small}, {right, body.y - big});
  line(sheet, Line::visible, {left, body.y + small}, {right, body.y + big});
  sheet.strokes.push_back({Line::visible, Arc{circles, big}});
  sheet.strokes.push_back({Line::visible, Arc{circles, small}});
}

std::string general_tolerance(Unit unit) {
  return unit == Unit::inch ? ".XX ±.01  .XXX ±.005  angles ±1°" : "ISO 2768-mK";
}

std::string mass_text(double kilograms, Unit unit) {
  constexpr double pound = 0.45359237;
  return unit == Unit::inch ? fmt::format("{:.2f} lb", kilograms / pound)
                            : fmt::format("{:.3g} kg", kilograms);
}

void title_block(const TitleFields &f, Sheet &sheet) {
  const double left = sheet.frame.greatest.x - title_width, bottom = sheet.frame.least.y;
  const auto box = [&](double x, double y, double w, double h) {
    return Box{{left + x, bottom + y}, {left + x + w, bottom + y + h}};
  };
  const Unit unit = sheet.unit;
  const auto &identity = f.job.identity;
  // Bottom row.
  cell(sheet, box(0, 0, 40, 9), "Prepared by", identity.prepared_by, 3.5);
  cell(sheet, box(40, 0, 30, 9), "Approved by", "", 3.5);
  cell(sheet, box(70, 0, 30, 9), "Date of issue", f.issue.date, 3.5);
  cell(sheet, box(100, 0, 30, 9), "Document type", f.plan.document, 3.5);
  cell(sheet, box(130, 0, 15, 9), "Size", f.paper.name, 3.5);
  cell(sheet, box(145, 0, 15, 9), "Language", "en", 3.5);
  cell(sheet, box(160, 0, 20, 9), "Sheet", fmt::format("{}/{}", f.sheet, f.sheets), 3.5);
  // Title and number.
  cell(sheet, box(0, 9, 80, 11), "Title", f.plan.title, 5.0);
  cell(sheet, box(80, 9, 80, 11), "Number", fixture::drawing_number(f.job, f.plan.name), 3.5);
  cell(sheet, box(160, 9, 20, 11), "Revision", identity.revision, 5.0);
  // How it is made.
  cell(sheet, box(0, 20, 62, 9), "General tolerances", general_tolerance(unit), 3.5);
  cell(sheet, box(62, 20, 38, 9), "Surfaces unless shown", Labels(unit).roughness(3.2), 3.5);
  cell(sheet, box(100, 20, 25, 9), "Dimensions in", unit == Unit::inch ? "inches" : "mm", 3.5);
  cell(sheet, box(125, 20, 20, 9), "Scale", f.scale, 3.5);
  cell(sheet, box(145, 20, 35, 9), "Projection", "", 3.5);
  projection_symbol(sheet, box(145, 20, 35, 9), f.job.shop.projection);
  // What it is made of.
  cell(sheet, box(0, 29, 50, 9), "Material", f.plan.material, 3.5);
  cell(sheet, box(50, 29, 50, 9), "Stock, facing included", f.plan.stock, 3.5);
  cell(sheet, box(100, 29, 20, 9), "Mass", mass_text(f.plan.mass_kg, unit), 3.5);
  cell(sheet, box(120, 29, 60, 9), "Job", identity.title.empty() ? identity.name : identity.title, 2.5);
  rectangle(sheet, Line::frame, box(0, 0, title_width, title_height));
  sheet.reserved.push_back(box(0, 0, title_width, title_height));
}

bool notes_beside_title(const Paper &paper) {
  return paper.frame.width() > title_width + 90.0;
}

void notes(const Paper &paper, const PartPlan &plan, Sheet &sheet) {
  const double height = note_pitch * (double(plan.notes.size()) + 1.0);
  const bool beside = notes_beside_title(paper);
  const Point top =
      beside
          ? Point{sheet.frame.least.x + 4.0, sheet.frame.least.y + std::max(title_height, height + 3.0) - 4.0}
          : Point{sheet.frame.least.x + 4.0, sheet.frame.least.y + title_height + height + 1.0};
  Box area;
  double y = top.y - small_letters;
  const auto put = [&](const std::string &text) {
    const double room = beside ? sheet.frame.width() - title_width - 8.0 : sheet.frame.width() - 8.0;
    sheet.texts.push_back({{top.x, y}, fitting_height(text, small_letters, room), false, text});
    area.include(text_box(sheet.texts.back()));
    y -= note_pitch;
  };
  put("Notes");
  for (std::size_t i = 0; i < plan.notes.size(); ++i) {
    put(fmt::format("{}  {}", i + 1, plan.notes[i]));
  }
  sheet.reserved.push_back(area.grown(1.0));
}

// ---- parts list ----
constexpr double list_row = 7.0, list_letters = 3.5;
constexpr double list_columns[] = {12.0, 12.0, 72.0, 40.0, 44.0};

using ListLine = std::array<std::string, std::size(list_columns)>;

// A bought part has no drawing: its size goes over both columns.
double cell_width(const ListLine &line, std::size_t column) {
  const bool into_next = column + 2 == line.size() && line.back().empty();
  return list_columns[column] + (into_next ? list_columns[column + 1] : 0.0);
}

// One height a column, so that lines read alike.
std::array<double, std::size(list_columns)> list_heights(std::span<const ListLine> lines) {
  std::array<double, std::size(list_columns)> out;
  for (std::size_t i = 0; i < out.size(); ++i) {
    out[i] = list_letters;
    for (const ListLine &line : lines) {
      out[i] = std::min(out[i], fitting_height(line[i], list_letters, cell_width(line, i) - 2.0 * air));
    }
  }
  return out;
}

void list_line(Sheet &sheet, Point top_left, const ListLine &texts, std::span<const double> heights,
               Line line_type) {
  double x = top_left.x;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const double width = cell_width(texts, i);
    const Box box{{x, top_left.y - list_row}, {x + width, top_left.y}};
    rectangle(sheet, line_type, box);
    const double height = heights[i];
    sheet.texts.push_back({{x + air, box.least.y + 0.5 * (list_row - height)}, height, false, texts[i]});
    x += width;
    if (width > list_columns[i]) {
      break;
    }
  }
}

void add_list(const Paper &paper, std::span<const ListRow> rows, Sheet &sheet) {
  const Point foot{paper.frame.greatest.x - title_width, paper.frame.least.y + title_height};
  const auto top = [&](std::size_t line) { return foot + Point{0.0, list_row * double(line + 1)}; };
  std::vector<ListLine> lines{{"Item", "Count", "Title", "Material or size", "Drawing"}};
  for (const ListRow &row : rows) {
    lines.push_back(
        {fmt::format("{}", row.item), fmt::format("{}", row.count), row.title, row.material, row.number});
  }
  const auto heights = list_heights(lines);
  // Read upwards from the title block, so that lines can be added on top.
  for (std::size_t i = 0; i < lines.size(); ++i) {
    list_line(sheet, top(i), lines[i], heights, i == 0 ? Line::frame : Line::dimension);
  }
  sheet.reserved.push_back({foot, {paper.frame.greatest.x, top(lines.size() - 1).y}});
}

// They reach 5 mm into the drawing space, but not into a parts list.
void centring_marks(const Paper &paper, bool list, Sheet &sheet) {
  const Point c{0.5 * paper.width, 0.5 * paper.height};
  constexpr double mark = 5.0;
  line(sheet, Line::frame, {c.x, 0.0}, {c.x, sheet.frame.least.y});
  line(sheet, Line::frame, {c.x, paper.height}, {c.x, sheet.frame.greatest.y - mark});
  const bool wide_list = list && !notes_beside_title(paper);
  line(sheet, Line::frame, {0.0, c.y}, {sheet.frame.least.x + (wide_list ? 0.0 : mark), c.y});
  line(sheet, Line::frame, {paper.width, c.y}, {sheet.frame.greatest.x - (list ? 0.0 : mark), c.y});
}

} // namespace

std::size_t list_rows(const Paper &paper) {
  constexpr double above = 8.0;
  return static_cast<std::size_t>((paper.frame.height() - title_height - above) / list_row) - 1;
}

Paper paper_of(job::Sheet sheet) {
  constexpr double filing = 20.0, border = 10.0;
  const auto paper = [](const char *name, double width, double height) {
    return Paper{name, width, height, {{filing, border}, {width - border, height - border}}};
  };
  switch (sheet) {
  case job::Sheet::a4:
    return paper("A4", 210.0, 297.0);
  case job::Sheet::a3:
    return paper("A3", 420.0, 297.0);
  case job::Sheet::letter:
    return paper("Letter", 215.9, 279.4);
  default:
    return paper("Tabloid", 431.8, 279.4);
  }
}

job::Sheet larger(job::Sheet sheet) {
  switch (sheet) {
  case job::Sheet::a4:
    return job::Sheet::a3;
  case job::Sheet::letter:
    return job::Sheet::tabloid;
  default:
    return sheet;
  }
}

double foot_height(const Paper &paper, const PartPlan &plan) {
  const double height = note_pitch * (double(plan.notes.size()) + 1.0) + 3.0;
  return notes_beside_title(paper) ? std::max(title_height, height) : title_height + height;
}

void add_frame_and_title(const TitleFields &fields, std::span<const ListRow> list, Sheet &sheet) {
  const Paper &paper = fields.paper;
  rectangle(sheet, Line::frame, sheet.frame);
  centring_marks(paper, !list.empty(), sheet);
  title_block(fields, sheet);
  if (!list.empty()) {
    add_list(paper, list, sheet);
  }
  if (list.empty() || notes_beside_title(paper)) { // the list stands where they would
    notes(paper, fields.plan, sheet);
  }
}

} // namespace purgewright::drawing
