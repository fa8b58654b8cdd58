// Bytes to a job: a job without faults, or faults without a job; what is a job can be laid out.
#include "promise.hpp"

#include "purgewright/fixture/layout.hpp"
#include "purgewright/job/job.hpp"

using namespace purgewright;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *bytes, std::size_t size) {
  const auto text = fuzz::text_of(bytes, size);
  const job::DraftReading reading = job::read_draft_text(text, "job.yaml");
  fuzz::check_problems(reading.problems, text);
  if (job::has_errors(reading.problems)) {
    return 0;
  }
  const job::Resolution resolution = job::resolve(reading.draft);
  fuzz::check_problems(resolution.problems, text);
  fuzz::promise(resolution.job.has_value() != job::has_errors(resolution.problems), "a job or a fault");
  if (resolution.job) {
    fuzz::promise(!job::figures(*resolution.job).empty(), "a job has figures");
    fixture::lay_out(*resolution.job);
  }
  return 0;
}
