#include "job/family.hpp"

#include "job/fault.hpp"
#include "job/resolving.hpp"
#include "purgewright/files/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

namespace purgewright::job {
namespace {

class FamilyReader {
 public:
  explicit FamilyReader(DraftReading &reading) : reading_(reading) {}

  void read(const std::vector<Document> &documents) {
    for (const Document &document : documents) {
      if (document.problem.empty()) {
        read_member(document);
      } else {
        report(fmt::format("'{}': {}", files::shown(document.name), document.problem),
               "job files, relative to this one's folder", document.nearest);
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

  void read_member(const Document &document) {
    DraftReading member = read_draft_text(document.bytes, document.label);
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
    report(fmt::format("'{}' is not a good job file", files::shown(document.name)),
           "job files without faults of their own");
    std::ranges::move(problems, std::back_inserter(reading_.problems));
  }

  DraftReading &reading_;
};

} // namespace

void read_family(DraftReading &reading, const std::vector<Document> &documents) {
  FamilyReader(reading).read(documents);
}

} // namespace purgewright::job
