#include "purgewright/exchange/stl.hpp"

#include "purgewright/files/file.hpp"
#include "purgewright/solids/kernel/measure.hpp"
#include "purgewright/solids/kernel/mesh.hpp"
#include "purgewright/solids/kernel/scale.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <map>
#include <string_view>

namespace purgewright::exchange {

namespace kernel = solids::kernel;

namespace {

static_assert(std::endian::native == std::endian::little, "the format is little-endian");

constexpr std::size_t header_size = 80;
constexpr std::string_view header_text = "binary STL, millimetres"; // must not begin with "solid"

using FloatPoint = std::array<float, 3>;

FloatPoint rounded(std::array<double, 3> const &p) {
  // Adding zero turns -0 into 0, so that equal points have equal bytes.
  return {static_cast<float>(p[0]) + 0.0F, static_cast<float>(p[1]) + 0.0F, static_cast<float>(p[2]) + 0.0F};
}

// The mesh as the file will hold it: single precision, equal corners joined, collapsed facets dropped.
kernel::Mesh as_written(kernel::Mesh const &mesh) {
  kernel::Mesh result;
  std::map<FloatPoint, std::uint32_t> number;
  std::vector<std::uint32_t> renumbered;
  for (auto const &vertex : mesh.vertices_mm) {
    FloatPoint const p = rounded(vertex);
    auto const [at, is_new] = number.try_emplace(p, static_cast<std::uint32_t>(number.size()));
    if (is_new)
      result.vertices_mm.push_back({p[0], p[1], p[2]});
    renumbered.push_back(at->second);
  }
  for (auto const &[a, b, c] : mesh.triangles) {
    std::array<std::uint32_t, 3> const t{renumbered[a], renumbered[b], renumbered[c]};
    if (t[0] != t[1] && t[1] != t[2] && t[2] != t[0])
      result.triangles.push_back(t);
  }
  return result;
}

std::array<double, 3> normal(kernel::Mesh const &mesh, std::array<std::uint32_t, 3> const &t) {
  auto const &a = mesh.vertices_mm[t[0]];
  auto const &b = mesh.vertices_mm[t[1]];
  auto const &c = mesh.vertices_mm[t[2]];
  std::array<double, 3> const u{b[0] - a[0], b[1] - a[1], b[2] - a[2]};
  std::array<double, 3> const v{c[0] - a[0], c[1] - a[1], c[2] - a[2]};
  std::array<double, 3> n{u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]};
  double const length = std::hypot(n[0], n[1], n[2]);
  for (double &component : n)
    component = length > 0.0 ? component / length : 0.0;
  return n;
}

template <class Value> void append(std::string &bytes, Value value) {
  auto const raw = std::bit_cast<std::array<char, sizeof(Value)>>(value);
  bytes.append(raw.data(), raw.size());
}

void append_point(std::string &bytes, std::array<double, 3> const &p) {
  for (float const coordinate : rounded(p))
    append(bytes, coordinate);
}

std::string encoded(kernel::Mesh const &mesh) {
  constexpr std::size_t facet_size = 50;
  std::string bytes(header_text);
  bytes.resize(header_size, ' ');
  bytes.reserve(header_size + 4 + facet_size * mesh.triangles.size());
  append(bytes, static_cast<std::uint32_t>(mesh.triangles.size()));
  for (auto const &triangle : mesh.triangles) {
    append_point(bytes, normal(mesh, triangle));
    for (std::uint32_t const corner : triangle)
      append_point(bytes, mesh.vertices_mm[corner]);
    append(bytes, std::uint16_t{0}); // attribute bytes, unused
  }
  return bytes;
}

} // namespace

StlFile stl_file(kernel::Solid const &solid, StlOptions const &options) {
  units::Volume const exact = options.exact_volume ? *options.exact_volume : kernel::volume(solid);
  // A compact solid of curved faces meets the target near this chord; others are refined from here.
  units::Length tolerance = units::metres(0.5 * options.greatest_volume_error * std::cbrt(exact.value()));
  double error = 0.0;
  for (int i = 0; i <= most_refinements; ++i) {
    kernel::Mesh const mesh =
        as_written(kernel::triangulate(solid, {.deflection = tolerance, .angle = options.angle}));
    if (!kernel::is_closed(mesh))
      throw kernel::SolidError("", "write STL", fmt::format("chord {}", kernel::mm(tolerance)),
                               "the mesh is not closed");
    error = units::ratio(kernel::volume(mesh), exact) - 1.0;
    if (std::abs(error) <= options.greatest_volume_error)
      return {encoded(mesh), static_cast<std::uint32_t>(mesh.triangles.size()), tolerance, error};
    // The error falls in proportion to the chord where the chord governs.
    tolerance *= std::clamp(0.8 * options.greatest_volume_error / std::abs(error), 0.1, 0.5);
  }
  throw kernel::SolidError("", "write STL", fmt::format("chord {}", kernel::mm(tolerance)),
                           fmt::format("the volume stays {} off", error));
}

StlFile write_stl(std::filesystem::path const &path, kernel::Solid const &solid, StlOptions const &options) {
  StlFile file = stl_file(solid, options);
  files::write(path, file.bytes);
  return file;
}

} // namespace purgewright::exchange
