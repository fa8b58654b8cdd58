#include "html/markup.hpp"
#include "html/sections.hpp"

#include "purgewright/report/bench_numbers.hpp"

#include <fmt/format.h>

#include <cctype>
#include <filesystem>

namespace purgewright::html {
namespace {

using report::Findings;

std::string plot(std::string_view svg, std::string_view words) {
  return fmt::format(
      "<figure><img src=\"data:image/svg+xml;base64,{}\" alt=\"{}\"><figcaption>{}</figcaption>"
      "</figure>\n",
      base64(svg), safe(words), safe(words));
}

std::string reaching(std::string_view where, const gas::CircuitPlan &circuit, double limit) {
  return circuit.reached
             ? fmt::format("{} it is under {} after {}", where, report::oxygen_limit_text(limit),
                           report::bench_time(circuit.time))
             : fmt::format("{} it never comes down to {}", where, report::oxygen_limit_text(limit));
}

std::string oxygen_words(const Findings &f) {
  const auto &gas = f.design.job.gas;
  return fmt::format("Oxygen over the prepurge: {}, {}.",
                     reaching("inside the joint", f.design.purge.bore, gas.oxygen_limit_bore),
                     reaching("outside", f.design.purge.chamber, gas.oxygen_limit_chamber));
}

std::string temperature_words(const Findings &f) {
  return fmt::format(
      "Temperatures over the weld, arcs shaded: all gas stays on until no hot metal is above {}.",
      report::limit_text(f, f.design.heat.shielding_temperature));
}

// "chamber-body-2" is sheet 2 of the chamber body.
struct SheetName {
  std::string part;
  std::string sheet; // empty: the only one
};

SheetName name_of(const std::string &path) {
  const std::string stem = std::filesystem::path(path).stem().string();
  const auto dash = stem.rfind('-');
  const bool numbered = dash != std::string::npos && dash + 1 < stem.size() &&
                        stem.find_first_not_of("0123456789", dash + 1) == std::string::npos;
  return numbered ? SheetName{stem.substr(0, dash), stem.substr(dash + 1)} : SheetName{stem, {}};
}

std::string in_words(std::string id) {
  for (char &c : id) {
    c = c == '-' ? ' ' : c;
  }
  id.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(id.front())));
  return id;
}

std::string sheet(const Picture &picture) {
  const SheetName name = name_of(picture.path);
  const std::string words =
      in_words(name.part) + (name.sheet.empty() ? std::string() : fmt::format(", sheet {}", name.sheet));
  return fmt::format(
      "<details class=\"sheet\"><summary>{0}</summary><p><a href=\"drawings/{1}.pdf\">{1}.pdf</a> to "
      "print, <a href=\"{2}\">{3}</a></p><div class=\"paper\" data-words=\"Drawing sheet: {0}\"></div>"
      "<script type=\"application/gzip\">{4}</script></details>\n",
      safe(words), safe(name.part), safe(picture.path),
      safe(std::filesystem::path(picture.path).filename().string()), packed(picture.svg));
}

} // namespace

std::string plots(const Findings &f, const Shown &shown) {
  return "<section id=\"plots\" aria-labelledby=\"plots-head\">\n<h2 id=\"plots-head\">Oxygen and "
         "temperature</h2>\n<div class=\"plots\">\n" +
         plot(shown.oxygen_svg, oxygen_words(f)) + plot(shown.temperatures_svg, temperature_words(f)) +
         "</div>\n</section>\n";
}

std::string sheets(const Shown &shown) {
  std::string text =
      "<section id=\"sheets\" aria-labelledby=\"sheets-head\">\n<h2 id=\"sheets-head\">Drawings</h2>\n<p><a "
      "href=\"drawings/all.pdf\">all.pdf</a> holds every sheet.</p>\n";
  for (const Picture &picture : shown.sheets) {
    text += sheet(picture);
  }
  return text + "</section>\n";
}

} // namespace purgewright::html
