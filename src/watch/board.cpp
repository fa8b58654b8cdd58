#include "watch/board.hpp"

namespace purgewright::watch {

void Board::put(std::size_t page, const Parts &parts) {
  const std::lock_guard lock(mutex_);
  const std::uint64_t version = version_ + 1;
  for (const auto &[name, markup] : parts) {
    auto &part = pages_.at(page)[name];
    if (part.version == 0 || part.markup != markup) {
      part = {version, markup};
      version_ = version;
    }
  }
  if (version_ == version) {
    changed_.notify_all();
  }
}

News Board::gather(std::size_t page, std::uint64_t version) const {
  News news{.version = version_, .parts = {}};
  for (const auto &[name, part] : pages_.at(page)) {
    if (part.version > version) {
      news.parts.emplace(name, part.markup);
    }
  }
  return news;
}

News Board::since(std::size_t page, std::uint64_t version) const {
  const std::lock_guard lock(mutex_);
  return gather(page, version);
}

News Board::wait(std::size_t page, std::uint64_t version, std::chrono::milliseconds time) const {
  std::unique_lock lock(mutex_);
  News news;
  changed_.wait_for(lock, time, [&] {
    news = gather(page, version);
    return closed_ || !news.parts.empty();
  });
  return news;
}

void Board::close() {
  const std::lock_guard lock(mutex_);
  closed_ = true;
  changed_.notify_all();
}

} // namespace purgewright::watch
