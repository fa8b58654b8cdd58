#include "purgewright/flow/pictures.hpp"

#include "oxygen.hpp"

#include "purgewright/gas/bounds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <iterator>

namespace purgewright::flow {
namespace {

// Of the colours: clean argon is pale, air dark.
constexpr double cleanest = 1e-6;

struct Colour {
  double red, green, blue;
};
// Even steps of lightness from pale to dark, told apart in grey as well.
constexpr std::array<Colour, 4> scale{
    {{236.0, 242.0, 238.0}, {126.0, 190.0, 182.0}, {40.0, 104.0, 140.0}, {40.0, 24.0, 66.0}}};

constexpr std::string_view metal = "#d8d2c8";

// 0 at 1 ppm and below, 1 in air.
double level(double oxygen) {
  const double decades = std::log10(gas::air_oxygen / cleanest);
  return std::clamp(std::log10(std::max(oxygen, cleanest) / cleanest) / decades, 0.0, 1.0);
}

std::string colour(double level) {
  constexpr auto steps = static_cast<double>(scale.size() - 1);
  const auto low = std::min(static_cast<std::size_t>(level * steps), scale.size() - 2);
  const double share = level * steps - static_cast<double>(low);
  const auto mix = [&](double Colour::*part) {
    return std::lround((1.0 - share) * scale[low].*part + share * scale[low + 1].*part);
  };
  return fmt::format("#{:02x}{:02x}{:02x}", mix(&Colour::red), mix(&Colour::green), mix(&Colour::blue));
}

std::string escaped(std::string_view text) {
  std::string result;
  for (const char c : text) {
    result += c == '<' ? "&lt;" : c == '&' ? "&amp;" : std::string(1, c);
  }
  return result;
}

std::string opened(double width, double height, std::string_view title) {
  return fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {0:.6g} {1:.6g}\" width=\"{0:.6g}\" "
      "height=\"{1:.6g}\" font-family=\"sans-serif\" font-size=\"13\">\n<title>{2}</title>\n"
      "<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n",
      width, height, escaped(title));
}

std::string words(double x, double y, std::string_view text, std::string_view anchor = "start") {
  return fmt::format("<text x=\"{:.6g}\" y=\"{:.6g}\" text-anchor=\"{}\" fill=\"#1b2428\">{}</text>\n", x, y,
                     anchor, escaped(text));
}

std::string line(double x1, double y1, double x2, double y2, std::string_view style) {
  return fmt::format("<line x1=\"{:.6g}\" y1=\"{:.6g}\" x2=\"{:.6g}\" y2=\"{:.6g}\" {}/>\n", x1, y1, x2, y2,
                     style);
}

std::string box(double x, double y, double width, double height, std::string_view fill) {
  return fmt::format("<rect x=\"{:.6g}\" y=\"{:.6g}\" width=\"{:.6g}\" height=\"{:.6g}\" fill=\"{}\"/>\n", x,
                     y, width, height, fill);
}

struct Tick {
  double oxygen;
  std::string_view text;
};
constexpr std::array<Tick, 6> ticks{
    {{1e-6, "1 ppm"}, {1e-5, "10"}, {1e-4, "100"}, {1e-3, "0.1 %"}, {1e-2, "1 %"}, {gas::air_oxygen, "air"}}};

constexpr double margin = 20.0, bar = 14.0;

std::string legend(double x, double y, double width) {
  constexpr int steps = 60;
  std::string text;
  for (int i = 0; i < steps; ++i) {
    const double at = double(i) / steps;
    text += box(x + at * width, y, width / steps + 0.5, bar, colour(at));
  }
  for (const Tick &tick : ticks) {
    const double at = x + level(tick.oxygen) * width;
    text += line(at, y + bar, at, y + bar + 4.0, "stroke=\"#1b2428\"") +
            words(at, y + bar + 18.0, tick.text, "middle");
  }
  return text;
}

std::string heading(const job::Job &job, const Case &written, std::string_view what) {
  return fmt::format("{}, stage {}: {}", job.identity.name, to_text(written.choice.stage), what);
}

} // namespace

std::string_view field_name(Stage stage) {
  return is_hot(stage) ? "air" : "alpha.air";
}

std::vector<double> read_field(std::string_view text, const job::Job &job, const Case &written) {
  const auto inside = text.find("internalField");
  const auto open = inside == std::string_view::npos ? inside : text.find('(', inside);
  if (open == std::string_view::npos ||
      text.substr(inside, open - inside).find(';') != std::string_view::npos) {
    throw BadRecord("the field holds no list of its cells");
  }
  std::vector<double> oxygen;
  const char *at = text.data() + open + 1, *const end = text.data() + text.size();
  while (oxygen.size() < written.cells) {
    at = std::find_if(at, end, [](char c) { return c != ' ' && c != '\n'; });
    double air = 0.0;
    const auto read = std::from_chars(at, end, air);
    if (read.ec != std::errc() || !is_share_of_air(air)) {
      throw BadRecord(fmt::format("cell {} of the field has no share of air", oxygen.size()));
    }
    oxygen.push_back(oxygen_of(air, job, is_hot(written.choice.stage)));
    at = read.ptr;
  }
  return oxygen;
}

std::string slice_svg(const job::Job &job, const Case &written, const std::vector<double> &oxygen,
                      units::Time at) {
  constexpr double widest = 1000.0, least = 460.0, highest = 640.0; // of the picture, px
  const auto &tiles = written.slice;
  const auto [west, east] = std::ranges::minmax(tiles, {}, &Tile::x_min);
  const double x0 = west.x_min, x1 = std::ranges::max(tiles, {}, &Tile::x_max).x_max;
  const double z0 = std::ranges::min(tiles, {}, &Tile::z_min).z_min,
               z1 = std::ranges::max(tiles, {}, &Tile::z_max).z_max;
  const double per_metre = std::min((widest - 2.0 * margin) / (x1 - x0), highest / (z1 - z0));
  const double width = std::max(least, (x1 - x0) * per_metre + 2.0 * margin), top = 40.0;
  const double high = (z1 - z0) * per_metre, height = top + high + 80.0;
  std::string text = opened(width, height, heading(job, written, "oxygen in the plane of symmetry"));
  text +=
      words(margin, 24.0,
            heading(job, written, fmt::format("oxygen in the plane of symmetry after {:.3g} s", at.value())));
  text += box(margin, top, (x1 - x0) * per_metre, high, metal) + "<g shape-rendering=\"crispEdges\">\n";
  for (const Tile &tile : tiles) {
    constexpr double seam = 0.3; // px, so that none shows between tiles
    text += box(margin + (tile.x_min - x0) * per_metre, top + (z1 - tile.z_max) * per_metre,
                (tile.x_max - tile.x_min) * per_metre + seam, (tile.z_max - tile.z_min) * per_metre + seam,
                colour(level(oxygen.at(tile.cell))));
  }
  const double joint = margin - x0 * per_metre;
  text += "</g>\n" + line(joint, top + high, joint, top + high + 10.0, "stroke=\"#1b2428\"") +
          words(joint, top + high + 24.0, "joint", "middle");
  return text + legend(margin + 20.0, top + high + 34.0, width - 2.0 * margin - 40.0) + "</svg>\n";
}

std::string curve_svg(const job::Job &job, const gas::Purge &purge, const Case &written,
                      const Record &record) {
  constexpr double width = 760.0, height = 420.0, left = 66.0, right = 20.0, top = 44.0, foot = 50.0;
  const Stage stage = written.choice.stage;
  const Bracket bracket = network_bracket(purge, stage);
  const bool in_time = is_prepurge(stage);
  const double last = std::max(record.times.back(), in_time ? bracket.high : 0.0);
  const auto x_of = [&](double time) { return left + time / last * (width - left - right); };
  const auto y_of = [&](double share) { return height - foot - level(share) * (height - top - foot); };
  std::string text = opened(width, height, heading(job, written, "oxygen at the joint"));
  text +=
      words(left, 24.0, heading(job, written, "oxygen at the joint, worst place; network's bracket shaded"));
  text += in_time ? box(x_of(bracket.low), top, x_of(bracket.high) - x_of(bracket.low), height - top - foot,
                        "#e4e9df")
                  : box(left, y_of(bracket.high), width - left - right,
                        y_of(bracket.low) - y_of(bracket.high), "#e4e9df");
  for (const Tick &tick : ticks) {
    text += line(left, y_of(tick.oxygen), width - right, y_of(tick.oxygen), "stroke=\"#d0d6d2\"") +
            words(left - 8.0, y_of(tick.oxygen) + 4.0, tick.text, "end");
  }
  const double limit = limit_of(job, stage);
  text += line(left, y_of(limit), width - right, y_of(limit), "stroke=\"#8a2f2f\" stroke-dasharray=\"7 4\"") +
          words(width - right, y_of(limit) - 6.0, "limit", "end");
  std::string points;
  for (std::size_t i = 0; i < record.times.size(); ++i) {
    points += fmt::format("{:.2f},{:.2f} ", x_of(record.times[i]), y_of(worst_at_joint(record, i)));
  }
  text +=
      fmt::format("<polyline fill=\"none\" stroke=\"#28688c\" stroke-width=\"2\" points=\"{}\"/>\n", points);
  for (const double share : {0.0, 0.5, 1.0}) {
    text += words(x_of(share * last), height - foot + 18.0, fmt::format("{:.3g} s", share * last),
                  share < 1.0 ? "middle" : "end");
  }
  return text + words(left, height - 10.0, "Computed on one mesh, not measured.") + "</svg>\n";
}

} // namespace purgewright::flow
