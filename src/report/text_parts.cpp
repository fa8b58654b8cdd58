#include "text_parts.hpp"

#include "purgewright/fixture/family.hpp"

#include <fmt/format.h>

namespace purgewright::report::parts {

std::string paint(std::string_view text, int code, TextStyle style) {
  return style.colour ? fmt::format("\x1b[{}m{}\x1b[0m", code, text) : std::string(text);
}

std::string heading(std::string_view text, TextStyle style) {
  return fmt::format("\n{}\n", paint(text, 1, style));
}

std::string shop(const Findings &f, double si, units::Dimension dimension, int digits) {
  return units::shop_text(si, dimension, f.design.job.shop.unit_system, digits);
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
