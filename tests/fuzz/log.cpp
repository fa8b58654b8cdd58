// Bytes to a meter's log: readings in order, or faults.
#include "promise.hpp"

#include "purgewright/gas/measured_log.hpp"

#include <cmath>

using namespace purgewright;

namespace {

void check_readings(const gas::Readings &kept) {
  fuzz::promise(kept.times.size() == kept.oxygen.size(), "a reading has a time and a value");
  fuzz::promise(kept.times.size() >= std::size_t{gas::least_readings}, "enough readings");
  fuzz::promise(std::ranges::is_sorted(kept.times), "times do not fall");
  fuzz::promise(std::ranges::all_of(kept.times, [](auto t) { return std::isfinite(t.value()); }),
                "times are finite");
  fuzz::promise(std::ranges::all_of(kept.oxygen, [](double o) { return o > 0.0 && o <= 0.25; }),
                "oxygen is a share of air");
  fuzz::promise(!kept.flow || (kept.flow->value() > 0.0 && std::isfinite(kept.flow->value())),
                "a flow is finite");
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *bytes, std::size_t size) {
  const auto text = fuzz::text_of(bytes, size);
  const gas::LogReading reading = gas::parse_log(text, "log.csv");
  fuzz::check_problems(reading.problems, text);
  fuzz::promise(reading.log.has_value() != job::has_errors(reading.problems), "a log or a fault");
  if (reading.log) {
    fuzz::promise(!reading.log->circuits.empty(), "a log has a circuit");
    std::ranges::for_each(reading.log->circuits, check_readings);
  }
  return 0;
}
