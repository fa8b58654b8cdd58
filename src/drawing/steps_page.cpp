#include "steps_page.hpp"

#include "purgewright/drawing/lettering.hpp"

#include <fmt/format.h>

#include <utility>

namespace purgewright::drawing {
namespace {

constexpr double pitch = 1.6 * letter_height, between_steps = 3.0;
constexpr double heading_height = 5.0;
constexpr const char *heading_text = "Order of assembly (numbers: parts list)";
constexpr double number_width = 10.0, column_gap = 12.0;
constexpr double widest = 200.0; // of a column: longer lines are hard to follow

// A word that no line holds goes on in the next, never broken within a character.
void break_last(std::vector<std::string> &lines, double height, double width) {
  while (text_width(lines.back(), height) > width) {
    std::string &line = lines.back();
    std::size_t at = line.size();
    do {
      --at;
    } while (at > 1 &&
             ((line[at] & 0xC0) == 0x80 || text_width(std::string_view(line).substr(0, at), height) > width));
    if (at <= 1) {
      return;
    }
    if (const auto hyphen = line.rfind('-', at - 1); hyphen != std::string::npos && 2 * hyphen > at) {
      at = hyphen + 1; // of a drawing's number
    }
    std::string rest = line.substr(at);
    line.resize(at);
    lines.push_back(std::move(rest));
  }
}

} // namespace

// Words in as few lines as the width allows.
std::vector<std::string> wrapped_words(std::string_view text, double height, double width) {
  std::vector<std::string> lines{""};
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    const std::string word(text.substr(0, end));
    const std::string longer = lines.back().empty() ? word : lines.back() + ' ' + word;
    if (!lines.back().empty() && text_width(longer, height) > width) {
      lines.push_back(word);
    } else {
      lines.back() = longer;
    }
    break_last(lines, height, width);
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return lines;
}

std::vector<StepsPage> steps_pages(const std::vector<std::string> &steps, const Box &area) {
  if (steps.empty()) {
    return {};
  }
  const double columns = std::max(1.0, std::ceil(area.width() / widest));
  const double width = (area.width() - (columns - 1.0) * column_gap) / columns;
  const Text heading{{area.least.x, area.greatest.y - heading_height}, heading_height, false, heading_text};
  const double top = heading.at.y - heading_height;
  std::vector<StepsPage> pages{{heading}};
  double left = area.least.x, y = top;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const auto lines = wrapped_words(steps[i], letter_height, width - number_width);
    if (y - double(lines.size()) * pitch < area.least.y && y < top) {
      y = top;
      left += width + column_gap;
      if (left + width > area.greatest.x + 1.0) {
        left = area.least.x;
        pages.push_back({heading});
      }
    }
    pages.back().push_back({{left, y - letter_height}, letter_height, false, fmt::format("{}", i + 1)});
    for (const std::string &line : lines) {
      pages.back().push_back({{left + number_width, y - letter_height}, letter_height, false, line});
      y -= pitch;
    }
    y -= between_steps;
  }
  return pages;
}

} // namespace purgewright::drawing
