#include "support/random_job.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <vector>

namespace purgewright::test {
namespace {

// Between double quotes: the texts drawn here hold neither quotes nor backslashes.
std::string in_quotes(std::string_view text) {
  return fmt::format("\"{}\"", text);
}

std::string quantity_text(const job::FieldInfo &info, const job::Entry &entry, LengthUnit unit) {
  if (entry.is_share) {
    return fmt::format("{:.15g} %", entry.number * 100.0);
  }
  switch (info.dimension) {
  case units::Dimension::length:
    return unit == LengthUnit::inch ? fmt::format("{:.15g} in", entry.number / 0.0254)
                                    : fmt::format("{:.15g} mm", entry.number * 1e3);
  case units::Dimension::ratio:
    return fmt::format("{:.17g}", entry.number);
  case units::Dimension::price:
    return fmt::format("{:.17g} {}/m3", entry.number, entry.text);
  default:
    return fmt::format("{:.17g} {}", entry.number, units::si_unit(info.dimension));
  }
}

std::string value_text(const job::FieldInfo &info, const job::Entry &entry, LengthUnit unit) {
  switch (info.kind) {
  case job::FieldKind::text:
    return in_quotes(entry.text);
  case job::FieldKind::choice:
    return std::string(info.choices[static_cast<std::size_t>(entry.number)]);
  case job::FieldKind::count:
    return fmt::format("{:.0f}", entry.number);
  case job::FieldKind::text_list: {
    std::vector<std::string> items;
    std::ranges::transform(entry.list, std::back_inserter(items), in_quotes);
    return fmt::format("[{}]", fmt::join(items, ", "));
  }
  case job::FieldKind::quantity:
    break;
  }
  return quantity_text(info, entry, unit);
}

} // namespace

std::string to_yaml(const job::Draft &draft, LengthUnit unit) {
  // Keys are nested by their dots; the table lists the keys of a section together.
  std::string yaml;
  std::string open;
  for (const auto &info : job::fields()) {
    const auto &entry = draft[info.key];
    if (!entry.stated) {
      continue;
    }
    const auto last = info.path.rfind('.');
    const std::string sections(info.path.substr(0, last));
    if (sections != open) {
      const auto dot = sections.find('.');
      const std::string section = sections.substr(0, dot);
      if (section != open.substr(0, open.find('.'))) {
        yaml += section + ":\n";
      }
      if (dot != std::string::npos) {
        yaml += "  " + sections.substr(dot + 1) + ":\n";
      }
      open = sections;
    }
    const std::string indent(sections.find('.') == std::string::npos ? 2 : 4, ' ');
    yaml += fmt::format("{}{}: {}\n", indent, info.path.substr(last + 1), value_text(info, entry, unit));
  }
  return yaml;
}

} // namespace purgewright::test
