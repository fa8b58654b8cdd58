// A job from its text, laid out, with its parts list.
#pragma once

#include "purgewright/fixture/parts_list.hpp"
#include "purgewright/fixture/volumes.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <utility>
#include <vector>

namespace purgewright::test {

struct ListedJob {
  job::Job job;
  fixture::Layout layout;
  std::vector<fixture::Item> items;
};

inline ListedJob listed_job(const std::string &text) {
  auto reading = job::read_draft_text(text, "job");
  auto resolution = job::resolve(reading.draft);
  REQUIRE(resolution.job);
  fixture::Layout layout = fixture::lay_out(*resolution.job);
  REQUIRE(layout.buildable());
  auto items = fixture::parts_list(*resolution.job, layout, fixture::volumes(*resolution.job, layout));
  return {std::move(*resolution.job), std::move(layout), std::move(items)};
}

} // namespace purgewright::test
