// The hidden folders of runs: how one marks its own, and how it removes those of runs that have ended.
// output_folder.hpp says why this is right.
//
// Errors: files::FileError when the folder cannot be made or marked; what cannot be swept away stays.
#pragma once

#include <filesystem>
#include <string>

namespace purgewright::cli {

// Common beginning of the names of a target's hidden folders.
std::string partial_prefix(const std::filesystem::path &target);

// A lock on the folder that holds a target, shared by the runs that are making a hidden folder in it and have
// not marked it yet: who has it alone knows that one without a mark is nobody's any more. Where the disk or
// the folder's mode grants no lock, making goes on without, and sweeping leaves such folders alone.
class MarkingLock {
 public:
  enum class Use { marking, sweeping };
  MarkingLock(const std::filesystem::path &folder, Use use);
  ~MarkingLock();
  MarkingLock(const MarkingLock &) = delete;
  MarkingLock &operator=(const MarkingLock &) = delete;
  bool held() const { return held_; }

 private:
  int folder_ = -1;
  bool held_ = false;
};

// A hidden folder of this run for the target, made beside it and marked.
struct Holder {
  std::filesystem::path folder;
  int lock; // a descriptor, which holds the mark's lock
};
Holder make_holder(const std::filesystem::path &target);

// Removes a folder of this program's with all below it, sub-folders that may only be read too.
void remove_tree(const std::filesystem::path &folder);

// Removes those of the target that bear a mark and are no run's under way, `own` left out, and empty ones
// that no run lived to mark.
void sweep_leftovers(const std::filesystem::path &target, const std::filesystem::path &own);

} // namespace purgewright::cli
