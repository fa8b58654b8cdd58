// What a job file states, before defaults: one slot for each key, so that a sweep can overwrite one slot and
// resolve again without reading or looking up text.
//
// Units: numbers are SI.
#pragma once

#include "purgewright/job/diagnostic.hpp"
#include "purgewright/job/keys.hpp"

#include <array>
#include <memory>
#include <string>
#include <vector>

namespace purgewright::job {

struct Entry {
  bool stated = false;
  bool is_share = false; // number is a share of the parent size (see FieldInfo::share_allowed)
  double number = 0.0;   // quantity or count; index into FieldInfo::choices for a choice
  std::string text;      // text; currency letters for a price
  std::vector<std::string> list;
  Mark mark{};         // of the value
  bool inches = false; // a length written in inches
};

struct Job;
struct Document; // sources.hpp

struct Draft {
  std::string file;                               // as the user named it, for messages
  std::vector<std::shared_ptr<const Job>> family; // the jobs that fixture.family names, this one left out
  std::shared_ptr<const Document> log;            // the readings that gas.log names
  std::array<Entry, key_count> entries{};

  Entry &operator[](Key key) { return entries[static_cast<std::size_t>(key)]; }
  const Entry &operator[](Key key) const { return entries[static_cast<std::size_t>(key)]; }
};

struct DraftReading {
  Draft draft;
  Diagnostics problems; // complete; the draft is only good when has_errors(problems) is false
};

// Reads a job file: at most 1 MiB, no aliases or anchors, one document, nesting no deeper than the keys need.
// From a path it reads the files that the job names too (sources.hpp), but not those that these name. Errors:
// all in `problems` under their own file's label, an unreadable file included; never throws on input.
DraftReading read_draft(const std::string &path);
DraftReading read_draft_text(std::string_view yaml, std::string file_name);

} // namespace purgewright::job
