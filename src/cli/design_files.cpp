#include "design_files.hpp"

#include "commands.hpp"

#include "purgewright/files/file.hpp"

#include <algorithm>

namespace purgewright::cli {

html::Shown shown_in(const std::filesystem::path &folder, DesignFiles which) {
  html::Shown shown{.assembly_glb = files::read(folder / "assembly.glb"),
                    .gas_spaces_glb = files::read(folder / "gas-spaces.glb"),
                    .temperatures_svg = files::read(folder / "plots/temperatures.svg"),
                    .oxygen_svg = files::read(folder / "plots/oxygen.svg"),
                    .sheets = {},
                    .version = tool_version};
  if (which == DesignFiles::view) {
    return shown;
  }
  for (const auto &entry : std::filesystem::directory_iterator(folder / "drawings")) {
    if (entry.path().extension() == ".svg") {
      shown.sheets.push_back(
          {entry.path().lexically_relative(folder).generic_string(), files::read(entry.path())});
    }
  }
  std::ranges::sort(shown.sheets, {}, &html::Picture::path);
  return shown;
}

} // namespace purgewright::cli
