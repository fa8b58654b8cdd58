#include "job/family.hpp"

#include "job/fault.hpp"
#include "job/resolving.hpp"
#include "job/value_reader.hpp"
#include "purgewright/job/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <iterator>

namespace purgewright::job {
namespace {

namespace fs = std::filesystem;

class FamilyReader {
 public:
  explicit FamilyReader(DraftReading &reading) : reading_(reading), own_(reading.draft.file) {}

  void read() {
    const Entry &entry = reading_.draft[Key::fixture_family];
    for (const std::string &name : entry.list) {
      const fs::path path = own_.parent_path() / name;
      std::error_code ignored;
      if (fs::equivalent(path, own_, ignored)) {
        continue; // one list may serve all jobs of a family
      }
      if (!fs::is_regular_file(path, ignored)) {
        report(fmt::format("'{}': there is no such file", shown(name)),
               "job files, relative to this one's folder", nearest_file(name));
      } else {
        read_member(name, path.string());
      }
    }
  }

 private:
  void report(std::string problem, std::string allowed, std::string nearest = {}) {
    Diagnostic d = fault(reading_.draft[Key::fixture_family].mark, "fixture.family", std::move(problem),
                         std::move(allowed), std::move(nearest));
    d.file = reading_.draft.file;
    reading_.problems.push_back(std::move(d));
  }

  // The other job file beside this one that a typing slip may have meant.
  std::string nearest_file(const std::string &name) const {
    std::error_code ignored;
    std::vector<std::string> files;
    const fs::path folder = own_.has_parent_path() ? own_.parent_path() : fs::path(".");
    for (const auto &entry : fs::directory_iterator(folder, ignored)) {
      if (entry.path().extension() == ".yaml" && entry.path().filename() != own_.filename()) {
        files.push_back(entry.path().filename().string());
      }
    }
    std::ranges::sort(files);
    const std::vector<std::string_view> names(files.begin(), files.end());
    return std::string(nearest_choice(name, names));
  }

  void read_member(const std::string &name, const std::string &path) {
    DraftReading member = read_draft_alone(path);
    Diagnostics problems = std::move(member.problems);
    std::shared_ptr<const Job> job;
    if (!has_errors(problems)) {
      Resolution resolution = resolve(member.draft);
      std::ranges::move(resolution.problems, std::back_inserter(problems));
      job = resolution.job ? std::make_shared<const Job>(std::move(*resolution.job)) : nullptr;
    }
    if (job) {
      reading_.draft.family.push_back(std::move(job)); // its cautions are said when it is designed itself
      return;
    }
    report(fmt::format("'{}' is not a good job file", shown(name)), "job files without faults of their own");
    std::ranges::move(problems, std::back_inserter(reading_.problems));
  }

  DraftReading &reading_;
  fs::path own_;
};

} // namespace

void read_family(DraftReading &reading) {
  FamilyReader(reading).read();
}

} // namespace purgewright::job
