// The pages as they stand now, part by part, and the wait for news of them.
//
// Units, frame: none. Errors: std::out_of_range for a page that there is not. Guarantee: any number of
// threads; a version is that of everything put up until it, so who asks for what is newer than the version
// last seen misses nothing. Source: none.
#pragma once

#include <chrono>
#include <condition_variable>
#include <cstddef>
#include <cstdint>
#include <map>
#include <mutex>
#include <string>
#include <vector>

namespace purgewright::watch {

using Parts = std::map<std::string, std::string>; // markup by the name of its place

struct News {
  std::uint64_t version = 0;
  Parts parts; // those put up since, all of them for version 0
};

class Board {
 public:
  explicit Board(std::size_t pages) : pages_(pages) {}

  std::size_t pages() const { return pages_.size(); }

  // A part that is as it was is no news.
  void put(std::size_t page, const Parts &);

  News since(std::size_t page, std::uint64_t version) const;

  // Returns as soon as there is news, or after the time, or when close() is called.
  News wait(std::size_t page, std::uint64_t version, std::chrono::milliseconds) const;

  // Nobody waits any longer.
  void close();

 private:
  struct Part {
    std::uint64_t version;
    std::string markup;
  };
  News gather(std::size_t page, std::uint64_t version) const;

  std::vector<std::map<std::string, Part>> pages_;
  std::uint64_t version_ = 0;
  bool closed_ = false;
  mutable std::mutex mutex_;
  mutable std::condition_variable changed_;
};

} // namespace purgewright::watch
