#include "sheet_faults.hpp"

#include "measure.hpp"

#include <fmt/format.h>

#include <map>
#include <set>
#include <stdexcept>

namespace purgewright::test {

using namespace drawing;

namespace {

const solids::kernel::Solid &solid_of(const DrawnJob &drawn_job, const std::string &part) {
  for (const auto &candidate : drawn_job.assembly.parts) {
    if (candidate.name == part) {
      return candidate.solid;
    }
  }
  throw std::logic_error("no part " + part);
}

double printed_mm(const Sheet &sheet, double shown) {
  constexpr double inch = 25.4;
  return sheet.unit == Unit::inch ? shown * inch : shown;
}

void check(const Sheet &sheet, const Dimension &d, const solids::kernel::Solid &solid, Measures &out) {
  constexpr double kernel = 1e-6; // mm
  const std::string what = fmt::format("{}: {}: {}", sheet.name, d.feature, fmt::join(d.lines, " / "));
  const Measured found = measure(d, solid);
  ++out.count;
  if (!found.value) {
    out.faults.push_back(fmt::format("{}: {}", what, found.reason));
  } else if (std::abs(*found.value - printed_mm(sheet, d.shown)) >
             0.5 * printed_mm(sheet, d.last_digit) + kernel) {
    out.faults.push_back(fmt::format("{}: measured {} mm", what, *found.value));
  }
}

} // namespace

Measures wrong_measures(const DrawnJob &drawn_job) {
  Measures out;
  for (const Sheet &sheet : drawn_job.sheets) {
    for (const Dimension &d : sheet.dimensions) {
      if (d.probe != Probe::none && d.probe != Probe::angle) {
        check(sheet, d, solid_of(drawn_job, sheet.part), out);
      }
    }
  }
  return out;
}

std::vector<std::string> repeated_features(const DrawnJob &drawn_job) {
  std::map<std::string, int> count;
  for (const Sheet &sheet : drawn_job.sheets) {
    for (const Dimension &d : sheet.dimensions) {
      ++count[sheet.part + ": " + d.feature];
    }
  }
  std::vector<std::string> out;
  for (const auto &[feature, times] : count) {
    if (times != 1) {
      out.push_back(fmt::format("{} {} times", feature, times));
    }
  }
  return out;
}

std::vector<std::string> missing_sheets(const DrawnJob &drawn_job) {
  std::set<std::string> made, drawn_parts;
  for (const auto &part : drawn_job.assembly.parts) {
    if (part.made()) {
      made.insert(part.name);
    }
  }
  for (const Sheet &sheet : drawn_job.sheets) {
    if (sheet.part != assembly_sheet) {
      drawn_parts.insert(sheet.part);
    }
  }
  std::vector<std::string> out;
  std::set_symmetric_difference(made.begin(), made.end(), drawn_parts.begin(), drawn_parts.end(),
                                std::back_inserter(out));
  return out;
}

} // namespace purgewright::test
