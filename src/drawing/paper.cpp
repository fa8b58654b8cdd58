#include "paper.hpp"

#include "steps_page.hpp"

#include "purgewright/drawing/lettering.hpp"
#include "purgewright/fixture/family.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>

namespace purgewright::drawing {
namespace {

constexpr double note_pitch = 4.4, note_indent = 5.0;
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

// Largest of the ISO 3098 heights up to `height` at which the text fits, small letters at least: what is
// longer breaks into lines.
double fitting_height(const std::string &text, double height, double width) {
  for (const double h : {7.0, 5.0, 3.5}) {
    if (h <= height && text_width(text, h) <= width) {
      return h;
    }
  }
  return small_letters;
}

// ---- title block ----
struct Field {
  double width;
  std::string_view label;
  std::string value;
  double height; // of its letters, at most
};
struct FieldRow {
  double least; // its height, where no value breaks
  std::vector<Field> fields;
};

std::vector<std::string> value_lines(const Field &field, double letters) {
  return wrapped_words(field.value, letters, field.width - 2.0 * air);
}

// A text's box takes 1.45 of its height.
constexpr double label_room = 3.75, line_pitch = 1.46 * small_letters, text_foot = 0.31;

double height_of(const FieldRow &row) {
  double height = row.least;
  for (const Field &field : row.fields) {
    const double letters = fitting_height(field.value, field.height, field.width - 2.0 * air);
    if (letters <= small_letters) {
      height = std::max(height, label_room + 0.1 + double(value_lines(field, letters).size()) * line_pitch);
    }
  }
  return height;
}

void draw_field(Sheet &sheet, const Box &box, const Field &field) {
  rectangle(sheet, Line::dimension, box);
  const double left = box.least.x + air;
  sheet.texts.push_back(
      {{left, box.greatest.y - 1.2 * small_letters}, small_letters, false, std::string(field.label)});
  const double letters = fitting_height(field.value, field.height, box.width() - 2.0 * air);
  const auto lines = value_lines(field, letters);
  double y = box.least.y + text_foot * letters + double(lines.size() - 1) * line_pitch;
  for (const std::string &line : lines) {
    if (!line.empty()) {
      sheet.texts.push_back({{left, y}, letters, false, line});
    }
    y -= line_pitch;
  }
}

// Truncated cone with its small end on the left; the circles of its end view stand right in first angle, left
// in third.
void projection_symbol(Sheet &sheet, const Box &box, job::Projection projection) {
  constexpr double big = 2.5, small = 1.25, cone = 5.0, apart = 8.0;
  const Point middle = box.centre() + Point{8.0, -1.0}; // clear of the cell's label
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

// From the bottom upwards.
std::vector<FieldRow> title_rows(const TitleFields &f) {
  const Unit unit = unit_of(f.job);
  const auto &identity = f.job.identity;
  return {{9.0,
           {{40, "Prepared by", identity.prepared_by, 3.5},
            {30, "Approved by", "", 3.5},
            {28, "Date of issue", f.issue.date, 3.5},
            {30, "Document type", f.plan.document, 3.5},
            {15, "Size", f.paper.name, 3.5},
            {18, "Language", "en", 3.5},
            {19, "Sheet", fmt::format("{}/{}", f.sheet, f.sheets), 3.5}}},
          {11.5,
           {{80, "Title", f.plan.title, 5.0},
            {80, "Number", fixture::drawing_number(f.job, f.plan.name), 3.5},
            {20, "Revision", identity.revision, 5.0}}},
          {9.0,
           {{62, "General tolerances", general_tolerance(unit), 3.5},
            {36, "Surfaces", Labels(unit).roughness(3.2), 3.5},
            {28, "Dimensions in", unit == Unit::inch ? "inches" : "mm", 3.5},
            {19, "Scale", f.scale, 3.5},
            {35, "Projection", "", 3.5}}},
          {9.0,
           {{50, "Material", f.plan.material, 3.5},
            {50, "Stock, facing included", f.plan.stock, 3.5},
            {20, "Mass", mass_text(f.plan.mass_kg, unit), 3.5},
            {60, "Job", identity.title.empty() ? identity.name : identity.title, 3.5}}}};
}

double title_height(const TitleFields &fields) {
  double height = 0.0;
  for (const FieldRow &row : title_rows(fields)) {
    height += height_of(row);
  }
  return height;
}

void title_block(const TitleFields &f, Sheet &sheet) {
  const double left = sheet.frame.greatest.x - title_width;
  double bottom = sheet.frame.least.y;
  for (const FieldRow &row : title_rows(f)) {
    const double height = height_of(row);
    double x = left;
    for (const Field &field : row.fields) {
      const Box box{{x, bottom}, {x + field.width, bottom + height}};
      draw_field(sheet, box, field);
      if (field.label == "Projection") {
        projection_symbol(sheet, box, f.job.shop.projection);
      }
      x += field.width;
    }
    bottom += height;
  }
  const Box whole{{left, sheet.frame.least.y}, {sheet.frame.greatest.x, bottom}};
  rectangle(sheet, Line::frame, whole);
  sheet.reserved.push_back(whole);
}

bool notes_beside_title(const Paper &paper) {
  return paper.frame.width() > title_width + 90.0;
}

std::vector<std::string> note_lines(const TitleFields &f) {
  const double room = f.paper.frame.width() - (notes_beside_title(f.paper) ? title_width : 0.0) - 8.0;
  std::vector<std::string> lines{"Notes"};
  for (std::size_t i = 0; i < f.plan.notes.size(); ++i) {
    const auto words = wrapped_words(f.plan.notes[i], small_letters, room - note_indent);
    for (std::size_t k = 0; k < words.size(); ++k) {
      lines.push_back((k == 0 ? fmt::format("{}  ", i + 1) : "    ") + words[k]);
    }
  }
  return lines;
}

void notes(const TitleFields &f, Sheet &sheet) {
  const auto lines = note_lines(f);
  const double height = note_pitch * double(lines.size()), title = title_height(f);
  const Point foot = sheet.frame.least;
  const Point top = foot + Point{4.0, notes_beside_title(f.paper) ? std::max(title, height + 3.0) - 4.0
                                                                  : title + height + 1.0};
  Box area;
  double y = top.y - small_letters;
  for (const std::string &line : lines) {
    sheet.texts.push_back({{top.x, y}, small_letters, false, line});
    area.include(text_box(sheet.texts.back()));
    y -= note_pitch;
  }
  sheet.reserved.push_back(area.grown(1.0));
}

// ---- stamp ----
constexpr double stamp_pitch = 4.0, stamp_air = 2.0, stamp_heading = 5.0;
constexpr std::string_view stamp_text = "NOT FOR USE";

std::vector<std::string> stamp_lines(const Paper &paper, const Issue &issue) {
  constexpr std::size_t most = 8; // more stand on the setup sheet
  const std::size_t shown = std::min(most, issue.failing.size());
  std::string all = fmt::format("Broken: {}", fmt::join(std::span(issue.failing).first(shown), "; "));
  if (issue.failing.size() > most) {
    all += fmt::format("; and {} more, on the setup sheet", issue.failing.size() - most);
  }
  const double heading = text_width(std::string(stamp_text), stamp_heading);
  return wrapped_words(all, small_letters, paper.frame.width() - heading - 4.0 * stamp_air);
}

void stamp(const Paper &paper, const Issue &issue, Sheet &sheet) {
  const Box box{{sheet.frame.least.x, sheet.frame.greatest.y - stamp_height(paper, issue)},
                sheet.frame.greatest};
  rectangle(sheet, Line::cutting, box);
  const std::string heading(stamp_text);
  double x = box.least.x + stamp_air, y = box.greatest.y - stamp_air;
  sheet.texts.push_back({{x, y - stamp_heading}, stamp_heading, false, heading});
  x += text_width(heading, stamp_heading) + stamp_air;
  for (const std::string &words : stamp_lines(paper, issue)) {
    sheet.texts.push_back({{x, y - small_letters}, small_letters, false, words});
    y -= stamp_pitch;
  }
  sheet.reserved.push_back(box);
}

// ---- parts list ----
constexpr double list_row = 7.0, list_letters = 3.5;
constexpr double list_columns[] = {11.0, 12.0, 52.0, 50.0, 55.0};

using ListLine = std::array<std::string, std::size(list_columns)>;

ListLine texts_of(const ListRow &row) {
  return {fmt::format("{}", row.item), fmt::format("{}", row.count), row.title, row.material, row.number};
}

// A bought part has no drawing: its size goes over both columns.
double cell_width(const ListLine &line, std::size_t column) {
  const bool into_next = column + 2 == line.size() && line.back().empty();
  return list_columns[column] + (into_next ? list_columns[column + 1] : 0.0);
}

std::vector<std::string> cell_lines(const ListLine &line, std::size_t column, double letters) {
  return wrapped_words(line[column], letters, cell_width(line, column) - 2.0 * air);
}

// A row is higher where a text does not fit in one line of small letters.
double row_height(const ListLine &line) {
  std::size_t most = 1;
  for (std::size_t i = 0; i < line.size(); ++i) {
    most = std::max(most, cell_lines(line, i, small_letters).size());
  }
  return std::max(list_row, double(most) * line_pitch + 1.0);
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

void list_line(Sheet &sheet, Point bottom_left, const ListLine &line, std::span<const double> heights,
               Line line_type) {
  const double height = row_height(line);
  double x = bottom_left.x;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const double width = cell_width(line, i), letters = heights[i];
    const Box box{{x, bottom_left.y}, {x + width, bottom_left.y + height}};
    rectangle(sheet, line_type, box);
    const auto words = cell_lines(line, i, letters);
    double y = box.least.y + 0.5 * (height - letters + double(words.size() - 1) * line_pitch);
    for (const std::string &text : words) {
      if (!text.empty()) {
        sheet.texts.push_back({{x + air, y}, letters, false, text});
      }
      y -= line_pitch;
    }
    x += width;
    if (width > list_columns[i]) {
      break;
    }
  }
}

void add_list(const TitleFields &f, std::span<const ListRow> rows, Sheet &sheet) {
  Point foot{f.paper.frame.greatest.x - title_width, f.paper.frame.least.y + title_height(f)};
  const Point start = foot;
  std::vector<ListLine> lines{{"Item", "Count", "Title", "Material or size", "Drawing"}};
  std::ranges::transform(rows, std::back_inserter(lines), texts_of);
  const auto heights = list_heights(lines);
  // Read upwards from the title block, so that lines can be added on top.
  for (std::size_t i = 0; i < lines.size(); ++i) {
    list_line(sheet, foot, lines[i], heights, i == 0 ? Line::frame : Line::dimension);
    foot.y += row_height(lines[i]);
  }
  sheet.reserved.push_back({start, {f.paper.frame.greatest.x, foot.y}});
}

// They reach 5 mm into the drawing space, but not into a parts list or a stamp.
void centring_marks(const Paper &paper, bool list, bool stamped, Sheet &sheet) {
  const Point c{0.5 * paper.width, 0.5 * paper.height};
  constexpr double mark = 5.0;
  line(sheet, Line::frame, {c.x, 0.0}, {c.x, sheet.frame.least.y});
  line(sheet, Line::frame, {c.x, paper.height}, {c.x, sheet.frame.greatest.y - (stamped ? 0.0 : mark)});
  const bool wide_list = list && !notes_beside_title(paper);
  line(sheet, Line::frame, {0.0, c.y}, {sheet.frame.least.x + (wide_list ? 0.0 : mark), c.y});
  line(sheet, Line::frame, {paper.width, c.y}, {sheet.frame.greatest.x - (list ? 0.0 : mark), c.y});
}

} // namespace

double stamp_height(const Paper &paper, const Issue &issue) {
  if (issue.failing.empty()) {
    return 0.0;
  }
  const double words = double(stamp_lines(paper, issue).size() - 1) * stamp_pitch + small_letters;
  return std::max(stamp_heading, words) + 2.0 * stamp_air;
}

std::vector<std::span<const ListRow>> list_pages(const TitleFields &f) {
  constexpr double above = 8.0;
  const double room =
      f.paper.frame.height() - title_height(f) - above - stamp_height(f.paper, f.issue) - list_row;
  const std::span<const ListRow> all(f.plan.list);
  std::vector<std::span<const ListRow>> pages;
  double height = 0.0;
  for (std::size_t first = 0, i = 0; i < all.size(); ++i) {
    const double row = row_height(texts_of(all[i]));
    if (pages.empty() || height + row > room) {
      first = i;
      height = 0.0;
      pages.emplace_back();
    }
    height += row;
    pages.back() = all.subspan(first, i + 1 - first);
  }
  return pages;
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

double foot_height(const TitleFields &f) {
  const double height = note_pitch * double(note_lines(f).size()) + 3.0, title = title_height(f);
  return notes_beside_title(f.paper) ? std::max(title, height) : title + height;
}

void add_frame_and_title(const TitleFields &fields, std::span<const ListRow> list, Sheet &sheet) {
  const Paper &paper = fields.paper;
  rectangle(sheet, Line::frame, sheet.frame);
  const bool stamped = !fields.issue.failing.empty();
  centring_marks(paper, !list.empty(), stamped, sheet);
  title_block(fields, sheet);
  if (stamped) {
    stamp(paper, fields.issue, sheet);
  }
  if (!list.empty()) {
    add_list(fields, list, sheet);
  }
  if (list.empty() || notes_beside_title(paper)) { // the list stands where they would
    notes(fields, sheet);
  }
}

} // namespace purgewright::drawing
