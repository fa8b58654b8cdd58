#include "job/resolving.hpp"
#include "purgewright/job/sources.hpp"

#include <algorithm>
#include <string_view>
#include <tuple>

namespace purgewright::job {
namespace {

void mark_below(KeySet &set, std::string_view path) {
  for (const auto &info : fields()) {
    const bool below =
        info.path.starts_with(path) && info.path.size() > path.size() && info.path[path.size()] == '.';
    if (info.path == path || below) {
      set.set(static_cast<std::size_t>(info.key));
    }
  }
}

void sort_by_place(Diagnostics &problems) {
  std::ranges::stable_sort(problems, {},
                           [](const Diagnostic &d) { return std::tuple(d.mark.line, d.mark.column); });
}

// The job's own faults first, then those of each file of its family.
void sort_by_file(Diagnostics &problems, const std::string &own) {
  sort_by_place(problems);
  std::ranges::stable_sort(problems, {},
                           [&](const Diagnostic &d) { return std::tuple(d.file != own, d.file); });
}

Resolution resolve_around(const Draft &draft, const KeySet &faulty) {
  Resolution resolution;
  Job &job = resolution.job.emplace();
  fill(draft, job);
  resolution.problems = conflicts(draft, job, faulty);
  if (!resolution.problems.empty()) {
    for (auto &problem : resolution.problems) {
      problem.file = draft.file;
    }
    sort_by_place(resolution.problems);
  }
  if (has_errors(resolution.problems) || faulty.any()) {
    resolution.job.reset();
  }
  return resolution;
}

} // namespace

KeySet faulty_keys(const Diagnostics &problems, const std::string &file) {
  KeySet set;
  for (const auto &problem : problems) {
    if (problem.severity != Severity::error || problem.file != file) {
      continue;
    }
    if (problem.key.empty()) {
      set.set();
      continue;
    }
    mark_below(set, problem.key);
    if (!problem.nearest.empty()) {
      mark_below(set, problem.nearest); // a misspelt key is not also a missing one
    }
  }
  return set;
}

Resolution resolve(const Draft &draft) {
  return resolve_around(draft, {});
}

Resolution read_job(const std::string &path) {
  return read_job(gather(path));
}

Resolution read_job(const Sources &sources) {
  DraftReading reading = read_draft(sources);
  Resolution resolution = resolve_around(reading.draft, faulty_keys(reading.problems, reading.draft.file));
  if (has_errors(reading.problems)) {
    resolution.job.reset();
  }
  resolution.problems.insert(resolution.problems.begin(), std::make_move_iterator(reading.problems.begin()),
                             std::make_move_iterator(reading.problems.end()));
  sort_by_file(resolution.problems, reading.draft.file);
  return resolution;
}

} // namespace purgewright::job
