// Designs side by side: the figures people compare, the better one of each row marked.
//
// A row says how many rules fail, which worst, how many are cautions, which has the least room left and how
// much, and which were not judged; where purge and heat were left out the count is none of all rules and is
// never given as such.
//
// Units: values are SI. Guarantee: evaluating one design in closed form makes no text but a rule's id, so
// that quick sweeps run thousands a second.
#pragma once

#include "purgewright/checks/rules.hpp"
#include "purgewright/fixture/outline.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace purgewright::report {

enum class Better { smaller, larger, neither };

struct Metric {
  std::string_view id, title;
  units::Dimension dimension;
  Better better;
  double (*value)(const checks::Design &);
};

std::span<const Metric> metrics();
inline constexpr std::size_t metric_count = 29;
using MetricValues = std::array<double, metric_count>;

// All metrics of a design; not a number where the layout has conflicts or the metric is not known.
MetricValues measure(const checks::Design &);

// A figure asked for by its id, beside the metrics.
struct Asked {
  std::string id, title;
  units::Dimension dimension{};
};

// The rule with the least room left of its limit. One that stands at its limit by design, as the smallest
// wall that the layout may leave, says nothing and does not count.
struct Tightest {
  std::string_view rule; // empty: none is judged
  double margin = 0.0;   // checks::margin
};

struct Kind { // "plug", "bore-ring"
  std::string what, kind;
};

struct ComparedDesign {
  std::string name;           // file stem, or the varied values "fixture.wall=4 mm"
  std::vector<double> varied; // SI, one for each key of the sweep
  MetricValues values{};
  checks::Tally rules{};
  std::string currency{};
  // Empty where purge and heat were left out.
  Tightest tightest{};
  std::vector<Kind> kinds{};
  std::vector<double> asked{};                               // not a number where this design has none
  std::vector<std::optional<checks::Status>> of_each_rule{}; // as checks::rules(); none where not judged
  std::vector<fixture::Outline> outlines{}; // empty: not to be drawn, or nothing that can be built
};

// Of so many designs few are drawn, spread evenly from the first to the last.
inline constexpr std::size_t most_drawn = 12;
bool is_drawn(std::size_t design, std::size_t of);

// A design as a row: its metrics, its rules, and the figures of these ids.
ComparedDesign compared(const checks::Design &, std::string name = {},
                        std::span<const std::string> asked = {});

// What the ids ask for, as the design has it; throws std::out_of_range with an id that it does not have.
std::vector<Asked> asked_of(const checks::Design &, std::span<const std::string> ids);

struct Comparison {
  std::vector<std::string> varied_keys;
  std::vector<units::Dimension> varied_dimensions;
  std::vector<std::string> varied_currencies; // of prices; empty for other keys
  std::vector<Asked> asked;
  std::vector<std::size_t> ranked; // metrics to be weighed against each other; empty: none
  std::vector<ComparedDesign> designs;
  units::UnitSystem unit_system = units::UnitSystem::metric;
  bool quick = false; // purge, heat and measured log were left out: their rules are not judged
};

// What all rows together say: the unit of a column, its best value, the front. Rows are added one by one and
// not kept, so that a sweep of any length can be summed up.
class Overview {
 public:
  explicit Overview(std::vector<std::size_t> ranked = {}) : ranked_(std::move(ranked)) {}
  void add(const ComparedDesign &);

  // One of the front: the designs that fail no rule and that none other beats, as none is as good in every
  // ranked metric and better in one (Pareto's front).
  struct Choice {
    std::size_t design; // its place among the rows
    std::string name, currency;
    std::vector<double> values; // of the ranked metrics
  };
  // The best in the first ranked metric first; in the order of rows where equal. Nothing when none is ranked.
  std::vector<Choice> front() const;

  std::size_t designs() const { return designs_; }
  double largest(std::size_t metric) const { return columns_[metric].largest; }  // chooses the unit of all
  bool is_known(std::size_t metric) const { return columns_[metric].known > 0; } // by any design
  // Whether the row is best in the metric; none is when all are equal or it has no better.
  bool wins(const ComparedDesign &, std::size_t metric) const;
  bool any_fails() const { return any_fails_; } // a rule of any design, or its layout clashes
  bool any_clashes() const { return any_clashes_; }
  // Of the first row that does not clash.
  const std::optional<checks::Tally> &judged_as() const { return judged_as_; }

 private:
  struct Column {
    double largest = 0.0;
    double best = 0.0; // in the sense of smaller is better
    std::size_t known = 0, winners = 0;
  };
  std::vector<std::size_t> ranked_;
  std::array<Column, metric_count> columns_{};
  std::vector<Choice> choices_;
  std::optional<checks::Tally> judged_as_;
  std::size_t designs_ = 0;
  bool any_fails_ = false, any_clashes_ = false;
};

Overview overview(const Comparison &);

// A metric of a design as the table prints it, in the unit of the row's largest value; "-" for none.
std::string metric_text(const Comparison &, const Overview &, const ComparedDesign &, std::size_t metric);
// A figure asked for.
std::string asked_text(const Comparison &, const ComparedDesign &, std::size_t asked);

// "heat.tacks_melt 2 % left"; "-" where nothing was judged.
std::string tightest_text(const ComparedDesign &);

// "shop.argon_price=12 EUR/m3": the value of a row's varied key.
std::string varied_text(const Comparison &, std::size_t key, double value);

// The metric of this id, if one of its values can be better than another.
std::optional<std::size_t> rankable(std::string_view id);

// Places of the front's designs.
std::vector<std::size_t> front(const Comparison &);

// Few designs: a row a figure. Many: a line a design. Best values carry a star.
std::string comparison_text(const Comparison &);
std::string comparison_csv(const Comparison &);  // SI values, comma, CRLF as RFC 4180
std::string comparison_json(const Comparison &); // SI values

// The lines of a sweep, and its table, row by row: what is put together from them is the text and the CSV of
// the whole. `head` needs no designs of its own; the overview is of all rows.
class SweepLines {
 public:
  SweepLines(const Comparison &head, const Overview &);
  std::string head() const;
  std::string row(const ComparedDesign &); // each in its turn
  std::string foot() const;

 private:
  const Comparison &head_;
  const Overview &overview_;
  std::vector<std::size_t> shown_;
  std::optional<ComparedDesign> before_;
};

class SweepTable {
 public:
  SweepTable(const Comparison &head, const Overview &);
  std::string head() const;
  std::string row(const ComparedDesign &);

 private:
  const Comparison &head_;
  std::vector<std::size_t> front_; // in the order of rows
  std::size_t next_ = 0;
};

} // namespace purgewright::report
