// One function a command; private to the command line.
#pragma once

#include "purgewright/cli/exit_code.hpp"
#include "purgewright/flow/stage.hpp"
#include "purgewright/study/comparison.hpp"
#include "purgewright/study/study.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::cli {

struct NewOptions {
  std::string template_name, output;
  std::string tube, cap; // sizes "1 in x 0.035 in x 4 in" and shape, in the template's place
};
struct CheckOptions {
  std::string job;
  bool solve = false; // choose what the job leaves open
  bool json = false;
  bool all = false; // passes, defaults, parts and reasons as well
  bool strict = false;
};
struct DesignOptions {
  std::string job, output;
  bool solve = false;
  bool json = false;
  bool strict = false; // write nothing when a rule fails
  bool open = false;   // the page, once written
};
struct CompareOptions {
  std::vector<std::string> jobs, vary;
  study::Wanted wanted;
  std::string output, shard; // "2/8": a piece of the sweep
  bool json = false, quick = false;
  bool merge = false; // the jobs are folders of pieces
};
struct FlowOptions {
  std::string job, output, stage = "bore", duration;
  std::size_t cells = flow::usual_cells;
  std::optional<long> processes; // none: the case is not solved
  bool read = false;
};
struct WatchOptions {
  std::vector<std::string> jobs;
  int port = 0; // any that is free
  bool open = false;
};
struct TraceOptions {
  std::string job;
  std::vector<std::string> words; // an id, words to look for, or none: all
};

ExitCode run_new(const NewOptions &);
ExitCode run_check(const CheckOptions &);
ExitCode run_design(const DesignOptions &);
ExitCode run_compare(const CompareOptions &);
ExitCode run_flow(const FlowOptions &);
ExitCode run_trace(const TraceOptions &);
ExitCode run_watch(const WatchOptions &);

// Says each problem on stderr; true when one is an error.
bool complain_of(const job::Diagnostics &);

// A job read and evaluated; its faults go to stderr and the result is empty.
std::optional<study::Study> load(const std::string &path, bool solve = false);

// What --solve chose, and how to keep it; empty when it chose nothing.
std::string chosen_text(const study::Study &);

ExitCode outcome(const report::Findings &);

// Asks the desktop (xdg-open) to show a page by its address or whole path and does not wait; says so on
// stderr when there is none.
void open_page(const std::string &address);

// As a manifest lists it.
report::ReadJob read_job_of(std::string name, const job::Sources &);

// ---- terminal
// stdout; files::FileError unless it takes all, which flush() makes sure of.
void print(std::string_view text);
void flush();
void complain(std::string_view text); // stderr, with a new line; nothing in it moves the terminal
// A descriptor below 3 that the caller has closed would be given to the next file opened: it is filled with
// one that refuses what it is for.
void fill_standard_descriptors();
bool colour_on_stdout(); // a terminal, and NO_COLOR is not set

// Says what goes on, on a terminal alone.
class Progress {
 public:
  Progress();
  ~Progress();
  Progress(const Progress &) = delete;
  Progress &operator=(const Progress &) = delete;
  void say(std::string_view step);

 private:
  bool shown_;
};

// ---- starting jobs built into the program
struct Template {
  std::string_view name, text;
};
const std::vector<Template> &templates();

inline constexpr std::string_view tool_version = PURGEWRIGHT_VERSION;

} // namespace purgewright::cli
