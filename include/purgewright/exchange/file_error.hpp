// The one error of reading and writing files.
//
// Units: none. Frame: none.
// Range and errors: thrown by every reader and writer of this floor; a kernel fault stays a SolidError.
// Guarantee: carries the path as given and the system's or the format's reason.
// Source: common practice, no source.
#pragma once

#include <filesystem>
#include <stdexcept>
#include <string>
#include <utility>

namespace purgewright::exchange {

struct FileError : std::runtime_error {
  FileError(std::filesystem::path where, std::string why)
      : std::runtime_error(where.string() + ": " + why), path(std::move(where)), reason(std::move(why)) {}

  std::filesystem::path path;
  std::string reason;
};

} // namespace purgewright::exchange
