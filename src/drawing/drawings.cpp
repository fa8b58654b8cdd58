#include "purgewright/drawing/sheets.hpp"
#include "purgewright/drawing/writers.hpp"

#include "purgewright/files/file.hpp"

#include <fmt/format.h>

namespace purgewright::drawing {

void write_drawings(const std::filesystem::path &folder, std::span<const Sheet> sheets) {
  files::make_folder(folder);
  for (std::size_t first = 0; first < sheets.size();) {
    std::size_t end = first;
    while (end < sheets.size() && sheets[end].part == sheets[first].part) {
      write_svg(folder / fmt::format("{}.svg", sheets[end].name), sheets[end]);
      if (sheets[end].part == assembly_sheet && !sheets[end].views.empty()) {
        write_png(folder / fmt::format("{}.png", sheets[end].name), sheets[end]);
      }
      ++end;
    }
    write_pdf(folder / fmt::format("{}.pdf", sheets[first].part), sheets.subspan(first, end - first));
    first = end;
  }
  write_pdf(folder / "all.pdf", sheets);
}

} // namespace purgewright::drawing
