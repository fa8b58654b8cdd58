#include "purgewright/drawing/writers.hpp"

#include <fmt/format.h>

#include <system_error>
#include <utility>

namespace purgewright::drawing {

WriteError::WriteError(std::filesystem::path where, std::string why)
    : std::runtime_error(where.string() + ": " + why), path(std::move(where)), reason(std::move(why)) {}

void write_drawings(const std::filesystem::path &folder, std::span<const Sheet> sheets) {
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  if (error) {
    throw WriteError(folder, error.message());
  }
  for (std::size_t first = 0; first < sheets.size();) {
    std::size_t end = first;
    while (end < sheets.size() && sheets[end].part == sheets[first].part) {
      write_svg(folder / fmt::format("{}.svg", sheets[end].name), sheets[end]);
      ++end;
    }
    write_pdf(folder / fmt::format("{}.pdf", sheets[first].part), sheets.subspan(first, end - first));
    first = end;
  }
}

} // namespace purgewright::drawing
