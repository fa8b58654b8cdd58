#include "exchange/file.hpp"

#include "purgewright/exchange/file_error.hpp"

#include <cerrno>
#include <cstdio>
#include <memory>
#include <system_error>

namespace purgewright::exchange {

namespace {

using File = std::unique_ptr<std::FILE, int (*)(std::FILE *)>;

std::string reason() {
  return std::generic_category().message(errno);
}

File opened(std::filesystem::path const &path, char const *mode) {
  errno = 0;
  File file(std::fopen(path.c_str(), mode), &std::fclose);
  if (!file)
    throw FileError(path, reason());
  return file;
}

} // namespace

void write_bytes(std::filesystem::path const &path, std::string_view bytes) {
  File file = opened(path, "wb");
  bool const written = std::fwrite(bytes.data(), 1, bytes.size(), file.get()) == bytes.size();
  std::string const why = written ? "" : reason();
  bool const closed = std::fclose(file.release()) == 0;
  if (!written || !closed)
    throw FileError(path, written ? reason() : why);
}

std::string read_bytes(std::filesystem::path const &path) {
  File const file = opened(path, "rb");
  std::string bytes;
  char block[65536];
  while (std::size_t const count = std::fread(block, 1, sizeof block, file.get()))
    bytes.append(block, count);
  if (std::ferror(file.get()) != 0)
    throw FileError(path, reason());
  return bytes;
}

} // namespace purgewright::exchange
