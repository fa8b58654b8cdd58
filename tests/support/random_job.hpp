// Random valid jobs: one seed, one job, with the same bits on every machine. Properties draw from these; a
// seed that breaks a law is kept as a fixture.
//
// Range: outside diameters 8 to 90 mm, every cap shape, with and without a vent, tight and loose tolerances,
// metric and inch shops, every port thread, now and then the user's own fixture sizes. Guarantee: a RandomJob
// has passed the job's own checks and its layout has no conflict. Drafts that do not get that far are
// counted, so that a test can state the share.
#pragma once

#include "purgewright/fixture/layout.hpp"
#include "purgewright/job/job.hpp"

#include <cstdint>
#include <map>
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

// Steps that sizes are written in. Round sizes make faces and grid lines coincide, free ones never do.
enum class Sizes { free, metric, inch };

// The keys of one random job; nearly all resolve.
job::Draft random_draft(std::uint64_t seed);
job::Draft random_draft(std::uint64_t seed, Sizes sizes);

struct RandomJob {
  std::uint64_t seed = 0;
  job::Job job;
  fixture::Layout layout;
};

// Jobs of consecutive seeds, the unbuildable left out.
class JobStream {
 public:
  explicit JobStream(std::uint64_t first_seed) : next_(first_seed) {}
  RandomJob next();

  int drawn() const { return drawn_; }
  int accepted() const { return accepted_; }
  int refused() const { return refused_; }                               // by the job's own checks
  const std::map<std::string, int> &clashes() const { return clashes_; } // first conflict's rule
  double accepted_share() const { return drawn_ == 0 ? 0.0 : static_cast<double>(accepted_) / drawn_; }

 private:
  std::uint64_t next_;
  int drawn_ = 0, accepted_ = 0, refused_ = 0;
  std::map<std::string, int> clashes_;
};

// The draft as a job file, its lengths written in millimetres or in inches with as many digits as they have.
enum class LengthUnit { millimetre, inch };
std::string to_yaml(const job::Draft &, LengthUnit);

} // namespace purgewright::test
