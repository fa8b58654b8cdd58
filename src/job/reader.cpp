#include "job/family.hpp"
#include "job/fault.hpp"
#include "job/limits.hpp"
#include "job/value_reader.hpp"
#include "job/yaml_tree.hpp"
#include "purgewright/files/text.hpp"
#include "purgewright/job/draft.hpp"
#include "purgewright/job/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <memory>
#include <tuple>

namespace purgewright::job {
namespace {

using files::shown;

std::string join(std::string_view section, std::string_view name) {
  return section.empty() ? std::string(name) : fmt::format("{}.{}", section, name);
}

std::string place(Mark mark) {
  return fmt::format("line {}, column {}", mark.line, mark.column);
}

// "0.005": a share by the grammar, and hardly what was meant by whoever thinks in percent.
bool is_bare_oxygen(const FieldInfo &info, std::string_view text) {
  constexpr double most = 0.01; // what is told in ppm
  return info.dimension == units::Dimension::ratio && info.kind == FieldKind::quantity && info.most <= most &&
         text.find_first_not_of("0123456789.+-eE \t") == std::string_view::npos;
}

Diagnostic bare_oxygen(const FieldInfo &info, const YamlNode &value, double share) {
  auto caution = fault(value.mark, std::string(info.path),
                       fmt::format("{} without a unit is a share: {} is taken", shown(value.text),
                                   fmt::format("{:.6g} ppm", 1e6 * share)),
                       "a number with its unit, such as 50 ppm or 0.005 %");
  caution.severity = Severity::caution;
  return caution;
}

class DraftBuilder {
 public:
  explicit DraftBuilder(DraftReading &reading) : reading_(reading) {}

  void read(const YamlNode &root) {
    read_section("", root, root.mark);
    if (root.kind == YamlNode::Kind::map) {
      report_missing();
    }
  }

 private:
  void report(Mark mark, std::string key, std::string problem, std::string allowed,
              std::string nearest = {}) {
    reading_.problems.push_back(
        fault(mark, std::move(key), std::move(problem), std::move(allowed), std::move(nearest)));
  }

  static std::string not_a_section(YamlNode::Kind found) {
    switch (found) {
    case YamlNode::Kind::null:
      return "the section is empty";
    case YamlNode::Kind::list:
      return "a list stands where a section of keys is wanted";
    default:
      return "a value stands where a section of keys is wanted";
    }
  }

  void read_section(const std::string &section, const YamlNode &node, Mark name_mark) {
    section_marks_[section] = name_mark;
    if (node.kind != YamlNode::Kind::map) {
      report(node.kind == YamlNode::Kind::null ? name_mark : node.mark, section, not_a_section(node.kind),
             names_in(section));
      return;
    }
    std::map<std::string_view, Mark> seen;
    for (std::size_t i = 0; i + 1 < node.children.size(); i += 2) {
      const YamlNode &name = node.children[i];
      if (name.kind != YamlNode::Kind::scalar) {
        report(name.mark, section, "a key is not a plain word", names_in(section));
        continue;
      }
      const auto [first, fresh] = seen.emplace(name.text, name.mark);
      if (!fresh) {
        report(name.mark, join(section, shown(name.text)),
               "the key stands twice, first at " + place(first->second), "each key once");
        continue;
      }
      if (cut_by_comma(node, i)) {
        const std::string whole = shown(node.children[i + 1].text), part = shown(node.children[i + 2].text);
        report(node.children[i + 1].mark, join(section, shown(name.text)),
               fmt::format("'{},{}': a comma ends a value in braces", whole, part),
               fmt::format("a decimal point: {}.{}", whole, part));
        i += 2;
        continue;
      }
      read_member(section, name, node.children[i + 1]);
    }
    // An empty vent still says that there is one.
    if (section == "tube.vent" && node.children.empty()) {
      Entry &count = reading_.draft[Key::tube_vent_count];
      count.stated = true;
      count.number = 1;
      count.mark = node.mark;
    }
  }

  // "{wall: 0,9 mm}" is to YAML a wall of 0 and a key "9 mm" without a value.
  static bool cut_by_comma(const YamlNode &map, std::size_t i) {
    const auto digit = [](char c) { return c >= '0' && c <= '9'; };
    if (i + 3 >= map.children.size()) {
      return false;
    }
    const YamlNode &value = map.children[i + 1], &next = map.children[i + 2], &of_next = map.children[i + 3];
    return value.kind == YamlNode::Kind::scalar && !value.text.empty() &&
           std::ranges::all_of(value.text, digit) && next.kind == YamlNode::Kind::scalar &&
           !next.text.empty() && digit(next.text.front()) && of_next.kind == YamlNode::Kind::null;
  }

  void read_member(const std::string &section, const YamlNode &name, const YamlNode &value) {
    const std::string path = join(section, name.text);
    const bool plain = name.text.find('.') == std::string::npos;
    if (const FieldInfo *info = plain ? field(path) : nullptr) {
      read_field(*info, name, value);
    } else if (plain && is_section(path)) {
      read_section(path, value, name.mark);
    } else if (!plain) {
      report(name.mark, join(section, shown(name.text)), "a key's name holds no dots",
             "each name on its own line, below its section's");
    } else {
      report(name.mark, join(section, shown(name.text)),
             section.empty() ? "there is no such section" : "there is no such key", names_in(section),
             nearest_key(section, name.text));
    }
  }

  void read_field(const FieldInfo &info, const YamlNode &name, const YamlNode &value) {
    auto outcome = read_value(info, value);
    if (auto *entry = std::get_if<Entry>(&outcome)) {
      if (is_bare_oxygen(info, value.text)) {
        reading_.problems.push_back(bare_oxygen(info, value, entry->number));
      }
      reading_.draft[info.key] = std::move(*entry);
      return;
    }
    auto &problem = std::get<Diagnostic>(outcome);
    if (value.kind == YamlNode::Kind::null) {
      problem.mark = name.mark; // an absent value has no place of its own
    }
    reading_.problems.push_back(std::move(problem));
  }

  bool reported(std::string_view path) const {
    const auto section = path.substr(0, path.find('.'));
    return std::ranges::any_of(reading_.problems, [&](const Diagnostic &d) {
      return d.key == path || d.key == section || d.nearest == path || d.nearest == section;
    });
  }

  void report_missing() {
    for (const auto &info : fields()) {
      if (!info.required || reading_.draft[info.key].stated || reported(info.path)) {
        continue;
      }
      const auto section = std::string(info.path.substr(0, info.path.find('.')));
      const auto mark = section_marks_.find(section);
      if (mark == section_marks_.end()) {
        report({}, section, "the section is missing", names_in(section));
      } else {
        report(mark->second, std::string(info.path), "the key is missing", allowed_values(info));
      }
    }
  }

  DraftReading &reading_;
  std::map<std::string, Mark, std::less<>> section_marks_;
};

void finish(DraftReading &reading) {
  std::ranges::stable_sort(reading.problems, {},
                           [](const Diagnostic &d) { return std::tuple(d.mark.line, d.mark.column); });
  for (auto &problem : reading.problems) {
    problem.file = reading.draft.file;
  }
}

DraftReading unreadable(std::string file, std::string problem, std::string allowed) {
  DraftReading reading;
  reading.draft.file = std::move(file);
  reading.problems.push_back(fault({}, {}, std::move(problem), std::move(allowed)));
  finish(reading);
  return reading;
}

void attach_log(DraftReading &reading, const Document &log) {
  if (log.problem.empty()) {
    reading.draft.log = std::make_shared<const Document>(log);
    return;
  }
  reading.problems.push_back(fault(reading.draft[Key::gas_log].mark, "gas.log",
                                   fmt::format("'{}': {}", shown(log.name), log.problem), "a CSV file"));
  reading.problems.back().file = reading.draft.file;
}

} // namespace

DraftReading read_draft_text(std::string_view yaml, std::string file_name) {
  DraftReading reading;
  reading.draft.file = std::move(file_name);
  YamlReading tree = read_yaml(yaml);
  if (tree.root) {
    DraftBuilder(reading).read(*tree.root);
  } else {
    reading.problems.push_back(std::move(*tree.problem));
  }
  finish(reading);
  return reading;
}

DraftReading read_draft(const Sources &sources) {
  const Document &job = sources.job;
  if (!job.problem.empty()) {
    return unreadable(job.label, job.problem, "a job file; `purgewright new` writes one to start from");
  }
  DraftReading reading = read_draft_text(job.bytes, job.label);
  read_family(reading, sources.family);
  if (sources.log) {
    attach_log(reading, *sources.log);
  }
  return reading;
}

DraftReading read_draft(const std::string &path) {
  return read_draft(gather(path));
}

} // namespace purgewright::job
