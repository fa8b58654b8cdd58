// Writes bytes to a file and says why if it cannot.
//
// Units: none. Frame: none.
// Range and errors: FileError with the system's reason, also when the disk fills at closing.
// Guarantee: the file holds exactly the bytes when the call returns.
// Source: common practice, no source.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace purgewright::exchange {

void write_bytes(std::filesystem::path const &path, std::string_view bytes);

std::string read_bytes(std::filesystem::path const &path);

} // namespace purgewright::exchange
