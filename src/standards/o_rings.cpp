#include "purgewright/standards/tables.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace purgewright::standards {

namespace {

using units::inches;
using units::millimetres;

struct Size {
  std::string_view dash;
  double inside_diameter, inside_tolerance; // in
};

constexpr auto series_0 = std::to_array<Size>({
    {"-006", 0.114, 0.005}, {"-007", 0.145, 0.005}, {"-008", 0.176, 0.005}, {"-009", 0.208, 0.005},
    {"-010", 0.239, 0.005}, {"-011", 0.301, 0.005}, {"-012", 0.364, 0.005}, {"-013", 0.426, 0.005},
    {"-014", 0.489, 0.005}, {"-015", 0.551, 0.007}, {"-016", 0.614, 0.009}, {"-017", 0.676, 0.009},
    {"-018", 0.739, 0.009}, {"-019", 0.801, 0.009}, {"-020", 0.864, 0.009}, {"-021", 0.926, 0.009},
    {"-022", 0.989, 0.01},  {"-023", 1.051, 0.01},  {"-024", 1.114, 0.01},  {"-025", 1.176, 0.011},
    {"-026", 1.239, 0.011}, {"-027", 1.301, 0.011}, {"-028", 1.364, 0.013}, {"-029", 1.489, 0.013},
    {"-030", 1.614, 0.013}, {"-031", 1.739, 0.015}, {"-032", 1.864, 0.015}, {"-033", 1.989, 0.018},
    {"-034", 2.114, 0.018}, {"-035", 2.239, 0.018}, {"-036", 2.364, 0.018}, {"-037", 2.489, 0.018},
    {"-038", 2.614, 0.02},  {"-039", 2.739, 0.02},  {"-040", 2.864, 0.02},  {"-041", 2.989, 0.024},
    {"-042", 3.239, 0.024}, {"-043", 3.489, 0.024}, {"-044", 3.739, 0.027}, {"-045", 3.989, 0.027},
    {"-046", 4.239, 0.03},  {"-047", 4.489, 0.03},  {"-048", 4.739, 0.03},  {"-049", 4.989, 0.037},
    {"-050", 5.239, 0.037},
});

constexpr auto series_1 = std::to_array<Size>({
    {"-106", 0.174, 0.005}, {"-107", 0.206, 0.005}, {"-108", 0.237, 0.005}, {"-109", 0.299, 0.005},
    {"-110", 0.362, 0.005}, {"-111", 0.424, 0.005}, {"-112", 0.487, 0.005}, {"-113", 0.549, 0.007},
    {"-114", 0.612, 0.009}, {"-115", 0.674, 0.009}, {"-116", 0.737, 0.009}, {"-117", 0.799, 0.01},
    {"-118", 0.862, 0.01},  {"-119", 0.924, 0.01},  {"-120", 0.987, 0.01},  {"-121", 1.049, 0.01},
    {"-122", 1.112, 0.01},  {"-123", 1.174, 0.012}, {"-124", 1.237, 0.012}, {"-125", 1.299, 0.012},
    {"-126", 1.362, 0.012}, {"-127", 1.424, 0.012}, {"-128", 1.487, 0.012}, {"-129", 1.549, 0.015},
    {"-130", 1.612, 0.015}, {"-131", 1.674, 0.015}, {"-132", 1.737, 0.015}, {"-133", 1.799, 0.015},
    {"-134", 1.862, 0.015}, {"-135", 1.925, 0.017}, {"-136", 1.987, 0.017}, {"-137", 2.05, 0.017},
    {"-138", 2.112, 0.017}, {"-139", 2.175, 0.017}, {"-140", 2.237, 0.017}, {"-141", 2.3, 0.02},
    {"-142", 2.362, 0.02},  {"-143", 2.425, 0.02},  {"-144", 2.487, 0.02},  {"-145", 2.55, 0.02},
    {"-146", 2.612, 0.02},  {"-147", 2.675, 0.022}, {"-148", 2.737, 0.022}, {"-149", 2.8, 0.022},
    {"-150", 2.862, 0.022},
});

constexpr auto series_2 = std::to_array<Size>({
    {"-201", 0.171, 0.005}, {"-202", 0.234, 0.005}, {"-203", 0.296, 0.005}, {"-204", 0.359, 0.005},
    {"-205", 0.421, 0.005}, {"-206", 0.484, 0.005}, {"-207", 0.546, 0.007}, {"-208", 0.609, 0.009},
    {"-209", 0.671, 0.009}, {"-210", 0.734, 0.01},  {"-211", 0.796, 0.01},  {"-212", 0.859, 0.01},
    {"-213", 0.921, 0.01},  {"-214", 0.984, 0.01},  {"-215", 1.046, 0.01},  {"-216", 1.109, 0.012},
    {"-217", 1.171, 0.012}, {"-218", 1.234, 0.012}, {"-219", 1.296, 0.012}, {"-220", 1.359, 0.012},
    {"-221", 1.421, 0.012}, {"-222", 1.484, 0.015}, {"-223", 1.609, 0.015}, {"-224", 1.734, 0.015},
    {"-225", 1.859, 0.018}, {"-226", 1.984, 0.018}, {"-227", 2.109, 0.018}, {"-228", 2.234, 0.02},
    {"-229", 2.359, 0.02},  {"-230", 2.484, 0.02},  {"-231", 2.609, 0.02},  {"-232", 2.734, 0.024},
    {"-233", 2.859, 0.024}, {"-234", 2.984, 0.024}, {"-235", 3.109, 0.024}, {"-236", 3.234, 0.024},
    {"-237", 3.359, 0.024}, {"-238", 3.484, 0.024}, {"-239", 3.609, 0.028}, {"-240", 3.734, 0.028},
});

// AS568: section and its plus-minus tolerance by series, in.
constexpr double section_0 = 0.070, section_0_tolerance = 0.003;
constexpr double section_1 = 0.103, section_1_tolerance = 0.003;
constexpr double section_2 = 0.139, section_2_tolerance = 0.004;

constexpr std::size_t append(std::span<ORing> rings, std::span<const Size> sizes, double section,
                             double tolerance) {
  for (std::size_t i = 0; i < sizes.size(); ++i)
    rings[i] = {sizes[i].dash, inches(sizes[i].inside_diameter), inches(sizes[i].inside_tolerance),
                inches(section), inches(tolerance)};
  return sizes.size();
}

constexpr auto rings = [] {
  std::array<ORing, series_0.size() + series_1.size() + series_2.size()> all{};
  const std::span<ORing> rows(all);
  std::size_t next = append(rows, series_0, section_0, section_0_tolerance);
  next += append(rows.subspan(next), series_1, section_1, section_1_tolerance);
  append(rows.subspan(next), series_2, section_2, section_2_tolerance);
  return all;
}();

// Gland by section, in; squeeze as the table prints it; lead-in length, mm.
constexpr Gland gland(double section, double depth_min, double depth_max, double width, double radius_max,
                      double clearance_max, double lead_in, double squeeze_min, double squeeze_max) {
  return {.section = inches(section),
          .depth_min = inches(depth_min),
          .depth_max = inches(depth_max),
          .width = inches(width),
          .width_tolerance = inches(0.005),
          .corner_radius_min = inches(0.005),
          .corner_radius_max = inches(radius_max),
          .clearance_max = inches(clearance_max),
          .lead_in_length = millimetres(lead_in),
          .squeeze_min = squeeze_min,
          .squeeze_max = squeeze_max};
}

constexpr std::array<Gland, 5> glands{{
    gland(0.070, 0.050, 0.055, 0.105, 0.015, 0.004, 2.0, 0.18, 0.32),
    gland(0.103, 0.080, 0.086, 0.146, 0.020, 0.005, 2.5, 0.14, 0.25),
    gland(0.139, 0.110, 0.116, 0.195, 0.030, 0.006, 3.0, 0.14, 0.23),
    gland(0.210, 0.170, 0.176, 0.280, 0.050, 0.006, 3.5, 0.14, 0.21),
    gland(0.275, 0.225, 0.235, 0.350, 0.060, 0.007, 4.0, 0.13, 0.20),
}};

} // namespace

std::span<const ORing> o_rings() {
  return rings;
}

const ORing *o_ring(std::string_view dash) {
  const auto *row =
      std::find_if(rings.begin(), rings.end(), [dash](const ORing &r) { return r.dash == dash; });
  return row == rings.end() ? nullptr : row;
}

std::string_view o_ring_source() {
  return "SAE AS568 sizes; inside-diameter tolerances and some diameters from memory of AS568";
}

const Gland *static_radial_gland(Length section) {
  constexpr Length nearness = millimetres(0.1);
  const auto distance = [section](const Gland &g) { return std::abs((g.section - section).value()); };
  const auto *row = std::min_element(glands.begin(), glands.end(), [&](const Gland &a, const Gland &b) {
    return distance(a) < distance(b);
  });
  return distance(*row) <= nearness.value() ? row : nullptr;
}

std::string_view gland_source() {
  return "Apple Rubber Products, Seal Types & Gland Design, static seals, radial, no backup ring; lead-in "
         "from "
         "memory of ISO 3601-2";
}

const SealRules &seal_rules() {
  static constexpr SealRules rules{
      .squeeze_min = 0.14, // least and most of the table's rows for the sections o_rings() lists
      .squeeze_max = 0.32,
      .stretch_max = 0.05,
      .fill_max = 0.85,
      .source = "squeeze: extremes of the static radial gland table; stretch at most 5 %, fill at most "
                "85 %: O-ring handbooks, from memory"};
  return rules;
}

} // namespace purgewright::standards
