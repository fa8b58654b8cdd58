// One function a command; private to the command line.
#pragma once

#include "purgewright/checks/remedy.hpp"
#include "purgewright/cli/exit_code.hpp"
#include "purgewright/report/results.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace purgewright::cli {

struct NewOptions {
  std::string template_name, output;
};
struct CheckOptions {
  std::string job;
  bool solve = false; // choose what the job leaves open
  bool json = false;
  bool strict = false;
};
struct DesignOptions {
  std::string job, output;
  bool solve = false;
  bool json = false;
  bool strict = false; // write nothing when a rule fails
};
struct CompareOptions {
  std::vector<std::string> jobs, vary;
  std::string output;
  bool json = false;
};
struct TraceOptions {
  std::string job, quantity;
};

ExitCode run_new(const NewOptions &);
ExitCode run_check(const CheckOptions &);
ExitCode run_design(const DesignOptions &);
ExitCode run_compare(const CompareOptions &);
ExitCode run_trace(const TraceOptions &);

// A job read and evaluated.
struct Loaded {
  job::Draft draft;
  report::Findings findings;
  std::vector<checks::Change> chosen; // by --solve
};

// Its faults go to stderr and the result is empty.
std::optional<Loaded> load(const std::string &path, bool solve = false);

// Figures and rules of a design made from this draft, each rule that does not pass with the smallest change
// that helps.
report::Findings judged(const job::Draft &, checks::Design);

// What --solve chose, and how to keep it; empty when it chose nothing.
std::string chosen_text(const Loaded &);

ExitCode outcome(const report::Findings &);

// The job file as it stands, for its hash; empty when it cannot be read.
std::string file_bytes(const std::string &path);

// ---- terminal
void print(std::string_view text);    // stdout
void complain(std::string_view text); // stderr, with a new line
bool colour_on_stdout();              // a terminal, and NO_COLOR is not set

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
