#include "new_job.hpp"

#include "purgewright/job/nearest.hpp"
#include "purgewright/units/parse.hpp"
#include "purgewright/units/quantity.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

namespace purgewright::cli {
namespace {

using units::Dimension;

constexpr std::string_view example = "such as '1 in x 0.035 in x 8 in' or '25.4 x 0.9 x 190 mm'";

std::string trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t"), last = text.find_last_not_of(" \t.");
  return first == std::string_view::npos || last == std::string_view::npos || last < first
             ? std::string()
             : std::string(text.substr(first, last - first + 1));
}

// As a job file spells it: 1", 1 IN, 1 in. are 1 in.
std::string plain(std::string_view size) {
  std::string text;
  for (const char c : size) {
    c == '"' ? text += " in" : text += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return trimmed(text);
}

bool has_unit(std::string_view size) {
  return std::ranges::any_of(size, [](char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; });
}

std::string unit_of(std::string_view size) {
  const auto at =
      std::ranges::find_if(size, [](char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; });
  return {at, size.end()};
}

// Outside diameter, wall and length, each with its unit.
std::vector<std::string> sizes_of(std::string_view tube) {
  constexpr std::string_view sign = "\u00d7";
  std::vector<std::string> sizes(1);
  for (std::size_t at = 0; at < tube.size(); ++at) {
    const bool times = tube.substr(at).starts_with(sign);
    if (times || tube[at] == 'x' || tube[at] == 'X') {
      sizes.emplace_back();
      at += times ? sign.size() - 1 : 0;
    } else {
      sizes.back() += tube[at];
    }
  }
  std::string unit;
  for (std::size_t left = sizes.size(); left > 0; --left) {
    std::string &size = sizes[left - 1];
    size = plain(size);
    unit = has_unit(size) ? unit_of(size) : unit;
    if (!has_unit(size) && !unit.empty()) {
      size.append(" ").append(unit);
    }
  }
  return sizes;
}

// A third more than the wall: thick enough to stand the arc at its edge, thin enough to melt with the wall.
std::string cap_thickness(double wall, bool inch) {
  constexpr double share = 4.0 / 3.0, metric_step = 0.1e-3, inch_step = 0.005 * 25.4e-3,
                   metres_per_inch = 25.4e-3;
  const double step = inch ? inch_step : metric_step;
  const double thickness = std::ceil(share * wall / step - 1e-9) * step;
  return inch ? fmt::format("{:.4g} in", thickness / metres_per_inch)
              : fmt::format("{:.4g} mm", 1e3 * thickness);
}

// Letters, digits and dashes: "flat-cap-1-1-4-in".
std::string name_of(std::string_view cap, std::string_view diameter) {
  std::string name = fmt::format("{}-cap-", cap);
  for (const char c : diameter) {
    const bool kept = std::isalnum(static_cast<unsigned char>(c)) != 0;
    kept ? name += c : name += name.back() == '-' ? "" : "-";
  }
  return name;
}

} // namespace

NewJob job_of_sizes(std::string_view tube, std::string_view cap) {
  constexpr std::array<std::string_view, 3> shapes{"flat", "domed", "spigot"};
  if (std::ranges::find(shapes, cap) == shapes.end()) {
    return {.text = {},
            .problem = fmt::format("--cap {}: a cap is {}{}", cap, fmt::join(shapes, ", "),
                                   job::did_you_mean(job::nearest_choice(cap, shapes)))};
  }
  const std::vector<std::string> sizes = sizes_of(tube);
  if (sizes.size() != 3) {
    return {.text = {},
            .problem = fmt::format("--tube '{}': write OUTSIDE x WALL x LENGTH, {}", tube, example)};
  }
  std::array<double, 3> metres{};
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    const auto read = units::parse_quantity(sizes[i], Dimension::length);
    if (!read.si) {
      return {.text = {},
              .problem = fmt::format("--tube '{}': {}; write it {}", tube, read.problem, example)};
    }
    metres.at(i) = *read.si;
  }
  const bool inch = unit_of(sizes[0]).starts_with("in");
  return {
      .text = fmt::format(
          "# yaml-language-server: $schema=job.schema.json\n#\n"
          "# A {0} cap closes a tube of {1} x {2} x {3}. What is not stated has a default, which\n"
          "# `purgewright check --all` prints with its reason; `purgewright new {0}-cap` shows every key.\n\n"
          "job:\n  name: {4}\n\n"
          "tube:\n  material: titanium-grade-2             # titanium-grade-2, titanium-grade-9 or "
          "titanium-6al-4v\n"
          "  outside_diameter: {1}\n  wall: {2}\n  length: {3}\n\n"
          "cap:\n  shape: {0}\n  diameter: {1}\n"
          "  thickness: {5:<28} # chosen here: a third more than the wall\n{6}",
          cap, sizes[0], sizes[1], sizes[2], name_of(cap, sizes[0]), cap_thickness(metres[1], inch),
          inch ? "\nshop:\n  units: inch\n" : ""),
      .problem = {}};
}

} // namespace purgewright::cli
