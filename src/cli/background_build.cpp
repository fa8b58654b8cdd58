#include "background_build.hpp"

#include "leftovers.hpp"

#include "purgewright/files/file.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <cstdint>
#include <sys/eventfd.h>
#include <system_error>
#include <unistd.h>
#include <utility>

namespace purgewright::cli {
namespace {

struct Overtaken {}; // by a newer order, or the end

} // namespace

KeptFolder::KeptFolder(std::filesystem::path path) : path_(std::move(path)) {
  files::make_folder(path_);
}

KeptFolder::~KeptFolder() {
  remove_tree(path_);
}

BackgroundBuild::BackgroundBuild(std::filesystem::path folder, const sigset_t &mask, BuildEvents events)
    : folder_(std::move(folder)), mask_(mask), events_(std::move(events)),
      halt_(::eventfd(0, EFD_CLOEXEC | EFD_NONBLOCK)) {
  if (halt_ < 0) {
    throw std::system_error(errno, std::generic_category(), "eventfd");
  }
  thread_ = std::thread([this] { work(); });
}

BackgroundBuild::~BackgroundBuild() {
  {
    const std::lock_guard lock(mutex_);
    ending_ = true;
    ::eventfd_write(halt_, 1);
    changed_.notify_all();
  }
  thread_.join();
  ::close(halt_);
}

void BackgroundBuild::order(BuildOrder order) {
  const std::lock_guard lock(mutex_);
  waiting_.remove_if([&](const BuildOrder &older) { return older.job == order.job; });
  if (under_way_ == order.job) {
    ::eventfd_write(halt_, 1);
  }
  waiting_.push_front(std::move(order));
  changed_.notify_all();
}

std::optional<BuildOrder> BackgroundBuild::next() {
  std::unique_lock lock(mutex_);
  under_way_.reset();
  changed_.wait(lock, [&] { return ending_ || !waiting_.empty(); });
  if (ending_) {
    return std::nullopt;
  }
  eventfd_t ignored = 0;
  ::eventfd_read(halt_, &ignored); // of an order that has ended meanwhile
  BuildOrder order = std::move(waiting_.front());
  waiting_.pop_front();
  under_way_ = order.job;
  return order;
}

void BackgroundBuild::build(const BuildOrder &order) {
  const auto folder = std::make_shared<const KeptFolder>(folder_ / fmt::format("{}-{}", order.job, ++built_));
  const Halt halt{.descriptor = halt_, .mask = mask_, .check = [this] {
                    eventfd_t count = 0;
                    if (::eventfd_read(halt_, &count) == 0) {
                      throw Overtaken{};
                    }
                  }};
  const study::Answer answer =
      build_solids(*order.study, folder->path(), halt,
                   {.extent = study::Extent::page,
                    .on_step = [&](std::string_view step) { events_.on_step(order, step); },
                    .on_view =
                        [&](const study::Answer &so_far) {
                          events_.on_view({order, so_far, folder});
                        }});
  events_.on_whole({order, answer, folder});
}

void BackgroundBuild::work() {
  while (const auto order = next()) {
    try {
      build(*order);
    } catch (const Overtaken &) {
    } catch (const std::exception &error) {
      events_.on_fault(*order, error.what());
    }
  }
}

} // namespace purgewright::cli
