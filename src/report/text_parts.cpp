#include "text_parts.hpp"

#include "purgewright/fixture/family.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <vector>

namespace purgewright::report::parts {

std::string paint(std::string_view text, int code, TextStyle style) {
  return style.colour ? fmt::format("\x1b[{}m{}\x1b[0m", code, text) : std::string(text);
}

std::string heading(std::string_view text, TextStyle style) {
  return fmt::format("\n{}\n", paint(text, 1, style));
}

int colour_of(checks::Status status) {
  constexpr int red = 31, yellow = 33, green = 32;
  return status == checks::Status::fail ? red : status == checks::Status::caution ? yellow : green;
}

std::string status_word(checks::Status status, TextStyle style) {
  return paint(fmt::format("{:<7}", checks::to_text(status)), colour_of(status), style);
}

namespace {

// Characters, not bytes: a byte that continues one takes no column.
std::size_t columns(std::string_view text) {
  return static_cast<std::size_t>(
      std::ranges::count_if(text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

// Lines of at most `room` columns, broken at blanks; a word longer than that keeps its line alone.
std::vector<std::string> lines_of(std::string_view text, std::size_t first_room, std::size_t room) {
  std::vector<std::string> lines{""};
  std::size_t blanks = 0;
  while (!text.empty()) {
    const std::size_t gap = std::min(text.find_first_not_of(' '), text.size());
    blanks = gap;
    text.remove_prefix(gap);
    const std::string_view word = text.substr(0, text.find(' '));
    text.remove_prefix(word.size());
    const std::size_t most = lines.size() == 1 ? first_room : room;
    if (!lines.back().empty() && columns(lines.back()) + blanks + columns(word) > most) {
      lines.emplace_back(word);
    } else {
      lines.back() += std::string(blanks, ' ').append(word);
    }
  }
  return lines;
}

} // namespace

std::string wrapped(std::string_view paragraph, std::size_t first, std::size_t next) {
  std::string text;
  for (const std::string &line : lines_of(paragraph, widest - first, widest - next)) {
    text += std::string(text.empty() ? first : next, ' ') + line + "\n";
  }
  return text;
}

Line row(std::string_view what, std::string_view text, std::string_view id) {
  return {std::string(what), std::string(text), std::string(id)};
}

namespace {

std::string printed_row(const Line &row) {
  constexpr std::size_t indent = 2, of_what = 18, of_text = 60;
  std::string all;
  for (const std::string &line : lines_of(row.text, of_text, of_text)) {
    const bool first = all.empty();
    all += fmt::format("{:{}}{:<{}} {:<{}}{}\n", "", indent,
                       first ? std::string_view(row.what) : std::string_view(), of_what, line,
                       first ? of_text : 0, first ? fmt::format(" {}", row.id) : std::string());
  }
  return all;
}

} // namespace

std::string printed(const Lines &lines) {
  std::string text;
  for (const Line &line : lines) {
    text += printed_row(line);
  }
  return text;
}

std::string shop(const Findings &f, double si, units::Dimension dimension, int digits) {
  return shop_beside(f, si, si, dimension, digits);
}

std::string shop_beside(const Findings &f, double si, double beside, units::Dimension dimension, int digits) {
  return with_currency(units::shop_text_beside(si, beside, dimension, f.design.job.shop.unit_system, digits),
                       dimension, f.design.job.shop.currency);
}

std::string with_currency(std::string text, units::Dimension dimension, std::string_view currency) {
  if (dimension == units::Dimension::cost) {
    return fmt::format("{} {}", text, currency);
  }
  if (dimension != units::Dimension::price) {
    return text;
  }
  constexpr std::string_view of_no_currency = " 1/"; // "12 1/m3"
  const auto at = text.find(of_no_currency);
  return at == std::string::npos
             ? text
             : fmt::format("{} {}/{}", text.substr(0, at), currency, text.substr(at + of_no_currency.size()));
}

std::string diameters_served(const checks::Design &d) {
  const auto range = fixture::tube_diameters_served(d.job);
  const auto text = [&](units::Length length) {
    return units::shop_text(length.value(), units::Dimension::length, d.job.shop.unit_system);
  };
  return range.least < range.most ? fmt::format("{} to {} in diameter", text(range.least), text(range.most))
                                  : fmt::format("of {} diameter alone", text(range.least));
}

} // namespace purgewright::report::parts
