#include "rows.hpp"

#include "purgewright/job/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <stdexcept>

namespace purgewright::study {
namespace {

std::string nearest_figure(const checks::Design &design, std::string_view id) {
  const auto figures = checks::figures(design);
  std::vector<std::string_view> ids;
  std::ranges::transform(figures, std::back_inserter(ids), &units::Figure::id);
  return std::string(job::nearest_choice(id, ids));
}

} // namespace

namespace rows {

std::vector<report::Asked> asked_of(const checks::Design &design, std::span<const std::string> show) {
  try {
    return show.empty() ? std::vector<report::Asked>{} : report::asked_of(design, show);
  } catch (const std::out_of_range &error) {
    const std::string_view id = error.what();
    throw BadSweep(
        fmt::format("--show: the design has no quantity '{}'; `purgewright trace JOB` lists them all{}", id,
                    job::did_you_mean(nearest_figure(design, id))));
  }
}

std::vector<std::size_t> ranked(std::span<const std::string> ids) {
  std::vector<std::size_t> metrics;
  for (const std::string &id : ids) {
    const auto metric = report::rankable(id);
    if (!metric) {
      std::vector<std::string_view> allowed;
      for (const report::Metric &each : report::metrics()) {
        if (each.better != report::Better::neither) {
          allowed.push_back(each.id);
        }
      }
      throw BadSweep(fmt::format("--rank {}: designs are ranked by {}{}", id, fmt::join(allowed, ", "),
                                 job::did_you_mean(job::nearest_choice(id, allowed))));
    }
    metrics.push_back(*metric);
  }
  return metrics;
}

void draw(const checks::Design &design, report::ComparedDesign &row) {
  if (design.layout.buildable()) {
    row.outlines = fixture::outlines(design.job, design.layout);
  }
}

} // namespace rows

void require_ranked_known(const report::Comparison &head, const report::Overview &all) {
  for (const std::size_t metric : head.ranked) {
    if (!all.is_known(metric)) {
      throw BadSweep(fmt::format("--rank {}: no design here has it{}", report::metrics()[metric].id,
                                 head.quick ? "; --quick leaves out purge and heat" : ""));
    }
  }
}

} // namespace purgewright::study
