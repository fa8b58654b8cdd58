// Builds solids beside whatever else goes on, one job after the other, the one saved last first. A newer
// order for a job ends an older one that is under way.
//
// Units, frame: none. Errors: what goes wrong with a build is told by an event. Guarantee: all from one
// thread of its own, which lives as long as the programs it starts; events come from it. Source:
// eventfd(2).
#pragma once

#include "kernel_process.hpp"

#include "watch/standing.hpp"

#include <condition_variable>
#include <cstddef>
#include <filesystem>
#include <functional>
#include <list>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <sys/select.h>
#include <thread>

namespace purgewright::cli {

// A folder that is removed with the last who looks into it.
class KeptFolder {
 public:
  explicit KeptFolder(std::filesystem::path path);
  ~KeptFolder();
  KeptFolder(const KeptFolder &) = delete;
  KeptFolder &operator=(const KeptFolder &) = delete;
  const std::filesystem::path &path() const { return path_; }

 private:
  std::filesystem::path path_;
};

struct BuildOrder {
  std::size_t job;
  watch::SharedStudy study;
};

// What stands in a folder, and what was found.
struct Built {
  const BuildOrder &order;
  const study::Answer &answer;
  std::shared_ptr<const KeptFolder> folder;
};

struct BuildEvents {
  std::function<void(const BuildOrder &, std::string_view)> on_step;
  std::function<void(const Built &)> on_view, on_whole;
  std::function<void(const BuildOrder &, std::string_view why)> on_fault;
};

class BackgroundBuild {
 public:
  // `mask`: of signals, that the other program is to have.
  BackgroundBuild(std::filesystem::path folder, const sigset_t &mask, BuildEvents);
  ~BackgroundBuild();
  BackgroundBuild(const BackgroundBuild &) = delete;
  BackgroundBuild &operator=(const BackgroundBuild &) = delete;

  void order(BuildOrder);

 private:
  std::optional<BuildOrder> next();
  void build(const BuildOrder &);
  void work();

  std::filesystem::path folder_;
  sigset_t mask_;
  BuildEvents events_;
  int halt_; // readable when what is under way is to end
  std::mutex mutex_;
  std::condition_variable changed_;
  std::list<BuildOrder> waiting_;
  std::optional<std::size_t> under_way_; // which job's
  bool ending_ = false;
  std::size_t built_ = 0;
  std::thread thread_;
};

} // namespace purgewright::cli
