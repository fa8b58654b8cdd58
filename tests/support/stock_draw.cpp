#include "support/stock_draw.hpp"

#include "support/random_job.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <string_view>
#include <vector>

namespace purgewright::test {
namespace {

constexpr double inch = 25.4; // mm

struct Listed {
  std::string_view text; // with its unit, as a job file has it
  double mm = 0.0;
};

constexpr std::array<Listed, 19> inch_tubes{{{"1/4 in", 0.25 * inch},
                                             {"3/8 in", 0.375 * inch},
                                             {"1/2 in", 0.5 * inch},
                                             {"5/8 in", 0.625 * inch},
                                             {"3/4 in", 0.75 * inch},
                                             {"7/8 in", 0.875 * inch},
                                             {"1 in", inch},
                                             {"1.25 in", 1.25 * inch},
                                             {"1.5 in", 1.5 * inch},
                                             {"1.75 in", 1.75 * inch},
                                             {"2 in", 2.0 * inch},
                                             {"2.25 in", 2.25 * inch},
                                             {"2.5 in", 2.5 * inch},
                                             {"3 in", 3.0 * inch},
                                             {"3.5 in", 3.5 * inch},
                                             {"4 in", 4.0 * inch},
                                             {"4.5 in", 4.5 * inch},
                                             {"5 in", 5.0 * inch},
                                             {"6 in", 6.0 * inch}}};

constexpr std::array<Listed, 14> pipes{{{"10.29 mm", 10.29},
                                        {"13.72 mm", 13.72},
                                        {"17.15 mm", 17.15},
                                        {"21.34 mm", 21.34},
                                        {"26.67 mm", 26.67},
                                        {"33.40 mm", 33.40},
                                        {"42.16 mm", 42.16},
                                        {"48.26 mm", 48.26},
                                        {"60.33 mm", 60.33},
                                        {"73.03 mm", 73.03},
                                        {"88.90 mm", 88.90},
                                        {"114.30 mm", 114.30},
                                        {"141.30 mm", 141.30},
                                        {"168.28 mm", 168.28}}};

constexpr std::array<Listed, 19> metric_tubes{{{"8 mm", 8},
                                               {"10 mm", 10},
                                               {"12 mm", 12},
                                               {"14 mm", 14},
                                               {"15 mm", 15},
                                               {"16 mm", 16},
                                               {"18 mm", 18},
                                               {"20 mm", 20},
                                               {"22 mm", 22},
                                               {"25 mm", 25},
                                               {"28 mm", 28},
                                               {"30 mm", 30},
                                               {"35 mm", 35},
                                               {"40 mm", 40},
                                               {"50 mm", 50},
                                               {"60 mm", 60},
                                               {"80 mm", 80},
                                               {"100 mm", 100},
                                               {"160 mm", 160}}};

constexpr std::array<Listed, 8> inch_walls{{{"0.020 in", 0.020 * inch},
                                            {"0.028 in", 0.028 * inch},
                                            {"0.035 in", 0.035 * inch},
                                            {"0.049 in", 0.049 * inch},
                                            {"0.065 in", 0.065 * inch},
                                            {"0.083 in", 0.083 * inch},
                                            {"0.109 in", 0.109 * inch},
                                            {"0.120 in", 0.120 * inch}}};

constexpr std::array<Listed, 8> metric_walls{{{"0.5 mm", 0.5},
                                              {"0.7 mm", 0.7},
                                              {"0.9 mm", 0.9},
                                              {"1 mm", 1},
                                              {"1.2 mm", 1.2},
                                              {"1.5 mm", 1.5},
                                              {"2 mm", 2},
                                              {"3 mm", 3}}};

const Listed &any(Random &random, std::span<const Listed> rows) {
  return rows[static_cast<std::size_t>(random.whole(0, static_cast<int>(rows.size()) - 1))];
}

// A wall that a tube of this diameter is drawn with.
const Listed &wall_for(Random &random, std::span<const Listed> rows, double diameter) {
  constexpr double thinnest = 0.012, thickest = 0.13; // of the diameter
  std::vector<const Listed *> fitting;
  for (const Listed &row : rows) {
    if (row.mm >= thinnest * diameter && row.mm <= thickest * diameter) {
      fitting.push_back(&row);
    }
  }
  return *fitting.at(static_cast<std::size_t>(random.whole(0, static_cast<int>(fitting.size()) - 1)));
}

// Short tubes are as likely as long ones: even on a logarithmic scale.
double length_for(Random &random, double diameter) {
  constexpr double least = 20.0, most = 1500.0; // mm
  const double shortest = std::max(least, diameter);
  return std::round(shortest * std::pow(most / shortest, random.between(0.0, 1.0)));
}

std::string cap_text(Random &random, const Listed &tube, double wall, std::string &in_words) {
  constexpr std::array<std::string_view, 3> shapes{"flat", "domed", "spigot"};
  constexpr std::array<double, 4> thickness_per_wall{1.0, 1.3, 2.0, 3.0};
  const auto shape = shapes[static_cast<std::size_t>(random.whole(0, 2))];
  const double thickness =
      std::ceil(10.0 * wall * thickness_per_wall[static_cast<std::size_t>(random.whole(0, 3))]) / 10.0;
  in_words += fmt::format(", {} cap {:.1f} mm", shape, thickness);
  std::string more;
  if (shape == "domed") {
    more = fmt::format(", dome_height: {:.1f} mm", std::max(thickness + 0.5, 0.25 * tube.mm));
  } else if (shape == "spigot") {
    more = fmt::format(", spigot_length: {:.1f} mm", std::clamp(0.15 * tube.mm, 2.0, 6.0));
  }
  return fmt::format("cap:  {{shape: {}, diameter: {}, thickness: {:.1f} mm{}}}\n", shape, tube.text,
                     thickness, more);
}

// Behind the joint by half a diameter, as wide as a drill that leaves the tube its strength.
std::string vent_text(Random &random, double diameter, double length, std::string &in_words) {
  if (random.chance(0.5)) {
    return {};
  }
  const double hole = std::clamp(std::round(2.0 * 0.12 * diameter) / 2.0, 1.0, 4.0);
  const double from = std::min(std::max(0.5 * diameter, 5.0 + hole), 0.4 * length);
  in_words += ", vent";
  return fmt::format(", vent: {{diameter: {:.1f} mm, from_joint: {:.1f} mm, count: 1}}", hole, from);
}

} // namespace

StockJob stock_job(std::uint64_t seed) {
  Random random(seed);
  const int family = random.whole(0, 2);
  const Listed &tube = any(random, family == 0   ? std::span<const Listed>(inch_tubes)
                                   : family == 1 ? std::span<const Listed>(pipes)
                                                 : std::span<const Listed>(metric_tubes));
  const Listed &wall =
      wall_for(random, family == 2 ? std::span<const Listed>(metric_walls) : inch_walls, tube.mm);
  const double length = length_for(random, tube.mm);
  StockJob job{
      .seed = seed, .yaml = {}, .in_words = fmt::format("{} x {} x {:.0f} mm", tube.text, wall.text, length)};
  const std::string cap = cap_text(random, tube, wall.mm, job.in_words);
  const std::string vent = vent_text(random, tube.mm, length, job.in_words);
  job.yaml = fmt::format(
      "job:  {{name: stock-{}}}\n"
      "tube: {{material: titanium-grade-2, outside_diameter: {}, wall: {}, length: {:.0f} mm{}}}\n{}",
      seed, tube.text, wall.text, length, vent, cap);
  return job;
}

} // namespace purgewright::test
