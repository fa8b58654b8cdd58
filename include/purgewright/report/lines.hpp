// What the bench needs to know of a design, line by line: the printed text and the page show the same lines,
// so that they never differ.
//
// Units: texts in shop units of the job, flows in L/min and ft3/h. Frame: collar angles as bench_numbers.hpp.
// Errors: the layout must be buildable, but for dangers() and against_limit(). Guarantee: same findings, same
// lines. Source: the figures of results.json, by the id of each line.
#pragma once

#include "purgewright/report/results.hpp"

#include <algorithm>
#include <iterator>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace purgewright::report {

struct Line {
  std::string what; // empty: goes on with the line before
  std::string text;
  std::string id; // that `trace` takes
};

struct Lines : std::vector<Line> {
  using std::vector<Line>::vector;
  Lines &operator+=(Line line) {
    push_back(std::move(line));
    return *this;
  }
  Lines &operator+=(Lines lines) {
    std::move(lines.begin(), lines.end(), std::back_inserter(*this));
    return *this;
  }
};

// What can hurt people, before anything else.
std::vector<std::string_view> dangers();

Lines gas_settings(const Findings &); // flows, wait, torch, arc
Lines welding(const Findings &);      // what goes with the table of tacks and runs
Lines use(const Findings &);          // gas, time and room of a part
Lines sizes(const Findings &);
Lines served(const Findings &); // which tubes the bench takes

// A tack or a run, as texts.
struct WeldRow {
  std::string name, collar, arc, hold, warm_hold, before, peak, pool, id;
};
WeldRow weld_heads(); // of the columns
std::vector<WeldRow> weld_rows(const Findings &);

// "12.3 mL (limit ≤ 15 mL)": in the limit's unit, the limit never laxer than it is, and with as many digits
// as it takes to tell the value of a rule that does not pass from its limit. Empty where nothing is measured.
std::string against_limit(const Findings &, const checks::RuleResult &);

// A figure's value in the job's units, money with its currency.
std::string value_text(const Findings &, const units::Figure &);

} // namespace purgewright::report
