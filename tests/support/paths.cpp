#include "support/paths.hpp"

namespace purgewright::test {

std::string project_file(const std::string &relative) {
  const std::string project = PURGEWRIGHT_SOURCE_DIR;
  return relative.empty() ? project : project + "/" + relative;
}

} // namespace purgewright::test
