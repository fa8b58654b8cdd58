#include "temporary_folder.hpp"

#include "leftovers.hpp"

#include <fmt/format.h>

#include <unistd.h>

namespace purgewright::cli {

TemporaryFolder::TemporaryFolder(std::string_view use) {
  const auto target = std::filesystem::temp_directory_path() / fmt::format("purgewright-{}", use);
  const Holder made = make_holder(target);
  path_ = made.folder;
  lock_ = made.lock;
  sweep_leftovers(target, path_);
}

TemporaryFolder::~TemporaryFolder() {
  remove_tree(path_);
  ::close(lock_);
}

} // namespace purgewright::cli
