// The files a job is made of, each read once: the job file, those its fixture.family names, and its measured
// log. Everything else works on these bytes and opens none of the files again.
//
// Units: none. Frame: none.
// Range and errors: a file that cannot be read is no exception but a Document with its problem, which
// read_draft reports where the job names the file.
// Guarantee: nothing read from a Document depends on where the file lies or how its path was typed; a label
// is for messages alone. Source: limits on sizes are common practice, no source.
#pragma once

#include "purgewright/job/draft.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace purgewright::job {

inline constexpr std::size_t file_size_most = 1'048'576; // bytes; a hundred times a long job file
inline constexpr std::size_t log_size_most = 20'000'000; // bytes; a thousand for each reading it may hold

struct Document {
  std::string name;    // as the job names it; empty for the job file itself
  std::string label;   // for messages: the path as typed
  std::string bytes;   // empty when there is a problem
  std::string problem; // why it cannot be read; empty when it can
  std::string nearest; // file that a slip in the name may have meant
};

struct Sources {
  Document job;
  std::vector<Document> family; // the job itself left out
  std::optional<Document> log;  // absent when the job names none
};

// From a path, or "-" for standard input. Files that the job names are relative to the folder in which the
// job file itself lies, symbolic links followed; for a job from a pipe to the current folder. A "-" there is
// a problem of its Document.
Sources gather(const std::string &path);

DraftReading read_draft(const Sources &);

} // namespace purgewright::job
