// A folder that appears complete or not at all: files go to a hidden folder beside it, and commit() swaps it
// in.
//
// Units, frame: none.
// Errors: files::FileError naming the path and the reason; before anything is built when the folder may not
// be replaced (report/manifest.hpp), is another user's or cannot be written beside.
// Guarantee: until commit() returns, an earlier folder of that name is as it was; commit() asks again whether
// it may be replaced, and of the folder it has already moved out of reach. The new folder has the mode of the
// one it replaces, and its group where the user is in it. A symbolic link is followed, never replaced; ".."
// behind it is the folder above its end, as the system has it. Leftovers of killed runs are removed by the
// next run that can tell that they are none of a run under way; what cannot be removed is said on stderr.
//
// How it can tell: a run holds a lock (flock) on a file in its hidden folder as long as it lives; the file
// names this program and the run's boot of its machine; a folder without such a file is the user's. On the
// same boot a free lock proves that the run has ended, whatever process numbers say. A file of another boot
// may come from another machine on a shared disk, where locks may or may not be passed on (NFS passes them to
// the server unless mounted with local locks): then the lock must be free and the folder older than a run can
// be, by the clock of the disk, against a file written there now. A run may also be killed before it has
// written that file: an empty folder of such a name is removed by who has the folder above for itself
// (MarkingLock).
#pragma once

#include <filesystem>
#include <functional>
#include <string>
#include <string_view>

namespace purgewright::cli {

class OutputFolder {
 public:
  // `command`: only folders that it wrote itself are replaced.
  OutputFolder(const std::filesystem::path &target, std::string command);
  ~OutputFolder();
  OutputFolder(const OutputFolder &) = delete;
  OutputFolder &operator=(const OutputFolder &) = delete;

  std::filesystem::path staging() const { return holder_ / "new"; }
  void write(const std::filesystem::path &relative, std::string_view bytes) const;
  // The same of what comes piece by piece, and is never held as a whole.
  using Sink = std::function<void(std::string_view)>;
  void write_pieces(const std::filesystem::path &relative,
                    const std::function<void(const Sink &)> &give) const;
  void commit();

 private:
  void make_holder();
  void replace() const;

  std::filesystem::path target_, holder_;
  std::string command_;
  int lock_ = -1;
};

// Writes a file where none stands; FileError when one does. Nothing of it is left when it cannot be whole.
void write_new_file(const std::filesystem::path &path, std::string_view bytes);

} // namespace purgewright::cli
