#include "job/value_reader.hpp"

#include "job/fault.hpp"
#include "job/limits.hpp"
#include "purgewright/files/text.hpp"
#include "purgewright/job/nearest.hpp"
#include "purgewright/standards/tables.hpp"
#include "purgewright/units/parse.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace purgewright::job {
namespace {

using files::printable;
using files::shown;
using units::Dimension;
using Outcome = std::variant<Entry, Diagnostic>;

constexpr std::size_t item_length_most = 200; // characters of a list's text
constexpr std::size_t list_length_most = 200;

Diagnostic fault(const FieldInfo &info, Mark mark, std::string problem, std::string allowed) {
  return job::fault(mark, std::string(info.path), std::move(problem), std::move(allowed));
}

std::string_view kind_name(YamlNode::Kind kind) {
  switch (kind) {
  case YamlNode::Kind::map:
    return "a section of keys stands where a value is wanted";
  case YamlNode::Kind::list:
    return "a list stands where one value is wanted";
  default:
    return "the key has no value";
  }
}

bool is_trailing_byte(char c) {
  return (c & 0xC0) == 0x80;
}

std::size_t characters(std::string_view text) {
  return static_cast<std::size_t>(std::ranges::count_if(text, [](char c) { return !is_trailing_byte(c); }));
}

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t\n");
  if (first == std::string_view::npos) {
    return {};
  }
  return text.substr(first, text.find_last_not_of(" \t\n") - first + 1);
}

Entry entry_at(Mark mark) {
  Entry entry;
  entry.stated = true;
  entry.mark = mark;
  return entry;
}

Outcome read_share(const FieldInfo &info, const YamlNode &node) {
  const auto parsed = units::parse_quantity(node.text, Dimension::ratio);
  const double share = parsed.si.value_or(-1.0);
  if (!(share >= 0.0 && share <= 1.0)) {
    return fault(info, node.mark, fmt::format("'{}' is not a share from 0 % to 100 %", shown(node.text)),
                 allowed_values(info));
  }
  Entry entry = entry_at(node.mark);
  entry.is_share = true;
  entry.number = share;
  return entry;
}

bool is_inch(std::string_view unit) {
  return unit == "in" || unit == "inch" || unit == "inches" || unit == "\"";
}

Outcome read_quantity(const FieldInfo &info, const YamlNode &node) {
  const auto text = trimmed(node.text);
  if (info.share_allowed && text.ends_with('%')) {
    return read_share(info, node);
  }
  const auto unit = unit_written(text);
  const auto parsed = units::parse_quantity(text, info.dimension);
  if (!parsed.si || !std::isfinite(*parsed.si)) {
    return fault(info, node.mark, printable(parsed.problem), allowed_values(info, unit));
  }
  // Limits written in other units come out of the conversion with the last digit uncertain.
  const double slack = 1e-12 * std::max(std::abs(info.least), std::abs(info.most));
  if (!(*parsed.si >= info.least - slack && *parsed.si <= info.most + slack)) {
    return fault(info, node.mark,
                 fmt::format("{} is too {}", shown(node.text), *parsed.si < info.least ? "small" : "large"),
                 allowed_values(info, unit));
  }
  Entry entry = entry_at(node.mark);
  entry.number = std::clamp(*parsed.si, info.least, info.most);
  entry.text = parsed.currency;
  entry.inches = info.dimension == Dimension::length && is_inch(unit);
  return entry;
}

Outcome read_count(const FieldInfo &info, const YamlNode &node) {
  const auto parsed = units::parse_quantity(node.text, Dimension::count);
  if (!parsed.si || !(*parsed.si >= info.least && *parsed.si <= info.most) ||
      *parsed.si != std::floor(*parsed.si)) {
    const bool outside = parsed.si && *parsed.si == std::floor(*parsed.si);
    return fault(
        info, node.mark,
        outside ? fmt::format("{} is too {}", shown(node.text), *parsed.si < info.least ? "small" : "large")
                : fmt::format("'{}' is not a whole number", shown(node.text)),
        allowed_values(info));
  }
  Entry entry = entry_at(node.mark);
  entry.number = *parsed.si;
  return entry;
}

Outcome read_choice(const FieldInfo &info, const YamlNode &node) {
  const auto metal = names_metal(info) ? standards::metal_called(node.text) : std::string_view();
  const std::string_view word = metal.empty() ? std::string_view(node.text) : metal;
  const auto found = std::ranges::find_if(
      info.choices, [word](std::string_view choice) { return edits(word, choice) == 0; }); // in either case
  if (found == info.choices.end()) {
    auto problem = fault(info, node.mark,
                         metal.empty() ? fmt::format("'{}' is not known", shown(node.text))
                                       : fmt::format("{} does not serve here", metal),
                         allowed_values(info));
    problem.nearest =
        names_metal(info) ? nearest_metal(node.text, info.choices) : nearest_choice(node.text, info.choices);
    return problem;
  }
  Entry entry = entry_at(node.mark);
  entry.number = static_cast<double>(found - info.choices.begin());
  return entry;
}

bool is_name(std::string_view text) {
  const auto plain = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '_';
  };
  return !text.empty() && text.front() != '-' && std::ranges::all_of(text, plain);
}

// Empty when the text is good.
std::string text_problem(std::string_view text, std::size_t most) {
  if (files::has_undrawable(text)) {
    return fmt::format("'{}' holds a line end, a tab or another character that cannot be drawn", shown(text));
  }
  if (characters(text) > most) {
    return fmt::format("the text has {} characters", characters(text));
  }
  return {};
}

// Texts that stand in drawings.
bool is_drawn(Key key) {
  return key == Key::job_title || key == Key::job_revision || key == Key::job_prepared_by;
}

Outcome read_text(const FieldInfo &info, const YamlNode &node) {
  std::string problem = text_problem(node.text, static_cast<std::size_t>(info.most));
  if (problem.empty() && is_drawn(info.key) && node.text.find("%%") != std::string::npos) {
    problem = "two % side by side are a code in DXF drawings";
  }
  if (problem.empty() && info.key == Key::job_name && !is_name(node.text)) {
    problem = fmt::format("'{}' cannot name a folder", shown(node.text));
  }
  if (!problem.empty()) {
    return fault(info, node.mark, std::move(problem), allowed_values(info));
  }
  Entry entry = entry_at(node.mark);
  entry.text = node.text;
  return entry;
}

Outcome read_list(const FieldInfo &info, const YamlNode &node) {
  if (node.kind != YamlNode::Kind::list) {
    return fault(info, node.mark, "one value stands where a list is wanted", allowed_values(info));
  }
  if (node.children.size() > list_length_most) {
    return fault(info, node.mark, fmt::format("the list has {} items", node.children.size()),
                 fmt::format("at most {} items", list_length_most));
  }
  Entry entry = entry_at(node.mark);
  for (const auto &item : node.children) {
    std::string problem = item.kind == YamlNode::Kind::scalar
                              ? text_problem(item.text, item_length_most)
                              : std::string("an item of the list is not a text");
    if (!problem.empty()) {
      return fault(info, item.mark, std::move(problem), allowed_values(info));
    }
    entry.list.push_back(item.text);
  }
  return entry;
}

} // namespace

std::variant<Entry, Diagnostic> read_value(const FieldInfo &info, const YamlNode &node) {
  if (info.kind == FieldKind::text_list && node.kind != YamlNode::Kind::null) {
    return read_list(info, node);
  }
  if (node.kind != YamlNode::Kind::scalar) {
    return fault(info, node.mark, std::string(kind_name(node.kind)), allowed_values(info));
  }
  switch (info.kind) {
  case FieldKind::quantity:
    return read_quantity(info, node);
  case FieldKind::count:
    return read_count(info, node);
  case FieldKind::choice:
    return read_choice(info, node);
  default:
    return read_text(info, node);
  }
}

} // namespace purgewright::job
