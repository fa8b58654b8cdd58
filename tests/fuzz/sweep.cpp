// Text of --vary to a sweep: values within the key's limits, or a sentence.
#include "promise.hpp"

#include "purgewright/job/sweep.hpp"

using namespace purgewright;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *bytes, std::size_t size) {
  const auto [sweep, problem, nearest] = job::read_sweep(fuzz::text_of(bytes, size));
  fuzz::promise(sweep.has_value() == problem.empty(), "a sweep or a problem");
  if (sweep) {
    fuzz::promise(sweep->count >= 1 && sweep->count <= job::most_designs, "a sweep has an end");
    fuzz::promise(sweep->at(0) == sweep->from, "a sweep begins where it says");
    const double last = sweep->at(sweep->count - 1);
    fuzz::promise(last >= sweep->from && last <= sweep->to, "a sweep ends before TO or there");
    fuzz::promise(sweep->from >= sweep->field->least && last <= sweep->field->most,
                  "values are allowed ones");
    fuzz::promise(sweep->count == 1 || sweep->at(1) > sweep->at(0), "values differ");
  }
  return 0;
}
