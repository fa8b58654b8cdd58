// A folder that appears complete or not at all: files go to a hidden folder beside it, and commit() swaps it
// in.
//
// Errors: exchange::FileError naming the path and the reason.
// Guarantee: until commit() returns, an earlier folder of that name is as it was; leftovers of killed runs
// are removed by the next run that finds their process gone.
#pragma once

#include <filesystem>
#include <string_view>

namespace purgewright::cli {

class OutputFolder {
 public:
  explicit OutputFolder(std::filesystem::path target);
  ~OutputFolder();
  OutputFolder(const OutputFolder &) = delete;
  OutputFolder &operator=(const OutputFolder &) = delete;

  const std::filesystem::path &staging() const { return staging_; }
  void write(const std::filesystem::path &relative, std::string_view bytes) const;
  void commit();

 private:
  std::filesystem::path target_, staging_;
};

// Writes one file beside its place and renames it.
void write_file(const std::filesystem::path &path, std::string_view bytes);

} // namespace purgewright::cli
