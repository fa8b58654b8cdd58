#include "purgewright/heat/order.hpp"

#include "heat/require.hpp"

#include <algorithm>
#include <cstdlib>

namespace purgewright::heat {

namespace {

using units::Angle;

constexpr Angle full_turn = units::radians(2.0 * units::pi);

int apart(int a, int b, int count) {
  const int along = std::abs(a - b);
  return std::min(along, count - along);
}

// The free position farthest from all that are set; the lowest of equals.
int farthest(const std::vector<int> &set, const std::vector<bool> &free) {
  const int count = static_cast<int>(free.size());
  int best = -1, best_distance = -1;
  for (int place = 0; place < count; ++place) {
    int nearest = count;
    for (const int other : set) {
      nearest = std::min(nearest, apart(place, other, count));
    }
    if (free[std::size_t(place)] && nearest > best_distance) {
      best = place;
      best_distance = nearest;
    }
  }
  return best;
}

// The free position nearest to the one opposite `place`; the lowest of equals.
int opposite(int place, const std::vector<bool> &free) {
  const int count = static_cast<int>(free.size());
  int best = -1, most = -1;
  for (int other = 0; other < count; ++other) {
    if (free[std::size_t(other)] && apart(place, other, count) > most) {
      best = other;
      most = apart(place, other, count);
    }
  }
  return best;
}

double sense(const job::Job &job) {
  return job.rotation.direction == job::Direction::counterclockwise ? 1.0 : -1.0;
}

} // namespace

std::vector<int> tack_order(int count) {
  detail::require(count >= 1, "tack_order", "count must be at least 1", count);
  std::vector<int> order{0};
  std::vector<bool> free(std::size_t(count), true);
  free[0] = false;
  while (static_cast<int>(order.size()) < count) {
    const int next = order.size() % 2 == 1 ? opposite(order.back(), free) : farthest(order, free);
    order.push_back(next);
    free[std::size_t(next)] = false;
  }
  return order;
}

std::vector<Pass> tack_passes(const job::Job &job, units::Length length) {
  const Angle half =
      units::radians(units::ratio(length, job.tube.outside_diameter)); // half of length / radius
  std::vector<Pass> passes;
  for (const int place : tack_order(job.rotation.tacks)) {
    const Angle middle =
        job.rotation.start_angle + sense(job) * (double(place) / job.rotation.tacks) * full_turn;
    passes.push_back({middle - sense(job) * half, middle + sense(job) * half});
  }
  return passes;
}

std::vector<Pass> run_passes(const job::Job &job) {
  const int count = job.rotation.runs;
  detail::require(count >= 1, "run_passes", "count must be at least 1", count);
  const Angle share = full_turn / double(count);
  std::vector<Pass> passes;
  for (int run = 0; run < count; ++run) {
    const Angle back = run == 0 ? Angle{} : job.rotation.overlap;
    const Angle on = run + 1 == count ? job.rotation.overlap : Angle{};
    passes.push_back({job.rotation.start_angle + sense(job) * (double(run) * share - back),
                      job.rotation.start_angle + sense(job) * (double(run + 1) * share + on)});
  }
  return passes;
}

} // namespace purgewright::heat
