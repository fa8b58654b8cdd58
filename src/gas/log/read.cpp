#include "purgewright/gas/measured_log.hpp"

#include "purgewright/files/text.hpp"
#include "purgewright/job/nearest.hpp"
#include "purgewright/units/parse.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <iterator>

namespace purgewright::gas {
namespace {

using units::Dimension;

constexpr std::size_t most_problems = 20;
constexpr double most_oxygen = 0.25; // air as a meter in need of a span may show it

enum Column : std::size_t { time_column, oxygen_column, circuit_column, flow_column, column_count };
constexpr std::array<std::string_view, column_count> names{"time", "oxygen", "circuit", "flow"};
constexpr std::array<Dimension, column_count> dimensions{Dimension::time, Dimension::ratio, Dimension::count,
                                                         Dimension::flow};
constexpr std::array<std::string_view, column_count> examples{"time [s]", "oxygen [ppm]", "circuit",
                                                              "flow [L/min]"};

struct Cell {
  std::string text;
  int column = 1; // of its first character, from 1
};

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view blank = " \t\r";
  const auto first = text.find_first_not_of(blank);
  return first == std::string_view::npos ? std::string_view{}
                                         : text.substr(first, text.find_last_not_of(blank) - first + 1);
}

// Cells of one line; a cell in double quotes may hold separators, and "" stands for a quote in it.
std::vector<Cell> split(std::string_view line, char separator) {
  std::vector<Cell> cells;
  Cell cell;
  bool quoted = false;
  const auto close = [&](std::size_t next) {
    cell.text = std::string(trimmed(cell.text));
    cells.push_back(std::move(cell));
    cell = {.text = {}, .column = static_cast<int>(next) + 1};
  };
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (line[i] == '"') {
      if (quoted && i + 1 < line.size() && line[i + 1] == '"') {
        cell.text += line[i++];
      } else {
        quoted = !quoted;
      }
    } else if (line[i] == separator && !quoted) {
      close(i + 1);
    } else {
      cell.text += line[i];
    }
  }
  close(line.size());
  return cells;
}

// What the header's columns stand between: whichever makes most of them, a comma among equals.
char separator_of(std::string_view header) {
  constexpr std::array<char, 3> known{',', ';', '\t'};
  return *std::ranges::max_element(known, {}, [&](char c) { return split(header, c).size(); });
}

void append_utf8(char32_t c, std::string &out) {
  const auto follow = [&](int shift) { out += static_cast<char>(0x80 | ((c >> shift) & 0x3F)); };
  if (c < 0x80) {
    out += static_cast<char>(c);
  } else if (c < 0x800) {
    out += static_cast<char>(0xC0 | c >> 6);
    follow(0);
  } else if (c < 0x10000) {
    out += static_cast<char>(0xE0 | c >> 12);
    follow(6);
    follow(0);
  } else {
    out += static_cast<char>(0xF0 | c >> 18);
    follow(12);
    follow(6);
    follow(0);
  }
}

// UTF-8 of a text that may be UTF-16 with its byte order mark, as some spreadsheets and shells write it; what
// is no character becomes U+FFFD. Source: RFC 2781 (UTF-16), RFC 3629 (UTF-8).
std::string as_utf8(std::string_view text) {
  constexpr std::string_view utf8_mark = "\xEF\xBB\xBF", little = "\xFF\xFE", big = "\xFE\xFF";
  if (!text.starts_with(little) && !text.starts_with(big)) {
    return std::string(text.substr(text.starts_with(utf8_mark) ? utf8_mark.size() : 0));
  }
  const bool low_first = text.starts_with(little);
  const auto unit = [&](std::size_t at) {
    const auto a = static_cast<unsigned char>(text[at]), b = static_cast<unsigned char>(text[at + 1]);
    return static_cast<char32_t>(low_first ? a | b << 8 : a << 8 | b);
  };
  const auto is = [](char32_t c, char32_t first) { return c >= first && c < first + 0x400; };
  std::string out;
  for (std::size_t i = 2; i + 1 < text.size(); i += 2) {
    char32_t c = unit(i);
    if (is(c, 0xD800) && i + 3 < text.size() && is(unit(i + 2), 0xDC00)) {
      c = 0x10000 + ((c - 0xD800) << 10) + (unit(i + 2) - 0xDC00);
      i += 2;
    } else if (is(c, 0xD800) || is(c, 0xDC00)) {
      c = 0xFFFD;
    }
    append_utf8(c, out);
  }
  return out;
}

class Reader {
 public:
  explicit Reader(std::string file) { result_.log = Log{.file = std::move(file), .circuits = {}}; }

  LogReading read(std::string_view text) {
    while (!text.empty() && rows_ <= most_readings) {
      const auto end = text.find('\n');
      ++line_;
      take(text.substr(0, end));
      text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    }
    finish();
    return std::move(result_);
  }

 private:
  void report(job::Severity severity, int line, int column, std::string key, std::string problem,
              std::string allowed = {}, std::string nearest = {}) {
    if (severity == job::Severity::error && ++errors_ > most_problems) {
      return;
    }
    result_.problems.push_back({severity,
                                result_.log->file,
                                {line, column},
                                std::move(key),
                                std::move(problem),
                                std::move(allowed),
                                std::move(nearest)});
  }
  void fault(int column, std::string key, std::string problem, std::string allowed = {},
             std::string nearest = {}) {
    report(job::Severity::error, line_, column, std::move(key), std::move(problem), std::move(allowed),
           std::move(nearest));
  }

  void take(std::string_view line) {
    const std::string_view content = trimmed(line);
    if (content.empty() || content.front() == '#') {
      return;
    }
    if (!header_) {
      header_ = true;
      header_line_ = line_;
      separator_ = separator_of(line);
      take_header(split(line, separator_));
    } else if (usable_) {
      ++rows_;
      take_row(split(line, separator_));
    }
  }

  void take_header(const std::vector<Cell> &cells) {
    for (std::size_t i = 0; i < cells.size(); ++i) {
      take_name(cells[i], i);
    }
    for (const std::size_t c :
         {std::size_t{time_column}, std::size_t{oxygen_column}, std::size_t{circuit_column}}) {
      if (!places_[c]) {
        fault(1, std::string(names[c]), "the column is missing",
              fmt::format("a header line such as {},{},{}", examples[0], examples[1], examples[2]));
      }
    }
    usable_ = errors_ == 0;
    width_ = cells.size();
  }

  void take_name(const Cell &cell, std::size_t place) {
    const auto bracket = cell.text.find('[');
    std::string name(trimmed(std::string_view(cell.text).substr(0, bracket)));
    std::ranges::transform(name, name.begin(),
                           [](char c) { return c >= 'A' && c <= 'Z' ? char(c - 'A' + 'a') : c; });
    const auto known = std::ranges::find(names, name);
    if (known == names.end()) {
      const std::string near = std::string(job::nearest_choice(name, names));
      report(job::Severity::caution, line_, cell.column, files::shown(cell.text), "the column is not read",
             {}, near);
      return;
    }
    const auto c = static_cast<std::size_t>(known - names.begin());
    if (places_[c]) {
      fault(cell.column, name, "the column stands twice");
    }
    places_[c] = place;
    if (c != circuit_column) {
      take_unit(cell, c, bracket);
    }
  }

  void take_unit(const Cell &cell, std::size_t c, std::size_t bracket) {
    const auto end = cell.text.find(']', bracket == std::string::npos ? 0 : bracket);
    if (bracket == std::string::npos || end == std::string::npos || end < bracket) {
      fault(cell.column, std::string(names[c]), "the unit is missing", std::string(examples[c]));
      return;
    }
    const auto unit = trimmed(std::string_view(cell.text).substr(bracket + 1, end - bracket - 1));
    const auto one = units::parse_quantity(fmt::format("1 {}", unit), dimensions[c]);
    if (unit.empty() || !one.si || !(*one.si > 0.0)) {
      fault(cell.column, std::string(names[c]),
            unit.empty() ? "the unit is empty" : files::shown(one.problem), std::string(examples[c]));
      return;
    }
    scales_[c] = *one.si;
  }

  // One decimal mark in a file: where numbers have a comma, a dot would stand between thousands.
  bool marked_as_before(const Cell &cell, std::size_t c) {
    const auto mark = cell.text.find_first_of(separator_ == ',' ? "." : ".,");
    if (mark == std::string::npos) {
      return true;
    }
    decimal_mark_ = decimal_mark_ == 0 ? cell.text[mark] : decimal_mark_;
    if (cell.text[mark] != decimal_mark_) {
      fault(cell.column, std::string(names[c]),
            fmt::format("'{}' has a {}, numbers before it a {}", files::shown(cell.text),
                        decimal_mark_ == ',' ? "dot" : "comma", decimal_mark_ == ',' ? "comma" : "dot"),
            "one decimal mark in the whole file, and none between thousands");
      return false;
    }
    return true;
  }

  // The number of a cell in SI, or nothing and a fault.
  std::optional<double> number(const std::vector<Cell> &cells, std::size_t c) {
    const Cell &cell = cells[*places_[c]];
    double value = 0.0;
    std::string text = cell.text;
    if (!marked_as_before(cell, c)) {
      return std::nullopt;
    }
    if (separator_ != ',' && text.find('.') == std::string::npos) {
      std::ranges::replace(text, ',', '.'); // a second one then ends the number
    }
    const char *const end = text.data() + text.size();
    const auto [stop, error] = std::from_chars(text.data(), end, value);
    if (error != std::errc{} || stop != end || !std::isfinite(value)) {
      fault(cell.column, std::string(names[c]), fmt::format("'{}' is not a number", files::shown(cell.text)),
            separator_ == ',' ? "digits with a decimal point, such as 12.5"
                              : "digits with a decimal point or comma, such as 12.5");
      return std::nullopt;
    }
    return value * scales_[c];
  }

  void take_row(const std::vector<Cell> &cells) {
    if (cells.size() != width_) {
      fault(cells.back().column, "row",
            fmt::format("{} cells where the header has {}", cells.size(), width_));
      return;
    }
    const auto time = number(cells, time_column);
    const auto oxygen = number(cells, oxygen_column);
    const auto flow = places_[flow_column] ? number(cells, flow_column) : std::nullopt;
    const Cell &word = cells[*places_[circuit_column]];
    if (word.text != "bore" && word.text != "chamber") {
      fault(word.column, "circuit", fmt::format("'{}' is not a circuit", files::shown(word.text)),
            "bore or chamber");
      return;
    }
    if (time && oxygen && (flow || !places_[flow_column])) {
      keep(cells, word.text == "bore" ? Circuit::bore : Circuit::chamber, *time, *oxygen, flow);
    }
  }

  Readings &readings(Circuit circuit) {
    auto &all = result_.log->circuits;
    auto place = std::ranges::find(all, circuit, &Readings::circuit);
    if (place == all.end()) {
      all.push_back({.circuit = circuit, .times = {}, .oxygen = {}, .flow = {}});
      place = std::prev(all.end());
    }
    return *place;
  }

  void keep(const std::vector<Cell> &cells, Circuit circuit, double time, double oxygen,
            std::optional<double> flow) {
    Readings &kept = readings(circuit);
    const int time_at = cells[*places_[time_column]].column;
    const int oxygen_at = cells[*places_[oxygen_column]].column;
    if (time < 0.0 || (!kept.times.empty() && time < kept.times.back().value())) {
      fault(time_at, "time", time < 0.0 ? "the time is negative" : "the time runs backwards in this circuit",
            "seconds since the gas was turned on, not falling");
    } else if (oxygen > most_oxygen) {
      fault(oxygen_at, "oxygen", fmt::format("{:.3g} % is more than air holds", 100.0 * oxygen),
            "0 % to 25 %");
    } else if (oxygen <= 0.0) {
      ++dark_;
    } else if (flow && !(*flow > 0.0)) {
      fault(cells[*places_[flow_column]].column, "flow", "the flow is not above 0");
    } else if (flow && kept.flow && std::abs(*flow - kept.flow->value()) > 1e-9 * *flow) {
      fault(cells[*places_[flow_column]].column, "flow", "the flow changes within the circuit",
            "one flow; start a log for another");
    } else {
      kept.times.push_back(units::seconds(time));
      kept.oxygen.push_back(oxygen);
      if (flow) {
        kept.flow = units::cubic_metres_per_second(*flow);
      }
    }
  }

  void check(const Readings &kept) {
    const std::string name(to_text(kept.circuit));
    if (kept.times.size() < static_cast<std::size_t>(least_readings)) {
      report(job::Severity::error, header_line_, 1, name,
             fmt::format("{} readings are too few", kept.times.size()),
             fmt::format("{} or more", least_readings));
      return;
    }
    if (!(kept.times.back() > kept.times.front())) {
      report(job::Severity::error, header_line_, 1, name, "all readings have the same time",
             "times that rise");
      return;
    }
    const auto [low, high] = std::ranges::minmax(kept.oxygen);
    if (high < least_fall * low) {
      report(job::Severity::error, header_line_, 1, name,
             "the readings fall by less than ten times: nothing to fit",
             "a log from air down to the purge's floor");
    }
  }

  void finish() {
    if (!header_) {
      report(job::Severity::error, 1, 1, "header", "the file has no header line");
    } else if (rows_ > most_readings) {
      fault(1, "row", fmt::format("more than {} readings", most_readings), "every tenth reading will do");
    } else if (usable_ && result_.log->circuits.empty() && errors_ == 0) {
      report(job::Severity::error, header_line_, 1, "row", "the file has no readings above 0");
    }
    if (errors_ == 0) {
      std::ranges::sort(result_.log->circuits, {}, &Readings::circuit);
      std::ranges::for_each(result_.log->circuits, [this](const Readings &kept) { check(kept); });
    }
    if (dark_ > 0) {
      report(job::Severity::caution, header_line_, 1, "oxygen",
             fmt::format("{} readings at or under 0 are left out: below what the meter shows", dark_));
    }
    if (errors_ > most_problems) {
      result_.problems.push_back({job::Severity::error,
                                  result_.log->file,
                                  {line_, 1},
                                  "row",
                                  fmt::format("and {} more faults", errors_ - most_problems),
                                  {},
                                  {}});
    }
    if (errors_ > 0) {
      result_.log.reset();
    }
  }

  LogReading result_;
  std::array<std::optional<std::size_t>, column_count> places_{};
  std::array<double, column_count> scales_{1.0, 1.0, 1.0, 1.0};
  std::size_t width_ = 0, errors_ = 0;
  int line_ = 0, header_line_ = 1, rows_ = 0, dark_ = 0;
  bool header_ = false, usable_ = false;
  char separator_ = ',';
  char decimal_mark_ = 0; // of the first number that has one
};

} // namespace

std::string_view to_text(Circuit circuit) {
  return circuit == Circuit::bore ? "bore" : "chamber";
}

LogReading parse_log(std::string_view text, std::string file) {
  const std::string utf8 = as_utf8(text);
  return Reader(std::move(file)).read(utf8);
}

} // namespace purgewright::gas
