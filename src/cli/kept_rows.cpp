#include "kept_rows.hpp"

#include "purgewright/files/file.hpp"
#include "purgewright/report/shard.hpp"

#include <cerrno>
#include <cstdlib>
#include <fcntl.h>
#include <memory>
#include <optional>
#include <string_view>
#include <sys/file.h>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>
#include <utility>

namespace purgewright::cli {
namespace {

namespace fs = std::filesystem;
using files::FileError;

fs::path beside(const fs::path &target) {
  const fs::path plain = target.lexically_normal();
  const fs::path folder = plain.has_filename() ? plain : plain.parent_path();
  return folder.string() + ".unfinished";
}

// One line at a time, without its end; false at the end of the file and at a line that was cut short.
bool read_line(std::FILE *file, std::string &line) {
  char *text = nullptr;
  std::size_t room = 0;
  const ssize_t length = ::getline(&text, &room, file);
  const std::unique_ptr<char, decltype(&std::free)> owned(text, &std::free);
  line.assign(text, length > 0 ? static_cast<std::size_t>(length) : 0);
  const bool whole = line.ends_with('\n');
  if (whole) {
    line.pop_back();
  }
  return whole;
}

} // namespace

KeptRows::KeptRows(const fs::path &target, std::string head) : path_(beside(target)), head_(std::move(head)) {
  if (!path_.parent_path().empty()) {
    files::make_folder(path_.parent_path());
  }
  const int descriptor = ::open(path_.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK, 0666);
  if (descriptor < 0) {
    fail();
  }
  file_ = ::fdopen(descriptor, "r+");
  try {
    require_own_file();
    if (::flock(descriptor, LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK) {
      throw FileError(path_, "another run is making this sweep");
    }
    take_up();
  } catch (...) {
    std::fclose(file_);
    throw;
  }
}

KeptRows::~KeptRows() {
  if (file_ != nullptr) {
    if (count_ == 0 && !removed_) {
      remove();
    }
    std::fclose(file_);
  }
}

void KeptRows::fail() const {
  throw FileError(path_, std::generic_category().message(errno));
}

// What follows the last whole row is cut off.
void KeptRows::take_up() {
  std::string line;
  const bool begun = read_line(file_, line);
  if (begun ? line + "\n" != head_ : !head_.starts_with(line)) {
    throw FileError(
        path_, "holds rows of another sweep, or of the job as it was before a change; remove it to begin "
               "anew, or choose another folder with -o");
  }
  if (!begun) { // nothing, or a head that was cut short
    if (::ftruncate(::fileno(file_), 0) != 0) {
      fail();
    }
    std::rewind(file_);
    append(head_);
    return;
  }
  long whole = std::ftell(file_);
  while (read_line(file_, line) && report::read_kept_row(head_, count_, line)) {
    ++count_;
    whole = std::ftell(file_);
  }
  if (::ftruncate(::fileno(file_), whole) != 0 || std::fseek(file_, whole, SEEK_SET) != 0) {
    fail();
  }
}

void KeptRows::append(std::string_view line) {
  if (std::fwrite(line.data(), 1, line.size(), file_) != line.size() || std::fflush(file_) != 0) {
    fail();
  }
}

void KeptRows::add(const report::ComparedDesign &design) {
  append(report::kept_row(head_, count_, design));
  ++count_;
}

void KeptRows::each(const std::function<void(report::ComparedDesign &&)> &take) {
  std::rewind(file_);
  std::string line;
  read_line(file_, line);
  for (std::size_t place = 0; place < count_; ++place) {
    std::optional<report::ComparedDesign> row;
    if (read_line(file_, line)) {
      row = report::read_kept_row(head_, place, line);
    }
    if (!row) {
      throw FileError(path_, "was changed while it was read");
    }
    take(std::move(*row));
  }
  std::fseek(file_, 0, SEEK_END); // where the next one goes
}

// A FIFO or a device would be waited for; another user's rows are not believed.
void KeptRows::require_own_file() const {
  struct stat file {};
  if (::fstat(::fileno(file_), &file) != 0) {
    fail();
  }
  if (!S_ISREG(file.st_mode)) {
    throw FileError(path_, "is not a regular file");
  }
  if (file.st_uid != ::geteuid()) {
    throw FileError(path_, "belongs to another user");
  }
}

bool KeptRows::stands() const {
  struct stat named {
  }, open{};
  return ::lstat(path_.c_str(), &named) == 0 && ::fstat(::fileno(file_), &open) == 0 &&
         named.st_ino == open.st_ino && named.st_dev == open.st_dev;
}

void KeptRows::remove() {
  if (stands()) { // not what somebody else has put there since
    ::unlink(path_.c_str());
  }
  removed_ = true;
}

} // namespace purgewright::cli
