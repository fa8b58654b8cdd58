#include "support/paths.hpp"

#include <algorithm>
#include <filesystem>

namespace purgewright::test {

std::string project_file(const std::string &relative) {
  const std::string project = PURGEWRIGHT_SOURCE_DIR;
  return relative.empty() ? project : project + "/" + relative;
}

std::vector<std::string> example_names() {
  std::vector<std::string> names;
  for (const auto &entry : std::filesystem::directory_iterator(project_file("examples"))) {
    if (entry.path().extension() == ".yaml") {
      names.push_back(entry.path().stem().string());
    }
  }
  std::ranges::sort(names);
  return names;
}

} // namespace purgewright::test
