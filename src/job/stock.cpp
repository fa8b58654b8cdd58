// "plate 20 mm", "flat 20 mm x 60 mm", "bar 60 mm", "round 1.5 in": what lies on the shop's rack.
#include "job/stock.hpp"

#include "purgewright/units/parse.hpp"

#include <string>

namespace purgewright::job {
namespace {

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(' ');
  return first == std::string_view::npos ? std::string_view()
                                         : text.substr(first, text.find_last_not_of(' ') - first + 1);
}

std::optional<units::Length> size(std::string_view text) {
  const auto parsed = units::parse_quantity(trimmed(text), units::Dimension::length);
  return parsed.si && *parsed.si > 0.0 ? std::optional(units::metres(*parsed.si)) : std::nullopt;
}

} // namespace

std::optional<StockItem> parse_stock(std::string_view text) {
  const auto line = trimmed(text);
  const auto space = line.find(' ');
  const auto word = line.substr(0, space);
  const bool round = word == "bar" || word == "round";
  if (space == std::string_view::npos || !(round || word == "plate" || word == "flat")) {
    return std::nullopt;
  }
  const auto sizes = line.substr(space);
  const auto by = sizes.find(" x ");
  const auto thickness = size(sizes.substr(0, by));
  if (!thickness || (round && by != std::string_view::npos)) {
    return std::nullopt;
  }
  StockItem item{round, *thickness, {}};
  if (by != std::string_view::npos) {
    const auto width = size(sizes.substr(by + 3));
    if (!width) {
      return std::nullopt;
    }
    item.width = *width;
  }
  return item;
}

} // namespace purgewright::job
