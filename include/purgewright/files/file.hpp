// Whole files as bytes, and the one error of reading and writing them.
//
// Units: bytes. Frame: none.
// Range and errors: FileError with the path as given and the system's reason, also when a disk fills at
// closing. Reading takes regular files, pipes and sockets; a folder, a terminal or another device is refused.
// A pipe that stays silent for longest_silence is an error: a FIFO without a writer never holds a program up.
// Guarantee: a text that was read is whole; after write() the file holds exactly the bytes.
// Source: POSIX.1-2017 (open with O_NONBLOCK on a FIFO, poll); limits are common practice, no source.
#pragma once

#include <chrono>
#include <cstddef>
#include <filesystem>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>

namespace purgewright::files {

struct FileError : std::runtime_error {
  FileError(std::filesystem::path where, std::string why)
      : std::runtime_error(where.string() + ": " + why), path(std::move(where)), reason(std::move(why)) {}

  std::filesystem::path path;
  std::string reason;
};

// The path that means standard input; /dev/stdin does so too.
inline constexpr std::string_view standard_input = "-";

// Long enough for a program at a pipe's other end to start or to answer over a network, short enough that
// nobody takes it for a hang.
inline constexpr std::chrono::seconds longest_silence{10};

inline constexpr std::size_t no_limit = static_cast<std::size_t>(-1);

// FileError when there are more bytes than `most`; no more than that are kept.
std::string read(const std::filesystem::path &path, std::size_t most = no_limit);

void write(const std::filesystem::path &path, std::string_view bytes);

void make_folder(const std::filesystem::path &path); // and those above it

} // namespace purgewright::files
