#include "job/yaml_tree.hpp"

#include "job/fault.hpp"
#include "purgewright/files/text.hpp"
#include "purgewright/job/sources.hpp"

#include <fmt/format.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <cctype>
#include <sstream>
#include <utility>

namespace purgewright::job {
namespace {

constexpr std::string_view alias_problem = "an alias (*) is not accepted in a job file";
constexpr std::string_view anchor_problem = "an anchor (&) is not accepted in a job file";
constexpr std::string_view written_out = "the value itself, written out";
constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

// Raised by the event handler to leave the parser; caught in this file.
struct Refusal {
  Diagnostic problem;
};

// yaml-cpp counts lines and columns from 0, and columns in bytes; people and editors count characters from 1.
class Marker {
 public:
  explicit Marker(std::string_view text) : text_(text) {
    starts_.push_back(0);
    for (std::size_t i = 0; i < text.size(); ++i) {
      if (text[i] == '\n') {
        starts_.push_back(i + 1);
      }
    }
  }
  Mark at(const YAML::Mark &mark) const {
    if (mark.is_null() || mark.line < 0 || mark.column < 0) {
      return {};
    }
    const auto line = std::min(static_cast<std::size_t>(mark.line), starts_.size() - 1);
    return at_byte(line, static_cast<std::size_t>(mark.column));
  }
  Mark at_offset(std::size_t offset) const {
    const auto after = std::ranges::upper_bound(starts_, offset);
    const auto line = static_cast<std::size_t>(after - starts_.begin()) - 1;
    return at_byte(line, offset - starts_[line]);
  }

  bool tab_indents(const YAML::Mark &mark) const {
    const auto line = std::min(static_cast<std::size_t>(std::max(mark.line, 0)), starts_.size() - 1);
    const std::string_view rest = text_.substr(starts_[line]);
    return rest.substr(0, rest.find_first_not_of(" \t")).find('\t') != std::string_view::npos;
  }

  // The text from a place on.
  std::string_view from(const YAML::Mark &mark) const {
    const auto line = std::min(static_cast<std::size_t>(std::max(mark.line, 0)), starts_.size() - 1);
    const auto start = starts_[line] + static_cast<std::size_t>(std::max(mark.column, 0));
    return start < text_.size() ? text_.substr(start) : std::string_view{};
  }

 private:
  Mark at_byte(std::size_t line, std::size_t bytes) const {
    const auto before = text_.substr(starts_[line], bytes);
    const auto characters = std::ranges::count_if(before, [](char c) { return (c & 0xC0) != 0x80; });
    return {static_cast<int>(line) + 1, static_cast<int>(characters) + 1};
  }

  std::string_view text_;
  std::vector<std::size_t> starts_;
};

// What a job file may hold of what cannot be drawn: tabs and line ends.
bool forbidden(std::string_view rest) {
  const bool line_end = rest.front() == '\n' || rest.starts_with("\r\n");
  return !line_end && rest.front() != '\t' && files::is_undrawable(files::code_point(rest));
}

std::optional<Diagnostic> text_fault(std::string_view text, const Marker &marker) {
  if (text.size() > file_size_most) {
    return fault({}, {}, "the file is larger than 1 MiB", "at most 1 MiB");
  }
  for (std::size_t i = 0; i < text.size();) {
    const auto rest = text.substr(i);
    const std::size_t length = files::utf8_length(rest);
    if (length == 0) {
      const bool wide = i == 0 && (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF"));
      return fault(marker.at_offset(i), {},
                   wide ? "the file is UTF-16 text; save it as UTF-8" : "the file is not UTF-8 text",
                   "plain text in UTF-8");
    }
    if (forbidden(rest)) {
      return fault(marker.at_offset(i), {},
                   fmt::format("the file holds a character that cannot be drawn ({})",
                               files::code_text(files::code_point(rest))),
                   "plain text in UTF-8");
    }
    i += length;
  }
  return std::nullopt;
}

// Whether the quote at the front of the text is closed again: yaml-cpp takes the file's end for one.
bool quote_closes(std::string_view text) {
  const char quote = text.front();
  for (std::size_t i = 1; i < text.size(); ++i) {
    if (quote == '"' && text[i] == '\\') {
      ++i;
    } else if (text[i] == quote) {
      if (quote == '"' || i + 1 >= text.size() || text[i + 1] != quote) {
        return true;
      }
      ++i; // a doubled single quote stands for itself
    }
  }
  return false;
}

class TreeBuilder final : public YAML::EventHandler {
 public:
  explicit TreeBuilder(const Marker &marker) : marker_(marker) {}

  std::optional<YamlNode> take_root() { return std::move(root_); }

  void OnDocumentStart(const YAML::Mark &mark) override {
    if (++documents_ > 1) {
      refuse(mark, "a second YAML document starts here", "one job a file");
    }
  }
  void OnDocumentEnd() override {}
  void OnNull(const YAML::Mark &mark, YAML::anchor_t anchor) override {
    place(make(YamlNode::Kind::null, mark, "", anchor));
  }
  void OnAlias(const YAML::Mark &mark, YAML::anchor_t /*anchor*/) override {
    refuse(mark, std::string(alias_problem), std::string(written_out));
  }
  void OnScalar(const YAML::Mark &mark, const std::string &tag, YAML::anchor_t anchor,
                const std::string &value) override {
    const auto source = marker_.from(mark);
    if (tag == "!" && !source.empty() && (source.front() == '"' || source.front() == '\'') &&
        !quote_closes(source)) {
      refuse(mark, "a quote is opened here and never closed", "a quote at both ends of the text");
    }
    auto node = make(YamlNode::Kind::scalar, mark, tag, anchor);
    node.text = value;
    place(std::move(node));
  }
  void OnSequenceStart(const YAML::Mark &mark, const std::string &tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value /*style*/) override {
    open(make(YamlNode::Kind::list, mark, tag, anchor), mark);
  }
  void OnSequenceEnd() override { close(); }
  void OnMapStart(const YAML::Mark &mark, const std::string &tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value /*style*/) override {
    open(make(YamlNode::Kind::map, mark, tag, anchor), mark);
  }
  void OnMapEnd() override { close(); }
  void OnAnchor(const YAML::Mark &mark, const std::string & /*name*/) override {
    refuse(mark, std::string(anchor_problem), std::string(written_out));
  }

 private:
  [[noreturn]] void refuse(const YAML::Mark &mark, std::string problem, std::string allowed) const {
    throw Refusal{fault(marker_.at(mark), {}, std::move(problem), std::move(allowed))};
  }
  YamlNode make(YamlNode::Kind kind, const YAML::Mark &mark, const std::string &tag, YAML::anchor_t anchor) {
    if (anchor != 0) {
      refuse(mark, std::string(anchor_problem), std::string(written_out));
    }
    // The parser itself tags plain nodes "?" and quoted ones "!".
    if (!tag.empty() && tag != "?" && tag != "!") {
      refuse(mark, "a YAML tag (!) is not accepted in a job file", "the value without a tag");
    }
    if (++nodes_ > nodes_most) {
      refuse(mark, fmt::format("the file holds more than {} values", nodes_most),
             "a job file of ordinary length");
    }
    YamlNode node;
    node.kind = kind;
    node.mark = marker_.at(mark);
    return node;
  }
  void open(YamlNode node, const YAML::Mark &mark) {
    if (static_cast<int>(open_.size()) >= nesting_most) {
      refuse(mark, fmt::format("the file nests deeper than {} levels", nesting_most),
             "sections and keys as in the templates");
    }
    open_.push_back(std::move(node));
  }
  void close() {
    YamlNode node = std::move(open_.back());
    open_.pop_back();
    place(std::move(node));
  }
  void place(YamlNode node) {
    if (open_.empty()) {
      root_ = std::move(node);
    } else {
      open_.back().children.push_back(std::move(node));
    }
  }

  const Marker &marker_;
  std::optional<YamlNode> root_;
  std::vector<YamlNode> open_;
  int nodes_ = 0;
  int documents_ = 0;
};

// The parser reads ahead of an open bracket to its line's end or further, so a text of nothing else is slow.
std::optional<std::size_t> bracket_too_many(std::string_view text) {
  int brackets = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    brackets += text[i] == '[' || text[i] == '{' ? 1 : 0;
    if (brackets > nodes_most) {
      return i;
    }
  }
  return std::nullopt;
}

YamlReading parse(std::string_view text, const Marker &marker) {
  TreeBuilder builder(marker);
  try {
    std::istringstream stream{std::string(text)};
    YAML::Parser parser(stream);
    while (parser.HandleNextDocument(builder)) {
    }
  } catch (const Refusal &refusal) {
    return {.root = {}, .problem = refusal.problem};
  } catch (const YAML::Exception &e) {
    if (marker.from(e.mark).starts_with('*')) {
      return {.root = {},
              .problem = fault(marker.at(e.mark), {}, std::string(alias_problem), std::string(written_out))};
    }
    return {.root = {},
            .problem =
                marker.tab_indents(e.mark)
                    ? fault(marker.at(e.mark), {}, "a tab indents this line", "spaces alone indent YAML")
                    : fault(marker.at(e.mark), {}, "not readable as YAML: " + e.msg, "")};
  } catch (const std::exception &e) {
    return {.root = {}, .problem = fault({}, {}, std::string("not readable as YAML: ") + e.what(), "")};
  }
  auto root = builder.take_root();
  if (!root || root->kind == YamlNode::Kind::null) {
    return {.root = {},
            .problem =
                fault({}, {}, "the file is empty", "a job; `purgewright new` writes one to start from")};
  }
  return {.root = std::move(root), .problem = {}};
}

} // namespace

YamlReading read_yaml(std::string_view text) {
  if (text.starts_with(byte_order_mark)) {
    text.remove_prefix(byte_order_mark.size());
  }
  if (text.size() > file_size_most) {
    return {.root = {}, .problem = fault({}, {}, "the file is larger than 1 MiB", "at most 1 MiB")};
  }
  const Marker marker(text);
  if (auto problem = text_fault(text, marker)) {
    return {.root = {}, .problem = std::move(problem)};
  }
  if (const auto place = bracket_too_many(text)) {
    return {.root = {},
            .problem = fault(marker.at_offset(*place), {},
                             fmt::format("the file holds more than {} brackets", nodes_most),
                             "a job file of ordinary length")};
  }
  return parse(text, marker);
}

} // namespace purgewright::job
