// Layers by line type, dimensions as DIMENSION entities that carry their own picture. What leaves here in the
// file's unit goes through File::size() and File::at().
#include "purgewright/dxf/writer.hpp"

#include "purgewright/drawing/lettering.hpp"
#include "purgewright/drawing/writers.hpp"
#include "purgewright/files/file.hpp"
#include "purgewright/files/text.hpp"

#include <dxflib/dl_dxf.h>
#include <dxflib/dl_writer_ascii.h>

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cmath>
#include <compare>
#include <cstring>
#include <filesystem>
#include <memory>
#include <set>
#include <string>

namespace purgewright::dxf {

using namespace drawing; // a sheet is read here from end to end

namespace {

constexpr const char *text_layer = "TEXT";

std::string unicode_escape(unsigned unit) {
  return fmt::format("\\U+{:04X}", unit);
}

// A character as DXF before 2007 holds it: plain ASCII, an escape for the rest, two of UTF-16 beyond U+FFFF.
std::string escaped(char32_t c) {
  constexpr char32_t beyond = 0x10000;
  if (c < 0x80) {
    return {static_cast<char>(c)};
  }
  if (c < beyond) {
    return unicode_escape(static_cast<unsigned>(c));
  }
  const auto rest = static_cast<unsigned>(c - beyond);
  return unicode_escape(0xD800 + (rest >> 10)) + unicode_escape(0xDC00 + (rest & 0x3FF));
}

// A text that a reader shows as it is: "^J" would be a line end and "^ " is a caret, "\U+0041" would be a
// letter. For "%%c", a diameter, readers know no escape in common: the job reader refuses it.
std::string escaped(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const std::size_t length = files::utf8_length(text);
    if (text.front() == '^') {
      out += "^ ";
    } else if (text.front() == '\\') {
      out += unicode_escape('\\');
    } else {
      out += escaped(files::code_point(text));
    }
    text.remove_prefix(std::max<std::size_t>(length, 1));
  }
  return out;
}

// Of paper millimetres to the file's unit, so that views to the sheet's scale come out at full size.
double full_size(const Sheet &sheet) {
  constexpr double inch = 25.4; // mm
  return 1.0 / (sheet.scale * (sheet.unit == Unit::inch ? inch : 1.0));
}

// How a measure in the file is shown: what it is multiplied by to be the part's, and its decimals.
struct Measuring {
  double factor = 1.0;
  int decimals = 0;
  auto operator<=>(const Measuring &) const = default; // NOLINT(modernize-use-nullptr): clang-tidy 14 errs
};
Measuring standard_measuring(const Sheet &sheet) {
  return {1.0, sheet.unit == Unit::inch ? 3 : 2};
}
Measuring measuring(const Sheet &sheet, const Dimension &dimension) {
  return {sheet.scale / dimension.scale, static_cast<int>(std::lround(-std::log10(dimension.last_digit)))};
}
std::string style_name(const Sheet &sheet, const Measuring &how) {
  return how == standard_measuring(sheet) ? "Standard"
                                          : fmt::format("TIMES-{:g}-DECIMALS-{}", how.factor, how.decimals);
}

DL_Attributes attributes(const std::string &layer, double line_scale = 1.0) {
  return {layer, 256, -1, "BYLAYER", line_scale};
}

// The text with its number left to whoever measures.
std::string live_text(const Dimension &d) {
  const std::string_view line = d.lines[0];
  return escaped(line.substr(0, d.number_at)) + "<>" + escaped(line.substr(d.number_at + d.number_size));
}

class File {
 public:
  File(const std::filesystem::path &path, const Sheet &sheet)
      : sheet_(sheet), full_size_(full_size(sheet)), dw_(dxf_.out(path.string().c_str(), DL_Codes::AC1015)) {
    if (!dw_) {
      throw files::FileError(path, std::strerror(errno));
    }
  }
  void write() {
    header();
    tables();
    blocks();
    dw_->sectionEntities();
    for (const View &view : sheet_.views) {
      for (const Stroke &stroke : view.strokes) {
        add(stroke);
      }
    }
    all(sheet_.strokes);
    all(sheet_.arrows);
    all(sheet_.texts);
    for (std::size_t i = 0; i < sheet_.dimensions.size(); ++i) {
      entity(sheet_.dimensions[i], i);
    }
    dw_->sectionEnd();
    objects();
    dw_->dxfEOF();
    dw_->close();
  }

 private:
  void header();
  void tables();
  void dimension_styles();
  void dimension_style(const Measuring &);
  void block_records();
  void blocks();
  void objects();
  void line_types();
  void add(const Stroke &);
  void add(const Arrow &);
  void add(const Text &);
  void entity(const Dimension &, std::size_t index);
  template <class Items> void all(const Items &items) {
    for (const auto &item : items) {
      add(item);
    }
  }
  // Only measures along the sheet have an entity that says the same as the sheet does.
  static bool has_entity(const Dimension &d) { return d.kind == DimensionKind::linear && d.number_size > 0; }
  static std::string block_name(std::size_t index) { return "*D" + std::to_string(index + 1); }
  double measured(const Dimension &) const;
  double size(double paper) const { return full_size_ * paper; }
  Point at(Point paper) const { return full_size_ * paper; }

  const Sheet &sheet_;
  const double full_size_;
  DL_Dxf dxf_;
  std::unique_ptr<DL_WriterA> dw_;
};

void File::header() {
  dxf_.writeHeader(*dw_);
  const auto variable = [&](const char *name, int code, int value) {
    dw_->dxfString(9, name);
    dw_->dxfInt(code, value);
  };
  const bool inch = sheet_.unit == Unit::inch;
  variable("$INSUNITS", 70, inch ? 1 : 4);
  variable("$MEASUREMENT", 70, inch ? 0 : 1);
  variable("$LWDISPLAY", 290, 1);
  dw_->dxfString(9, "$LTSCALE");
  dw_->dxfReal(40, full_size_);
  const auto corner = [&](const char *name, double x, double y) {
    dw_->dxfString(9, name);
    dw_->dxfReal(10, x);
    dw_->dxfReal(20, y);
    dw_->dxfReal(30, 0.0);
  };
  corner("$EXTMIN", 0.0, 0.0);
  corner("$EXTMAX", size(sheet_.width), size(sheet_.height));
  dw_->sectionEnd();
}

// The least a reader asks for; the library's own tree of dictionaries lacks its owners.
void File::objects() {
  constexpr int root = 0xC, groups = 0xD; // handles that the library leaves free
  const auto dictionary = [&](int handle, int owner) {
    dw_->dxfString(0, "DICTIONARY");
    dw_->dxfHex(5, handle);
    dw_->dxfHex(330, owner);
    dw_->dxfString(100, "AcDbDictionary");
    dw_->dxfInt(281, 1);
  };
  dw_->sectionObjects();
  dictionary(root, 0);
  dw_->dxfString(3, "ACAD_GROUP");
  dw_->dxfHex(350, groups);
  dictionary(groups, root);
  dw_->sectionEnd();
}

void File::line_types() {
  dw_->tableLinetypes(4 + 2);
  for (const char *name : {"BYBLOCK", "BYLAYER", "CONTINUOUS"}) {
    dxf_.writeLinetype(*dw_, DL_LinetypeData(name, "", 0, 0, 0.0));
  }
  for (const Line line : {Line::hidden, Line::centre, Line::phantom}) {
    const LineStyle &style = style_of(line);
    std::array<double, 6> pattern{};
    double total = 0.0;
    for (std::size_t i = 0; i < static_cast<std::size_t>(style.dash_count); ++i) {
      const double dash = style.dashes[i];
      pattern[i] = i % 2 == 0 ? dash : -dash;
      total += dash;
    }
    dxf_.writeLinetype(*dw_, DL_LinetypeData(std::string(style.layer), std::string(style.layer), 0,
                                             style.dash_count, total, pattern.data()));
  }
  dw_->tableEnd();
}

void File::tables() {
  dw_->sectionTables();
  dxf_.writeVPort(*dw_);
  line_types();
  dw_->tableLayers(static_cast<int>(all_lines.size()) + 2);
  dxf_.writeLayer(*dw_, DL_LayerData("0", 0), DL_Attributes("", 7, 25, "CONTINUOUS", 1.0));
  dxf_.writeLayer(*dw_, DL_LayerData(text_layer, 0), DL_Attributes("", 7, 25, "CONTINUOUS", 1.0));
  for (const Line line : all_lines) {
    const LineStyle &style = style_of(line);
    const std::string type = style.dash_count > 0 ? std::string(style.layer) : "CONTINUOUS";
    constexpr std::array widths{0,  5,  9,  13, 15, 18, 20, 25,
                                30, 35, 40, 50, 53, 60, 70}; // hundredths that DXF allows
    const int wanted = static_cast<int>(std::lround(style.width * 100.0));
    const int width = *std::ranges::min_element(
        widths, [&](int a, int b) { return std::abs(a - wanted) < std::abs(b - wanted); });
    dxf_.writeLayer(*dw_, DL_LayerData(std::string(style.layer), 0), DL_Attributes("", 7, width, type, 1.0));
  }
  dw_->tableEnd();
  dw_->tableStyle(1);
  dxf_.writeStyle(*dw_,
                  DL_StyleData("Standard", 0, 0.0, 1.0, 0.0, 0, size(small_letters), "osifont.ttf", ""));
  dw_->tableEnd();
  dxf_.writeView(*dw_);
  dxf_.writeUcs(*dw_);
  dw_->tableAppid(1);
  dxf_.writeAppid(*dw_, "ACAD");
  dw_->tableEnd();
  dimension_styles();
  block_records();
  for (std::size_t i = 0; i < sheet_.dimensions.size(); ++i) {
    if (has_entity(sheet_.dimensions[i])) {
      dxf_.writeBlockRecord(*dw_, block_name(i));
    }
  }
  dw_->tableEnd();
  dw_->sectionEnd();
}

// The sheet's own style, and one for each further scale of a view and number of decimals.
void File::dimension_styles() {
  std::set<Measuring> styles{standard_measuring(sheet_)};
  for (const Dimension &dimension : sheet_.dimensions) {
    if (has_entity(dimension)) {
      styles.insert(measuring(sheet_, dimension));
    }
  }
  constexpr int table = 0xA; // the handle that the library's own table of styles has
  dw_->dxfString(0, "TABLE");
  dw_->dxfString(2, "DIMSTYLE");
  dw_->dxfHex(5, table);
  dw_->dxfString(100, "AcDbSymbolTable");
  dw_->dxfInt(70, static_cast<int>(styles.size()));
  dw_->dxfString(100, "AcDbDimStyleTable");
  for (const Measuring &how : styles) {
    dimension_style(how);
  }
  dw_->tableEnd();
}

// Lengths of arrows and lines at the sheet's scale; the measure without the zeros that the sheet leaves out.
void File::dimension_style(const Measuring &how) {
  constexpr double overrun = 2.0, offset = 0.8, gap = 1.4; // mm on paper, as the sheet's own dimensions
  const bool inch = sheet_.unit == Unit::inch;
  dw_->dxfString(0, "DIMSTYLE");
  dw_->handle(105);
  dw_->dxfString(100, "AcDbSymbolTableRecord");
  dw_->dxfString(100, "AcDbDimStyleTableRecord");
  dw_->dxfString(2, style_name(sheet_, how));
  dw_->dxfInt(70, 0);
  const auto real = [&](int code, double value) { dw_->dxfReal(code, value); };
  real(41, size(arrow_length)), real(42, size(offset)), real(44, size(overrun));
  real(140, size(letter_height)), real(144, how.factor), real(147, size(gap));
  constexpr int no_leading = 4, no_trailing = 8;
  dw_->dxfInt(77, 1); // text above its line
  dw_->dxfInt(78, inch ? no_leading : no_trailing);
  dw_->dxfInt(271, how.decimals);
  dw_->dxfInt(277, 2); // decimal numbers
  dw_->dxfInt(278, '.');
}

// The library's own table names a second paper space that belongs to no layout.
void File::block_records() {
  constexpr int table = 0x1, model_space = 0x1F, paper_space = 0x1B; // handles that the library leaves free
  dw_->dxfString(0, "TABLE");
  dw_->dxfString(2, "BLOCK_RECORD");
  dw_->dxfHex(5, table);
  dw_->dxfString(100, "AcDbSymbolTable");
  dw_->dxfInt(70, 2);
  const auto record = [&](const char *name, int handle) {
    dw_->dxfString(0, "BLOCK_RECORD");
    dw_->dxfHex(5, handle);
    dw_->dxfString(100, "AcDbSymbolTableRecord");
    dw_->dxfString(100, "AcDbBlockTableRecord");
    dw_->dxfString(2, name);
  };
  record("*Model_Space", model_space);
  record("*Paper_Space", paper_space);
}

void File::blocks() {
  dw_->sectionBlocks();
  for (const char *name : {"*Model_Space", "*Paper_Space"}) {
    dxf_.writeBlock(*dw_, DL_BlockData(name, 0, 0.0, 0.0, 0.0));
    dxf_.writeEndBlock(*dw_, name);
  }
  for (std::size_t i = 0; i < sheet_.dimensions.size(); ++i) {
    const Dimension &dimension = sheet_.dimensions[i];
    if (!has_entity(dimension)) {
      continue;
    }
    dxf_.writeBlock(*dw_, DL_BlockData(block_name(i), 1, 0.0, 0.0, 0.0));
    all(dimension.strokes);
    all(dimension.arrows);
    all(dimension.texts);
    dxf_.writeEndBlock(*dw_, block_name(i));
  }
  dw_->sectionEnd();
}

void File::add(const Stroke &stroke) {
  const LineStyle &style = style_of(stroke.line);
  const DL_Attributes look =
      attributes(std::string(style.layer), dash_factor(style, length_of(stroke.curve)));
  if (const auto *s = std::get_if<Segment>(&stroke.curve)) {
    const Point a = at(s->a), b = at(s->b);
    dxf_.writeLine(*dw_, DL_LineData(a.x, a.y, 0.0, b.x, b.y, 0.0), look);
    return;
  }
  const Arc &arc = std::get<Arc>(stroke.curve);
  const Point centre = at(arc.centre);
  const double radius = size(arc.radius);
  if (arc.is_circle()) {
    dxf_.writeCircle(*dw_, DL_CircleData(centre.x, centre.y, 0.0, radius), look);
    return;
  }
  const auto degrees = [](double angle) {
    return std::fmod(angle * 180.0 / std::numbers::pi + 720.0, 360.0);
  };
  dxf_.writeArc(
      *dw_, DL_ArcData(centre.x, centre.y, 0.0, radius, degrees(arc.start), degrees(arc.start + arc.sweep)),
      look);
}

void File::add(const Arrow &arrow) {
  const Point foot = arrow.tip - arrow_length * arrow.direction;
  const Point side = (arrow_length * std::tan(arrow_half_angle)) * turned_left(arrow.direction);
  const Point tip = at(arrow.tip), a = at(foot + side), b = at(foot - side);
  dxf_.writeSolid(*dw_, DL_TraceData(tip.x, tip.y, 0.0, a.x, a.y, 0.0, b.x, b.y, 0.0, b.x, b.y, 0.0, 0.0),
                  attributes(std::string(style_of(Line::dimension).layer)));
}

// Fitted between two points, so that a reader without the font keeps the text in its place.
void File::add(const Text &text) {
  constexpr int fit = 5;
  const double angle = text.upright ? 0.5 * std::numbers::pi : 0.0;
  const Point start = at(text.at), end = at(text.at + polar(text_width(text.content, text.height), angle));
  dxf_.writeText(*dw_,
                 DL_TextData(start.x, start.y, 0.0, end.x, end.y, 0.0, size(text.height), 1.0, 0, fit, 0,
                             escaped(text.content), "Standard", angle),
                 attributes(text_layer));
}

// Along the dimension line, times its style's factor.
double File::measured(const Dimension &d) const {
  const Point along = d.second - d.first;
  return measuring(sheet_, d).factor * size(std::abs(d.upright ? along.y : along.x));
}

// The library's own dimensions carry no picture, which readers then drop; written here group by group.
void File::entity(const Dimension &dimension, std::size_t index) {
  if (!has_entity(dimension)) {
    all(dimension.strokes);
    all(dimension.arrows);
    all(dimension.texts);
    return;
  }
  constexpr int rotated = 0, own_block = 32;
  dw_->entity("DIMENSION");
  dw_->dxfString(100, "AcDbEntity");
  dw_->dxfString(8, std::string(style_of(Line::dimension).layer));
  dw_->dxfString(100, "AcDbDimension");
  dw_->dxfString(2, block_name(index));
  const auto point = [&](int code, Point paper) {
    const Point p = at(paper);
    dw_->dxfReal(code, p.x);
    dw_->dxfReal(code + 10, p.y);
    dw_->dxfReal(code + 20, 0.0);
  };
  point(10, dimension.line_at);
  point(11, text_box(dimension.texts[0]).centre());
  dw_->dxfInt(70, rotated + own_block);
  dw_->dxfInt(71, 5);
  dw_->dxfString(1, live_text(dimension));
  dw_->dxfReal(42, measured(dimension));
  dw_->dxfString(3, style_name(sheet_, measuring(sheet_, dimension)));
  dw_->dxfString(100, "AcDbAlignedDimension");
  point(13, dimension.first);
  point(14, dimension.second);
  dw_->dxfReal(50, dimension.upright ? 90.0 : 0.0);
  dw_->dxfString(100, "AcDbRotatedDimension");
}

} // namespace

void write_dxf(const std::filesystem::path &path, const Sheet &sheet) {
  File(path, sheet).write();
  // The library reports no failed write; a whole file ends with its mark.
  if (!files::read(path).ends_with("EOF\n")) {
    throw files::FileError(path, "the file is not whole");
  }
}

void write_drawings(const std::filesystem::path &folder, std::span<const Sheet> sheets) {
  for (const Sheet &sheet : sheets) {
    write_dxf(folder / (sheet.name + ".dxf"), sheet);
  }
}

} // namespace purgewright::dxf
