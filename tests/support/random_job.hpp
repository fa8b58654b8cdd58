// Random valid jobs: one seed, one job, with the same bits on every machine. Properties draw from these; a
// seed that breaks a law is kept as a fixture.
//
// Reach: `usual` jobs keep to what shops make: outside diameters 8 to 90 mm, every cap shape, with and
// without a vent, tight and loose tolerances, metric and inch shops, every port thread, now and then the
// user's own fixture sizes. `whole` draws every key of the table, now and then anywhere between its limits: a
// key that is added to the table is drawn without a line here, unless other keys bound it. Guarantee: a
// RandomJob has passed the job's own checks and its layout has no conflict. Drafts that do not get that far
// are counted, so that a test can state the share.
#pragma once

#include "support/random_values.hpp"

#include "purgewright/fixture/layout.hpp"
#include "purgewright/job/job.hpp"

#include <cstdint>
#include <map>
#include <string>

namespace purgewright::test {

// Steps that sizes are written in. Round sizes make faces and grid lines coincide, free ones never do.
enum class Sizes { free, metric, inch };

enum class Reach { usual, whole };

// The keys of one random job; nearly all resolve. The usual keys of a seed are the same in both reaches until
// the first that is drawn anywhere.
job::Draft random_draft(std::uint64_t seed, Reach reach = Reach::whole);
job::Draft random_draft(std::uint64_t seed, Sizes sizes, Reach reach = Reach::whole);

struct RandomJob {
  std::uint64_t seed = 0;
  job::Job job;
  fixture::Layout layout;
};

// Jobs of consecutive seeds, the unbuildable left out.
class JobStream {
 public:
  explicit JobStream(std::uint64_t first_seed, Reach reach = Reach::whole)
      : next_(first_seed), reach_(reach) {}
  RandomJob next();

  int drawn() const { return drawn_; }
  int accepted() const { return accepted_; }
  int refused() const { return refused_; }                               // by the job's own checks
  const std::map<std::string, int> &clashes() const { return clashes_; } // first conflict's rule
  double accepted_share() const { return drawn_ == 0 ? 0.0 : static_cast<double>(accepted_) / drawn_; }

 private:
  std::uint64_t next_;
  Reach reach_;
  int drawn_ = 0, accepted_ = 0, refused_ = 0;
  std::map<std::string, int> clashes_;
};

// The draft as a job file, its lengths written in millimetres or in inches with as many digits as they have.
enum class LengthUnit { millimetre, inch };
std::string to_yaml(const job::Draft &, LengthUnit);

} // namespace purgewright::test
