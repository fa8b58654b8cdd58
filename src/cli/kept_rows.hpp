// Rows of a sweep under way in a file beside its folder, TARGET.unfinished: what an interrupted run has made
// is taken up by the next run of the same sweep of the same job.
//
// Units, frame: none.
// Errors: files::FileError when the file cannot be written or read, is another sweep's, or is being written
// by another run. Guarantee: whole rows alone are taken up, in order, and only of this very sweep
// (report/shard.hpp); memory does not grow with them. A file without a whole row is removed with the object.
// Source: POSIX.1-2017; flock(2).
#pragma once

#include "purgewright/report/compare.hpp"

#include <cstddef>
#include <cstdio>
#include <filesystem>
#include <functional>
#include <string>
#include <string_view>

namespace purgewright::cli {

class KeptRows {
 public:
  KeptRows(const std::filesystem::path &target, std::string head);
  ~KeptRows();
  KeptRows(const KeptRows &) = delete;
  KeptRows &operator=(const KeptRows &) = delete;

  std::size_t count() const { return count_; }
  const std::filesystem::path &path() const { return path_; }
  void add(const report::ComparedDesign &);
  // All rows in order, as often as asked for.
  void each(const std::function<void(report::ComparedDesign &&)> &);
  bool stands() const; // whether its name is still that of the file with the rows
  void remove();       // the file, once they stand elsewhere; they can still be read

 private:
  void require_own_file() const;
  void take_up();
  void append(std::string_view line);
  [[noreturn]] void fail() const;

  std::filesystem::path path_;
  std::string head_;
  std::FILE *file_ = nullptr;
  std::size_t count_ = 0;
  bool removed_ = false;
};

} // namespace purgewright::cli
