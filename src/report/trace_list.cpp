#include "purgewright/report/text.hpp"

#include "text_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <string>
#include <vector>

namespace purgewright::report {
namespace {

struct Entry {
  std::string_view id;
  std::string text, title;
};

std::string lower(std::string_view text) {
  std::string out(text);
  std::ranges::transform(out, out.begin(), [](char c) {
    return static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  });
  return out;
}

bool holds(const Entry &entry, std::span<const std::string> words) {
  const std::string text = lower(fmt::format("{} {}", entry.id, entry.title));
  return std::ranges::all_of(
      words, [&](const std::string &word) { return text.find(lower(word)) != std::string::npos; });
}

std::string_view topic_of(std::string_view id) {
  return id.substr(0, id.find('.'));
}

std::string section(std::string_view head, const std::vector<Entry> &entries, std::size_t of_id) {
  constexpr std::size_t of_text = 14;
  std::string text = entries.empty() ? std::string() : fmt::format("{}\n", head);
  for (const Entry &entry : entries) {
    text += fmt::format("  {:<{}} {:<{}} {}\n", entry.id, of_id, entry.text, of_text, entry.title);
  }
  return text;
}

} // namespace

std::string list_text(const Findings &f, std::span<const std::string> words) {
  std::vector<std::string_view> topics;
  std::vector<std::vector<Entry>> figures;
  std::vector<Entry> rules;
  std::size_t widest = 0;
  for (const auto &figure : f.figures) {
    const Entry entry{figure.id, value_text(f, figure), figure.title};
    if (!holds(entry, words)) {
      continue;
    }
    const auto topic = std::ranges::find(topics, topic_of(figure.id));
    const auto at = static_cast<std::size_t>(topic - topics.begin());
    if (topic == topics.end()) {
      topics.push_back(topic_of(figure.id));
      figures.emplace_back();
    }
    figures[at].push_back(entry);
    widest = std::max(widest, entry.id.size());
  }
  for (const auto &rule : f.rules) {
    const Entry entry{rule.id, std::string(checks::to_text(rule.status)), rule.title};
    if (holds(entry, words)) {
      rules.push_back(entry);
      widest = std::max(widest, entry.id.size());
    }
  }
  std::string text;
  for (std::size_t i = 0; i < topics.size(); ++i) {
    text += section(topics[i], figures[i], widest);
  }
  return text + section("rules", rules, widest);
}

} // namespace purgewright::report
