#include "purgewright/report/compare.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace purgewright::report {
namespace {

double sense(std::size_t metric) {
  return metrics()[metric].better == Better::larger ? -1.0 : 1.0;
}

// Nothing for a design that fails a rule or does not have one of the metrics.
std::vector<double> weighed(const ComparedDesign &design, std::span<const std::size_t> ranked) {
  std::vector<double> values;
  for (const std::size_t metric : ranked) {
    const double value = design.values[metric];
    if (design.rules.failing > 0 || !std::isfinite(value)) {
      return {};
    }
    values.push_back(value);
  }
  return values;
}

bool beats(const std::vector<double> &one, const std::vector<double> &other,
           std::span<const std::size_t> ranked) {
  for (std::size_t i = 0; i < ranked.size(); ++i) {
    if (sense(ranked[i]) * one[i] > sense(ranked[i]) * other[i]) {
      return false;
    }
  }
  return one != other;
}

} // namespace

void Overview::add(const ComparedDesign &design) {
  for (std::size_t m = 0; m < metric_count; ++m) {
    Column &column = columns_[m];
    const double value = design.values[m];
    if (!std::isfinite(value)) {
      continue;
    }
    column.largest = std::max(column.largest, std::abs(value));
    const double weighed_value = sense(m) * value;
    if (column.known == 0 || weighed_value < column.best) {
      column.best = weighed_value;
      column.winners = 0;
    }
    column.winners += weighed_value == column.best ? 1 : 0;
    ++column.known;
  }
  any_fails_ = any_fails_ || design.rules.failing > 0;
  any_clashes_ = any_clashes_ || design.rules.clashes;
  if (!judged_as_ && !design.rules.clashes) {
    judged_as_ = design.rules;
  }
  const std::size_t place = designs_++;
  auto values = weighed(design, ranked_);
  if (values.empty() || std::ranges::any_of(choices_, [&](const Choice &choice) {
        return beats(choice.values, values, ranked_);
      })) {
    return;
  }
  std::erase_if(choices_, [&](const Choice &choice) { return beats(values, choice.values, ranked_); });
  choices_.push_back({place, design.name, design.currency, std::move(values)});
}

bool Overview::wins(const ComparedDesign &design, std::size_t metric) const {
  const Column &column = columns_[metric];
  return metrics()[metric].better != Better::neither && column.winners < column.known &&
         sense(metric) * design.values[metric] == column.best;
}

std::vector<Overview::Choice> Overview::front() const {
  auto sorted = choices_;
  std::ranges::stable_sort(sorted, [&](const Choice &one, const Choice &other) {
    for (std::size_t i = 0; i < ranked_.size(); ++i) {
      const double a = sense(ranked_[i]) * one.values[i], b = sense(ranked_[i]) * other.values[i];
      if (a != b) {
        return a < b;
      }
    }
    return false;
  });
  return sorted;
}

Overview overview(const Comparison &c) {
  Overview all(c.ranked);
  for (const ComparedDesign &design : c.designs) {
    all.add(design);
  }
  return all;
}

std::vector<std::size_t> front(const Comparison &c) {
  std::vector<std::size_t> places;
  for (const auto &choice : overview(c).front()) {
    places.push_back(choice.design);
  }
  return places;
}

std::optional<std::size_t> rankable(std::string_view id) {
  const auto found = std::ranges::find(metrics(), id, &Metric::id);
  return found == metrics().end() || found->better == Better::neither
             ? std::nullopt
             : std::optional(static_cast<std::size_t>(found - metrics().begin()));
}

} // namespace purgewright::report
