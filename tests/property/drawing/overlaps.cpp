#include "sheet_faults.hpp"

#include "purgewright/drawing/lettering.hpp"

namespace purgewright::test {

using namespace drawing;

namespace {

constexpr double chord = 0.05; // mm on paper

struct Lettering {
  std::string what;
  Box box;
  std::size_t owner; // dimension's index; texts of the sheet itself have none
};
constexpr std::size_t nobody = static_cast<std::size_t>(-1);

std::vector<Lettering> lettering_of(const Sheet &sheet) {
  std::vector<Lettering> out;
  for (const Text &text : sheet.texts) {
    out.push_back({text.content, text_box(text), nobody});
  }
  for (std::size_t i = 0; i < sheet.dimensions.size(); ++i) {
    for (const Text &text : sheet.dimensions[i].texts) {
      out.push_back({sheet.dimensions[i].feature + " " + text.content, text_box(text), i});
    }
  }
  return out;
}

struct Inked {
  Segment segment;
  std::size_t owner;
};

std::vector<Inked> ink_of(const Sheet &sheet) {
  std::vector<Inked> out;
  const auto add = [&](const std::vector<Stroke> &strokes, std::size_t owner) {
    for (const Stroke &stroke : strokes) {
      for (const Segment &s : chords(stroke.curve, chord)) {
        out.push_back({s, owner});
      }
    }
  };
  for (const View &view : sheet.views) {
    add(view.strokes, nobody);
  }
  for (std::size_t i = 0; i < sheet.dimensions.size(); ++i) {
    add(sheet.dimensions[i].strokes, i);
  }
  add(sheet.strokes, nobody);
  return out;
}

} // namespace

std::vector<std::string> overlaps(const Sheet &sheet) {
  std::vector<std::string> faults = sheet.clashes;
  const auto texts = lettering_of(sheet);
  for (std::size_t i = 0; i < texts.size(); ++i) {
    if (!sheet.frame.contains(texts[i].box)) {
      faults.push_back(texts[i].what + " leaves the frame");
    }
    for (std::size_t j = i + 1; j < texts.size(); ++j) {
      const bool together =
          texts[i].owner != nobody && texts[i].owner == texts[j].owner; // lines of one callout
      if (!together && overlap(texts[i].box, texts[j].box)) {
        faults.push_back(texts[i].what + " on " + texts[j].what);
      }
    }
  }
  const auto ink = ink_of(sheet);
  for (const Lettering &text : texts) {
    for (const Inked &line : ink) {
      if ((text.owner == nobody || line.owner != text.owner) && crosses(line.segment, text.box)) {
        faults.push_back(text.what + " on a line");
        break;
      }
    }
  }
  return faults;
}

} // namespace purgewright::test
