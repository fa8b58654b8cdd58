// Random numbers and texts for job keys, the same bits on every machine.
#pragma once

#include <cstdint>
#include <random>
#include <string>

namespace purgewright::test {

// Draws that do not depend on the standard library's distributions, whose bits differ.
class Random {
 public:
  explicit Random(std::uint64_t seed) : engine_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * (static_cast<double>(engine_() >> 11) * 0x1p-53);
  }
  int whole(int low, int high) { // both ends included
    return low + static_cast<int>(engine_() % static_cast<std::uint64_t>(high - low + 1));
  }
  bool chance(double share) { return between(0.0, 1.0) < share; }

 private:
  std::mt19937_64 engine_;
};

// A value between two limits: over all of it, among its small ones, or a limit itself.
double spread(Random &, double least, double most);

std::string any_text(Random &,
                     int most);  // that a job file may hold, so many characters; no quotes, backslashes
std::string any_stock(Random &); // an entry of the shop's rack

} // namespace purgewright::test
