#include "text_parts.hpp"

#include "purgewright/fixture/family.hpp"

#include <fmt/format.h>

#include <string_view>

namespace purgewright::report::parts {

std::string paint(std::string_view text, int code, TextStyle style) {
  return style.colour ? fmt::format("\x1b[{}m{}\x1b[0m", code, text) : std::string(text);
}

std::string heading(std::string_view text, TextStyle style) {
  return fmt::format("\n{}\n", paint(text, 1, style));
}

std::string shop(const Findings &f, double si, units::Dimension dimension, int digits) {
  const std::string text = units::shop_text(si, dimension, f.design.job.shop.unit_system, digits);
  const std::string &currency = f.design.job.shop.currency;
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
