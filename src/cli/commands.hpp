// One function a command; private to the command line.
#pragma once

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
  bool json = false;
  bool strict = false;
};
struct DesignOptions {
  std::string job, output;
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

// Reads a job and evaluates it; its faults go to stderr and the result is empty.
std::optional<report::Findings> load(const std::string &path);

ExitCode outcome(const report::Findings &);

// The job file as it stands, for its hash; empty when it cannot be read.
std::string file_bytes(const std::string &path);

// ---- terminal
void print(std::string_view text);          // stdout
void complain(std::string_view text);       // stderr, with a new line
bool colour_on_stdout();                    // a terminal, and NO_COLOR is not set

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
