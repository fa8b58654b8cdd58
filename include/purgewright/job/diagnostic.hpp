// A fault in a job file, as a value: where, what was found, what is allowed, and the remedy.
//
// Guarantee: a reader returns all the faults of a file in the order of their lines, never the first alone.
#pragma once

#include <string>
#include <vector>

namespace purgewright::job {

// A place in a job file; line and column count from 1, 0 means "not in the file".
struct Mark {
  int line = 0;
  int column = 0;
};

enum class Severity { error, caution };

struct Diagnostic {
  Severity severity = Severity::error;
  std::string file;
  Mark mark{};
  std::string key;     // full path, "tube.wall"
  std::string problem; // what is wrong, with what was found
  std::string allowed; // what would be right; may be empty
  std::string nearest; // nearest right key or choice; may be empty
};

using Diagnostics = std::vector<Diagnostic>;

bool has_errors(const Diagnostics &);

// "job.yaml:12:9: error: tube.wall: 'thick' is not a length; allowed: ...; did you mean ...?"
std::string to_text(const Diagnostic &);

} // namespace purgewright::job
