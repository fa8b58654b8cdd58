#include "background_build.hpp"
#include "commands.hpp"
#include "design_files.hpp"
#include "signals.hpp"
#include "temporary_folder.hpp"

#include "purgewright/files/file.hpp"
#include "purgewright/files/text.hpp"
#include "purgewright/html/watch_page.hpp"
#include "watch/saves.hpp"
#include "watch/server.hpp"

#include <fmt/format.h>

#include <array>
#include <chrono>
#include <csignal>
#include <deque>
#include <filesystem>
#include <mutex>
#include <poll.h>
#include <thread>
#include <utility>

namespace purgewright::cli {
namespace {

namespace fs = std::filesystem;
using watch::Plan;
using watch::SharedStudy;

// Solids of a study, as far as they are there.
struct Made {
  SharedStudy of;
  html::SaveTime saved{};
  std::shared_ptr<const KeptFolder> folder;
  std::map<std::string, std::string> files; // that the page links to, as they were named
};

struct Watching {
  std::string file;
  watch::Standing standing{};
  SharedStudy ordered{}; // the last that solids were ordered of
  html::SaveTime ordered_saved{};
  std::string step{}, fault{}; // of the build
  Made view{}, sheets{};
};

html::Watched as_shown(const Watching &w) {
  const auto &s = w.standing;
  const auto findings = [](const SharedStudy &study) { return study ? &study->findings : nullptr; };
  const auto saved = [](const Made &made) { return made.of ? std::optional(made.saved) : std::nullopt; };
  return {.file = w.file,
          .sources = s.sources(),
          .problems = s.problems(),
          .saved = s.saved(),
          .judged = findings(s.judged()),
          .numbers = findings(s.numbers()),
          .before = findings(s.before()),
          .numbers_saved = s.numbers_saved(),
          .coarse = s.plan() == Plan::coarse,
          .view_saved = saved(w.view),
          .sheets_saved = saved(w.sheets),
          .building = w.step,
          .build_fault = w.fault};
}

// All jobs under watch: what saves and builds lead to, put up for the pages. Any thread may call it.
class Bench {
 public:
  Bench(const std::vector<std::string> &paths, watch::Board &board) : board_(board) {
    for (const auto &path : paths) {
      jobs_.push_back({.file = path});
    }
  }

  std::size_t size() const { return jobs_.size(); }

  // Reads the job again; when it is another, its numbers follow and are returned for their solids to be
  // built.
  std::optional<BuildOrder> read_again(std::size_t job);

  std::vector<fs::path> files() const;
  std::optional<std::string> file(std::size_t page, std::string_view path) const;

  BuildEvents events() {
    return {.on_step = [this](const BuildOrder &order, std::string_view step) { begin(order, step); },
            .on_view = [this](const Built &built) { show_view(built); },
            .on_whole = [this](const Built &built) { show_whole(built); },
            .on_fault = [this](const BuildOrder &order, std::string_view why) { fail(order, why); }};
  }

 private:
  void begin(const BuildOrder &, std::string_view step);
  void show_view(const Built &);
  void show_whole(const Built &);
  void fail(const BuildOrder &, std::string_view why);
  void take(std::size_t job, study::Opening, Plan);
  void put(std::size_t job, bool numbers);
  bool is_wanted(const BuildOrder &order) const { return jobs_[order.job].ordered == order.study; }

  watch::Board &board_;
  std::deque<Watching> jobs_;
  mutable std::mutex mutex_;
};

void Bench::put(std::size_t job, bool numbers) {
  const html::Watched shown = as_shown(jobs_[job]);
  html::Parts parts = html::state_parts(shown);
  if (numbers) {
    parts.merge(html::watched_numbers(shown, tool_version));
  }
  board_.put(job + 1, parts);
  if (numbers && jobs_.size() > 1) {
    std::vector<html::Watched> all;
    for (const auto &each : jobs_) {
      all.push_back(as_shown(each));
    }
    board_.put(0, html::list_parts(all));
  }
}

void Bench::take(std::size_t job, study::Opening opening, Plan plan) {
  const std::lock_guard lock(mutex_);
  jobs_[job].standing.take(std::move(opening), plan);
  put(job, true);
}

// An editor that writes a file over leaves it empty, or away, for a moment.
job::Sources settled(const std::string &path) {
  constexpr int looks = 10;
  constexpr std::chrono::milliseconds between{20};
  job::Sources sources;
  for (int i = 0; i < looks; ++i) {
    std::error_code error;
    if (fs::is_regular_file(path, error)) { // a pipe of that name would hold everything up
      sources = job::gather(path);
      if (!sources.job.bytes.empty()) {
        return sources;
      }
    }
    std::this_thread::sleep_for(between);
  }
  return job::Sources{.job = {{}, path, {}, "there is no such file", {}}, .family = {}, .log = std::nullopt};
}

std::optional<BuildOrder> Bench::read_again(std::size_t job) {
  Watching &w = jobs_[job]; // its standing is changed by this thread alone, but for the solids'
  job::Sources sources = settled(w.file);
  {
    const std::lock_guard lock(mutex_);
    if (watch::same_bytes(sources, w.standing.sources())) {
      return std::nullopt;
    }
    w.standing.save(sources, watch::Clock::now());
  }
  study::Opening first = study::open_coarsely(sources);
  const bool good = first.study.has_value();
  take(job, std::move(first), Plan::coarse);
  if (!good) {
    return std::nullopt;
  }
  take(job, study::open(std::move(sources)), Plan::fine);
  const std::lock_guard lock(mutex_);
  if (w.standing.faulty() || w.standing.numbers() != w.standing.judged()) {
    return std::nullopt;
  }
  w.ordered = w.standing.numbers();
  w.ordered_saved = w.standing.numbers_saved();
  w.step = "waiting for its turn";
  w.fault.clear();
  put(job, false);
  return BuildOrder{job, w.ordered};
}

void Bench::begin(const BuildOrder &order, std::string_view step) {
  const std::lock_guard lock(mutex_);
  if (is_wanted(order)) {
    jobs_[order.job].step = step;
    put(order.job, false);
  }
}

void Bench::show_view(const Built &built) {
  const auto &[order, answer, folder] = built;
  const html::Parts parts =
      html::watched_view(order.study->findings, shown_in(folder->path(), DesignFiles::view));
  const std::lock_guard lock(mutex_);
  Watching &w = jobs_[order.job];
  if (is_wanted(order)) {
    w.view = {order.study, w.ordered_saved, folder, answer.made};
    const bool judged = w.standing.take_clashes(order.study, answer.clashes);
    board_.put(order.job + 1, parts);
    put(order.job, judged);
  }
}

void Bench::show_whole(const Built &built) {
  const auto &[order, answer, folder] = built;
  const html::Parts parts = html::watched_sheets(shown_in(folder->path(), DesignFiles::all));
  const std::lock_guard lock(mutex_);
  Watching &w = jobs_[order.job];
  if (is_wanted(order)) {
    w.sheets = {order.study, w.ordered_saved, folder, answer.made};
    w.view.files = answer.made;
    w.step.clear();
    board_.put(order.job + 1, parts);
    put(order.job, false);
  }
}

void Bench::fail(const BuildOrder &order, std::string_view why) {
  const std::lock_guard lock(mutex_);
  if (is_wanted(order)) {
    jobs_[order.job].step.clear();
    jobs_[order.job].fault = why;
    put(order.job, false);
  }
}

std::vector<fs::path> Bench::files() const {
  const std::lock_guard lock(mutex_);
  std::vector<fs::path> paths;
  for (const auto &w : jobs_) {
    const job::Sources &sources = w.standing.sources();
    paths.emplace_back(w.file);
    for (const auto &member : sources.family) {
      paths.emplace_back(member.label);
    }
    if (sources.log) {
      paths.emplace_back(sources.log->label);
    }
  }
  return paths;
}

// What the page links to, and nothing else.
std::optional<std::string> Bench::file(std::size_t page, std::string_view path) const {
  const std::string name(path);
  Made made;
  {
    const std::lock_guard lock(mutex_);
    if (page == 0 || page > jobs_.size()) {
      return std::nullopt;
    }
    const Watching &w = jobs_[page - 1];
    if (const SharedStudy numbers = w.standing.numbers(); numbers && path == "results.json") {
      return report::results_json(numbers->findings);
    }
    made = path.starts_with("drawings/") ? w.sheets : w.view;
  }
  return made.files.contains(name) ? std::optional(files::read(made.folder->path() / name)) : std::nullopt;
}

// The paths once each; a complaint when one is no file to watch.
bool can_be_watched(const std::vector<std::string> &paths) {
  for (const auto &path : paths) {
    std::error_code error;
    if (path == files::standard_input || !fs::exists(path, error)) {
      complain(fmt::format("error: {}: {}", path,
                           path == files::standard_input ? "a pipe is read once; name a file"
                                                         : "there is no such file"));
      return false;
    }
    if (!fs::is_regular_file(path, error)) {
      complain(fmt::format("error: {}: is no file", path));
      return false;
    }
  }
  return true;
}

// Until a signal comes, which is thrown.
void follow(Bench &bench, BackgroundBuild &builds, Signals &signals) {
  watch::Saves saves;
  for (;;) {
    saves.follow(bench.files());
    for (std::size_t job = 0; job < bench.size(); ++job) {
      if (auto order = bench.read_again(job)) {
        builds.order(*std::move(order));
      }
      signals.check();
    }
    saves.follow(bench.files()); // those that it names now
    while (!saves.any()) {
      std::array<pollfd, 2> waiting{pollfd{saves.descriptor(), POLLIN, 0},
                                    pollfd{signals.descriptor(), POLLIN, 0}};
      ::poll(waiting.data(), waiting.size(), static_cast<int>(watch::look_again.count()));
      signals.check();
    }
  }
}

void serve(const WatchOptions &options) {
  Signals signals;
  watch::Board board(options.jobs.size() + 1);
  Bench bench(options.jobs, board);
  const TemporaryFolder folder("watch");
  const watch::Server server(
      options.port, board,
      {.page =
           [&](std::size_t page, const watch::News &news) {
             return page == 0 ? html::list_page(news.parts, news.version, tool_version)
                              : html::watched_page(news.parts, news.version);
           },
       .file = [&](std::size_t page, std::string_view path) { return bench.file(page, path); },
       .policy = html::watch_policy()});
  BackgroundBuild builds(folder.path(), signals.before(), bench.events());
  const std::string address = watch::address(server.door());
  print(fmt::format("{}\n", address));
  flush();
  if (options.open) {
    open_page(address);
  }
  follow(bench, builds, signals);
}

} // namespace

ExitCode run_watch(const WatchOptions &options) {
  if (!can_be_watched(options.jobs)) {
    return ExitCode::bad_input;
  }
  try {
    serve(options);
  } catch (const Interrupted &interrupted) {
    if (interrupted.signal != SIGINT) {
      throw;
    }
  } catch (const watch::ServerFault &error) {
    complain(fmt::format("error: --port: {}", error.what()));
    return ExitCode::bad_input;
  }
  return ExitCode::done;
}

} // namespace purgewright::cli
