// Rows of a sweep: the same in the same order by any number of threads, and from any row on.
#include "purgewright/study/comparison.hpp"

#include "support/paths.hpp"

#include <catch2/catch.hpp>

#include <stdexcept>
#include <string>
#include <vector>

using namespace purgewright;

namespace {

const std::vector<std::string> walls{"fixture.wall=3 mm:6 mm:0.5 mm",
                                     "fixture.radial_clearance=4 mm:9 mm:0.1 mm"};

study::Sweep quick(const study::Wanted &wanted = {}) {
  return {job::gather(test::example_job("logger-25")), walls, study::Judging::quick, wanted};
}

std::vector<std::string> rows_of(const study::Sweep &sweep, unsigned threads, std::size_t from = 0) {
  std::vector<std::string> rows;
  std::size_t place = from;
  const auto faults = sweep.make(
      from, [&](const report::ComparedDesign &row) { rows.push_back(report::kept_row("", place++, row)); },
      threads);
  CHECK(faults.empty());
  return rows;
}

} // namespace

TEST_CASE("rows come in order, the same by one, two and three threads") {
  const study::Sweep sweep = quick();
  const auto alone = rows_of(sweep, 1);
  CHECK(alone.size() == sweep.rows());
  CHECK(alone.size() == 7 * 51);
  CHECK(rows_of(sweep, 2) == alone);
  CHECK(rows_of(sweep, 3) == alone);
}

TEST_CASE("rows judged by every rule are the same by any number of threads") {
  const study::Sweep sweep(job::gather(test::example_job("logger-25")),
                           std::vector<std::string>{"weld.current=25 A:55 A:10 A"},
                           study::Judging::every_rule);
  const auto alone = rows_of(sweep, 1);
  CHECK(alone.size() == 4);
  CHECK(rows_of(sweep, 3) == alone);
}

TEST_CASE("a sweep goes on from any row") {
  const study::Sweep sweep = quick();
  const auto whole = rows_of(sweep, 2);
  for (const std::size_t from : {1, 63, 64, 65, 356, 357}) {
    INFO(from);
    CHECK(rows_of(sweep, 2, from) ==
          std::vector<std::string>(whole.begin() + static_cast<long>(from), whole.end()));
  }
}

TEST_CASE("what takes the rows may end the sweep") {
  std::size_t taken = 0;
  const auto stop = [&](const report::ComparedDesign &) {
    if (++taken == 10) {
      throw std::runtime_error("enough");
    }
  };
  CHECK_THROWS_WITH(quick().make(0, stop, 2), "enough");
  CHECK(taken == 10);
}

TEST_CASE("a row that is kept is taken for itself alone") {
  report::Comparison all =
      study::sweep(job::gather(test::example_job("logger-25")), walls, study::Judging::quick)
          .comparison.value();
  const auto &row = all.designs.front();
  std::string line = report::kept_row("head", 3, row);
  line.pop_back();
  const auto again = report::read_kept_row("head", 3, line);
  REQUIRE(again);
  CHECK(report::kept_row("head", 3, *again) == line + "\n");
  CHECK(again->outlines.size() == row.outlines.size());
  CHECK_FALSE(report::read_kept_row("another head", 3, line));
  CHECK_FALSE(report::read_kept_row("head", 4, line));
  for (std::size_t at = 0; at < line.size(); at += 41) {
    CHECK_FALSE(report::read_kept_row("head", 3, line.substr(0, at)));
    std::string changed = line;
    changed[at] = changed[at] == '1' ? '2' : '1';
    CHECK_FALSE(report::read_kept_row("head", 3, changed));
  }
}
